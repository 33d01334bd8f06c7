/** The lengths that shops cut by, and what a tape can verify on the finished bends, with boxes for what it read. */
import { cutLengths } from '../../core/cope/end-cut.ts';
import { checkDimensions, type CheckDimension } from '../../core/run/check-dimensions.ts';
import { sawnTube } from '../../core/run/sawn-tube.ts';
import { LENGTH_NAMES } from '../../core/words/blank.ts';
import { checkInWords, SIDES, whenChecked } from '../../core/words/run.ts';
import { feedOf } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { wrapped } from '../../drawing/fit.ts';
import type { Mark } from '../../drawing/types.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from './context.ts';
import { cells } from './cells.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { box, FIRM, LENGTH, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import { abreast, gap, paragraph, type Block, type Part } from './page.ts';

const ROW = 7.4;
const BOX = 18;
const BETWEEN = 4;

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

/** Empty for a straight tube. What was measured already stands in its box. */
export function checksPart(context: Context, tube: SolvedTube): Part {
  const { unit, width, letters, derived } = context;
  const checks = checkDimensions(sawnTube(tube));
  const read = derived.job.bent.find((bent) => bent.tube === tube.id)?.checks ?? [];
  const column = (width - BETWEEN) / 2;
  const figures = Math.max(0, ...checks.map(({ value }) => letters.width(lengthFigure(value, unit), LENGTH, true)));
  const space = column - BOX - 1.5 - figures - 2;
  const cellOf = (check: CheckDimension): Block => {
    const { id, value } = check;
    const known = read.find((one) => one.check === id);
    const lines = wrapped(letters, checkInWords(check), space, SMALL, false);
    const height = Math.max(ROW, lines.length * 3.7);
    const first = (height - lines.length * 3.7) / 2 + 2.9;
    return {
      height,
      draw: (left, top): Mark[] => [
        ...lines.map((line, i) => text(left, top - first - i * 3.7, line)),
        text(left + column - BOX - 1.5, top - 5.4, lengthFigure(value, unit), {
          size: LENGTH,
          bold: true,
          anchor: 'end',
        }),
        box(left + column - BOX, top - 0.2, BOX, ROW - 0.8),
        ...(known === undefined
          ? []
          : [
              text(left + column - BOX / 2, top - 5, lengthFigure(known.measured, unit), {
                size: PLAIN,
                anchor: 'middle',
              }),
            ]),
      ],
    };
  };
  const rows = Array.from({ length: Math.ceil(checks.length / 2) }, (_, row) =>
    abreast(
      ...checks.slice(2 * row, 2 * row + 2).map((check, i) => ({ left: i * (column + BETWEEN), block: cellOf(check) })),
    ),
  );
  const heading: Block = {
    height: 5.8,
    draw: (left, top) => [
      text(
        left,
        top - 3.7,
        `Check after bending, ${whenChecked(feedOf(derived.job, tube).grip)}; boxes: as measured${checks.length > 3 ? `. ${SIDES}.` : ''}`,
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
  return { heading: rows.length === 0 ? null : heading, rows: [...rows, ...(rows.length === 0 ? [] : [gap(1)])] };
}
