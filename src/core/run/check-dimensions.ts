/**
 * What a tape can verify on a tube that has come off the bender: before any cope is cut, from sawn end to sawn end.
 *
 * It is laid flat on the plane of its first bend and measured there, what stands off it plumbed down. With two bends or more its
 * width runs along the line through both ends, its height square to that; with one bend along the leg of end A, and square to it.
 * Only on a tube that lies flat do a tape across it and one on the bench read the same: `lies` says how it has to be laid.
 * A straight tube has none.
 */
import type { ArcPiece, Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { cross, distance, dot, length, normalize, rejectFrom, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import { reachOf, type SawnTube } from './sawn-tube.ts';
import { NOTABLE_LENGTH } from '../marks/tape.ts';

export interface CheckDimension {
  readonly id:
    | 'chord'
    | 'width'
    | 'height'
    | 'legs-at-ends'
    | 'legs-at-bends'
    | 'diagonal-a'
    | 'diagonal-b'
    | 'stands-off';
  readonly lies: Lies;
  /** 'outside': over the tube's outsides. 'centre': from centre to centre. 'flat': off the plane that it lies on. */
  readonly kind: 'outside' | 'centre' | 'flat';
  /** mm. */
  readonly value: number;
}

/** How the tube lies when it is measured. */
export interface Lies {
  readonly bends: number;
  /** Along the leg of end A, of one bend; else along both ends, and out of one plane on the plane of its first bend. */
  readonly along: 'leg' | 'ends' | 'ends-on-first-bend';
  /** Where it stands off that plane the most. */
  readonly highest: 'end-b' | 'between';
  /** To which side bend 1 turns, seen from end A, when that place stands above the bench: a tube that is the mirror image has the other. */
  readonly turns: 'left' | 'right';
}

/** Legs that point the same way within 60 degrees are measured from leg to leg. */
const LEGS_ALIKE = 0.5;

/** mm. Ends that lie this near to each other give the width no direction. */
const ENDS_TOGETHER = 1;

/** mm. End B counts as the farthest where no place is farther by more than a tape shows. */
const SEEN = 0.05;

/** The dimensions that the shape has, in the order in which they are measured. */
export function checkDimensions(tube: SawnTube): readonly CheckDimension[] {
  const bent = bentTube(tube);
  if (bent === null) return [];
  const { arcs, endA, endB } = bent;
  const off = standsOff(bent);
  const along = arcs.length === 1 ? 'leg' : off.value <= NOTABLE_LENGTH ? 'ends' : 'ends-on-first-bend';
  const lies: Lies = { bends: arcs.length, along, highest: off.where, turns: off.turns };
  const legsAlike = dot(endA.startTangent, endB.endTangent) <= -LEGS_ALIKE;
  const has: readonly CheckDimension['id'][] =
    arcs.length === 1
      ? ['width', 'height', 'chord']
      : [
          'width',
          'height',
          ...(legsAlike ? (['legs-at-ends', 'legs-at-bends'] as const) : []),
          'chord',
          'diagonal-a',
          'diagonal-b',
          'stands-off',
        ];
  return has.map((id) => ({ id, lies, kind: KINDS[id], value: id === 'stands-off' ? off.value : VALUES[id](bent, 0) }));
}

/**
 * What a tape reads on a tube for a dimension that another shape of it has, laid as that one lies: also where its own legs do not point the same
 * way, and below zero where the place that stood above the bench lies under it. 0 on a straight tube. mm; `soft` as in reachOf.
 */
export function tapedAs(tube: SawnTube, { id, lies }: Pick<CheckDimension, 'id' | 'lies'>, soft = 0): number {
  const bent = bentTube(tube);
  if (bent === null) return 0;
  if (id !== 'stands-off') return VALUES[id](bent, soft);
  if (lies.along === 'ends') return standsOff(bent).value;
  const { normal, from } = bent.arcs[0]!;
  const up = lies.turns === 'left' ? normal : scale(normal, -1);
  return (lies.highest === 'end-b' ? dot(bent.endB.to, up) : reachOf(bent.pieces, 0, up, soft)) - dot(from, up);
}

const KINDS: Readonly<Record<CheckDimension['id'], CheckDimension['kind']>> = {
  width: 'outside',
  height: 'outside',
  'legs-at-ends': 'outside',
  'legs-at-bends': 'outside',
  chord: 'centre',
  'diagonal-a': 'centre',
  'diagonal-b': 'centre',
  'stands-off': 'flat',
};

/** mm, but for what stands off, which goes by how the tube lies; `soft` as in reachOf. */
const VALUES: Readonly<Record<Exclude<CheckDimension['id'], 'stands-off'>, (bent: Bent, soft: number) => number>> = {
  width: (bent, soft) => over(bent, measuredAlong(bent.pieces)!, soft),
  height: (bent, soft) => over(bent, cross(bent.arcs[0]!.normal, measuredAlong(bent.pieces)!), soft),
  'legs-at-ends': ({ endA, endB, outerDiameter }) =>
    outside(endA.from, endA.startTangent, endB.to, endB.endTangent, outerDiameter),
  'legs-at-bends': ({ arcs, outerDiameter }) => {
    const [first, last] = [arcs[0]!, arcs.at(-1)!];
    return outside(first.from, first.startTangent, last.to, last.endTangent, outerDiameter);
  },
  chord: ({ endA, endB }) => distance(endA.from, endB.to),
  'diagonal-a': ({ arcs, endA }) => distance(endA.from, arcs.at(-1)!.to),
  'diagonal-b': ({ arcs, endB }) => distance(endB.to, arcs[0]!.from),
};

interface Bent extends SawnTube {
  readonly arcs: readonly ArcPiece[];
  readonly endA: Piece;
  readonly endB: Piece;
}

/** Null for a straight tube. */
function bentTube({ pieces, outerDiameter }: SawnTube): Bent | null {
  const arcs = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  return arcs.length === 0 ? null : { pieces, outerDiameter, arcs, endA: pieces[0]!, endB: pieces.at(-1)! };
}

/** Over the outsides of two legs, along the line from the one place to the other. */
function outside(a: Vec3, tangentA: Vec3, b: Vec3, tangentB: Vec3, outerDiameter: number): number {
  const w = normalize(subtract(b, a));
  const beyond = (tangent: Vec3) => (outerDiameter / 2) * Math.sqrt(Math.max(0, 1 - dot(tangent, w) ** 2));
  return distance(a, b) + beyond(tangentA) + beyond(tangentB);
}

/** Over the outsides, along a unit vector in the plane of the first bend. */
const over = ({ pieces, outerDiameter }: Bent, w: Vec3, soft: number): number =>
  reachOf(pieces, outerDiameter / 2, w, soft) + reachOf(pieces, outerDiameter / 2, scale(w, -1), soft);

/** In the plane of the first bend, the direction that a bent tube's width is measured along, from end A; null for a straight one. */
export function measuredAlong(pieces: readonly Piece[]): Vec3 | null {
  const [first, ...others] = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  if (first === undefined) return null;
  const across = rejectFrom(subtract(pieces.at(-1)!.to, pieces[0]!.from), first.normal);
  return others.length > 0 && length(across) > ENDS_TOGETHER ? normalize(across) : first.startTangent;
}

/** Greatest distance of the centreline from the plane of the first bend, and where; 0 for a tube in one plane. */
function standsOff({ pieces, arcs }: Bent) {
  const { normal, from } = arcs[0]!;
  const [up, down] = [reachOf(pieces, 0, normal), reachOf(pieces, 0, scale(normal, -1))];
  const level = dot(from, normal);
  const most = Math.max(up - level, down + level);
  const endB = Math.abs(dot(subtract(pieces.at(-1)!.to, from), normal));
  const where = most - endB <= SEEN ? ('end-b' as const) : ('between' as const);
  // A bend turns left about the normal that stands up.
  const rises = where === 'end-b' ? dot(subtract(pieces.at(-1)!.to, from), normal) > 0 : up - level >= down + level;
  return { value: most <= ROUNDING ? 0 : most, where, turns: rises ? ('left' as const) : ('right' as const) };
}
