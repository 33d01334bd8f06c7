/** Why no order of bending keeps clear. */
import type { BendStep } from '../job/kinds/bent.ts';
import { bendsIn, bitOf, isFree, type TroubleOf } from './orders.ts';
import type { NoOrder, Trouble } from './types.ts';

/**
 * Why no order is free. A bend that cannot be made even by itself is named first; else how far the search came, and what
 * stands in the way there.
 */
export function noOrderReason(count: number, trouble: TroubleOf): NoOrder {
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
    return { kind: 'never', bend: never, trouble: mildest(0, stepsOf(never), trouble) };
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
  return {
    kind: 'stuck',
    made: [...bendsIn(deepest)],
    bend: stuck,
    trouble: mildest(deepest, stepsOf(stuck), trouble),
  };
}

/** Of the two ends in front, the one that the machine can hold, or that gets farther round. */
function mildest(made: number, steps: readonly BendStep[], trouble: TroubleOf): Trouble {
  const reach = ({ hit, cannotHold }: Trouble): number => (cannotHold === null ? (hit?.angle ?? Infinity) : -1);
  return steps.map((step) => trouble(made, step)).reduce((best, each) => (reach(each) > reach(best) ? each : best));
}
