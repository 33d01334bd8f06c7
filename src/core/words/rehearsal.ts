/** What stands in the way at the bender, and what would clear it. */
import { toDegrees } from '../geometry/angle.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { SwingMend } from '../checks/types.ts';
import type { Hit, NoOrder, Trouble, Unheld } from '../rehearse/types.ts';
import { SEARCHED_BENDS } from '../solve/bend-order.ts';
import { onStepBelow } from '../units/angle.ts';
import { listed } from './lists.ts';

/** As the rest of a sentence that begins "bend 3 ...". Whole degrees of the machine, rounded down. */
export function troubleInWords({ hit, cannotHold }: Trouble): string {
  if (cannotHold !== null) return unheldInWords(cannotHold);
  return hit === null ? 'is free' : hitInWords(hit);
}

/** The same: why the machine cannot hold the tube for it. */
export function unheldInWords(unheld: Unheld): string {
  if (unheld.kind === 'beyond-die') {
    return `turns ${toDegrees(unheld.angle).toFixed(1)}°, and ${unheld.die} goes to ${unheld.greatest}°`;
  }
  return unheld.side === 'in-front'
    ? `is too near bend ${unheld.bend} in front for the clamp to hold it`
    : `is too near bend ${unheld.bend} behind it for the follower to bear it`;
}

function hitInWords({ solid, by, angle }: Hit): string {
  const what = solid === null ? 'the tube itself' : solid;
  const degrees = onStepBelow(toDegrees(angle), 1);
  if (degrees === 0) return `finds the tube against ${what} before the machine is turned`;
  return by === 'front'
    ? `swings the leg in front of it into ${what} at ${degrees}°`
    : `draws the tube behind it into ${what} at ${degrees}°`;
}

/** Why no order is proposed, as a sentence without its capital and full stop. */
export function noOrderInWords(reason: NoOrder): string {
  switch (reason.kind) {
    case 'bends-overlap':
      return 'its bends overlap, so it cannot be made';
    case 'too-many-bends':
      return `it has ${reason.count} bends; orders are searched up to ${SEARCHED_BENDS}`;
    case 'never':
      return `bend ${reason.bend} cannot be made in any order: alone, it ${troubleInWords(reason.trouble)}`;
    case 'stuck': {
      const { made, bend, trouble } = reason;
      const before = made.length === 1 ? `bend ${made[0]} is made` : `bends ${listed(made)} are made`;
      return `no order is free to the end: once ${before}, bend ${bend} ${troubleInWords(trouble)}`;
    }
  }
}

/** What would let the tube be bent, as a sentence. */
export function swingMendInWords(mend: SwingMend): string {
  switch (mend.kind) {
    case 'raise-bender':
      return 'Raise the bender, or make it of two tubes.';
    case 'clear-room':
      return `Move ${mend.what} away, or set the bender up elsewhere.`;
    case 'corners-apart':
      return 'Move its corners further apart, or make it of two tubes.';
  }
}

/**
 * "bends 3, 2 and 1 in that order with end B in front"; where the tube is turned end for end, what follows is named
 * after it.
 */
export function orderInWords(steps: readonly BendStep[]): string {
  const runs: BendStep[][] = [];
  for (const step of steps) {
    if (runs.at(-1)?.[0]!.front === step.front) runs.at(-1)!.push(step);
    else runs.push([step]);
  }
  const named = runs.map((run) => {
    const bends = run.map(({ bend }) => bend);
    const which = bends.length === 1 ? `bend ${bends[0]}` : `bends ${listed(bends)} in that order`;
    return `${which} with end ${run[0]!.front} in front`;
  });
  return named.join(', then ');
}
