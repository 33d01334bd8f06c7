/**
 * Whether the foot of a twin is made of another piece. Along stays and across turns round in a mirror image; turned by half a turn about the
 * plate's normal it is the same to have along turned round instead. What is flat may also be turned over, what is bent may not.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { kinkAxis } from '../job/kinds/kink.ts';
import type { Foot, Hole } from '../job/kinds/foot.ts';

/** 'same': one piece serves both; 'turned-over': so does it, the other face up; 'handed': it is bent the other way. */
export type Hands = 'same' | 'turned-over' | 'handed';

/** Of a foot that both a tube and a twin stand on. */
export function handsOf(foot: Foot): Hands {
  const holes = foot.holes ?? [];
  if (foot.kind === 'plate' && foot.kink !== undefined) {
    // Only the turn that leaves the kink on its side will do.
    return isEven(holes, kinkAxis(foot.kink) === 0 ? 1 : 0) ? 'same' : 'handed';
  }
  return isEven(holes, 0) || isEven(holes, 1) ? 'same' : 'turned-over';
}

/** Whether the holes come to lie on one another with this axis turned round. */
const isEven = (holes: readonly Hole[], axis: 0 | 1): boolean =>
  holes.every(({ at, diameter }) =>
    holes.some((other) => {
      const off = [other.at[0] - at[0], other.at[1] - at[1]];
      off[axis] = other.at[axis] + at[axis];
      return Math.hypot(...off, other.diameter - diameter) <= ROUNDING;
    }),
  );
