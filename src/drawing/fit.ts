/** Text brought into the room there is: made smaller, then cut short with a mark that says so; or set on several lines. */
import type { Lettering } from './lettering.ts';

/** Nothing is set smaller: its figures are 2.2 mm high. */
export const LEAST_SIZE = 3.1;

export interface Fitted {
  readonly text: string;
  /** Height of the letter's body, mm. */
  readonly size: number;
}

/** One line no wider than `space`: smaller down to `least`, and only then cut short with three dots. */
export function shrunk(
  { settable, width }: Lettering,
  text: string,
  space: number,
  size: number,
  bold = false,
  least = LEAST_SIZE,
): Fitted {
  const shown = settable(text);
  const wide = width(shown, size, bold);
  if (wide <= space) return { text: shown, size };
  const smaller = Math.max(least, (size * space) / wide);
  // Made smaller until it fits, it does; what its width is worked out to may be a rounding more than the room.
  if (smaller > least) return { text: shown, size: smaller };
  const narrow = (cut: string): boolean => width(cut, smaller, bold) <= space;
  return { text: narrow(shown) ? shown : elided(shown, narrow), size: smaller };
}

/** As many lines as it needs, none wider than `space`; of more than `most` the last is cut short with three dots. */
export function wrapped(
  { settable, width }: Lettering,
  text: string,
  space: number,
  size: number,
  bold = false,
  most = Infinity,
): readonly string[] {
  const fits = (line: string): boolean => width(line, size, bold) <= space;
  const lines: string[] = [];
  let line = '';
  for (const word of settable(text).split(' ')) {
    // What comes after is not shown.
    if (lines.length > most) break;
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = broken(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1)!;
  }
  lines.push(line);
  if (lines.length <= most) return lines;
  const kept = lines.slice(0, most);
  return [...kept.slice(0, -1), elided(`${kept.at(-1)} ${lines[most]}`, fits)];
}

/** A word that is wider than the line, in pieces that are not. */
function broken(word: string, fits: (line: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const sign of word) {
    if (piece !== '' && !fits(piece + sign)) {
      pieces.push(piece);
      piece = '';
    }
    piece += sign;
  }
  return [...pieces, piece];
}

/** The longest beginning that fits together with three dots. */
function elided(text: string, fits: (line: string) => boolean): string {
  const signs = Array.from(text);
  let [kept, most] = [0, signs.length];
  const cut = (count: number): string => `${signs.slice(0, count).join('').trimEnd()}…`;
  while (kept < most) {
    const middle = Math.ceil((kept + most) / 2);
    if (fits(cut(middle))) kept = middle;
    else most = middle - 1;
  }
  return cut(kept);
}
