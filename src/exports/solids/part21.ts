/**
 * Text as a STEP file spells it (ISO 10303-21, 6.4.3). Letters, digits and harmless signs stand as they are, everything else by
 * its code point: quotes, backslashes and semicolons too, which the standard would let stand but at which readers have been seen to
 * stumble. A file so written holds nothing but printable ASCII.
 */

/** The inside of a string literal, without its quotes. */
export const part21Text = (text: string): string => text.replaceAll(/[^A-Za-z0-9 ()+,./:=_-]+/gu, byCode);

/** \X2\ and four hexadecimal digits a character, or \X4\ and eight where one lies beyond the first plane. */
function byCode(text: string): string {
  const codes = Array.from(text, (character) => character.codePointAt(0)!);
  const [sign, digits] = codes.some((code) => code > 0xffff) ? ['X4', 8] : ['X2', 4];
  return `\\${sign}\\${codes.map((code) => code.toString(16).toUpperCase().padStart(digits, '0')).join('')}\\X0\\`;
}
