/**
 * Widths of the screen's letters, for drawings that are laid out by them: those of its face, B612, which both its weights share and
 * whose figures are all of one width. In parts of the letter's body. A fraction is set small, as SetWords does it.
 */
import type { Lettering } from '../../drawing/lettering.ts';
import { plainLine } from '../../core/job/plain-line.ts';

export const HAIR_SPACE = '\u200a';

const BY_WIDTH: readonly (readonly [number, string])[] = [
  [0.2, HAIR_SPACE],
  [0.3, ' \u00a0,·:.°ijI'],
  [0.35, 'l⁄'],
  [0.4, 'frt'],
  [0.45, 'sJ'],
  [0.5, 'cz'],
  [0.55, '−/aekvxyFLS'],
  [0.6, '+bdghnopquCEKPTYZ'],
  [0.65, '0123456789ABDGRVX'],
  [0.75, 'wHNU'],
];
/** The widest letter that there is; what stands in no row is taken to be so wide. */
const WIDEST = 0.95;
const WIDTHS = new Map(BY_WIDTH.flatMap(([width, signs]) => Array.from(signs, (sign) => [sign, width] as const)));

/** Of the letter's body: how large a fraction's figures are set. */
export const FRACTION_SIZE = 0.68;

/** What stands before a fraction, its two figures, and what stands after it. */
const FRACTION = /^([^⁰¹²³⁴⁵⁶⁷⁸⁹]*)([⁰¹²³⁴⁵⁶⁷⁸⁹]+)⁄([₀₁₂₃₄₅₆₇₈₉]+)(.*)$/u;

interface SplitFraction {
  readonly before: string;
  readonly numerator: string;
  readonly denominator: string;
  readonly after: string;
}

/** Null where the text has no fraction. The face has no small figures: they are ordinary ones here, to be set small. */
export function splitFraction(text: string): SplitFraction | null {
  const found = FRACTION.exec(text);
  if (found === null) return null;
  const [, before, upper, lower, after] = found as unknown as [string, string, string, string, string];
  return {
    // Small figures need no space to stand apart from the whole inches.
    before: before.replace(/(?<=\d) $/u, ''),
    numerator: Array.from(upper, (sign) => '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(sign)).join(''),
    denominator: Array.from(lower, (sign) => '₀₁₂₃₄₅₆₇₈₉'.indexOf(sign)).join(''),
    after,
  };
}

export const screenLetters: Lettering = {
  settable: plainLine,
  width: (text, size) => size * widthOf(text),
};

/** Of the letter's body. */
export function widthOf(text: string): number {
  const fraction = splitFraction(text);
  if (fraction === null) return Array.from(text).reduce((sum, sign) => sum + (WIDTHS.get(sign) ?? WIDEST), 0);
  const { before, numerator, denominator, after } = fraction;
  return widthOf(before) + FRACTION_SIZE * widthOf(numerator + denominator) + WIDTHS.get('⁄')! + widthOf(after);
}
