/** Lists on paper: rows under named columns, cells on as many lines as they need, and boxes to tick. */
import { wrapped } from '../../drawing/fit.ts';
import { box, FINE, FIRM, HAIR, SMALL, stroke, text } from '../../drawing/ink.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';
import type { Block, Part } from './page.ts';

export interface Column {
  readonly name: string;
  /** Of the width. */
  readonly share: number;
  /** Figures: against its right edge. */
  readonly figures?: true;
  readonly bold?: true;
  /** A box to tick, and no words. */
  readonly tick?: true;
  /** A box to write in; what is known stands in it. */
  readonly room?: true;
}

const LINE = 4.1;
const AIR = 1.6;
const TICK = 4.4;
/** A pen wants so much. */
const ROOM = 6.4;
/** Between columns. */
const BETWEEN = 3;
const MOST_LINES = 14;

/** The rows, under the columns' names at the head of each page that they come onto; a row has a cell for each column that is no box. */
export function table(context: Context, columns: readonly Column[], rows: readonly (readonly string[])[]): Part {
  const placed = placedIn(columns, context.width);
  return { heading: heading(context, placed), rows: rows.map((row) => rowOf(context, placed, row)) };
}

interface Placed extends Column {
  readonly from: number;
  readonly to: number;
}

function placedIn(columns: readonly Column[], width: number): readonly Placed[] {
  let from = 0;
  return columns.map((column) => {
    const start = from;
    from += column.share * width;
    return { ...column, from: start, to: from - BETWEEN };
  });
}

function heading({ letters, width }: Context, placed: readonly Placed[]): Block {
  const names = placed.map(({ name, from, to }) => wrapped(letters, name, to - from + BETWEEN - 0.6, SMALL, true, 2));
  const lines = Math.max(...names.map(({ length }) => length));
  const height = lines * LINE + 2.4;
  return {
    height,
    draw: (left, top) => [
      ...placed.flatMap((column, i) =>
        names[i]!.map((name, k) =>
          lettered(column, left, top - 3.4 - (lines - names[i]!.length + k) * LINE, name, true),
        ),
      ),
      stroke(
        [
          { x: left, y: top - height + 1 },
          { x: left + width, y: top - height + 1 },
        ],
        FIRM,
      ),
    ],
  };
}

function lettered({ from, to, figures, tick }: Placed, left: number, y: number, words: string, bold: boolean): Mark {
  if (tick === true) return text(left + (from + to) / 2, y, words, { bold, anchor: 'middle' });
  return text(left + (figures === true ? to : from), y, words, { bold, anchor: figures === true ? 'end' : 'start' });
}

function rowOf({ letters, width }: Context, placed: readonly Placed[], row: readonly string[]): Block {
  const worded = placed.filter(({ tick }) => tick !== true);
  const cells = worded.map((column, i) => ({
    column,
    lines: wrapped(letters, row[i]!, column.to - column.from, SMALL, column.bold === true, MOST_LINES),
  }));
  const ticks = placed.filter(({ tick }) => tick === true);
  const most = Math.max(...cells.map(({ lines }) => lines.length));
  const rooms = placed.filter(({ room }) => room === true);
  const height = Math.max(most * LINE, ticks.length > 0 ? TICK : 0, rooms.length > 0 ? ROOM : 0) + AIR;
  return {
    height,
    draw: (left, top) => [
      ...cells.flatMap(({ column, lines }) =>
        lines.map((line, k) => lettered(column, left, top - 3.7 - k * LINE, line, column.bold === true)),
      ),
      ...rooms.map(({ from, to }) => box(left + from - BETWEEN / 2, top - 0.5, to - from + BETWEEN, ROOM, FINE)),
      ...ticks.map(({ from, to }) => box(left + (from + to) / 2 - TICK / 2, top - 0.7, TICK, TICK, FINE)),
      stroke(
        [
          { x: left, y: top - height + 0.1 },
          { x: left + width, y: top - height + 0.1 },
        ],
        HAIR,
      ),
    ],
  };
}
