import { expect, it } from 'vitest';
import { massInWords, totalMassInWords } from '../../../src/core/units/mass.ts';

it.each([
  // 1 lb = 0.45359237 kg exactly; worked by hand.
  [5.553, 'in', '12.2 lb', '12.2 lb'],
  [0.45359237, 'in', '1.0 lb', '1.0 lb'],
  [5.553, 'mm', '5.55 kg', '5.6 kg'],
  [100, 'in', '220.5 lb', '220.5 lb'],
] as const)('%d kg in a job in %s', (kg, unit, tube, total) => {
  expect([massInWords(kg, unit), totalMassInWords(kg, unit)]).toEqual([tube, total]);
});
