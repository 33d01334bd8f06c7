/** Where one is in a bend run: its stops on the strip, what they and the keys between them are called, and what is said aloud there. */
import { toDegrees } from '../../core/geometry/angle.ts';
import { START_AT } from '../../core/words/pulls.ts';
import type { PullAdvice } from '../../core/springback/pull-advice.ts';
import type { RunStep } from '../../core/run/run.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { titleOf, verdictInWords } from '../../core/words/run.ts';
import { onScale, turnSentence } from '../../core/words/turns.ts';

/** Where one can be on the strip: a step, or the three steps of one bend. */
export interface Stop {
  readonly label: string;
  /** The label for those who do not see the strip. */
  readonly name: string;
  readonly steps: readonly RunStep[];
}

export function stopsOf(steps: readonly RunStep[]): readonly Stop[] {
  const stops: { label: string; name: string; steps: RunStep[] }[] = [];
  for (const step of steps) {
    const label = LABELS[step.kind] ?? ('bend' in step ? String(step.bend) : '');
    const last = stops.at(-1);
    if (last?.label === label) last.steps.push(step);
    else stops.push({ label, name: 'bend' in step ? `Bend ${step.bend}` : label, steps: [step] });
  }
  return stops;
}

const LABELS: Partial<Record<RunStep['kind'], string>> = { cut: 'Cut', mark: 'Mark', check: 'Check' };

/** What a step is called within its stop. */
export const STEP_NAMES: Readonly<Record<RunStep['kind'], string>> = {
  cut: 'Cut',
  mark: 'Mark',
  clamp: 'Clamp',
  pull: 'Pull',
  read: 'Read',
  check: 'Check',
};

/** Where a key leads that leads on. */
export function onTo(next: RunStep | undefined): string {
  if (next === undefined) return 'On to the end';
  if (next.kind === 'check') return 'On to the check';
  return 'bend' in next ? `On to bend ${next.bend}` : `On: ${titleOf(next).toLowerCase()}`;
}

const PULL_SPOKEN: Readonly<Record<PullAdvice['kind'], (degrees: string) => string>> = {
  law: (degrees) => `To ${degrees} degrees.`,
  first: (degrees) => `To ${degrees} degrees first, then let go and read.`,
  estimate: (degrees) => `${START_AT} ${degrees} degrees, then let go and read.`,
};

/** The figure that the step is about, for those who hear it. */
export function spokenOf(step: RunStep, unit: LengthUnit): string {
  switch (step.kind) {
    case 'cut':
      return `${formatLength(step.blank, unit).text} ${unit}.`;
    case 'mark':
      return `${step.tape.steps.length} bends from one zero.`;
    case 'clamp':
      return step.rotation === null ? '' : turnSentence(step.rotation);
    case 'pull':
      return PULL_SPOKEN[step.advice.kind](onScale(step.advice.pullTo));
    case 'read':
      return step.verdict === null
        ? `Asked for: ${onScale(toDegrees(step.target))} degrees.`
        : verdictInWords(step.verdict, unit).title;
    case 'check':
      return `${step.checks.length} dimensions for the tape.`;
  }
}
