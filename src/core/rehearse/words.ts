/** What stands in the way at the bender, in plain words. */
import { toDegrees } from '../geometry/angle.ts';
import { onStepBelow } from '../units/angle.ts';
import type { BendStep } from '../job/types.ts';
import { bendsIn, bitOf, isFree, type Trouble, type TroubleOf } from './orders.ts';
import type { Hit } from './types.ts';

/** As the rest of a sentence that begins "bend 3 ...". Whole degrees of the machine, rounded down. */
export function troubleWords({ hit, cannotHold }: Pick<Trouble, 'hit' | 'cannotHold'>): string {
  return cannotHold ?? (hit === null ? 'is free' : hitWords(hit));
}

function hitWords({ solid, by, angle }: Hit): string {
  const what = solid === null ? 'the tube itself' : solid;
  const degrees = onStepBelow(toDegrees(angle), 1);
  if (degrees === 0) return `finds the tube against ${what} before the machine is turned`;
  return by === 'front'
    ? `swings the leg in front of it into ${what} at ${degrees}°`
    : `draws the tube behind it into ${what} at ${degrees}°`;
}

/**
 * Why no order is free. A bend that cannot be made even by itself is named first; else how far the search came, and what
 * stands in the way there.
 */
export function noOrderReason(count: number, trouble: TroubleOf): string {
  const stepsOf = (bend: number): readonly BendStep[] => [
    { bend, front: 'A' },
    { bend, front: 'B' },
  ];
  const all = Array.from({ length: count }, (_, i) => i + 1);
  const left = (made: number): readonly number[] => all.filter((bend) => (made & bitOf(bend)) === 0);

  const never = all.find((bend) => {
    for (let made = 0; made < 2 ** count; made++) {
      if ((made & bitOf(bend)) === 0 && stepsOf(bend).some((step) => isFree(trouble(made, step)))) return false;
    }
    return true;
  });
  if (never !== undefined) {
    return `bend ${never} cannot be made in any order: alone, it ${troubleWords(mildest(0, stepsOf(never), trouble))}`;
  }

  const reached = new Set([0]);
  let deepest = 0;
  for (const made of reached) {
    if (bendsIn(made).size > bendsIn(deepest).size) deepest = made;
    for (const bend of left(made)) {
      if (stepsOf(bend).some((step) => isFree(trouble(made, step)))) reached.add(made | bitOf(bend));
    }
  }
  const stuck = left(deepest)[0]!;
  const words = troubleWords(mildest(deepest, stepsOf(stuck), trouble));
  const made = [...bendsIn(deepest)];
  const before = made.length === 1 ? `bend ${made[0]} is made` : `bends ${listed(made)} are made`;
  return `no order is free to the end: once ${before}, bend ${stuck} ${words}`;
}

/** Of the two ends in front, the one that the machine can hold, or that gets farther round. */
function mildest(made: number, steps: readonly BendStep[], trouble: TroubleOf): Trouble {
  const reach = ({ hit, cannotHold }: Trouble): number => (cannotHold === null ? (hit?.angle ?? Infinity) : -1);
  return steps.map((step) => trouble(made, step)).reduce((best, each) => (reach(each) > reach(best) ? each : best));
}

/** "1, 3 and 4". */
export const listed = (bends: readonly number[]): string =>
  bends.length === 1 ? `${bends[0]}` : `${bends.slice(0, -1).join(', ')} and ${bends.at(-1)}`;
