/** The figures of a rule sheet: lengths in the job's unit, areas in cm2 or square inches, angles in degrees. */
import { quantityOf, type Quantity, type RuleCheck } from '../job/kinds/rule-check.ts';
import { formatAngle } from '../units/angle.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { comparedLength } from './lengths.ts';

/** mm2 in one cm2. */
const IN_CM2 = 100;

/** "120.0 cm²". */
export const areaInWords = (mm2: number, unit: LengthUnit): string =>
  unit === 'in' ? `${(mm2 / MM_PER_INCH ** 2).toFixed(2)} in²` : `${(mm2 / IN_CM2).toFixed(1)} cm²`;

/** "11321 mm⁴": books give it so. */
export const secondMomentInWords = (mm4: number, unit: LengthUnit): string =>
  unit === 'in' ? `${(mm4 / MM_PER_INCH ** 4).toFixed(4)} in⁴` : `${mm4.toFixed(0)} mm⁴`;

/** A figure as what it counts: of an article, or of a verdict, which knows. */
export function figureInWords(
  value: number,
  of: RuleCheck | { readonly quantity: Quantity },
  unit: LengthUnit,
): string {
  const quantity = 'quantity' in of ? of.quantity : quantityOf(of);
  switch (quantity) {
    case 'length':
      return comparedLength(value, unit);
    case 'angle':
      return `${formatAngle(value, 1)}°`;
    case 'area':
      return areaInWords(value, unit);
    case 'secondMoment':
      return secondMomentInWords(value, unit);
    case 'count':
      return String(value);
    case 'times':
    case 'share':
      return value.toFixed(2);
  }
}
