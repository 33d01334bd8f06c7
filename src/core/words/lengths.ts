/** How a finding gives a length: a decimal inch, not a fraction, for it compares, and a rounded fraction may show two unlike lengths alike. */
import { decimalLength, type LengthUnit } from '../units/length.ts';

export const comparedLength = (mm: number, unit: LengthUnit): string =>
  unit === 'in' ? `${decimalLength(mm, 'in', 3)} in` : `${decimalLength(mm, 'mm', 1)} mm`;
