/** A place of a member's straight, for a bend that is put in there or a tube that is split there. */
import { placeAt } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance, dot, interpolate, subtract, type Vec3 } from '../geometry/vector.ts';
import { fault, type Fault } from '../job/fault.ts';
import type { Place } from '../job/places.ts';
import type { Bar } from '../solve/types.ts';

export interface OnStraight {
  /** The place lies between this place of the path, 0 = end A, and the next; it may be that place itself. */
  readonly leg: number;
  /** How a new node there is placed; null where the path has a node there. */
  readonly at: Place | null;
}

/**
 * The place `along` mm from end A's node along the centreline. A new node there is given on the line between its two neighbours of the path: nothing
 * moves, and it stays in line while they do. Refused, in words, at an end, beyond it, within a bend, and where bends overlap.
 */
export function onStraight(
  { member: { path }, path: centreline, bends, route }: Bar,
  along: number,
): OnStraight | Fault {
  if (along <= ROUNDING || along >= centreline.length - ROUNDING) {
    return fault('', 'that is an end of the tube, or beyond it: say a place between its ends');
  }
  const within = bends.findIndex(({ start, end }) => along > start + ROUNDING && along < end - ROUNDING);
  if (within !== -1) return fault('', `that place lies within bend ${within + 1}: say one on a straight`);
  const here = placeAt(centreline, along).point;
  for (const [leg, from] of route.slice(0, -1).entries()) {
    const to = route[leg + 1]!;
    const fraction = fractionOf(here, from, to);
    if (distance(here, interpolate(from, to, fraction)) > ROUNDING) continue;
    if (distance(here, from) <= ROUNDING) return { leg, at: null };
    if (distance(here, to) <= ROUNDING) return { leg: leg + 1, at: null };
    return { leg, at: { kind: 'between', nodes: [path[leg]!, path[leg + 1]!], fraction } };
  }
  return fault('', 'bends overlap there: no straight is left');
}

/** Of the place on the line nearest to p, within its ends: 0 at the first, 1 at the second. */
function fractionOf(p: Vec3, from: Vec3, to: Vec3): number {
  const leg = subtract(to, from);
  return Math.min(Math.max(dot(subtract(p, from), leg) / dot(leg, leg), 0), 1);
}
