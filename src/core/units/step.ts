/**
 * Lengths that a limit hangs on, brought to the steps in which they are shown: a gap is never shown larger than it is,
 * nor what is missing from it smaller, and the limit itself is not rounded.
 */
import { DIVISION_ROUNDING } from '../geometry/tolerance.ts';
import { decimalLength, formatLength, MM_PER_INCH, SHOWN_STEP, type LengthUnit } from './length.ts';

/** One step that is shown, mm. */
const STEP: Readonly<Record<LengthUnit, number>> = { in: MM_PER_INCH * SHOWN_STEP.in, mm: SHOWN_STEP.mm };

/** So many steps, mm. Five decimals write every step whole, 1/32 in is 0.79375 mm: what is kept in a job is what was shown. */
const inSteps = (count: number, unit: LengthUnit): number => Number((count * STEP[unit]).toFixed(5));

/** The greatest whole number of the unit's steps that is no more than `mm`, in mm. */
export const stepBelow = (mm: number, unit: LengthUnit): number =>
  inSteps(Math.floor(mm / STEP[unit] + DIVISION_ROUNDING), unit);

/** The least whole number of the unit's steps that is no less than `mm`, in mm. */
export const stepAbove = (mm: number, unit: LengthUnit): number =>
  inSteps(Math.ceil(mm / STEP[unit] - DIVISION_ROUNDING), unit);

/** As it stands on a tape where it is on a step of 1/32 in or 0.1 mm, else in decimals: to 0.001 in or 0.01 mm. */
export function exactText(mm: number, unit: LengthUnit): string {
  const shown = formatLength(mm, unit);
  return shown.exact ? shown.text : decimalLength(mm, unit, unit === 'in' ? 3 : 2);
}
