/** Both ends side by side: what each is cut to, and cut by cut what the notcher is set to. */
import { deepSide, longSide, type EndMark } from '../../core/cope/end-mark.ts';
import { notchingOf } from '../../core/cope/notching.ts';
import { capital } from '../../core/words/lists.ts';
import { plateOffSquare } from '../../core/cope/end-cut.ts';
import { scribedInWords } from '../../core/words/turns.ts';
import type { Radians } from '../../core/geometry/angle.ts';
import { lineInWords, longSideOf, lookInWords, markInWords, offsetInWords, ROUND } from '../../core/words/cope-mark.ts';
import { endInWords, numbered, placesInWords } from '../../core/words/ends.ts';
import { benchSawInWords, leftLongInWords } from '../../core/words/notching.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';

import { endNodeName } from '../../core/solve/names.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import type { Mark } from '../../drawing/types.ts';
import { END_WIDTH, endPicture } from '../../drawing/end-on/cope.ts';
import type { Context } from './context.ts';
import { angleFigure, roundFigure } from '../../drawing/figures.ts';
import { box, FINE, FIRM, LENGTH, MAIN, PLAIN, SMALL, text } from '../../drawing/ink.ts';
import { abreast, drawn, gap, paragraph, rule, stacked, type Block, type Part } from './page.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import { cells } from './cells.ts';
import { cutBlocks } from './recipe.ts';

const BETWEEN = 6;
/** Both columns up to this height stay in one piece, mm. */
const WHOLE = 200;

/**
 * One row that says what the ends are, then a row for each pair of cuts, so that a cluster of many goes on to the next page.
 */
export function endsPart(context: Context, tube: SolvedTube, order: readonly BendStep[]): Part {
  const width = (context.width - BETWEEN) / 2;
  const side = (which: 0 | 1): Side => ({
    head: endHead(context, tube, order, which, width),
    cuts: cutsOf(context, tube, which, width),
  });
  const [a, b] = [side(0), side(1)];
  const pair = (one: Block, other: Block): Block =>
    abreast({ left: 0, block: one }, { left: width + BETWEEN, block: other });
  const first = ({ head, cuts }: Side): Block => stacked(head, ...cuts.slice(0, 1));
  const [left, right] = [first(a), first(b)];
  const more = Array.from({ length: Math.max(a.cuts.length, b.cuts.length, 1) - 1 }, (_, i) =>
    pair(a.cuts[i + 1] ?? gap(0), b.cuts[i + 1] ?? gap(0)),
  );
  // Each end in its own column as long as a page holds them; else cut by cut, so that a page can be turned between two.
  const [all, others] = [stacked(a.head, ...a.cuts), stacked(b.head, ...b.cuts)];
  const rows = Math.max(all.height, others.height) < WHOLE ? [pair(all, others)] : [pair(left, right), ...more];
  return { heading: null, rows: [...rows, gap(1)] };
}

function cutsOf(context: Context, tube: SolvedTube, which: 0 | 1, width: number): readonly Block[] {
  const notching = notchingOf(tube.ends[which], context.derived.job.tools);
  return notching === null ? [] : cutBlocks(context, tube, which, notching, width);
}

interface Side {
  readonly head: Block;
  readonly cuts: readonly Block[];
}

function endHead(context: Context, tube: SolvedTube, order: readonly BendStep[], which: 0 | 1, width: number): Block {
  const { derived, letters, unit } = context;
  const end = tube.ends[which];
  const lines = wrapped(letters, capital(endInWords(derived, end, numbered)), width - 12, PLAIN, true, 4);
  const node = shrunk(letters, `Node: ${endNodeName(derived.job, end.node)}`, width - 12, SMALL);
  const title: Block = {
    height: Math.max(9, lines.length * PLAIN * 1.3 + 4.2) + 0.6,
    draw: (left, top) => [
      box(left, top, 9, 9, null, 0),
      text(left + 4.5, top - 6.7, which === 0 ? 'A' : 'B', { size: 6.4, bold: true, anchor: 'middle', grey: 1 }),
      ...lines.map((line, i) => text(left + 12, top - 3.8 - i * PLAIN * 1.3, line, { size: PLAIN, bold: true })),
      text(left + 12, top - 8.2 - (lines.length - 1) * PLAIN * 1.3, node.text, { size: node.size }),
    ],
  };
  const places = placesInWords(end, unit) ?? 'Nothing cuts this end.';
  const turned = end.cuts.length > 0 || (end.plateNormal !== null && plateOffSquare(end) > ANGLE_ROUNDING);
  const long = leftLongInWords(tube, which, unit);
  const scribed = scribedInWords(tube, order, which, unit);
  const said = [
    lineInWords(tube, which),
    ...(isLookedAt(tube, which) || scribed !== null ? [lookInWords(which)] : []),
    ...(scribed === null ? [] : [scribed]),
  ];
  return stacked(
    rule(width, FIRM),
    title,
    ...(long === null ? [] : [paragraph(letters, long, width, { size: LENGTH, bold: true, after: 0.6 })]),
    ...(turned ? [paragraph(letters, said.join(' '), width, { size: PLAIN, after: 1 })] : [gap(1)]),
    ...(end.fit === 'cope' ? [] : [paragraph(letters, places, width, { after: 0.8 })]),
    ...(end.plateNormal !== null ? [plateBlock(context, tube, which, width)] : []),
  );
}

/** Whether any mark of the end is put clockwise or anticlockwise of its line, or a tube passes on one side. */
function isLookedAt(tube: SolvedTube, which: 0 | 1): boolean {
  const { cuts, plateNormal } = tube.ends[which];
  if (plateNormal !== null) return true;
  const onLine = (mark: EndMark): boolean => ['on the line', 'opposite the line'].includes(markInWords(mark));
  return cuts.some((cut) => !onLine(deepSide(tube, cut)) || offsetInWords(cut) !== null);
}

function plateBlock(context: Context, tube: SolvedTube, which: 0 | 1, width: number): Block {
  const { derived, letters } = context;
  const long = longSide(tube, which);
  if (long === null) return paragraph(letters, 'Square to the tube: saw set over 0.0°.', width, { size: PLAIN });
  const over = plateOffSquare(tube.ends[which]);
  const bench = benchSawInWords(over, derived.job.tools);
  const space = width - END_WIDTH - 2;
  const set: Block = {
    height: 12,
    draw: (left, top) => angleBox(letters, left, top, space, 'Saw set over, off square', over, true),
  };
  const marked = cells(context, space, markCells(context, longSideOf(tube), long));
  const wrap = bench === null ? [] : [paragraph(letters, bench, space, { size: PLAIN, bold: true })];
  return besidePicture(long, tube, stacked(set, marked, ...wrap));
}

/** The end as one looks at it, on the left of what is said of it. */
function besidePicture(mark: EndMark, tube: SolvedTube, block: Block): Block {
  const picture = drawn(endPicture(mark, tube.bends.length > 0));
  return abreast({ left: 0, block: picture }, { left: END_WIDTH + 2, block });
}

const markCells = ({ unit }: Context, what: string, mark: EndMark): [string, string][] => [
  [what, markInWords(mark)],
  [ROUND, roundFigure(mark.round, unit)],
];

function angleBox(
  letters: Context['letters'],
  left: number,
  top: number,
  width: number,
  name: string,
  angle: Radians,
  isSet: boolean,
): Mark[] {
  const head = shrunk(letters, name, width - 3, SMALL);
  return [
    box(left, top - 0.5, width, 11, isSet ? FIRM : FINE),
    text(left + 1.5, top - 3.9, head.text, { size: head.size }),
    text(left + 1.5, top - 10.2, angleFigure(angle), { size: MAIN, bold: isSet }),
  ];
}
