/**
 * How a suspected reading may have come about: what a person does wrong who holds a tape, reads it, and types. Named only where what
 * was typed and what the others say differ by just that, within what they leave open, and where chance would seldom make it so.
 */
import type { Measurement } from '../job/kinds/measurement.ts';
import { bareId, type PointRef } from '../job/reference.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { adjust, placesOf, type Adjusted, type Suspect } from './adjust.ts';
import { readingAt } from './equation.ts';
import { floorOf, SQUARE_FLOOR } from './floor.ts';
import { networkOf, placeIn, type Surveyed } from './network.ts';

/** `reads`: what then was meant, mm or degrees. */
export type Misread =
  /** Two digits that stand side by side are changed over, in millimetres or in whole inches. */
  | { readonly how: 'swapped'; readonly reads: number; readonly unit: LengthUnit }
  /** One digit is another. */
  | { readonly how: 'digit'; readonly reads: number; readonly unit: LengthUnit }
  /** Inches were typed as millimetres, or millimetres as inches. */
  | { readonly how: 'unit'; readonly reads: number; readonly unit: LengthUnit }
  /** The tape was held at a mark instead of at its end, or the mark was not taken off; `by` mm too much, below 0 too little. */
  | { readonly how: 'mark'; readonly reads: number; readonly by: number }
  /** Up for down, left for right, forward for back. */
  | { readonly how: 'sign'; readonly reads: number }
  /** Read from plumb instead of from level. */
  | { readonly how: 'plumb'; readonly reads: number }
  /** Measured to another point than the one that stands there. */
  | { readonly how: 'point'; readonly key: 'point' | 'from' | 'to'; readonly point: PointRef };

/** In deviations of the difference. */
const WITHIN = 3;

/** Places of a digit are told apart where they lie so many times the open range asunder. */
const TELLS = 4;

/** mm. Marks that a tape is held at when its hook is worn or in the way (common practice). */
const MARKS = [MM_PER_INCH, 100, 10, 12 * MM_PER_INCH] as const;

/** The likeliest first; none where nothing explains it. */
export function misreads(
  surveyed: Surveyed,
  adjusted: Adjusted,
  suspect: Suspect,
  unit: LengthUnit,
): readonly Misread[] {
  const measurement = surveyed.measurements[suspect.index]!;
  const { value, kind } = measurement;
  const { fits, deviation } = suspect;
  const range = WITHIN * deviation;
  const isIt = (reads: number): boolean => Math.abs(reads - fits) <= range;
  const isSigned = kind === 'coordinate' || kind === 'difference' || kind === 'inclination';
  const sign: readonly Misread[] = isSigned && isIt(-value) ? [{ how: 'sign', reads: -value }] : [];
  if (kind === 'inclination') {
    const reads = Math.sign(value || 1) * (90 - Math.abs(value));
    return [
      ...sign,
      ...(isIt(reads) ? [{ how: 'plumb', reads } as const] : []),
      ...otherPoints(surveyed, adjusted, suspect),
    ];
  }
  const other: LengthUnit = unit === 'in' ? 'mm' : 'in';
  const typed = [
    ...digits('swapped', value, unit, range),
    ...unitTaken(value),
    ...digits('swapped', value, other, range),
  ];
  const byMark = MARKS.flatMap((mark) =>
    [mark, -mark].map((by): Misread => ({ how: 'mark', reads: value - by, by })),
  ).filter((one) => 'by' in one && 2 * range < Math.abs(one.by));
  const single = [...digits('digit', value, unit, range), ...digits('digit', value, other, range)];
  const fitting = (all: readonly Misread[]): readonly Misread[] =>
    all.filter((one) => 'reads' in one && isIt(one.reads));
  const all = [
    ...fitting(typed),
    ...sign,
    ...fitting(byMark),
    ...otherPoints(surveyed, adjusted, suspect),
    ...fitting(single),
  ];
  // What comes to the same figure is said once, the likelier way.
  const figureOf = (one: Misread): string => ('reads' in one ? one.reads.toFixed(2) : `${one.key} ${one.point}`);
  return all.filter((one, i) => all.findIndex((other) => figureOf(other) === figureOf(one)) === i);
}

const unitTaken = (value: number): readonly Misread[] => [
  { how: 'unit', reads: value * MM_PER_INCH, unit: 'in' },
  { how: 'unit', reads: value / MM_PER_INCH, unit: 'mm' },
];

/** What it reads with two digits changed over, or with one digit another; those that tell. */
function digits(how: 'swapped' | 'digit', value: number, unit: LengthUnit, range: number): readonly Misread[] {
  const per = unit === 'in' ? MM_PER_INCH : 1;
  const counted = Math.abs(value) / per;
  const whole = Math.floor(counted + ROUNDED);
  const rest = counted - whole;
  const text = String(whole).split('');
  const reads = (changed: readonly string[]): number => Math.sign(value) * (Number(changed.join('')) + rest) * per;
  const all =
    how === 'swapped'
      ? text.slice(1).map((digit, i) => text.with(i, digit).with(i + 1, text[i]!))
      : text.flatMap((_, i) =>
          10 ** (text.length - 1 - i) * per < TELLS * range ? [] : DIGITS.map((digit) => text.with(i, digit)),
        );
  return all
    .map(reads)
    .filter((one) => Math.abs(one - value) > range)
    .map((one): Misread => ({ how, reads: one, unit }));
}

const DIGITS = Array.from({ length: 10 }, (_, digit) => String(digit));

/** Of a millimetre or an inch: a whole number that binary fractions fall short of. */
const ROUNDED = 1e-6;

/** As many as a person may look up at the car. */
const MOST_POINTS = 2;

/** The points that would make the reading right, with all that is suspected left out; none where there are many. */
function otherPoints(surveyed: Surveyed, { suspects }: Adjusted, { index, deviation }: Suspect): readonly Misread[] {
  const isSuspect = new Set(suspects.map((each) => each.index));
  const others = adjust({
    ...surveyed,
    measurements: surveyed.measurements.map((each, i) => (isSuspect.has(i) ? { ...each, excluded: true } : each)),
  })!;
  const network = networkOf(surveyed)!;
  const places = placesOf(network, others);
  const at = placeIn(network, places);
  const floor = network.pose === null ? SQUARE_FLOOR : floorOf(places.subarray(network.pose));
  const measurement = surveyed.measurements[index]!;
  const keys = 'point' in measurement ? (['point'] as const) : (['from', 'to'] as const);
  const found = keys.flatMap((key) => {
    const named = measurement[key as never] as PointRef;
    return surveyed.points
      .map(({ id }) => id)
      .filter((reference) => reference !== named && !Object.values(measurement).includes(reference))
      .filter(
        (reference) => Math.abs(readOf({ ...measurement, [key]: reference }) - measurement.value) <= WITHIN * deviation,
      )
      .map((point): Misread => ({ how: 'point', key, point }));
  });
  return found.length <= MOST_POINTS ? found : [];

  function readOf(other: Measurement): number {
    return readingAt(other, at, (reference) => network.side.get(bareId(reference))!, floor).value;
  }
}
