/** A rehearsal in words: what is done at each step, what is touched, and which order is taken and why. */
import { listed } from '../../core/words/lists.ts';
import { toDegrees, type Radians } from '../../core/geometry/angle.ts';
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';
import { turnSentence, zeroInWords } from '../../core/words/turns.ts';
import type { Hit, Rehearsal, Trouble } from '../../core/rehearse/types.ts';
import { noOrderInWords, unheldInWords } from '../../core/words/rehearsal.ts';
import { formatAngle, onStepBelow } from '../../core/units/angle.ts';
import type { Stage } from './rehearsed.ts';
import type { Moment } from './timeline.ts';

/** As the machine's scale and the level are read: "78.6°". */
export const angleInWords = (angle: Radians): string => `${formatAngle(toDegrees(angle), 1)}°`;

/** "touches the floor at 41°"; the angle to the whole degree below, so that nobody pulls that far. */
export function hitInWords({ solid, by, angle }: Hit): string {
  const what = solid === null ? 'touches itself' : `touches ${solid}`;
  const degrees = onStepBelow(toDegrees(angle), 1);
  return `${by === 'rear' ? 'the part behind ' : ''}${what} ${degrees === 0 ? 'before it is pulled' : `at ${degrees}°`}`;
}

/** What stands in the way of a step, in words; null where nothing does. */
export function barredInWords({ hit, cannotHold }: Trouble): string | null {
  if (cannotHold !== null) return unheldInWords(cannotHold);
  return hit === null ? null : hitInWords(hit);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The way to a bend, as it is done: which end goes in front, and how the tube is turned. */
export function setUpInWords({ step, turned, turn }: Stage): string {
  if (turn === null) return `End ${step.front} in front.`;
  const flip = turned ? `Turn the tube end for end, end ${step.front} in front. ` : '';
  return `${flip}${turnSentence(turn)} ${zeroInWords(turn)}`;
}

/** What stands at a moment, short: for the slip over the machine, and spoken at the scrubber. */
export function momentInWords(stages: readonly Stage[], { step, phase, angle }: Moment): string {
  const { step: at } = stages[step]!;
  switch (phase) {
    case 'set':
      return stages[step]!.turned ? 'turned end for end' : 'fed and rolled';
    case 'bend':
      return `${angleInWords(angle)} of ${angleInWords(at.pulled)}`;
    case 'release':
      return `let go, ${angleInWords(at.net)} stands`;
  }
}

/** What is in the way at a moment, in words; null while the tube is free. */
export function troubleAt(stages: readonly Stage[], { step, phase, angle }: Moment): string | null {
  const { hit, cannotHold } = stages[step]!.step;
  if (phase !== 'bend') return null;
  return barredInWords({ cannotHold, hit: hit !== null && angle >= hit.angle - ANGLE_ROUNDING ? hit : null });
}

/** Told aloud whenever the step or what is done in it changes. */
export function tellMoment(stages: readonly Stage[], moment: Moment): string {
  const stage = stages[moment.step]!;
  const { step } = stage;
  const head = `Step ${moment.step + 1} of ${stages.length}, bend ${step.bend}`;
  const trouble = troubleAt(stages, moment);
  switch (moment.phase) {
    case 'set':
      return `${head}. ${setUpInWords(stage)}`;
    case 'bend': {
      if (trouble !== null) return `${head}: ${trouble}.`;
      if (moment.angle < step.pullTo - ANGLE_ROUNDING) return `${head}: pull to ${angleInWords(step.pullTo)}.`;
      if (step.pulled > step.pullTo)
        return `${head}: pull to ${angleInWords(step.pullTo)}, read, go on; it may come to ${angleInWords(step.pulled)}.`;
      return `${head}: pulled to ${angleInWords(step.pullTo)}.`;
    }
    case 'release':
      return `${head}: let go, ${angleInWords(step.net)} stands.`;
  }
}

export type Order = 'plain' | 'proposed';

/** The two orders are the same. */
export const isPlainProposed = ({ plain, proposed }: Rehearsal): boolean =>
  proposed !== null && proposed.every(({ bend, front }, i) => bend === plain[i]!.bend && front === plain[i]!.front);

/** "4 and 3 with end B in front, then end for end 2 and 1". */
export function orderInWords(steps: Rehearsal['plain']): string {
  const runs: { front: string; bends: number[] }[] = [];
  for (const { bend, front } of steps) {
    if (runs.at(-1)?.front === front) runs.at(-1)!.bends.push(bend);
    else runs.push({ front, bends: [bend] });
  }
  return runs
    .map(({ front, bends }, i) =>
      i === 0 ? `${listed(bends)} with end ${front} in front` : `end for end ${listed(bends)}`,
    )
    .join(', then ');
}

export interface Verdict {
  readonly tone: 'free' | 'order' | 'none';
  readonly head: string;
  readonly why: string;
}

/** What the search says of a tube, for the head of its rehearsal. */
export function verdictOf(rehearsal: Rehearsal): Verdict {
  const { plain, proposed, reason, free, all } = rehearsal;
  const first = plain.find(({ hit, cannotHold }) => hit !== null || cannotHold !== null);
  const why = reason === null ? '' : `${capital(noOrderInWords(reason))}.`;
  if (plain.length === 0) return { tone: 'none', head: 'Cannot be rehearsed', why };
  const counted =
    free === all
      ? 'Every order keeps free, whichever end is in front.'
      : `${free} of ${all} orders keep free, either end in front counted.`;
  if (first === undefined && (proposed === null || isPlainProposed(rehearsal))) {
    const head = `Free as it comes: bend after bend, end ${plain[0]!.front} in front`;
    return { tone: 'free', head, why: proposed === null ? why : counted };
  }
  if (proposed === null) {
    // With more bends than are searched nothing is known of the other orders.
    return { tone: 'none', head: all === 0 ? 'Not free as it comes' : 'No order keeps it free', why };
  }
  const trouble = first === undefined ? '' : `As it comes, bend ${first.bend} ${barredInWords(first)}. `;
  return { tone: 'order', head: `Bend ${orderInWords(proposed)}`, why: `${trouble}${counted}` };
}
