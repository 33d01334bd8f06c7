/** Every tube in a line: what it is cut from, how long, how heavy; and what all of them come to, section by section. */
import { massInWords, totalMassInWords } from '../../core/units/mass.ts';
import { shownName } from '../../core/job/shown.ts';
import { steelInWords } from '../../core/springback/steels.ts';
import { decimalLength } from '../../core/units/length.ts';
import { exactText } from '../../core/units/step.ts';
import type { Section } from '../../core/job/kinds/section.ts';
import { heatOf } from '../../core/stock/heat.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { errorsOf } from '../../core/checks/faults.ts';
import { shrunk, wrapped } from '../../drawing/fit.ts';
import type { Mark } from '../../drawing/types.ts';
import type { Context } from './context.ts';
import { lengthFigure } from '../../drawing/figures.ts';
import { FIRM, HAIR, LENGTH, PLAIN, SMALL, stroke, text } from '../../drawing/ink.ts';
import { measured } from './measured.ts';
import { gap, paragraph, part, stacked, type Block, type Part } from './page.ts';

interface Column {
  readonly name: string;
  /** Of the width between the margins. */
  readonly share: number;
  readonly end?: boolean;
}

const COLUMNS: readonly Column[] = [
  { name: 'No.', share: 0.06 },
  { name: 'Name', share: 0.26 },
  { name: 'OD', share: 0.085 },
  { name: 'Wall', share: 0.075 },
  { name: 'Material', share: 0.19 },
  { name: 'Batch', share: 0.08 },
  { name: 'Blank', share: 0.15, end: true },
  { name: 'Mass', share: 0.1, end: true },
];
const ROW = 7.6;

/** The rows, and under them the sums with what the figures are: a page may begin with those. */
export function tubeTable(context: Context): readonly Part[] {
  const { derived, letters, width, unit } = context;
  const rows = derived.tubes.map((tube) => tubeRow(context, tube));
  const table: Part = {
    heading: {
      height: 7,
      draw: (left, top) => [
        ...placed(left, width).flatMap(({ name, end, from, to }) =>
          text(end === true ? to : from, top - 4.4, name === 'Blank' ? `Blank, ${unit}` : name, {
            bold: true,
            anchor: end === true ? 'end' : 'start',
          }),
        ),
        stroke(
          [
            { x: left, y: top - 6 },
            { x: left + width, y: top - 6 },
          ],
          FIRM,
        ),
      ],
    },
    rows,
  };
  const sums = stacked(
    gap(2),
    ...totals(context).map((line) => paragraph(letters, line, width, { size: PLAIN, bold: true, after: 0.5 })),
    paragraph(
      letters,
      `Blank: what to cut, grip for the clamp included, to 1/32 in or 0.1 mm; saw kerf is not in it. Shown in ${unit === 'in' ? 'inches' : 'millimetres'}.`,
      width,
      { after: 5 },
    ),
  );
  return [table, part(sums)];
}

const placed = (left: number, width: number) => {
  let from = left;
  return COLUMNS.map((column) => {
    const start = from;
    from += column.share * width;
    return { ...column, from: start, to: from - (column.name === 'Blank' ? 2 : 0) };
  });
};

function tubeRow(context: Context, tube: SolvedTube): Block {
  const { letters, width, unit, derived } = context;
  const { section } = tube;
  const { blank } = measured(tube, context).tape;
  const off = errorsOf(derived.findings, tube.id).length > 0;
  const values = [
    String(tube.number),
    off ? `× ${tube.name}` : tube.name,
    exactText(section.outerDiameter, unit),
    wallText(section, unit),
    steelInWords(section),
    shownName(heatOf(derived.job, tube) ?? ''),
    lengthFigure(blank, unit).replace(` ${unit}`, ''),
    massInWords(tube.mass, unit),
  ];
  const names = wrapped(letters, values[1]!, COLUMNS[1]!.share * width - 2, PLAIN, true, 2);
  const height = names.length > 1 ? ROW + 3.4 : ROW;
  return {
    height,
    draw: (left, top) => [
      ...placed(left, width).flatMap(({ name, end, from, to, share }, i): Mark[] => {
        const base = top - 5.4;
        if (name === 'Name')
          return names.map((line, k) =>
            text(from, base - k * 4.6 + (names.length > 1 ? 0.6 : 0), line, { size: PLAIN, bold: true }),
          );
        const bold = name === 'Blank' || name === 'No.';
        const fitted = shrunk(
          letters,
          values[i]!,
          share * width - 2,
          name === 'Blank' ? LENGTH : bold ? PLAIN + 0.6 : SMALL + 0.3,
          bold,
        );
        return [
          text(end === true ? to : from, base, fitted.text, {
            size: fitted.size,
            bold,
            anchor: end === true ? 'end' : 'start',
          }),
        ];
      }),
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

const wallText = ({ wall }: Section, unit: Context['unit']): string =>
  unit === 'in' ? decimalLength(wall, unit, 3).replace(/^0\./u, '.') : decimalLength(wall, unit, 2);

/** Length of all blanks and mass, for each section that is used and for all. */
function totals(context: Context): string[] {
  const { derived, unit } = context;
  const { tubes, job } = derived;
  const used = job.sections.filter(({ id }) => tubes.some(({ section }) => section.id === id));
  const sum = (some: readonly SolvedTube[]): string => {
    const mm = some.reduce((total, tube) => total + measured(tube, context).tape.blank, 0);
    const length = unit === 'in' ? `${decimalLength(mm / 12, 'in', 1)} ft` : `${decimalLength(mm / 1000, 'mm', 2)} m`;
    const mass = some.reduce((total, tube) => total + tube.mass, 0);
    return `${some.length} ${some.length === 1 ? 'blank' : 'blanks'}, ${length} of tube; ${totalMassInWords(mass, unit)} when coped`;
  };
  const each = used.map((section) => `${section.name}: ${sum(tubes.filter((tube) => tube.section.id === section.id))}`);
  return used.length > 1 ? [...each, `All: ${sum(tubes)}`] : each;
}
