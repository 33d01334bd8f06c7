/**
 * Whether the machine can hold the tube for a bend, by the die's own limits. The end of the tube is no bar: where it is
 * short of grip the shop leaves more and cuts it off.
 */
import { toDegrees } from '../geometry/angle.ts';
import { DEGREE_ROUNDING, ROUNDING } from '../geometry/tolerance.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { BendableTube } from './bendable.ts';
import type { Unheld } from './types.ts';

/** Why it cannot; null where it can. `made`: the bends made before, 1 = first from end A. */
export function cannotHold(tube: BendableTube, made: ReadonlySet<number>, { bend, front }: BendStep): Unheld | null {
  const { die, bends } = tube;
  const { angle } = bends[bend - 1]!;
  if (toDegrees(angle) > die.greatestAngle + DEGREE_ROUNDING) {
    return { kind: 'beyond-die', angle, die: die.name, greatest: die.greatestAngle };
  }
  const towards = { A: neighbour(made, bend, -1), B: neighbour(made, bend, 1) };
  const [ahead, behind] = front === 'A' ? [towards.A, towards.B] : [towards.B, towards.A];
  if (ahead !== null && straightTo(tube, bend, ahead) < die.leastStraight - ROUNDING) {
    return { kind: 'too-near', bend: ahead, side: 'in-front' };
  }
  if (behind !== null && straightTo(tube, bend, behind) < die.leastGrip - ROUNDING) {
    return { kind: 'too-near', bend: behind, side: 'behind' };
  }
  return null;
}

/** The made bend that comes next on the tube, towards end B (1) or end A (-1); null where there is none. */
function neighbour(made: ReadonlySet<number>, bend: number, step: 1 | -1): number | null {
  const beyond = [...made].filter((each) => (each - bend) * step > 0);
  return beyond.length === 0 ? null : step === 1 ? Math.min(...beyond) : Math.max(...beyond);
}

/** mm from tangent to tangent while no bend between the two is made. */
function straightTo({ bends }: BendableTube, bend: number, next: number): number {
  const [first, second] = bend < next ? [bend, next] : [next, bend];
  return bends[second - 1]!.start - bends[first - 1]!.end;
}
