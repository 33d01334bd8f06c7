import { describe, expect, it } from 'vitest';
import { formatLength } from '../../../src/core/units/length.ts';
import { stepAbove, stepBelow } from '../../../src/core/units/step.ts';

/** In sixteenths, computed by hand. */
const sixteenths = (mm: number): string => formatLength(mm, 'in').text;

describe('a length brought to a step', () => {
  it('shows a gap of 2.430 in as 2 3/8, never as the 2 7/16 that is nearer', () => {
    expect(sixteenths(stepBelow(2.43 * 25.4, 'in', 1 / 16))).toBe('2 3/8');
    expect(sixteenths(2.43 * 25.4)).toBe('2 7/16');
  });

  it('shows what is missing, however little, as at least one step', () => {
    expect(sixteenths(stepAbove(0.001 * 25.4, 'in', 1 / 16))).toBe('1/16');
    expect(formatLength(stepAbove(0.02, 'mm', 0.1), 'mm').text).toBe('0.1');
  });

  it('leaves what is on a step alone, whatever arithmetic left on it', () => {
    for (let count = -64; count <= 640; count += 1) {
      const mm = (count / 16) * 25.4;
      expect(sixteenths(stepBelow(mm - 1e-9, 'in', 1 / 16))).toBe(sixteenths(mm));
      expect(sixteenths(stepAbove(mm + 1e-9, 'in', 1 / 16))).toBe(sixteenths(mm));
    }
    expect(stepBelow(63.5, 'mm', 0.1)).toBeCloseTo(63.5, 9);
  });

  it('shows a tube inside the box no less deep than it is', () => {
    expect(sixteenths(stepBelow(-0.01 * 25.4, 'in', 1 / 16))).toBe('−1/16');
  });
});
