/** Letters: what the typeface holds, how wide they are, and what becomes of text that does not fit. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shrunk, wrapped } from '../../src/drawing/fit.ts';
import { unwatched } from '../../src/drawing/going.ts';
import { text } from '../../src/drawing/ink.ts';
import { inOrderSeen, lettering } from '../../src/drawing/lettering.ts';
import { writePdf } from '../../src/drawing/pdf.ts';
import type { Sheet } from '../../src/drawing/types.ts';
import { fonts } from '../exports/fonts.ts';

const letters = lettering(fonts);

describe('what can be set', () => {
  it('every sign that the sheets use, in both typefaces', () => {
    const used = '⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⁄½¼¾°⌀∠′″×–−±≈…·’“”⇄→←▸◂';
    expect(letters.settable(used)).toBe(used);
  });

  it('a box for what the typeface lacks, one line of it, nothing unseen', () => {
    expect(letters.settable('漢字')).toBe('□□');
    expect(letters.settable('a\r\nb\t c\u2028d')).toBe('a b c d');
    expect(letters.settable('\u202eabc\u202c\u200d\ufe0f')).toBe('abc');
    expect(letters.settable('\ud800')).toBe('□');
  });

  it('is the same when it is asked again', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const once = letters.settable(text);
        expect(letters.settable(once)).toBe(once);
        expect(once).not.toMatch(/[\r\n\t]/u);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it('right-to-left words follow one another from the right', () => {
    expect(inOrderSeen('bar שלום עולם end').replace(/ +/gu, ' ')).toBe('bar עולם שלום end');
    expect(inOrderSeen('plain text')).toBe('plain text');
  });
});

describe('widths', () => {
  it('are those of the font file: a figure is 1172 of 2048 wide, a bold one 1282', () => {
    expect(letters.width('8', 10, false)).toBeCloseTo((1172 / 2048) * 10, 6);
    expect(letters.width('8', 10, true)).toBeCloseTo((1282 / 2048) * 10, 6);
  });
});

describe('typefaces that measure', () => {
  it('are read once for as many files as are made of them', () => {
    expect(lettering(fonts).width).toBe(letters.width);
    expect(lettering({ ...fonts }).width).not.toBe(letters.width);
  });

  it('leave nothing of what they measured in a file', async () => {
    const sheet: Sheet = { name: 'one', width: 100, height: 100, marks: [text(10, 50, 'office, 5 ﬁne', { size: 5 })] };
    const written = () => writePdf('file', lettering(fonts), [() => [sheet]], unwatched);
    const before = await written();
    // Some letters go by two names: whichever a typeface meets first is the one that it goes by in a file.
    for (const words of ['ﬁ', 'fi', '\u00a0', '\u2215 \u2044 Ω \u2126 µ μ']) lettering(fonts).width(words, 5, false);
    expect(Buffer.compare(Buffer.from(await written()), Buffer.from(before))).toBe(0);
  });
});

const anyText = fc.string({ unit: fc.constantFrom('a', 'W', ' ', 'é', '漢', '9', '.', 'ש'), maxLength: 120 });

describe('text in too little room', () => {
  it('one line is never wider than the room, nor smaller than the least', () => {
    fc.assert(
      fc.property(anyText, fc.double({ min: 8, max: 80, noNaN: true }), (text, space) => {
        const fitted = shrunk(letters, text, space, 7);
        expect(letters.width(fitted.text, fitted.size, false)).toBeLessThanOrEqual(space + 1e-9);
        expect(fitted.size).toBeGreaterThanOrEqual(3.1);
        expect(fitted.size).toBeLessThanOrEqual(7);
      }),
      { seed: 5, numRuns: 100 },
    );
  });

  it('lines are never wider than the room and lose no letter, unless fewer lines are asked for', () => {
    fc.assert(
      fc.property(anyText, fc.double({ min: 8, max: 80, noNaN: true }), (text, space) => {
        const lines = wrapped(letters, text, space, 4);
        for (const line of lines) expect(letters.width(line, 4, false)).toBeLessThanOrEqual(space + 1e-9);
        expect(lines.join('').replace(/ /gu, '')).toBe(letters.settable(text).replace(/ /gu, ''));
        const few = wrapped(letters, text, space, 4, false, 2);
        expect(few.length).toBeLessThanOrEqual(2);
        if (lines.length > 2) expect(few[1]).toMatch(/…$/u);
      }),
      { seed: 6, numRuns: 100 },
    );
  });
});
