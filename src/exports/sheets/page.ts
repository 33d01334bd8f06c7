/**
 * Pages filled from the top with parts that know their own height; what does not fit goes on to the next page, under the
 * same heading. So nothing is cut off, however long a name or a list is.
 */
import { moved } from '../../drawing/move.ts';
import type { Mark, Pen, Picture, Sheet } from '../../drawing/types.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Lettering } from '../../drawing/lettering.ts';
import type { PrintSettings } from '../shared/files.ts';
import { PAPERS } from '../shared/paper.ts';
import { SMALL, stroke, text } from '../../drawing/ink.ts';
import { ROUNDING } from '../../core/geometry/tolerance.ts';

/** A piece of a page as wide as its column; drawn with its upper left corner at (left, top). */
export interface Block {
  readonly height: number;
  readonly draw: (left: number, top: number) => readonly Mark[];
}

/** Rows that belong together; `heading` stands over the first, and over the first of each further page. */
export interface Part {
  /** Stands once, over the heading of the first row: no page ends with it. */
  readonly opening?: Block;
  readonly heading: Block | null;
  readonly rows: readonly Block[];
}

export interface Paper {
  readonly width: number;
  readonly height: number;
}

/** What no printer prints on, and a hole punch needs, mm. */
export const MARGIN = 10;

export const paperOf = ({ paper }: PrintSettings): Paper => PAPERS[paper];

export const contentWidth = (paper: Paper): number => paper.width - 2 * MARGIN;

/** Below the foot: printers reach so far down, and nobody punches holes there, mm. */
export const BOTTOM = 8;

/** Between the margins above and below. */
export const contentHeight = (paper: Paper): number => paper.height - MARGIN - BOTTOM;

/** Of all parts one under another, with their headings. */
export const heightOf = (parts: readonly Part[]): number =>
  parts.reduce(
    (sum, { heading, rows }) =>
      sum + (rows.length > 0 ? (heading?.height ?? 0) : 0) + rows.reduce((all, { height }) => all + height, 0),
    0,
  );

export const part = (...rows: readonly Block[]): Part => ({ heading: null, rows });

/** Pages of the parts in turn. `again` heads every page but the first; `foot` stands at the bottom of each. */
export function fillPages(paper: Paper, name: string, parts: readonly Part[], again: Block, foot: Block): Sheet[] {
  const floor = BOTTOM + foot.height;
  const sheets: Sheet[] = [];
  let marks: Mark[] = [];
  let top = paper.height - MARGIN;
  const put = (block: Block): void => {
    marks.push(...block.draw(MARGIN, top));
    top -= block.height;
  };
  const turnPage = (): void => {
    marks.push(...foot.draw(MARGIN, floor));
    const suffix = sheets.length === 0 ? '' : `, sheet ${sheets.length + 1}`;
    sheets.push({ name: name + suffix, width: paper.width, height: paper.height, marks });
    marks = [];
    top = paper.height - MARGIN;
  };
  for (const { opening, heading, rows } of parts) {
    rows.forEach((row, i) => {
      const needs = row.height + (i === 0 ? (opening?.height ?? 0) + (heading?.height ?? 0) : 0);
      const turns = top - needs < floor - ROUNDING && marks.length > 0;
      if (turns) {
        turnPage();
        put(again);
      }
      if (opening !== undefined && i === 0) put(opening);
      if (heading !== null && (i === 0 || turns)) put(heading);
      put(row);
    });
  }
  turnPage();
  return sheets;
}

/** Lines of a paragraph, unless said: with names of any length in it, it stays much shorter than a page. */
const MOST_LINES = 14;

/** Text over the width of the column. */
export function paragraph(
  letters: Lettering,
  words: string,
  width: number,
  setting: { readonly size?: number; readonly bold?: boolean; readonly after?: number; readonly most?: number } = {},
): Block {
  const { size = SMALL, bold = false, after = 1, most = MOST_LINES } = setting;
  const pitch = size * 1.22;
  const lines = wrapped(letters, words, width, size, bold, most);
  return {
    height: lines.length * pitch + after,
    draw: (left, top) => lines.map((line, i) => text(left, top - size * 0.95 - i * pitch, line, { size, bold })),
  };
}

/** A picture as a piece of the page. */
export const drawn = ({ height, marks }: Picture): Block => ({
  height,
  draw: (left, top) => moved(marks, left, top - height),
});

export const gap = (height: number): Block => ({ height, draw: () => [] });

/** A line over the whole width, with a little room under it. */
export const rule = (width: number, pen: Pen): Block => ({
  height: 1.2,
  draw: (left, top) => [
    stroke(
      [
        { x: left, y: top },
        { x: left + width, y: top },
      ],
      pen,
    ),
  ],
});

/** Blocks one under another as one, which no page break parts. */
export const stacked = (...blocks: readonly Block[]): Block => ({
  height: blocks.reduce((sum, block) => sum + block.height, 0),
  draw: (left, top) => {
    let at = top;
    return blocks.flatMap((block) => {
      const marks = block.draw(left, at);
      at -= block.height;
      return marks;
    });
  },
});

/** Blocks side by side, each moved right by its `left`. */
export const abreast = (...columns: readonly { readonly left: number; readonly block: Block }[]): Block => ({
  height: Math.max(0, ...columns.map(({ block }) => block.height)),
  draw: (left, top) => columns.flatMap((column) => column.block.draw(left + column.left, top)),
});
