import { describe, expect, it } from 'vitest';
import { formatLength } from '../../../src/core/units/length.ts';
import { exactText, stepAbove, stepBelow } from '../../../src/core/units/step.ts';

/** In thirty-seconds, computed by hand. */
const shown = (mm: number): string => formatLength(mm, 'in').text;

describe('a length brought to a step', () => {
  it('shows a gap of 2.430 in as 2 13/32, never as the 2 7/16 that is nearer', () => {
    expect(shown(stepBelow(2.43 * 25.4, 'in'))).toBe('2 13/32');
    expect(shown(2.43 * 25.4)).toBe('2 7/16');
  });

  it('shows what is missing, however little, as at least one step', () => {
    expect(shown(stepAbove(0.001 * 25.4, 'in'))).toBe('1/32');
    expect(formatLength(stepAbove(0.02, 'mm'), 'mm').text).toBe('0.1');
  });

  it('leaves what is on a step alone, whatever arithmetic left on it', () => {
    for (let count = -128; count <= 1280; count += 1) {
      const mm = (count / 32) * 25.4;
      expect(shown(stepBelow(mm - 1e-9, 'in'))).toBe(shown(mm));
      expect(shown(stepAbove(mm + 1e-9, 'in'))).toBe(shown(mm));
    }
    expect(stepBelow(63.5, 'mm')).toBeCloseTo(63.5, 9);
  });

  it('gives what can be kept: the decimal that is shown, and none beside it', () => {
    for (let count = 1; count <= 1000; count += 1) {
      expect(stepAbove(count / 10 - 0.05, 'mm')).toBe(count / 10);
      // 1/32 in is 0.79375 mm exactly (ISO 31-1).
      expect(String(stepAbove((count - 0.5) * 0.79375, 'in'))).toMatch(/^\d+(?:\.\d{1,5})?$/u);
    }
  });

  it('shows a tube inside the box no less deep than it is', () => {
    expect(shown(stepBelow(-0.01 * 25.4, 'in'))).toBe('−1/32');
  });
});

describe('a limit', () => {
  it('is shown as on the tape where it is on a step, else in decimals', () => {
    expect(exactText(63.5, 'in')).toBe('2 1/2');
    // 50 mm / 25.4 = 1.96850 in (computed by hand).
    expect(exactText(50, 'in')).toBe('1.969');
    expect(exactText(50, 'mm')).toBe(formatLength(50, 'mm').text);
    expect(exactText(50.85, 'mm')).toBe('50.85');
  });
});
