/** How marks are taken in the shop and what they are called: choices, tape readings, sides, and what rounding costs. */
import { toDegrees } from '../geometry/angle.ts';
import type { Marking } from '../job/kinds/marking.ts';
import { NOTABLE_ANGLE, NOTABLE_LENGTH, type Rounding, type TapeMark, type TapeStep } from '../marks/tape.ts';
import { formatAngle } from '../units/angle.ts';
import { decimalLength, type LengthUnit } from '../units/length.ts';
import { leansOfTape, tapeReading } from '../units/tape.ts';

export const FROM: readonly { readonly value: Marking['from']; readonly label: string }[] = [
  { value: 'A', label: 'End A' },
  { value: 'B', label: 'End B' },
  { value: 'middle', label: 'Middle outwards' },
];

export const MARKED: readonly { readonly value: Marking['mark']; readonly label: string }[] = [
  { value: 'start', label: 'Start' },
  { value: 'clamp', label: 'Clamp' },
  { value: 'middle', label: 'Middle' },
  { value: 'tangents', label: 'Both tangents' },
];

/** Towards which end the bend lies from its mark: an arrow with end A on the left, as the blank is drawn, and words. */
export function sideOf({ bendLies }: TapeMark, { towards }: TapeStep): { arrow: string; words: string } {
  if (bendLies === 'either-side') return { arrow: '◂▸', words: 'half on each side' };
  const end = bendLies === 'beyond' ? towards : otherEnd(towards);
  return { arrow: end === 'A' ? '◂' : '▸', words: `towards end ${end}` };
}

const otherEnd = (end: 'A' | 'B'): 'A' | 'B' => (end === 'A' ? 'B' : 'A');

/** What the signs after the marks mean; null where none has one. */
export const leansInWords = (steps: readonly TapeStep[], unit: LengthUnit, fine: boolean): string | null =>
  steps.some(({ marks }) => marks.some(({ exact }) => tapeReading(exact, unit, fine).leans !== ''))
    ? leansOfTape(unit, fine)
    : null;

/** What has to be known before the mark is drawn; null where nothing has. */
export function troubleOf({ at, onBlank }: TapeMark): string | null {
  if (!onBlank) return 'beyond the end of the blank: it cannot be marked';
  return at < 0 ? 'on the other side of the line' : null;
}

/** How a row of marks is read: on which side of one its bend lies. */
export const sideNote = (mark: Marking['mark']): string =>
  mark === 'middle' ? 'A bend lies half on each side of its mark.' : 'A bend lies on its mark’s arrow side.';

/** What on the machine a mark is laid against, and what then lies where; `offset` is the die's clamp offset. */
export function markMeets(kind: TapeMark['kind'], offset: number, unit: LengthUnit): string {
  switch (kind) {
    case 'start':
      return 'start mark, to where the die begins to bend';
    case 'clamp': {
      const begins = `${decimalLength(Math.abs(offset), unit, unit === 'in' ? 2 : 1)}\u00a0${unit}`;
      // Which place that is differs by machine: the shop has measured its own.
      return `clamp mark, to the place on the machine that the die’s clamp offset was measured to: the bend begins ${begins} past it, away from the end in front`;
    }
    case 'middle':
      return 'middle mark, to the middle of the bend on the die';
    case 'end':
      return 'end mark, where the bend has to end';
  }
}

/** What the far end is off by when a tube is bent to its rounded marks by the scale, and that the scale goes before a second mark; null where that is too little to say. */
export function roundingInWords(rounding: Rounding, from: Marking['from'], unit: LengthUnit): string | null {
  if (!rounding.isNotable) return null;
  const length = `${decimalLength(rounding.endMoves, unit, unit === 'in' ? 3 : 1)}\u00a0${unit}`;
  const angle = formatAngle(toDegrees(rounding.angleOff), 1);
  const [out, held] = from === 'B' ? ['A', 'B'] : ['B', 'A'];
  return [
    ...(rounding.angleOff > NOTABLE_ANGLE
      ? [`Pull by the scale: from mark to mark a bend would be up to ${angle}° off.`]
      : []),
    ...(rounding.endMoves > NOTABLE_LENGTH ? [`On this tape node ${out} ends ${length} off, node ${held} held.`] : []),
  ].join(' ');
}
