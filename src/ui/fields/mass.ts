/** Masses as they are typed: pounds in a job in inches, else kilograms. */
import { HEAVIEST } from '../../core/job/limits.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { kilograms, massFigure, massUnit } from '../../core/units/mass.ts';
import { numberKind, type ValueKind } from './kinds.ts';

/** kg, of a car: as a scale reads them, to a tenth. */
export function massKind(unit: LengthUnit): ValueKind<number> {
  const figure = numberKind(1, Math.floor(HEAVIEST / kilograms(1, unit)), 1);
  return {
    show: (kg) => figure.show(Number(massFigure(kg, unit))),
    read(text) {
      const entered = figure.read(text);
      return entered.ok ? { ...entered, value: kilograms(entered.value, unit) } : entered;
    },
    readBack: (kg) => `= ${massFigure(kg, 'mm')} ${massUnit('mm')} · ${massFigure(kg, 'in')} ${massUnit('in')}`,
    inputMode: 'decimal',
  };
}
