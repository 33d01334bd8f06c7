/** A tube rehearsed on the bender, in words: what stands in the way and what would clear it, orders of bending, what the search for one found. */
import { toDegrees } from '../geometry/angle.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import type { SwingMend } from '../checks/swing-types.ts';
import type { Hit, MachinePart, NoOrder, Rehearsal, SolidId, Trouble, Unheld } from '../rehearse/types.ts';
import type { RotationReading } from '../run/rotation-reading.ts';
import { sameOrder, SEARCHED_BENDS } from '../solve/bend-order.ts';
import { onStepBelow } from '../units/angle.ts';
import { capital, listed } from './lists.ts';
import { END_FOR_END, turnSentence, zeroInWords } from './turns.ts';

/** What stands in the way of a bend, as the rest of a sentence that begins "bend 3 ..."; null where nothing does. */
export function barredInWords({ hit, cannotHold }: Trouble): string | null {
  if (cannotHold !== null) return unheldInWords(cannotHold);
  return hit === null ? null : hitInWords(hit);
}

/** The same, or that the bend is free. */
export const troubleInWords = (trouble: Trouble): string => barredInWords(trouble) ?? 'is free';

/** Why the machine cannot hold the tube for the bend. */
function unheldInWords(unheld: Unheld): string {
  if (unheld.kind === 'beyond-die') {
    return `turns ${toDegrees(unheld.angle).toFixed(1)}°, and ${unheld.die} goes to ${unheld.greatest}°`;
  }
  return unheld.side === 'in-front'
    ? `is too near bend ${unheld.bend} in front for the clamp to hold it`
    : `is too near bend ${unheld.bend} behind it for the follower to bear it`;
}

/** "swings into the floor at 41°"; the angle is in whole degrees, rounded down, so that nobody pulls that far. */
export function hitInWords({ solid, by, angle }: Hit): string {
  const what = solid === null ? 'the tube itself' : solidInWords(solid);
  const degrees = onStepBelow(toDegrees(angle), 1);
  if (degrees === 0) return `touches ${what} before the machine is turned`;
  return `${by === 'front' ? 'swings' : 'draws the tube behind it'} into ${what} at ${degrees}°`;
}

/** "the die's upper lip", "Bench", "a wall": a thing in the room by the name that it was given. */
export function solidInWords(solid: SolidId): string {
  if (solid.part !== 'room') return PARTS[solid.part];
  return solid.name || (solid.kind === 'plane' ? 'a wall' : 'a box');
}

const PARTS: Readonly<Record<MachinePart, string>> = {
  die: 'the die',
  'upper-lip': "the die's upper lip",
  'lower-lip': "the die's lower lip",
  clamp: 'the clamp',
  follower: 'the follower',
  column: 'the column',
  floor: 'the floor',
};

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
      return `Move ${solidInWords(mend.what)} away, or set the bender up elsewhere.`;
    case 'corners-apart':
      return 'Move its corners further apart, or make it of two tubes.';
  }
}

/**
 * "bends 3, 2 and 1 in that order with end B in front"; where the tube is turned end for end, what follows is named
 * after it.
 */
export function orderInWords(steps: readonly BendStep[]): string {
  const parts: BendStep[][] = [];
  for (const step of steps) {
    if (parts.at(-1)?.[0]!.front === step.front) parts.at(-1)!.push(step);
    else parts.push([step]);
  }
  const named = parts.map((part) => {
    const bends = part.map(({ bend }) => bend);
    const which = bends.length === 1 ? `bend ${bends[0]}` : `bends ${listed(bends)} in that order`;
    return `${which} with end ${part[0]!.front} in front`;
  });
  return named.join(', then ');
}

/** How a tube comes to a bend: which end goes in front, and how the tube is turned; `turn` is null on the first. */
export function setUpInWords({ step, turned, turn }: SetUp): string {
  if (turn === null) return `End ${step.front} in front.`;
  const flip = turned ? `${END_FOR_END}, end ${step.front} in front. ` : '';
  return `${flip}${turnSentence(turn)} ${zeroInWords(turn)}`;
}

interface SetUp {
  readonly step: BendStep;
  /** The other end is in front than at the step before. */
  readonly turned: boolean;
  readonly turn: RotationReading | null;
}

export interface SearchInWords {
  readonly tone: 'free' | 'order' | 'none';
  readonly head: string;
  readonly why: string;
}

/** What the search for an order found: whether the plain one is free, else which is to be taken, or that none is. */
export function searchInWords({ plain, proposed, reason, free, all }: Rehearsal): SearchInWords {
  const first = plain.find(({ hit, cannotHold }) => hit !== null || cannotHold !== null);
  const why = reason === null ? '' : `${capital(noOrderInWords(reason))}.`;
  if (plain.length === 0) return { tone: 'none', head: 'Cannot be rehearsed', why };
  const counted =
    free === all
      ? 'Every order keeps free, whichever end is in front.'
      : `${free} of ${all} orders keep free, either end in front counted.`;
  if (first === undefined && (proposed === null || sameOrder(plain, proposed))) {
    const head = `Free as it comes: bend after bend, end ${plain[0]!.front} in front`;
    return { tone: 'free', head, why: proposed === null ? why : counted };
  }
  if (proposed === null) {
    // With more bends than are searched nothing is known of the other orders.
    return { tone: 'none', head: all === 0 ? 'Not free as it comes' : 'No order keeps it free', why };
  }
  const trouble = first === undefined ? '' : `As it comes, bend ${first.bend} ${troubleInWords(first)}. `;
  return { tone: 'order', head: `Take ${orderInWords(proposed)}`, why: `${trouble}${counted}` };
}
