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
export function checkDimensions({ pieces, outerDiameter }: SawnTube): readonly CheckDimension[] {
  const arcs = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  const [first, last] = [arcs[0], arcs.at(-1)];
  if (first === undefined || last === undefined) return [];
  const [endA, endB] = [pieces[0]!, pieces.at(-1)!];
  const off = standsOff(pieces, first);
  const along = arcs.length === 1 ? 'leg' : off.value <= NOTABLE_LENGTH ? 'ends' : 'ends-on-first-bend';
  const lies: Lies = { bends: arcs.length, along, highest: off.where, turns: off.turns };
  const chord: CheckDimension = { id: 'chord', lies, kind: 'centre', value: distance(endA.from, endB.to) };
  const sizes = overall(pieces, outerDiameter, first, lies);
  if (arcs.length === 1) return [...sizes, chord];

  const legsAlike = dot(endA.startTangent, endB.endTangent) <= -LEGS_ALIKE;
  const outside = (a: Vec3, tangentA: Vec3, b: Vec3, tangentB: Vec3): number => {
    const w = normalize(subtract(b, a));
    const over = (tangent: Vec3) => (outerDiameter / 2) * Math.sqrt(Math.max(0, 1 - dot(tangent, w) ** 2));
    return distance(a, b) + over(tangentA) + over(tangentB);
  };
  const legs: readonly CheckDimension[] = [
    {
      id: 'legs-at-ends',
      lies,
      kind: 'outside',
      value: outside(endA.from, endA.startTangent, endB.to, endB.endTangent),
    },
    {
      id: 'legs-at-bends',
      lies,
      kind: 'outside',
      value: outside(first.from, first.startTangent, last.to, last.endTangent),
    },
  ];
  return [
    ...sizes,
    ...(legsAlike ? legs : []),
    chord,
    { id: 'diagonal-a', lies, kind: 'centre', value: distance(endA.from, last.to) },
    { id: 'diagonal-b', lies, kind: 'centre', value: distance(endB.to, first.from) },
    { id: 'stands-off', lies, kind: 'flat', value: off.value },
  ];
}

/** In the plane of the first bend, the direction that a bent tube's width is measured along, from end A; null for a straight one. */
export function measuredAlong(pieces: readonly Piece[]): Vec3 | null {
  const [first, ...others] = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  if (first === undefined) return null;
  const across = rejectFrom(subtract(pieces.at(-1)!.to, pieces[0]!.from), first.normal);
  return others.length > 0 && length(across) > ENDS_TOGETHER ? normalize(across) : first.startTangent;
}

/** Over the outsides, along a direction in the plane of the first bend and square to it. */
function overall(
  pieces: readonly Piece[],
  outerDiameter: number,
  { normal }: ArcPiece,
  lies: Lies,
): readonly CheckDimension[] {
  const along = measuredAlong(pieces)!;
  const over = (w: Vec3): number =>
    reachOf(pieces, outerDiameter / 2, w) + reachOf(pieces, outerDiameter / 2, scale(w, -1));
  return [
    { id: 'width', lies, kind: 'outside', value: over(along) },
    { id: 'height', lies, kind: 'outside', value: over(cross(normal, along)) },
  ];
}

/** Greatest distance of the centreline from the plane of the first bend, and where; 0 for a tube in one plane. */
function standsOff(pieces: readonly Piece[], { normal, from }: ArcPiece) {
  const [up, down] = [reachOf(pieces, 0, normal), reachOf(pieces, 0, scale(normal, -1))];
  const level = dot(from, normal);
  const most = Math.max(up - level, down + level);
  const endB = Math.abs(dot(subtract(pieces.at(-1)!.to, from), normal));
  const where = most - endB <= SEEN ? ('end-b' as const) : ('between' as const);
  // A bend turns left about the normal that stands up.
  const rises = where === 'end-b' ? dot(subtract(pieces.at(-1)!.to, from), normal) > 0 : up - level >= down + level;
  return { value: most <= ROUNDING ? 0 : most, where, turns: rises ? ('left' as const) : ('right' as const) };
}
