/**
 * What lengths and angles have in common when a person types them: other dashes, primes and spaces than the plain
 * ones, and commas, which are refused because 1,200 means two different things on two sides of the sea.
 */

/**
 * The value read, with how it was read where that has to be said ("47 1/2 ÷ 2"), or why it was not: a short phrase to show beside
 * the field. `worked`: it is the outcome of a sum, and was typed nowhere.
 */
export type Typed =
  | { readonly ok: true; readonly value: number; readonly as?: string; readonly worked?: true }
  | { readonly ok: false; readonly why: string };

/** What was typed, as a value; or why it is none. */
export const read = (value: number): Extract<Typed, { ok: true }> => ({ ok: true, value });
export const refused = (why: string): Extract<Typed, { ok: false }> => ({ ok: false, why });

/** An unsigned decimal number as it stands in a pattern: 21, 21.5, .5, 21. */
export const DECIMAL = String.raw`(?:\d+\.?\d*|\.\d+)`;

/** The same text with plain spaces, hyphens and quote marks, in lower case. */
export function plainText(text: string): string {
  return text
    .replace(/\s+/gu, ' ')
    .replace(/[−–—]/gu, '-')
    .replace(/[′’‘]/gu, "'")
    .replace(/[″”“]|''/gu, '"')
    .trim()
    .toLowerCase();
}

/** Why a text with a comma is not read, with what to type in its place; null when it has none. */
export function commaRefusal(plain: string): string | null {
  if (!plain.includes(',')) return null;
  const number = /[\d.,]*,[\d.,]*/u.exec(plain)![0];
  const withPoint = number.replace(',', '.');
  const closedUp = number.replaceAll(',', '');
  if (/^\d{1,3},\d{3}$/u.test(number)) return `a comma is not read: type ${withPoint} or ${closedUp}`;
  if (/^\d{1,3}(?:,\d{3})+(?:\.\d*)?$/u.test(number)) return `leave the commas out: ${closedUp}`;
  if (/^\d*,\d+$/u.test(number)) return `use a point: ${withPoint.startsWith('.') ? '0' : ''}${withPoint}`;
  return 'a comma is not read: use a point';
}

/** A number with a fixed count of decimals, a true minus sign, and no sign on zero. */
export function fixedText(value: number, places: number): string {
  const digits = Math.abs(value).toFixed(places);
  return value < 0 && Number(digits) !== 0 ? `−${digits}` : digits;
}
