/** The foot of a tube's sheet: boxes for what is written in by hand, what to mind at the machine, who decides, which sheet it is, and the code that opens it in the page. */
import { shrunk } from '../../drawing/fit.ts';
import { FINE, SMALL, box, stroke, text } from '../../drawing/ink.ts';
import { shownName } from '../../core/job/shown.ts';
import { batchesOnce } from '../../core/job/batch.ts';
import { heatOf } from '../../core/stock/heat.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Mark } from '../../drawing/types.ts';
import { whichSheet, whoDecides } from './cautions.ts';
import type { Context } from './context.ts';
import type { Block } from './page.ts';
import { CODE, codeMarks, codeText } from './sheet-code.ts';

const HEIGHT = 20;
/** Tall enough for a pen. */
const BOX = 7;
/** What goes with a tube through the shop, each with its share of the row. */
const BOXES = [
  ['Customer', 1.5],
  ['Batch', 1],
  ['Cut by', 1],
  ['Checked by', 1.15],
] as const;
const SHARES = BOXES.reduce((sum, [, share]) => sum + share, 0);

/** Between code and words: its quiet zone. */
const QUIET = 3;

/** `which` sheet it is, and of what tubes; `code` is the revision of what stands on it; `caution` what to mind where it is made. */
export function tubeFoot(
  context: Context,
  tubes: readonly SolvedTube[],
  which: string,
  code: string,
  caution: string,
): Block {
  const { letters } = context;
  const width = context.width - CODE - QUIET;
  const mind = shrunk(letters, caution, width, SMALL);
  return {
    height: HEIGHT,
    draw: (left, top) => [
      ...boxes(context, heatsOf(context, tubes), left, top - 1.5, width),
      text(left, top - 11.8, mind.text, { size: mind.size }),
      whoDecides(context, left, top - 15.5, width),
      ...whichSheet(context, which, code)(left, top - 19.1, width),
      ...codeMarks(codeText(context, tubes), left + width + QUIET, top - (HEIGHT - CODE)),
    ],
  };
}

/** The heats that the job has the tubes cut from; '' where it says none. */
const heatsOf = ({ derived: { job } }: Context, tubes: readonly SolvedTube[]): string =>
  batchesOnce(tubes.map((tube) => ({ batch: heatOf(job, tube) ?? '' })))
    .map(shownName)
    .join(', ');

/** One row, each with its name at the left of it; the heat stands in its own where it is known. */
function boxes({ letters }: Context, batch: string, left: number, top: number, width: number): readonly Mark[] {
  let at = left;
  const inside = BOXES.flatMap(([name, share], i): readonly Mark[] => {
    const from = at;
    at += (width * share) / SHARES;
    const edge = [
      { x: from, y: top },
      { x: from, y: top - BOX },
    ];
    const named = from + 1.2 + letters.width(name, SMALL, false) + 1.5;
    const known = shrunk(letters, name === 'Batch' ? batch : '', at - named - 1, SMALL + 0.4, true);
    return [
      ...(i === 0 ? [] : [stroke(edge, FINE)]),
      text(from + 1.2, top - BOX + 2.4, name),
      text(named, top - BOX + 2.4, known.text, { size: known.size, bold: true }),
    ];
  });
  return [box(left, top, width, BOX), ...inside];
}
