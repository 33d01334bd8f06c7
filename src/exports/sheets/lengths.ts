/** The lengths that shops cut by, and what a tape can verify on the finished bends, with boxes for what it read. */
import { cutLengths } from '../../core/cope/end-cut.ts';
import { sawnTube } from '../../core/run/sawn-tube.ts';
import { LENGTH_NAMES } from '../../core/words/blank.ts';
import { checkInWords, SIDES, whenChecked } from '../../core/words/run.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { bentViews, letteredChecks, type Lettered } from '../../drawing/bent/bent-views.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Mark } from '../../drawing/types.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from './context.ts';
import { cells } from './cells.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { box, FIRM, LENGTH, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import { abreast, drawn, gap, paragraph, stacked, type Block, type Part } from './page.ts';

const ROW = 5.8;
const LINE = 3.6;
const BOX = 17;
const BOX_HIGH = 5.3;
const BETWEEN = 3;
/** For a dimension's letter. */
const NAME = 4;
/** Width of the bent tube's picture, and how high it may be where the list is shorter: in one view, and in two. */
const PICTURE = 60;
const IN_ONE = 34;
const IN_TWO = 52;

/** The same in a line, for a straight tube: along it and from corner to corner are one. */
export function lengthLine({ letters, unit }: Context, tube: SolvedTube, width: number): Block {
  const { tips, throats, axis } = cutLengths(tube);
  const shown = [
    [LENGTH_NAMES.tips, tips],
    [LENGTH_NAMES.throats, throats],
    [LENGTH_NAMES.axis, axis],
  ] as const;
  return paragraph(letters, shown.map(([name, mm]) => `${name} ${lengthInWords(mm, unit)}`).join(' · '), width, {
    after: 0.5,
  });
}

export function lengthCells(context: Context, tube: SolvedTube, width: number): Block {
  const { unit } = context;
  const { tips, throats, axis } = cutLengths(tube);
  return cells(context, width, [
    [LENGTH_NAMES.tips, lengthFigure(tips, unit)],
    [LENGTH_NAMES.throats, lengthFigure(throats, unit)],
    [LENGTH_NAMES.axis, lengthFigure(axis, unit)],
    [LENGTH_NAMES.corners, lengthFigure(tube.sharpCornerLength, unit)],
  ]);
}

/**
 * The bent tube with its dimensions, and beside it the list: a letter joins the two. Empty for a straight tube. What was measured already stands
 * in its box.
 */
export function checksPart(context: Context, tube: SolvedTube): Part {
  const { width, letters, derived } = context;
  const form = sawnTube(tube);
  const lettered = letteredChecks(form);
  if (lettered.length === 0) return { heading: null, rows: [] };
  const list = stacked(...lettered.map((each) => checkRow(context, tube, each, width - PICTURE - BETWEEN)));
  const least = lettered[0]!.check.lies.along === 'ends-on-first-bend' ? IN_TWO : IN_ONE;
  const picture = bentViews(letters, form, { width: PICTURE, height: Math.max(least, list.height) });
  const heading: Block = {
    height: 5.8,
    draw: (left, top) => [
      text(
        left,
        top - 3.7,
        `Check after bending, ${whenChecked(feedOf(derived.job, tube).grip)}; boxes: as measured${lettered.length > 3 ? `. ${SIDES}.` : ''}`,
        { bold: true },
      ),
      stroke(
        [
          { x: left, y: top - 5.2 },
          { x: left + width, y: top - 5.2 },
        ],
        FIRM,
      ),
    ],
  };
  const both = abreast({ left: 0, block: drawn(picture) }, { left: PICTURE + BETWEEN, block: list });
  return { heading, rows: [stacked(both, gap(1))] };
}

/** The letter on the drawing, what it is, what it should read, and a box. */
function checkRow(
  { unit, letters, derived }: Context,
  tube: SolvedTube,
  { check, letter }: Lettered,
  width: number,
): Block {
  const { id, value } = check;
  const known = derived.job.bent.find((bent) => bent.tube === tube.id)?.checks.find((one) => one.check === id);
  const figure = lengthFigure(value, unit);
  const space = width - NAME - letters.width(figure, LENGTH, true) - BOX - 3.5;
  const lines = wrapped(letters, checkInWords(check), space, SMALL, false);
  const height = Math.max(ROW, lines.length * LINE + 0.4);
  const first = (height - lines.length * LINE) / 2 + 2.6;
  return {
    height,
    draw: (left, top): Mark[] => [
      ...(letter === null ? [] : [text(left, top - height / 2 - 1.3, letter, { size: PLAIN, bold: true })]),
      ...lines.map((line, i) => text(left + NAME, top - first - i * LINE, line)),
      text(left + width - BOX - 1.5, top - height / 2 - 1.8, figure, { size: LENGTH, bold: true, anchor: 'end' }),
      box(left + width - BOX, top - (height - BOX_HIGH) / 2, BOX, BOX_HIGH),
      ...(known === undefined
        ? []
        : [
            text(left + width - BOX / 2, top - height / 2 - 1.4, lengthFigure(known.measured, unit), {
              size: PLAIN,
              anchor: 'middle',
            }),
          ]),
    ],
  };
}
