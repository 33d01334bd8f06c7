/**
 * A page at full size: what stands on every one of them, and how much room is left. Test bars across and up, because printers
 * shrink, and by different amounts in the two directions. Drawings are laid out in what they measure on the finished paper; at the
 * end the page, bars and all, is divided by what the printer makes of a length, so that a corrected print measures true.
 */
import type { Lettering } from '../../drawing/lettering.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Box2 } from '../../drawing/clip.ts';
import { moved, stretched } from '../../drawing/move.ts';
import type { Size } from '../../drawing/shelves.ts';
import { FINE, line, words } from '../../drawing/strokes.ts';
import type { Mark, Place2, Sheet } from '../../drawing/types.ts';
import type { PrintSettings } from './files.ts';

/** mm, upright. ISO 216; ANSI/ASME Y14.1. */
export const PAPERS = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;

/** Printers leave this much white at least; mm. */
const MARGIN = 8;
/** For the bars at the left and at the foot, and for the words at the head. */
const BARS = 16;
const HEAD = 24;
const FOOT = BARS + 7;
/** Of the letters, whose figures are then 2.2 mm high. */
const SIZE = 3.1;

/** The bars' true lengths, mm, and what they are called. */
export const TEST_BARS = [
  { length: 100, name: '100 mm' },
  { length: 101.6, name: '4 in' },
] as const;

/** A ratio farther from 1 is a bar measured wrong, or another bar: nobody's printer is so far off. */
const FARTHEST_OFF = 0.15;

/** What a printer makes of a length of 1, by its 100 mm bar as measured, mm, on a print without correction; null if that cannot be. */
export function printedBy(measured: number): number | null {
  const ratio = measured / TEST_BARS[0].length;
  return Math.abs(ratio - 1) <= FARTHEST_OFF ? ratio : null;
}

/** Size of the paper as the drawing sees it: what a printer that shrinks can reach of it. */
function trueSize({ paper, printed }: PrintSettings): { width: number; height: number } {
  const { width, height } = PAPERS[paper];
  return { width: width * Math.min(1, printed.x), height: height * Math.min(1, printed.y) };
}

/** Where drawings may stand on a page. */
export function spaceOn(settings: PrintSettings): Box2 {
  const { width, height } = trueSize(settings);
  return { left: MARGIN + BARS, bottom: MARGIN + FOOT, right: width - MARGIN, top: height - MARGIN - HEAD };
}

export const sizeOf = ({ left, bottom, right, top }: Box2): Size => ({ width: right - left, height: top - bottom });

export interface PageTitle {
  readonly title: string;
  /** On the right of it: "page 2 of 9". */
  readonly count: string;
}

const CHECK =
  'Print at full size: 100 %, not “fit to page”. Each pair of bars must measure 100 mm and 4 in, across and up; if not, type in what they measure and print again.';

/**
 * What makes pages: of a title, and of marks in true millimetres from the paper's lower left corner. `how` is what is done with
 * what is drawn; both it and `caution` stand on every page.
 */
export function pagesOn(
  settings: PrintSettings,
  face: Lettering,
  how: string,
  caution: string,
): (title: PageTitle, marks: readonly Mark[]) => Sheet {
  const { width, height } = trueSize(settings);
  const paper = PAPERS[settings.paper];
  const { x, y } = settings.printed;
  const top = height - MARGIN;
  const right = width - MARGIN;
  const lines = wrapped(face, `${CHECK} ${how}`, right - MARGIN, SIZE, false, 4);
  const foot = [
    ...wrapped(face, correction(settings), right - MARGIN, SIZE),
    ...wrapped(face, caution, right - MARGIN, SIZE),
  ]
    .filter((text) => text !== '')
    .slice(0, 2);
  const everywhere: Mark[] = [
    ...lines.map((text, i) => words('page', MARGIN, top - 9 - 3.9 * i, text, SIZE)),
    ...foot.map((text, i) => words('page', MARGIN, MARGIN + 0.8 + 3.7 * (foot.length - 1 - i), text, SIZE)),
    ...bars(),
  ];
  // A printer that enlarges gets a smaller drawing, in the middle of its paper.
  const [dx, dy] = [(paper.width - width / x) / 2, (paper.height - height / y) / 2];
  return ({ title, count }, marks) => {
    const heading = shrunk(face, title, right - MARGIN - face.width(count, 3.5, false) - 4, 4.2, true);
    const drawn = [
      words('page', MARGIN, top - 4.2, heading.text, heading.size, { bold: true }),
      words('page', right, top - 4.2, count, 3.5, { anchor: 'end' }),
      ...everywhere,
      ...marks,
    ];
    return { name: `${title}, ${count}`, ...paper, marks: stretched(drawn, 1 / x, 1 / y, dx, dy) };
  };
}

/** Empty where nothing is corrected. */
function correction({ printed: { x, y } }: PrintSettings): string {
  if (x === 1 && y === 1) return '';
  const share = (ratio: number): string => `${(ratio * 100).toFixed(2)} %`;
  return `Corrected for a printer that makes ${share(x)} across and ${share(y)} up. Not true yet? Measure the bars of a print without correction.`;
}

/** From one corner, to the right and up: lines that end in the middle of short strokes across. */
function bars(): Mark[] {
  const corner = { x: MARGIN + 3, y: MARGIN + 12 };
  return TEST_BARS.flatMap(({ length, name }, i) => {
    const aside = 6 * i;
    const across = bar({ x: corner.x + 10, y: corner.y + aside }, { x: 1, y: 0 }, length, name);
    const up = bar({ x: corner.x + aside, y: corner.y + 12 }, { x: 0, y: 1 }, length, name);
    return [...across, ...up];
  });
}

function bar(from: Place2, along: Place2, length: number, name: string): Mark[] {
  const at = (far: number, aside: number): Place2 => ({
    x: from.x + far * along.x - aside * along.y,
    y: from.y + far * along.y + aside * along.x,
  });
  const label = at(length / 2, 0.8);
  return [
    line('bars', [at(0, 0), at(length, 0)], FINE),
    line('bars', [at(0, -1.5), at(0, 1.5)], FINE),
    line('bars', [at(length, -1.5), at(length, 1.5)], FINE),
    words('bars', label.x, label.y, name, SIZE, { anchor: 'middle', turn: Math.atan2(along.y, along.x) }),
  ];
}

/** Marks that stand from 0, 0 upwards, put so that their upper left corner is at the room's, further right and down by so much. */
export const putIn = (space: Box2, marks: readonly Mark[], height: number, left: number, down: number): Mark[] =>
  moved(marks, space.left + left, space.top - down - height);
