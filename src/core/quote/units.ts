/** What a quote measures long things and heavy things in: metres and kilograms, in a job in inches feet and pounds. Rates are kept by the metre and the kilogram. */
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { kilograms } from '../units/mass.ts';

export type Measure = 'm' | 'ft' | 'kg' | 'lb' | 'each';

const MM_PER_FOOT = 12 * MM_PER_INCH;

/** What lengths are sold by, and welds reckoned by. */
export const longMeasure = (unit: LengthUnit): 'm' | 'ft' => (unit === 'in' ? 'ft' : 'm');
/** What flat steel is sold by. */
export const heavyMeasure = (unit: LengthUnit): 'kg' | 'lb' => (unit === 'in' ? 'lb' : 'kg');

/** How many of it one metre, or one kilogram, is. */
export function perBase(measure: Measure): number {
  if (measure === 'ft') return 1000 / MM_PER_FOOT;
  if (measure === 'lb') return 1 / kilograms(1, 'in');
  return 1;
}

/** A rate by the metre or kilogram as a rate by this, without the digits that the change of units leaves. */
export const rateBy = (rate: number, measure: Measure): number =>
  measure === 'each' ? rate : Number((rate / perBase(measure)).toPrecision(10));

/** The other way round, to be kept: with two digits more, so that it comes back as it was typed. */
export const rateKept = (rate: number, measure: Measure): number =>
  measure === 'each' ? rate : Number((rate * perBase(measure)).toPrecision(12));
