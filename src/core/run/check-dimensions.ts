/**
 * What a tape can verify on a tube that has come off the bender: before any cope is cut, from sawn end to sawn end.
 *
 * It is laid flat on the plane of its first bend and measured there, what stands off it plumbed down. With two bends or more its
 * width runs along the line through both ends, its height square to that; with one bend along the leg of end A, and square to it.
 * Only on a tube that lies flat do a tape across it and one on the bench read the same: the names say where it has to be laid.
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
  /** As the shop calls it. */
  readonly name: string;
  /** 'outside': over the tube's outsides. 'centre': from centre to centre. 'flat': off the plane that it lies on. */
  readonly kind: 'outside' | 'centre' | 'flat';
  /** mm. */
  readonly value: number;
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
  const chord: CheckDimension = {
    id: 'chord',
    name: 'End to end, centre to centre',
    kind: 'centre',
    value: distance(endA.from, endB.to),
  };
  const along = measuredAlong(pieces)!;
  if (arcs.length === 1) return [...overall(pieces, outerDiameter, first, along, ALONG_LEG), chord];

  const off = standsOff(pieces, first);
  const flat = off.value <= NOTABLE_LENGTH;
  const legsAlike = dot(endA.startTangent, endB.endTangent) <= -LEGS_ALIKE;
  const outside = (a: Vec3, tangentA: Vec3, b: Vec3, tangentB: Vec3): number => {
    const w = normalize(subtract(b, a));
    const over = (tangent: Vec3) => (outerDiameter / 2) * Math.sqrt(Math.max(0, 1 - dot(tangent, w) ** 2));
    return distance(a, b) + over(tangentA) + over(tangentB);
  };
  const legs: readonly CheckDimension[] = [
    {
      id: 'legs-at-ends',
      name: 'Leg to leg at the ends, outside',
      kind: 'outside',
      value: outside(endA.from, endA.startTangent, endB.to, endB.endTangent),
    },
    {
      id: 'legs-at-bends',
      name: `Leg to leg where bend 1 starts and bend ${arcs.length} ends, outside`,
      kind: 'outside',
      value: outside(first.from, first.startTangent, last.to, last.endTangent),
    },
  ];
  return [
    ...overall(pieces, outerDiameter, first, along, flat ? ACROSS_ENDS : LAID_FLAT),
    ...(legsAlike ? legs : []),
    chord,
    {
      id: 'diagonal-a',
      name: `End A to where bend ${arcs.length} ends, centre to centre`,
      kind: 'centre',
      value: distance(endA.from, last.to),
    },
    {
      id: 'diagonal-b',
      name: 'End B to where bend 1 starts, centre to centre',
      kind: 'centre',
      value: distance(endB.to, first.from),
    },
    { id: 'stands-off', name: STANDS_OFF[flat ? 'flat' : off.where], kind: 'flat', value: off.value },
  ];
}

/** In the plane of the first bend, the direction that a bent tube's width is measured along, from end A; null for a straight one. */
export function measuredAlong(pieces: readonly Piece[]): Vec3 | null {
  const [first, ...others] = pieces.filter((piece): piece is ArcPiece => piece.kind === 'arc');
  if (first === undefined) return null;
  const across = rejectFrom(subtract(pieces.at(-1)!.to, pieces[0]!.from), first.normal);
  return others.length > 0 && length(across) > ENDS_TOGETHER ? normalize(across) : first.startTangent;
}

const ACROSS_ENDS = ['Overall width, along both ends', 'Overall height, square to that'] as const;
const LAID_FLAT = [
  'Laid flat on bend 1: width along ends, plumbed down',
  'Laid flat on bend 1: square to that, plumbed down',
] as const;
const STANDS_OFF = {
  flat: 'Laid flat on bend 1: stands off the bench by',
  'end-b': 'Laid flat on bend 1: height of end B, centre to centre',
  between: 'Laid flat on bend 1: greatest height, centre to centre',
} as const;
const ALONG_LEG = ['Overall, along the leg of end A', 'Overall, square to that leg'] as const;

/** Over the outsides, along a direction in the plane of the first bend and square to it. */
function overall(
  pieces: readonly Piece[],
  outerDiameter: number,
  { normal }: ArcPiece,
  along: Vec3,
  names: readonly [string, string],
): readonly CheckDimension[] {
  const over = (w: Vec3): number =>
    reachOf(pieces, outerDiameter / 2, w) + reachOf(pieces, outerDiameter / 2, scale(w, -1));
  return [
    { id: 'width', name: names[0], kind: 'outside', value: over(along) },
    { id: 'height', name: names[1], kind: 'outside', value: over(cross(normal, along)) },
  ];
}

/** Greatest distance of the centreline from the plane of the first bend, and where; 0 for a tube in one plane. */
function standsOff(pieces: readonly Piece[], { normal, from }: ArcPiece) {
  const [up, down] = [reachOf(pieces, 0, normal), reachOf(pieces, 0, scale(normal, -1))];
  const level = dot(from, normal);
  const most = Math.max(up - level, down + level);
  const endB = Math.abs(dot(subtract(pieces.at(-1)!.to, from), normal));
  const where = most - endB <= SEEN ? ('end-b' as const) : ('between' as const);
  return { value: most <= ROUNDING ? 0 : most, where };
}
