/**
 * Whether the machine can hold the tube for a bend, by the die's own limits. The end of the tube is no bar: where it is
 * short of grip the shop leaves more and cuts it off.
 */
import { toDegrees } from '../geometry/angle.ts';
import { DEGREE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import type { BendStep } from '../job/types.ts';
import type { BendableTube } from './pose.ts';

/**
 * Why it cannot, as a sentence that begins "bend 2 ..."; null where it can. `made`: the bends made before, 1 = first from
 * end A. No lengths are told: the straights stand beside it in the job's own unit.
 */
export function cannotHold(tube: BendableTube, made: ReadonlySet<number>, { bend, front }: BendStep): string | null {
  const { die, bends } = tube;
  const { angle } = bends[bend - 1]!;
  if (toDegrees(angle) > die.greatestAngle + DEGREE_ROUNDING) {
    return `turns ${toDegrees(angle).toFixed(1)}°, and ${die.name} goes to ${die.greatestAngle}°`;
  }
  const towards = { A: neighbour(made, bend, -1), B: neighbour(made, bend, 1) };
  const [ahead, behind] = front === 'A' ? [towards.A, towards.B] : [towards.B, towards.A];
  if (straightTo(tube, bend, ahead) < die.leastStraight - ROUNDING) {
    return `is too near bend ${ahead} in front for the clamp to hold it`;
  }
  if (straightTo(tube, bend, behind) < die.leastGrip - ROUNDING) {
    return `is too near bend ${behind} behind it for the follower to bear it`;
  }
  return null;
}

/** The made bend that comes next on the tube, towards end B (1) or end A (-1); null where there is none. */
function neighbour(made: ReadonlySet<number>, bend: number, step: 1 | -1): number | null {
  const beyond = [...made].filter((each) => (each - bend) * step > 0);
  return beyond.length === 0 ? null : step === 1 ? Math.min(...beyond) : Math.max(...beyond);
}

/** mm from tangent to tangent while no bend between the two is made; without limit where there is no other. */
function straightTo({ bends }: BendableTube, bend: number, next: number | null): number {
  if (next === null) return Infinity;
  const [first, second] = bend < next ? [bend, next] : [next, bend];
  return bends[second - 1]!.start - bends[first - 1]!.end;
}
