/** Two versions of a job side by side: a row a figure, in the job's unit, each price in the money of its version. */
import type { Figures } from '../compare/figures.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { totalMassInWords } from '../units/mass.ts';
import { moneyInWords } from './quote.ts';

export interface CompareRow {
  readonly title: string;
  readonly texts: readonly [string, string];
  /** Whether they differ as they are shown. */
  readonly differ: boolean;
}

export interface CompareUnits {
  readonly unit: LengthUnit;
}

/** All rows, of the one and of the other; null: it is still worked out, or cannot be. */
export function compareRows(
  pair: readonly [Figures | null, Figures | null],
  units: CompareUnits,
): readonly CompareRow[] {
  return ROWS.map(([title, show]) => {
    const [one, other] = pair.map((figures) => (figures === null ? '…' : show(figures, units))) as [string, string];
    return { title, texts: [one, other], differ: pair.every((figures) => figures !== null) && one !== other };
  });
}

type Show = (figures: Figures, units: CompareUnits) => string;

const NONE = '–';

const lengthOr = (mm: number | null | undefined, { unit }: CompareUnits): string =>
  mm == null ? NONE : `${formatLength(mm, unit).text} ${unit}`;

const along =
  (axis: 0 | 1 | 2): Show =>
  ({ centre }, units) =>
    lengthOr(centre?.[axis], units);

const ROWS: readonly (readonly [string, Show])[] = [
  ['Tubes', ({ tubes }) => `${tubes}`],
  ['Bends', ({ bends }) => `${bends}`],
  ['Welded joints', ({ joints }) => `${joints}`],
  ['Tube to cut, all together', ({ toCut }, units) => lengthOr(toCut, units)],
  ['Mass of the tubes', ({ mass }, { unit }) => totalMassInWords(mass, unit)],
  ['Centre of mass, forward of the car’s zero', along(0)],
  ['Centre of mass, left of the centre plane', along(1)],
  ['Centre of mass, up from the car’s zero', along(2)],
  ['Sticks, sawn ones among them', ({ sticks }) => (sticks === null ? NONE : `${sticks.count}`)],
  ['Sticks still to buy', ({ sticks }) => (sticks === null ? NONE : `${sticks.bought}`)],
  ['Parts without a stick', ({ sticks }) => (sticks === null ? NONE : `${sticks.without}`)],
  [
    'Price of the quote',
    ({ price }) =>
      price === null
        ? NONE
        : `${moneyInWords(price.whole, price)}${price.unpriced > 0 ? `, ${price.unpriced} ${price.unpriced === 1 ? 'line' : 'lines'} open` : ''}`,
  ],
  ['Shortest gap to driver and boxes', ({ toEnvelope }, units) => lengthOr(toEnvelope, units)],
  ['Shortest gap between tubes', ({ betweenTubes }, units) => lengthOr(betweenTubes, units)],
  ['Errors', ({ errors }) => `${errors}`],
  ['Warnings', ({ warnings }) => `${warnings}`],
  ['Notes', ({ notes }) => `${notes}`],
  ['Articles not met', ({ notMet }) => (notMet === null ? NONE : `${notMet}`)],
];
