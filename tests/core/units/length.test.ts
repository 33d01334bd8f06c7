import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decimalLength,
  formatLength,
  inchFraction,
  parseLength,
  type LengthUnit,
} from '../../../src/core/units/length.ts';

// Millimetres worked by hand from 1 in = 25.4 mm (the international inch, 1959).
const READ: readonly (readonly [string, LengthUnit, number])[] = [
  ['21 1/2', 'in', 546.1],
  ['21-1/2', 'in', 546.1],
  ['21½', 'in', 546.1],
  ['21 ½', 'in', 546.1],
  ['21-½', 'in', 546.1],
  ['21 1⁄2', 'in', 546.1],
  ['21.5', 'in', 546.1],
  ['21.5"', 'mm', 546.1],
  ['21.5in', 'mm', 546.1],
  ['21 1/2 inches', 'mm', 546.1],
  ['546.1', 'mm', 546.1],
  ['546mm', 'in', 546],
  ['54.6 cm', 'in', 546],
  ['1.2 m', 'in', 1200],
  ['1\' 9-1/2"', 'in', 546.1],
  ['1′ 9½″', 'mm', 546.1],
  ["1'9.5", 'in', 546.1],
  ["1'-9 1/2", 'in', 546.1],
  ['1 ft 9.5 in', 'mm', 546.1],
  ["1' ½", 'in', 317.5],
  ["6'", 'mm', 1828.8],
  ['5/16', 'in', 7.9375],
  ['5 / 16', 'in', 7.9375],
  ['⅞', 'in', 22.225],
  ['.5', 'in', 12.7],
  ['1.', 'mm', 1],
  ['-3', 'mm', -3],
  ['− 3 1/4', 'in', -82.55],
  ['-½', 'in', -12.7],
  ['+3', 'mm', 3],
  ['-1\' 2"', 'in', -355.6],
  ['  7 ', 'mm', 7],
  ['100 m', 'mm', 100_000],
];

const REFUSED: readonly (readonly [string, string])[] = [
  ['', 'type a length'],
  ['   ', 'type a length'],
  ['21,5', 'use a point: 21.5'],
  [',5', 'use a point: 0.5'],
  ['21,5 mm', 'use a point: 21.5'],
  ['1,200', 'a comma is not read: type 1.200 or 1200'],
  ['1,234.5', 'leave the commas out: 1234.5'],
  ['1,234,567', 'leave the commas out: 1234567'],
  ['1,2,3', 'a comma is not read: use a point'],
  ['1 200', 'two numbers: 1200 or 1.200?'],
  ["1'200", 'after feet, inches stay below 12'],
  ['1\' 12"', 'after feet, inches stay below 12'],
  ['1/0', 'a fraction over zero'],
  ['21 1/0', 'a fraction over zero'],
  ['21 3/2', '3/2 is not less than 1'],
  ['21 2/2', '2/2 is not less than 1'],
  ['100001', 'more than 100 m'],
  ['9'.repeat(81), 'more than 80 characters'],
  ['9'.repeat(80), 'more than 100 m'],
  ['101 m', 'more than 100 m'],
  ['21.5 1/2', 'nothing between the numbers before “1/2”'],
  ['1½2', 'nothing between the numbers before “2”'],
  ['½2', 'nothing between the numbers before “2”'],
  ["1' 20mm", 'nothing between the numbers before “20mm”'],
  ['1/2/3', 'two slashes: put brackets round the part that belongs together'],
  ['47 1/2/2', 'two slashes: put brackets round the part that belongs together'],
  ['100 / 4/2', 'two slashes: put brackets round the part that belongs together'],
  ['44.45/2/2', 'two slashes: put brackets round the part that belongs together'],
  ['3--4', 'two signs in a row'],
  ['--4', 'two signs in a row'],
  ['3 + -4', 'two signs in a row'],
  ['3 * -4', 'two signs in a row'],
  ['47 1/2 /', 'nothing after ÷'],
  ['47 +', 'nothing after +'],
  ['(47 -)', 'nothing after −'],
  ['3 * / 4', 'nothing between × and /'],
  ['/ 4', 'nothing before /'],
  ['* 4', 'nothing before *'],
  ['3 + abc', '“abc” is not a length'],
  ['()', 'nothing in the brackets'],
  ['(1 + 2', 'a bracket is not closed'],
  ['1 + 2)', 'a bracket too many'],
  [')', 'a bracket too many'],
  ['2(3 + 4)', 'say before the bracket what is done with it: + - * /'],
  ['(3 + 4) 2', 'nothing between the numbers before “2”'],
  ['3 / 0', 'divided by 0'],
  ['3 / (1 - 1)', 'divided by 0'],
  ['3in * 2in', 'a length times a length is not a length'],
  ['3 / 2in', 'divide by a number, not by a length'],
  [`${'('.repeat(9)}1${')'.repeat(9)}`, 'brackets more than 8 deep'],
  ['1e3', '“e3” cannot be read'],
  ['0x10', '“x10” cannot be read'],
  ['2x4', '“x4” cannot be read'],
  ['1_000', '“_000” cannot be read'],
  ['12 constructor', '“constructor” cannot be read'],
  ['in', 'not a length'],
  ['abc', 'not a length'],
  ['NaN', 'not a length'],
  ['Infinity', 'not a length'],
  ['.', 'not a length'],
];

// Worked by hand; beside them how the sum is said to have been read.
const SUMS: readonly (readonly [string, LengthUnit, number, string])[] = [
  ['47 1/2 / 2', 'in', 23.75 * 25.4, '47 1/2 ÷ 2'],
  ['44 13/16 + 1', 'in', 45.8125 * 25.4, '44 13/16 + 1'],
  ['1200 - 44.45/2', 'mm', 1177.775, '1200 − 44.45 ÷ 2'],
  ['1200-44.45/2', 'mm', 1177.775, '1200 − 44.45 ÷ 2'],
  ['(1200 - 44.45) / 2', 'mm', 577.775, '(1200 − 44.45) ÷ 2'],
  ['21 - 1/2', 'in', 20.5 * 25.4, '21 − 1/2'],
  ['21-1/2', 'in', 21.5 * 25.4, '21 and 1/2'],
  ['1200-1/2', 'mm', 1200.5, '1200 and 1/2'],
  ['1 / 2 / 4', 'in', 25.4 / 8, '1 ÷ 2 ÷ 4'],
  ['1/2 / 4', 'in', 25.4 / 8, '1/2 ÷ 4'],
  ['6 / (1/2)', 'in', 12 * 25.4, '6 ÷ (1/2)'],
  ['100 / 4 1/2', 'mm', 100 / 4.5, '100 ÷ 4 1/2'],
  ['2 x 44.45', 'mm', 88.9, '2 × 44.45'],
  ['2×3/4', 'in', 1.5 * 25.4, '2 × 3/4'],
  ['9 ÷ 4', 'in', 2.25 * 25.4, '9 ÷ 4'],
  ['(47½)/2', 'in', 23.75 * 25.4, '(47 1/2) ÷ 2'],
  ['2 + 3 * 4', 'mm', 14, '2 + 3 × 4'],
  ['10 - 4 - 3', 'mm', 3, '10 − 4 − 3'],
  ['-2 * 3 + 1', 'mm', -5, '−2 × 3 + 1'],
  ['-(2 + 3)', 'mm', -5, '−(2 + 3)'],
  ['50mm + 2', 'in', 100.8, '50 mm + 2 in'],
  ['2 + 1" - 1mm', 'mm', 26.4, '2 mm + 1 in − 1 mm'],
  ["6' - 50mm", 'in', 1778.8, '6 ft − 50 mm'],
  ['10\' - 6"', 'in', 3200.4, '10 ft and 6 in'],
  ['1\' 9-1/2" / 2', 'mm', 273.05, '1 ft and 9 and 1/2 in ÷ 2'],
  ['2 * (3in + 4)', 'in', 355.6, '2 × (3 in + 4 in)'],
];

describe('parseLength', () => {
  it.each(READ)('reads %s in a job in %s', (text, unit, mm) => {
    const typed = parseLength(text, unit);
    expect(typed.ok).toBe(true);
    expect(typed.ok && typed.value).toBeCloseTo(mm, 9);
  });

  it.each(REFUSED)('refuses %j', (text, why) => {
    expect(parseLength(text, 'in')).toEqual({ ok: false, why });
    if (text !== '100001') return;
    expect(parseLength(text, 'mm')).toEqual({ ok: false, why });
  });

  it.each(SUMS)('works out %s in a job in %s', (text, unit, mm, as) => {
    const typed = parseLength(text, unit);
    expect(typed).toMatchObject({ ok: true, as });
    expect(typed.ok && typed.value).toBeCloseTo(mm, 9);
  });

  it('works out what JavaScript makes of the same sum, in its own order of operations', () => {
    const number = fc.integer({ min: 1, max: 99_999 }).map((hundredths) => String(hundredths / 100));
    const { sum } = fc.letrec<{ sum: string; part: string }>((tie) => ({
      part: fc.oneof(
        { depthSize: 'small', withCrossShrink: true },
        number,
        tie('sum').map((inner) => `(${inner})`),
      ),
      sum: fc
        .array(fc.tuple(fc.constantFrom(' + ', ' - ', '*', ' / ', '+', '/'), tie('part')), { maxLength: 3 })
        .chain((more) => tie('part').map((first) => first + more.flat().join(''))),
    }));
    let worked = 0;
    fc.assert(
      fc.property(sum, (text) => {
        // A lone a/b of whole numbers is a fraction: what follows another slash is refused, and tried elsewhere.
        const typed = parseLength(text, 'mm');
        // oxlint-disable-next-line no-implied-eval, no-new-func -- the other reader
        const expected = new Function(`return ${text}`)() as number;
        if (!typed.ok) return /^(two slashes|more than|divided by 0|brackets)/u.test(typed.why);
        worked += 1;
        return Math.abs(typed.value - expected) <= 1e-9 * Math.max(1, Math.abs(expected));
      }),
      { seed: 15, numRuns: 1000 },
    );
    expect(worked).toBeGreaterThan(400);
  });

  it('leaves no digit of its own in a sum', () => {
    expect(parseLength('0.1 + 0.2', 'mm')).toMatchObject({ value: 0.3 });
    expect(parseLength('1200 - 44.45/2', 'mm')).toMatchObject({ value: 1177.775 });
  });

  it('never gives a negative zero', () => {
    expect(parseLength('-0', 'mm')).toEqual({ ok: true, value: 0 });
  });

  it('answers any text without throwing, and only with finite lengths', () => {
    const pieces = fc.constantFrom(
      '1',
      '2',
      '0',
      '9',
      '.',
      ',',
      '/',
      ' ',
      '-',
      "'",
      '"',
      '½',
      '⁄',
      'mm',
      'in',
      'ft',
      'm',
      '(',
      ')',
      '*',
      ' x ',
      '+',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(pieces).map((all) => all.join('')),
        ),
        (text) => {
          const typed = parseLength(text, 'in');
          expect(typed.ok ? Number.isFinite(typed.value) : typed.why.length > 0).toBe(true);
        },
      ),
      { seed: 11, numRuns: 2000 },
    );
  });
});

describe('formatLength', () => {
  it.each([
    [546.1, '21 1/2', true],
    [546, '21 1/2', false],
    [0, '0', true],
    [0.3, '0', false],
    [-0.3, '0', false],
    [0.7, '1/32', false],
    [1.5, '1/16', false],
    [-82.55, '−3 1/4', true],
    [25.39, '1', false],
    [44.45, '1 3/4', true],
    [1e-9, '0', true],
  ])('shows %d mm in thirty-seconds as %s', (mm, text, exact) => {
    expect(formatLength(mm, 'in')).toMatchObject({ text, exact });
  });

  it('gives the parts of the fraction, in lowest terms', () => {
    expect(formatLength(-546.1, 'in')).toEqual({
      sign: '−',

      whole: 21,
      numerator: 1,
      denominator: 2,
      exact: true,
      text: '−21 1/2',
    });
    expect(inchFraction(7.14375, 32)).toMatchObject({ whole: 0, numerator: 9, denominator: 32, exact: true });
    expect(formatLength(7.14375, 'in', 1 / 32).text).toBe('9/32');
  });

  it('shows millimetres and decimal inches', () => {
    expect(formatLength(546.14, 'mm')).toMatchObject({ text: '546.1', exact: false, whole: 546 });
    expect(formatLength(546.1, 'mm')).toMatchObject({ text: '546.1', exact: true });
    expect(formatLength(-0.04, 'mm')).toMatchObject({ text: '0.0', sign: '', exact: false });
    expect(formatLength(12.5, 'mm', 1)).toMatchObject({ text: '13', exact: false });
    expect(decimalLength(546.1, 'in', 3)).toBe('21.500');
    expect(decimalLength(-3.2, 'mm', 2)).toBe('−3.20');
  });

  const lengths = fc.double({ min: -20_000, max: 20_000, noNaN: true });

  it('reads back to within half of what it shows', () => {
    fc.assert(
      fc.property(lengths, fc.constantFrom(2, 4, 8, 16, 32, 64), (mm, parts) => {
        for (const shown of [inchFraction(mm, parts)]) {
          const back = parseLength(shown.text, 'in');
          expect(back.ok).toBe(true);
          const off = Math.abs((back.ok ? back.value : Number.NaN) - mm);
          expect(off).toBeLessThanOrEqual(25.4 / parts / 2 + 1e-9);
          expect(shown.exact).toBe(off <= 1e-6);
        }
      }),
      { seed: 12, numRuns: 1000 },
    );
    fc.assert(
      fc.property(lengths, fc.constantFrom(0, 1, 2, 3), (mm, places) => {
        const back = parseLength(decimalLength(mm, 'mm', places), 'mm');
        expect(Math.abs((back.ok ? back.value : Number.NaN) - mm)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-9);
      }),
      { seed: 13, numRuns: 1000 },
    );
  });

  it('shows every sixteenth exactly', () => {
    for (let count = -400; count <= 400; count += 1) {
      const shown = formatLength((count * 25.4) / 16, 'in');
      expect(shown.exact).toBe(true);
      const value = shown.whole + shown.numerator / shown.denominator;
      expect(shown.sign === '' ? value : -value).toBe(count / 16);
    }
  });
});

it('reads inches to the nearest double, so that what is typed is what is stored', () => {
  for (const [text, mm] of [
    ['21 1/2', 546.1],
    ['48 7/8', 1241.425],
    ['1\' 9 1/2"', 546.1],
    ['0.1', 2.54],
  ] as const) {
    expect(parseLength(text, 'in')).toEqual({ ok: true, value: mm });
  }
});
