/**
 * Text as a STEP file spells it (ISO 10303-21, 6.4.3): plain characters as they are, a quote and a backslash doubled,
 * everything else by its code point. A file so written holds nothing but printable ASCII.
 */

/** The inside of a string literal, without its quotes. */
export function part21Text(text: string): string {
  return text.replaceAll(/[^ -~]+|['\\]/gu, (some) => (some === "'" || some === '\\' ? some + some : byCode(some)));
}

/** \X2\ and four hexadecimal digits a character, or \X4\ and eight where one lies beyond the first plane. */
function byCode(text: string): string {
  const codes = Array.from(text, (character) => character.codePointAt(0)!);
  const [sign, digits] = codes.some((code) => code > 0xffff) ? ['X4', 8] : ['X2', 4];
  return `\\${sign}\\${codes.map((code) => code.toString(16).toUpperCase().padStart(digits, '0')).join('')}\\X0\\`;
}
