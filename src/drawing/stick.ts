/**
 * A stick to scale, with what is cut from it: from the end that is squared off, each part with its number and, where there is room, its length; what the saw takes is a gap.
 * Crossed out is scrap; what is left and kept stands open, with its length. Paper and screen draw these same marks.
 */
import type { LengthUnit } from '../core/units/length.ts';
import { lengthFigure } from './figures.ts';
import { box, FINE, FIRM, onLayer, SMALL, stroke, text } from './ink.ts';
import type { Lettering } from './lettering.ts';
import type { Mark, Pen, Picture } from './types.ts';

/** mm of steel. */
export interface DrawnStick {
  readonly length: number;
  readonly squareOff: number;
  readonly kerf: number;
  /** In the order in which they are cut; `name` is short, such as a tube's number. */
  readonly parts: readonly { readonly name: string; readonly length: number }[];
  readonly left: number;
  /** Whether what is left goes back on the rack. */
  readonly isKept: boolean;
}

/** Of the bar, and of the row of lengths under it, mm on paper. */
const HIGH = 8;
const UNDER = 5;
const NUMBER = 4.6;
/** Air at both sides of words in a part. */
const AIR = 0.6;
const DASHED: Pen = { ...FINE, dash: [1.4, 1] };

/** `width`: how wide a stick of the length `longest` is drawn, mm on paper. */
export function stickDrawing(
  letters: Lettering,
  stick: DrawnStick,
  { longest, width, unit }: { readonly longest: number; readonly width: number; readonly unit: LengthUnit },
): Picture {
  const x = (mm: number): number => (mm * width) / longest;
  const top = UNDER + HIGH;
  const starts = startsOf(stick);
  const end = stick.length - stick.left;
  return {
    width,
    height: top + FIRM.width,
    marks: [
      ...scrap(x(0), x(stick.squareOff), top),
      ...stick.parts.flatMap((part, i) =>
        partMarks(letters, part, { from: x(starts[i]!), to: x(starts[i]! + part.length), top, unit }),
      ),
      ...(stick.isKept
        ? leftOver(letters, stick.left, { from: x(end), to: x(stick.length), top, unit })
        : scrap(x(end), x(stick.length), top)),
    ],
  };
}

/** Where each part begins, mm from the stick's end: the squaring cut, then what stands before it with a kerf each. */
function startsOf({ squareOff, kerf, parts }: DrawnStick): readonly number[] {
  let at = squareOff;
  return parts.map(({ length }) => {
    const start = at;
    at += length + kerf;
    return start;
  });
}

interface Span {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly unit: LengthUnit;
}

function partMarks(
  letters: Lettering,
  { name, length }: DrawnStick['parts'][number],
  { from, to, top, unit }: Span,
): Mark[] {
  const middle = (from + to) / 2;
  const fits = letters.width(name, NUMBER, true) <= to - from;
  return [
    ...onLayer('steel', box(from, top, to - from, HIGH, FINE, 1)),
    ...onLayer(
      'name',
      ...(fits
        ? [text(middle, top - HIGH / 2 - NUMBER * 0.36, name, { size: NUMBER, bold: true, anchor: 'middle' })]
        : []),
      ...lengthUnder(letters, length, { from, to, top, unit }),
    ),
  ];
}

/** Where it fits between the part's ends, so that no two lengths run together. */
function lengthUnder(letters: Lettering, length: number, { from, to, unit }: Span): Mark[] {
  const words = lengthFigure(length, unit);
  if (letters.width(words, SMALL, false) + 2 * AIR > to - from) return [];
  return [text((from + to) / 2, 0.9, words, { anchor: 'middle' })];
}

/** Crossed out; too narrow for a cross it is filled. */
function scrap(from: number, to: number, top: number): Mark[] {
  if (to - from < 2 * FINE.width) return [];
  const across = (low: number, high: number): Mark =>
    stroke([
      { x: from, y: low },
      { x: to, y: high },
    ]);
  return onLayer('scrap', box(from, top, to - from, HIGH, FINE, 1), across(top - HIGH, top), across(top, top - HIGH));
}

const leftOver = (letters: Lettering, left: number, span: Span): Mark[] =>
  onLayer('aside', box(span.from, span.top, span.to - span.from, HIGH, DASHED), ...lengthUnder(letters, left, span));
