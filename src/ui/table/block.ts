/** Sets a pasted block of cells into a table: what can be read becomes one change, what cannot is named cell by cell. */
import type { Job } from '../../core/job/types.ts';

export type PasteRead =
  | { readonly ok: true; readonly change: (job: Job) => Job }
  | { readonly ok: false; readonly why: string };

/** The part of a table that a paste needs to know. */
export interface PasteTarget {
  readonly rowNames: readonly string[];
  readonly headers: readonly string[];
  /** Reads a text for the cell; null where the column is only read. */
  read(row: number, column: number, text: string): PasteRead | null;
}

export interface BlockOutcome {
  /** How many cells the change sets; 0 when it leaves the job as it was. */
  readonly cells: number;
  readonly change: (job: Job) => Job;
  /** One line a cell (or a run of rows or columns beyond the table) that was not taken, and why. */
  readonly refusals: readonly string[];
}

/** `block` with its first cell at (row, column). An empty cell leaves the one under it alone. */
export function placeBlock(
  target: PasteTarget,
  row: number,
  column: number,
  block: readonly (readonly string[])[],
): BlockOutcome {
  const changes: ((job: Job) => Job)[] = [];
  const refusals: string[] = [];
  for (const [down, texts] of block.slice(0, target.rowNames.length - row).entries()) {
    for (const [right, text] of texts.slice(0, target.headers.length - column).entries()) {
      if (text === '') continue;
      const read = target.read(row + down, column + right, text);
      if (read?.ok) changes.push(read.change);
      else
        refusals.push(
          `${target.rowNames[row + down]}, ${target.headers[column + right]}: “${text}” ${read?.why ?? 'cannot be set here'}`,
        );
    }
  }
  const rowsOver = row + block.length - target.rowNames.length;
  if (rowsOver > 0) refusals.push(`${counted(rowsOver, 'row')} beyond the end of the table left out`);
  const columnsOver = column + Math.max(0, ...block.map((texts) => texts.length)) - target.headers.length;
  if (columnsOver > 0) refusals.push(`${counted(columnsOver, 'column')} beyond the last one left out`);
  return { cells: changes.length, change: (job) => changes.reduce((done, change) => change(done), job), refusals };
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
