/** Readings of tapes, against tapes read by hand; that a hair more is written + and a hair less − is common practice. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength } from '../../../src/core/units/length.ts';
import { spokenReading, tapeReading, tapesOf } from '../../../src/core/units/tape.ts';

describe('a reading', () => {
  it('has the digits of its tape: sixteenths and thirty-seconds, whole and half millimetres', () => {
    expect(tapeReading(19.0625 * 25.4, 'in', false).text).toBe('19 1/16');
    expect(tapeReading(19.03125 * 25.4, 'in', true).text).toBe('19 1/32');
    expect(tapeReading(394, 'mm', false).text).toBe('394');
    expect(tapeReading(394.5, 'mm', true).text).toBe('394.5');
  });

  it('of a division is never called rounded', () => {
    for (const unit of ['in', 'mm'] as const)
      for (const [i, step] of tapesOf(unit).entries())
        for (const count of [-7, 1, 305, 2401])
          expect(tapeReading(count * step, unit, i === 1).exact, `${count} of ${step} mm`).toBe(true);
  });

  it('says whether the place lies a hair beyond the division or short of it', () => {
    // 20 13/32 is 518.31875 mm: on the fine tape a division, on the coarse one between 20 3/8 (517.525) and 20 7/16 (519.1125).
    const marked = (mm: number, unit: 'in' | 'mm', fine: boolean) => {
      const { text, leans } = tapeReading(mm, unit, fine);
      return `${text} ${leans}`.trim();
    };
    expect(marked(518.31875, 'in', true)).toBe('20 13/32');
    expect(marked(518.2, 'in', false)).toBe('20 3/8 +');
    expect(marked(518.5, 'in', false)).toBe('20 7/16 −');
    expect(marked(523.9, 'mm', false)).toBe('524 −');
    expect(marked(524.04, 'mm', false)).toBe('524');
    // On the other side of the zero more is still farther from it.
    expect(marked(-88.2, 'mm', false)).toBe('−88 +');
    expect(spokenReading(tapeReading(518.2, 'in', false), 'in')).toBe('20 3/8 in, a hair more');
    expect(spokenReading(tapeReading(524, 'mm', false), 'mm')).toBe('524 mm');
  });

  it('is the nearest division, and leans to the side on which the place lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6000, noNaN: true }),
        fc.constantFrom('in' as const, 'mm' as const),
        fc.boolean(),
        (place, unit, fine) => {
          const { text, leans, exact } = tapeReading(place, unit, fine);
          const read = parseLength(text, unit);
          if (!read.ok) throw new Error(text);
          const off = place - read.value;
          expect(Math.abs(off)).toBeLessThanOrEqual(tapesOf(unit)[fine ? 1 : 0] / 2 + 1e-9);
          if (leans === '+') expect(off).toBeGreaterThanOrEqual(0.05 - 1e-9);
          else if (leans === '−') expect(off).toBeLessThanOrEqual(-0.05 + 1e-9);
          else expect(Math.abs(off)).toBeLessThan(0.05 + 1e-9);
          expect(exact && leans !== '').toBe(false);
        },
      ),
      { seed: 20260313, numRuns: 500 },
    );
  });
});
