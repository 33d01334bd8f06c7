/** How words give a length: compared, as a decimal inch, for a rounded fraction may show two unlike lengths alike; to be marked out, as a tape has it. */
import { decimalLength, formatLength, type LengthUnit } from '../units/length.ts';

export const comparedLength = (mm: number, unit: LengthUnit): string =>
  unit === 'in' ? `${decimalLength(mm, 'in', 3)} in` : `${decimalLength(mm, 'mm', 1)} mm`;

/** "25 3/8 in": as lists and sheets show it. */
export const lengthOnTape = (mm: number, unit: LengthUnit): string => `${formatLength(mm, unit).text} ${unit}`;
