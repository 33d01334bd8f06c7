/**
 * How the rotation before a bend is set on the machine: with a digital level on the tube, or with a degree wheel round it.
 *
 * The zero is where the bend that the rotation counts from lies level in the machine, with its leg to the side that the machine bends
 * to: just as it was made, if it was made last and the tube has not been flipped. From there the tube is turned. The machine's
 * plane stands still, so for a plane that is turned right-hand about the direction away from the end in front the tube itself turns
 * the other way about it: clockwise as seen from the end behind, looking at the machine. A digital level reads 0 to 90
 * degrees, and the same again upside down.
 */
import { toDegrees, type Degrees } from '../geometry/angle.ts';
import type { Bender } from '../job/types.ts';
import { onStep } from '../units/angle.ts';
import type { TapeStep } from './tape.ts';

export interface RotationReading {
  readonly by: Bender['rotationBy'];
  /** The bend that lies level at zero, 1 = first from end A, and the side that its leg points to. */
  readonly zeroOn: number;
  readonly legTo: Bender['turns'];
  /** The zero is how the tube lies in the machine: that bend was made last, with the same end in front. */
  readonly asItLies: boolean;
  /** Rounded to what the level or the wheel shows, 0 to 180; `off` is the exact turn less that. */
  readonly turn: Degrees;
  readonly off: Degrees;
  /** As seen from the end behind, looking along the tube at the machine; null at 0 and at half a turn. */
  readonly sense: 'clockwise' | 'anticlockwise' | null;
  readonly seenFrom: 'A' | 'B';
  /** What is read there: of a wheel the turn; of a level 0 to 90. */
  readonly reads: Degrees;
  /** The level then hangs past plumb. */
  readonly pastPlumb: boolean;
}

/** For the step at `index` of a sheet; null on the first, which may lie any way. */
export function rotationReading(steps: readonly TapeStep[], index: number, bender: Bender): RotationReading | null {
  const step = steps[index]!;
  const before = steps[index - 1];
  if (step.rotationFrom === null || before === undefined) return null;
  const byLevel = bender.rotationBy === 'level';
  const fineness = byLevel ? bender.levelStep : bender.wheelStep;
  const exact = Math.abs(toDegrees(step.rotation));
  const turn = Math.min(180, onStep(exact, fineness));
  return {
    by: bender.rotationBy,
    zeroOn: step.rotationFrom,
    legTo: bender.turns,
    asItLies: before.bend === step.rotationFrom && before.front === step.front,
    turn,
    off: exact - turn,
    sense: turn === 0 || turn === 180 ? null : step.rotation > 0 ? 'clockwise' : 'anticlockwise',
    seenFrom: step.front === 'A' ? 'B' : 'A',
    reads: byLevel && turn > 90 ? 180 - turn : turn,
    pastPlumb: byLevel && turn > 90,
  };
}
