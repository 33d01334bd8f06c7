/** What stands at the machine at a moment of a rehearsal: short over the picture and at the scrubber, in whole sentences aloud. */
import { toDegrees, type Radians } from '../../core/geometry/angle.ts';
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { barredInWords, setUpInWords } from '../../core/words/rehearsal.ts';
import type { Stage } from '../../view/rehearsal/rehearsed.ts';
import type { Moment } from '../../view/rehearsal/timeline.ts';

/** As the machine's scale and the level are read: "78.6°". */
export const angleInWords = (angle: Radians): string => `${formatAngle(toDegrees(angle), 1)}°`;

export function momentInShort(stages: readonly Stage[], { step, phase, angle }: Moment): string {
  const { step: at } = stages[step]!;
  switch (phase) {
    case 'set':
      return stages[step]!.turned ? 'turned end for end' : 'fed and rolled';
    case 'bend':
      return `${angleInWords(angle)} of ${at.pulled > at.pullTo ? 'at most ' : ''}${angleInWords(at.pulled)}`;
    case 'release':
      return `let go, ${angleInWords(at.net)} stands`;
  }
}

/** What is in the way at a moment; null while the tube is free. */
export function troubleAt(stages: readonly Stage[], { step, phase, angle }: Moment): string | null {
  const { hit, cannotHold } = stages[step]!.step;
  if (phase !== 'bend') return null;
  return barredInWords({ cannotHold, hit: hit !== null && angle >= hit.angle - ANGLE_ROUNDING ? hit : null });
}

/** Said aloud whenever the step or what is done in it changes. */
export function momentAloud(stages: readonly Stage[], moment: Moment): string {
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
