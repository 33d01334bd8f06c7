/**
 * Text where no typeface is at hand to be measured: SVG and DXF are set by the program that opens them. What a person typed
 * may hold line breaks and marks that turn the reading direction round: none of that may tear a line of the drawing.
 */
import { plainLine } from '../core/job/plain-line.ts';
import type { Lettering } from './lettering.ts';

/** Of the letter's body: sans faces set most text narrower than this. Wide on purpose: it is for keeping inside. */
const WIDEST = 0.66;
const WIDEST_BOLD = 0.74;
/** CJK, emoji and whatever else lies beyond the alphabets is as wide as it is high. */
const BEYOND_ALPHABETS = 0x2e80;

/** Stands in for a typeface that is not known: widths are the most that the text may need. */
export const unknownFace: Lettering = {
  settable: plainLine,
  width: (text, size, bold) =>
    Array.from(text).reduce((sum, sign) => {
      const wide = sign.codePointAt(0)! >= BEYOND_ALPHABETS;
      return sum + size * (wide ? 1 : bold ? WIDEST_BOLD : WIDEST);
    }, 0),
};
