/** Masses as they are typed: pounds in a job in inches, else kilograms; either with its unit behind it. */
import { HEAVIEST } from '../../core/job/limits.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { kilograms, massFigure, massUnit } from '../../core/units/mass.ts';
import { numberKind, type ValueKind } from './kinds.ts';

/** kg, of a car: as a scale reads them, to a tenth. */
export function massKind(unit: LengthUnit): ValueKind<number> {
  return {
    show: (kg) => figureIn(unit).show(Number(massFigure(kg, unit))),
    read(text) {
      const { figure, typedIn } = split(text, unit);
      const entered = figureIn(typedIn).read(figure);
      return entered.ok ? { ...entered, value: kilograms(entered.value, typedIn) } : entered;
    },
    readBack: (kg) => `= ${massFigure(kg, 'mm')} ${massUnit('mm')} · ${massFigure(kg, 'in')} ${massUnit('in')}`,
    inputMode: 'decimal',
  };
}

const figureIn = (unit: LengthUnit): ValueKind<number> => numberKind(1, Math.floor(HEAVIEST / kilograms(1, unit)), 1);

const POUNDS = /\s*(?:lbs?|pounds?)\.?\s*$/iu;
const KILOGRAMS = /\s*(?:kgs?|kilo(?:gram)?s?)\.?\s*$/iu;

/** "2600 lb", "1200kg": the figure and the unit that stands behind it; without one the job's. */
function split(text: string, unit: LengthUnit): { readonly figure: string; readonly typedIn: LengthUnit } {
  if (POUNDS.test(text)) return { figure: text.replace(POUNDS, ''), typedIn: 'in' };
  if (KILOGRAMS.test(text)) return { figure: text.replace(KILOGRAMS, ''), typedIn: 'mm' };
  return { figure: text, typedIn: unit };
}
