import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatAngle, parseAngle } from '../../../src/core/units/angle.ts';

describe('parseAngle', () => {
  it.each([
    ['52', 52],
    ['52.5°', 52.5],
    ['-12', -12],
    ['−12 deg', -12],
    ['+.5', 0.5],
    ['360', 360],
    ['-0', 0],
  ])('reads %s', (text, value) => {
    expect(parseAngle(text)).toEqual({ ok: true, value });
  });

  it.each([
    ['90 - 12.5', 77.5, '90 − 12.5'],
    ['45/2', 22.5, '45 ÷ 2'],
    ['180° - 2 x 62', 56, '180° − 2 × 62°'],
    ['(180 - 90.5) / 2', 44.75, '(180 − 90.5) ÷ 2'],
  ])('works out %s', (text, value, as) => {
    expect(parseAngle(text)).toEqual({ ok: true, value, as, worked: true });
  });

  it.each([
    ['', 'type an angle'],
    ['52,5', 'use a point: 52.5'],
    ['361', 'more than a full turn'],
    ['5 2', 'two numbers: 52 or 5.2?'],
    ['52°°', '“°” cannot be read'],
    ['1e2', '“e2” cannot be read'],
    ['--4', 'two signs in a row'],
    ['90 +', 'nothing after +'],
    ['300 + 61', 'more than a full turn'],
    ['2° * 3°', 'an angle times an angle is not an angle'],
    ['NaN', 'not an angle'],
  ])('refuses %j', (text, why) => {
    expect(parseAngle(text)).toEqual({ ok: false, why });
  });
});

describe('formatAngle', () => {
  it('keeps its decimals and puts no sign on zero', () => {
    expect(formatAngle(52.45, 1)).toBe('52.5');
    expect(formatAngle(-12, 2)).toBe('−12.00');
    expect(formatAngle(-0.01, 1)).toBe('0.0');
  });

  it('reads back to within half of what it shows', () => {
    fc.assert(
      fc.property(fc.double({ min: -360, max: 360, noNaN: true }), fc.constantFrom(0, 1, 2, 4), (angle, places) => {
        const back = parseAngle(formatAngle(angle, places));
        expect(Math.abs((back.ok ? back.value : Number.NaN) - angle)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-12);
      }),
      { seed: 14, numRuns: 500 },
    );
  });
});
