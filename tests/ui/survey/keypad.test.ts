import { expect, it } from 'vitest';
import { parseLength } from '../../../src/core/units/length.ts';
import { KEYS, pressed, type Key } from '../../../src/ui/survey/keypad.ts';

const after = (...keys: readonly Key[]): string => keys.reduce(pressed, '');

it('fractions add up, the least terms are shown, and past the inch they begin anew', () => {
  expect(after('3', '6', '1/2', '1/4', '1/16')).toBe('36 13/16');
  expect(after('1/8', '1/8')).toBe('1/4');
  expect(after('5', '1/2', '1/2')).toBe('5');
  // A digit forgotten goes to the inches, the fraction stays.
  expect(after('3', '1/2', '6')).toBe('36 1/2');
  expect(after('3', '6', '1/2', 'back', 'back')).toBe('3');
  expect(after('4', 'minus', '1/4')).toBe('-4 1/4');
  expect(after('4', 'minus', 'minus')).toBe('4');
});

it('every sixteenth can be pressed, and reads as it is', () => {
  for (let sixteenths = 1; sixteenths < 16; sixteenths++) {
    const keys = (['1/2', '1/4', '1/8', '1/16'] as const).filter((_, i) => (sixteenths >> (3 - i)) % 2 === 1);
    const read = parseLength(after('2', ...keys), 'in');
    expect(read.ok && read.value / 25.4).toBeCloseTo(2 + sixteenths / 16, 12);
  }
});

it('millimetres have a point, and what was typed by hand is gone on with', () => {
  expect(after('7', '.', '5')).toBe('7.5');
  expect(pressed('36.5', '1/2')).toBe('36.5');
  expect(pressed("1' 2", '5')).toBe("1' 25");
  expect(pressed('12.75', 'back')).toBe('12.7');
  expect(KEYS.mm.flat()).not.toContain('1/2');
});
