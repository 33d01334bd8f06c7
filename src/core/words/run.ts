/** A bend run in words: what a step is called, what a reading means, what has changed since it began, which way the end lies off. */
import { uncapital } from './lists.ts';
import { dieSize, sectionSize } from '../job/sizes.ts';
import { shownName } from '../job/shown.ts';
import type { CheckDimension, Lies } from '../run/check-dimensions.ts';
import type { DrawnChange, DrawnDie, DrawnSection } from '../run/drawn.ts';
import type { Verdict } from '../run/judge.ts';
import type { Opened } from '../run/opened.ts';
import type { RunStep } from '../run/run.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { exactText, stepAbove } from '../units/step.ts';

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

/** When the tape measures them: `grip` is what of the blank is there for the machine alone, at end A and at end B. */
export const whenChecked = (grip: readonly [number, number]): string =>
  grip.some((length) => length > 0) ? 'with the grip sawn off, before any cope is cut' : 'before any cope is cut';

/** What the sides of a bend are called in them: a mark's start and end change places with the end in front. */
export const SIDES = 'A side: towards end A';

/** What a tape measures on the tube when it has come off the bender, as the shop calls it. */
export function checkInWords({ id, lies }: Pick<CheckDimension, 'id' | 'lies'>): string {
  switch (id) {
    case 'width':
      return SIZES[lies.along][0];
    case 'height':
      return SIZES[lies.along][1];
    case 'chord':
      return 'End to end, centre to centre';
    case 'legs-at-ends':
      return 'Leg to leg at the ends, outside';
    case 'legs-at-bends':
      return `Leg to leg, bend 1’s A side to bend ${lies.bends}’s B side, outside`;
    case 'diagonal-a':
      return `End A to bend ${lies.bends}’s B side, centre to centre`;
    case 'diagonal-b':
      return 'End B to bend 1’s A side, centre to centre';
    case 'stands-off':
      if (lies.along === 'ends') return `${LAID_FLAT}: stands off the bench by`;
      return `Flat, bend 1 to the ${lies.turns} from A: ${lies.highest === 'end-b' ? 'height of end B' : 'greatest height'}, centre to centre`;
  }
}

const LAID_FLAT = 'Flat on bend 1';

const SIZES: Readonly<Record<Lies['along'], readonly [width: string, height: string]>> = {
  leg: ['Overall, along the leg of end A', 'Overall, square to that leg'],
  ends: ['Overall width, along both ends', 'Overall height, square to that'],
  'ends-on-first-bend': [
    `${LAID_FLAT}, plumbed down: outside width along ends`,
    `${LAID_FLAT}, plumbed down: outside, square to that`,
  ],
};

/** A distance that is not shown smaller than it is. */
export const movedInWords = (mm: number, unit: LengthUnit): string => `${exactText(stepAbove(mm, unit), unit)} ${unit}`;

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

/** Of a tube whose marks follow the die's radius: what it really is, and where it is shown otherwise. `stands`: in the frame, as it came out. */
export function openedInWords({ width, wider, endMoves }: Opened, stands: boolean, unit: LengthUnit): string {
  const frame = stands
    ? 'In the frame it stands by the die’s radius, and not as it really is.'
    : 'Let it lead, and it stands in the frame by the die’s radius, not as it really is.';
  return `The marks follow the die’s radius; by what was pulled and read it opened: ${differsInWords(width, wider, unit)}, and end B lies ${movedInWords(endMoves, unit)} from where the marks have it. ${frame} Take the radius from the pulls, and what follows is right.`;
}

/** "overall width, along both ends, 17 mm more". */
export const differsInWords = (check: CheckDimension, more: number, unit: LengthUnit): string =>
  `${uncapital(checkInWords(check))}, ${movedInWords(Math.abs(more), unit)} ${more < 0 ? 'less' : 'more'}`;

/** Of a bend whose start lies elsewhere than when the tube was marked; mm, plus towards end B. */
export const markMovedInWords = (moved: number, unit: LengthUnit): string =>
  `This mark has moved ${lengthInWords(Math.abs(moved), unit)} towards end ${moved > 0 ? 'B' : 'A'} since the run began: draw it anew, where it stands here.`;

const lengthInWords = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;
