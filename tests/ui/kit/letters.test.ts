/** How wide the screen's letters are taken to be, and how a fraction is taken apart to be set. */
import { describe, expect, it } from 'vitest';
import { figure } from '../../../src/drawing/figures.ts';
import { inchFraction, MM_PER_INCH } from '../../../src/core/units/length.ts';
import { FRACTION_SIZE, HAIR_SPACE, screenLetters, splitFraction } from '../../../src/ui/kit/letters.ts';

describe('a fraction', () => {
  it('is taken apart into ordinary figures, close to the whole inches before it', () => {
    const shown = figure(inchFraction((23 + 13 / 32) * MM_PER_INCH, 32));
    expect(splitFraction(`4: ${shown}${HAIR_SPACE}−`)).toEqual({
      before: '4: 23',
      numerator: '13',
      denominator: '32',
      after: `${HAIR_SPACE}−`,
    });
  });

  it.each([
    [`1: ${figure(inchFraction(MM_PER_INCH / 8, 32))}`, '1: '],
    [figure(inchFraction(-MM_PER_INCH / 8, 32)), '−'],
    [figure(inchFraction(MM_PER_INCH / 8, 32)), ''],
  ])('%s with no whole inches keeps what stands before it', (text, before) => {
    expect(splitFraction(text)).toEqual({ before, numerator: '1', denominator: '8', after: '' });
  });

  it('is none in decimals', () => {
    expect(splitFraction('1: 519.3')).toBeNull();
  });
});

describe('widths', () => {
  it('grow with the letter, and figures are all of one width', () => {
    expect(screenLetters.width('1: 20', 6, true)).toBeCloseTo(2 * screenLetters.width('9: 77', 3, false), 12);
  });

  it('of a fraction are those of small figures', () => {
    const figures = screenLetters.width('0000', 10, true);
    const whole = screenLetters.width('⁄', 10, true);
    expect(screenLetters.width('¹³⁄₃₂', 10, true)).toBeCloseTo(FRACTION_SIZE * figures + whole, 9);
  });

  it('of signs that no row has are the widest there is', () => {
    expect(screenLetters.width('字', 10, false)).toBeGreaterThanOrEqual(screenLetters.width('W', 10, false));
    expect(screenLetters.width('m', 10, false)).toBeGreaterThan(screenLetters.width('w', 10, false));
  });
});
