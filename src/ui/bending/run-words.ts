/** A bend run in the words of the shop: its stops, what each step asks for, what a reading means, what has changed since. */
import { shownName } from '../../core/job/shown.ts';
import { toDegrees } from '../../core/geometry/angle.ts';
import { dieSize, sectionSize } from '../../core/job/sizes.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import type { Verdict } from '../../core/run/judge.ts';
import type { DrawnChange, DrawnDie, DrawnSection } from '../../core/run/drawn.ts';
import type { RunStep } from '../../core/run/run.ts';
import type { TapeMark } from '../../core/marks/tape.ts';
import { onScale, turnSentence } from '../../core/words/turns.ts';
import { formatAngle } from '../../core/units/angle.ts';
import { formatLength, type LengthUnit } from '../../core/units/length.ts';
import { exactText, stepAbove } from '../../core/units/step.ts';

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

/** The heading of a step. */
export function titleOf(step: RunStep): string {
  switch (step.kind) {
    case 'cut':
      return 'Cut the blank';
    case 'mark':
      return 'Mark the bends';
    case 'clamp':
      return `Bend ${step.bend}: clamp`;
    case 'pull':
      return `Bend ${step.bend}: pull`;
    case 'read':
      return `Bend ${step.bend}: let go and read`;
    case 'check':
      return 'Check the tube';
  }
}

/** Where a key leads that leads on. */
export function onTo(next: RunStep | undefined): string {
  if (next === undefined) return 'On to the end';
  if (next.kind === 'check') return 'On to the check';
  return 'bend' in next ? `On to bend ${next.bend}` : `On: ${titleOf(next).toLowerCase()}`;
}

/** The figure that the step is about, for those who hear it. */
export function spokenOf(step: RunStep, unit: LengthUnit): string {
  switch (step.kind) {
    case 'cut':
      return `${lengthInWords(step.blank, unit)}.`;
    case 'mark':
      return `${step.sheet.steps.length} bends from one zero.`;
    case 'clamp':
      return step.rotation === null ? '' : turnSentence(step.rotation);
    case 'pull':
      return step.advice.kind === 'first'
        ? `To ${plain(step.advice.pullTo)} degrees first, then let go and read.`
        : `To ${plain(step.advice.pullTo)} degrees.`;
    case 'read':
      return step.verdict === null
        ? `Asked for: ${plain(toDegrees(step.target))} degrees.`
        : verdictInWords(step.verdict, unit).title;
    case 'check':
      return `${step.checks.length} dimensions for the tape.`;
  }
}

export interface VerdictWords {
  readonly title: string;
  readonly words: string;
}

/** `kept`: the bend is left as it is. */
export function verdictInWords(verdict: Verdict, unit: LengthUnit, kept = false): VerdictWords {
  switch (verdict.kind) {
    case 'within': {
      const off = formatAngle(Math.abs(verdict.off), 1);
      const apart =
        Number(off) === 0 ? 'What was asked for' : `${off}° ${verdict.off > 0 ? 'more' : 'less'} than asked for`;
      return { title: 'Good', words: `${apart}.` };
    }
    case 'short':
      return {
        title: `Short by ${formatAngle(verdict.by, 1)}°`,
        words: kept ? 'Left as it is.' : 'Do not move the tube: clamp it as it lies, pull on, let go and read again.',
      };
    case 'over':
      return {
        title: `Bent too far, by ${formatAngle(verdict.by, 1)}°`,
        words: `${kept ? 'Left as it is, it' : 'The bender cannot open it. Left as it is, it'} takes end B ${movedInWords(verdict.endMoves, unit)} from its place.`,
      };
    case 'impossible':
      return {
        title: 'This cannot be',
        words: `${CANNOT_BE[verdict.opened]} ${kept ? 'Left as it is.' : 'Read both again.'}`,
      };
  }
}

const CANNOT_BE: Readonly<Record<Extract<Verdict, { kind: 'impossible' }>['opened'], string>> = {
  'to-more': 'It reads more than it was pulled to, and a bend opens when it is let go.',
  'by-too-much': 'No steel springs back by so much of its bend.',
};

/** A distance that is not shown smaller than it is. */
const movedInWords = (mm: number, unit: LengthUnit): string => `${exactText(stepAbove(mm, unit), unit)} ${unit}`;

/** What a mark is laid against. */
export const MARK_MEETS: Readonly<Record<TapeMark['kind'], string>> = {
  start: 'start mark, to where the die begins to bend',
  clamp: 'clamp mark, to the edge of the clamp',
  middle: 'middle mark, to the middle of the bend on the die',
  end: 'end mark, where the bend has to end',
};

/** What the tube is drawn as now, beside what it was when the run began. */
export function changeInWords(change: DrawnChange, unit: LengthUnit): string {
  switch (change.what) {
    case 'bends':
      return `It had ${bendsInWords(change.was)}, now it has ${change.now}.`;
    case 'leg':
      return `Leg ${change.index} was ${lengthInWords(change.was, unit)}, now it is ${lengthInWords(change.now, unit)}.`;
    case 'angle':
      return `Bend ${change.index} was ${formatAngle(change.was, 1)}°, now it is ${formatAngle(change.now, 1)}°.`;
    case 'rotation':
      return `The rotation before bend ${change.index} was ${formatAngle(change.was, 1)}°, now it is ${formatAngle(change.now, 1)}°.`;
    case 'die': {
      const [was, now] = [dieInWords(change.was, unit), dieInWords(change.now, unit)];
      if (was !== now) return `The die was ${was}, now it is ${now}.`;
      const [before, after] = [change.was, change.now].map((die) => lengthInWords(die.clampOffset, unit));
      return before === after
        ? `The die is another one, ${now} too.`
        : `The die’s clamp offset was ${before}, now it is ${after}.`;
    }
    case 'section': {
      const [was, now] = [tubeInWords(change.was, unit), tubeInWords(change.now, unit)];
      return was === now ? `The section is another one, ${now} too.` : `The section was ${was}, now it is ${now}.`;
    }
  }
}

/** Of a blank that was cut before the drawing changed; `lacks` in mm, negative where it is too long. */
export const blankInWords = (lacks: number, unit: LengthUnit): string =>
  lacks > 0
    ? `The blank that is cut is ${lengthInWords(lacks, unit)} too short for it.`
    : `The blank that is cut is ${lengthInWords(-lacks, unit)} longer than it needs.`;

/** Its name, and its size where the name does not say it. */
function withSize(called: string, size: string): string {
  const name = shownName(called);
  return name.includes(size) ? name : `${name} · ${size}`;
}
const dieInWords = (die: DrawnDie, unit: LengthUnit): string => withSize(die.name, dieSize(die, unit));
const tubeInWords = (section: DrawnSection, unit: LengthUnit): string =>
  withSize(section.name, sectionSize(section, unit));

export const bendsInWords = (count: number): string => `${count} ${count === 1 ? 'bend' : 'bends'}`;

/** The bends whose rotation or straight, from the bend before on the tube, can be measured once this one is made. */
export function measurableAt(bend: number, made: readonly number[]): readonly number[] {
  const has = new Set(made);
  return [bend, bend + 1].filter((each) => has.has(each) && has.has(each - 1));
}

/** Which way end B lies off, in the car's directions; what does not show on the tape is left out. */
export function wayInWords(from: readonly number[], to: readonly number[], unit: LengthUnit): string {
  const parts = WAYS.flatMap(([plus, minus], axis) => {
    const by = to[axis]! - from[axis]!;
    const shown = formatLength(Math.abs(by), unit);
    return Number(shown.text) === 0 ? [] : [`${shown.text} ${unit} ${by > 0 ? plus : minus}`];
  });
  return parts.join(', ');
}

const WAYS = [
  ['forward', 'back'],
  ['left', 'right'],
  ['up', 'down'],
] as const;

/** As 2026-03-02, where the shop is. */
export const dayOf = (date: Date): string =>
  [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((part) => String(part).padStart(2, '0')).join('-');

/** An angle on a scale: no more digits than it has. */
export const plain = onScale;

const lengthInWords = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;

/** "Bends 1, 2 with end A in front; then 4, 3 with end B in front": the tube is flipped where the end changes. */
export function orderInWords(order: readonly BendStep[]): string {
  const turns: { front: string; bends: number[] }[] = [];
  for (const { bend, front } of order) {
    const last = turns.at(-1);
    if (last?.front === front) last.bends.push(bend);
    else turns.push({ front, bends: [bend] });
  }
  const parts = turns.map(({ front, bends }) => `${bends.join(', ')} with end ${front} in front`);
  return parts.length === 0 ? '' : `${order.length === 1 ? 'Bend' : 'Bends'} ${parts.join('; then ')}`;
}

/** Of a bend whose start lies elsewhere than when the tube was marked; mm, plus towards end B. */
export const markMovedInWords = (moved: number, unit: LengthUnit): string =>
  `This mark has moved ${lengthInWords(Math.abs(moved), unit)} towards end ${moved > 0 ? 'B' : 'A'} since the run began: draw it anew, where it stands here.`;
