/** The code on a sheet by which the page opens at its tube: squares on paper, black on white. */
import { encodeQR } from 'qr';
import { NO_PAGE, sheetHash } from '../../core/job/sheet-address.ts';
import { revisionOf } from '../../core/solve/revision.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { box } from '../../drawing/ink.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';

/** Side, mm, without the quiet zone: four squares of white all round (ISO/IEC 18004). */
export const CODE = 18;
/** Of 37 squares a side, so that the quiet zone is no more than 2 mm; it holds so many bytes with 15 % of it soiled. */
const LEAST_VERSION = 5;
const HOLDS = 84;
/** Squares overlap by so much, mm: no white hair stays between them on screen. */
const OVERLAP = 0.02;

/** What the code on the sheet of these tubes says. */
export function codeText({ derived, address = NO_PAGE }: Context, tubes: readonly SolvedTube[]): string {
  const { job } = derived;
  const named = tubes.map((tube) => ({ id: tube.id, revision: revisionOf(job, tube) }));
  return address + sheetHash({ job: job.name, tubes: named });
}

/** Its squares, of each row those side by side in one, with the upper left corner there. */
export function codeMarks(words: string, left: number, top: number): readonly Mark[] {
  const short = new TextEncoder().encode(words).length <= HOLDS;
  // The least border that is given is one square wide.
  const rows = encodeQR(words, 'raw', { ecc: 'medium', border: 1, ...(short && { version: LEAST_VERSION }) })
    .slice(1, -1)
    .map((row) => row.slice(1, -1));
  const side = CODE / rows.length;
  return rows.flatMap((row, down) =>
    runsOf(row).map(([from, to]) =>
      box(left + from * side, top - down * side, (to - from) * side + OVERLAP, side + OVERLAP, null, 0),
    ),
  );
}

/** Where black begins and ends. */
function runsOf(row: readonly boolean[]): readonly (readonly [from: number, to: number])[] {
  const begins = row.flatMap((black, i) => (black && row[i - 1] !== true ? [i] : []));
  return begins.map((from) => {
    const length = row.slice(from).indexOf(false);
    return [from, length < 0 ? row.length : from + length];
  });
}
