/** Figures as a drawing shows them: fractions set as fractions, a true minus, the unit after a narrow space. */
import { toDegrees, type Radians } from '../core/geometry/angle.ts';
import { shownRound } from '../core/words/turns.ts';
import { decimalLength, formatLength, type ShownLength, type LengthUnit } from '../core/units/length.ts';
import type { TapeReading } from '../core/units/tape.ts';
import { formatAngle } from '../core/units/angle.ts';

const raised = (count: number): string => Array.from(String(count), (digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)]).join('');
const lowered = (count: number): string => Array.from(String(count), (digit) => '₀₁₂₃₄₅₆₇₈₉'[Number(digit)]).join('');

/** 14 ³⁄₁₆ */
export function figure(shown: ShownLength): string {
  if (shown.numerator === 0) return shown.text;
  const whole = shown.whole === 0 ? '' : `${shown.whole} `;
  return `${shown.sign}${whole}${raised(shown.numerator)}⁄${lowered(shown.denominator)}`;
}

/** 14 ³⁄₁₆ +, of a mark that lies a hair beyond that division of the tape. */
export const markFigure = (reading: TapeReading): string =>
  reading.leans === '' ? figure(reading) : `${figure(reading)}\u200a${reading.leans}`;

/** As it is shown everywhere, with the unit. */
export const lengthFigure = (mm: number, unit: LengthUnit): string => `${figure(formatLength(mm, unit))} ${unit}`;

/** Round a tube's surface, the number that the sentences give, with the unit. */
export const roundFigure = (mm: number, unit: LengthUnit): string => `${figure(shownRound(mm, unit))} ${unit}`;

/** To 0.001 in or 0.1 mm, with the unit: for figures too small to hold a fraction that can be read. */
export const decimalFigure = (mm: number, unit: LengthUnit): string =>
  `${decimalLength(mm, unit, unit === 'in' ? 3 : 1)} ${unit}`;

export const angleFigure = (angle: Radians): string => `${formatAngle(toDegrees(angle), 1)}°`;
