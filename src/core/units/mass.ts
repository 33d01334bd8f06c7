/** Masses as a job shows them: pounds in a job in inches, as such a shop weighs a car, else kilograms. Kept and handed on in kilograms. */
import type { LengthUnit } from './length.ts';
import { fixedText } from './typed.ts';

/** Exact by definition (international pound, 1959). */
const KG_PER_POUND = 0.45359237;

/** What a mass is given in, in a job with this unit. */
export const massUnit = (unit: LengthUnit): 'lb' | 'kg' => (unit === 'in' ? 'lb' : 'kg');

/** kg of what a scale in that unit reads. */
export const kilograms = (figure: number, unit: LengthUnit): number => (unit === 'in' ? figure * KG_PER_POUND : figure);

/** Of one tube: to 0.1 lb or 0.01 kg, without the unit. */
export const massFigure = (kg: number, unit: LengthUnit): string =>
  unit === 'in' ? fixedText(kg / KG_PER_POUND, 1) : fixedText(kg, 2);

/** The same with the unit. */
export const massInWords = (kg: number, unit: LengthUnit): string => `${massFigure(kg, unit)} ${massUnit(unit)}`;

/** Of many tubes: to 0.1 of the unit, with it. */
export const totalMassInWords = (kg: number, unit: LengthUnit): string =>
  `${fixedText(unit === 'in' ? kg / KG_PER_POUND : kg, 1)} ${massUnit(unit)}`;
