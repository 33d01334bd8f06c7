/** Words and numbers of a file that is text, straight from its bytes: a text of half a million lines is never one string. */

/** Reads on from word to word. */
export interface Text {
  /** Of the word that comes next, 1 = first. */
  line(): number;
  /** Bytes that have been read. */
  at(): number;
  /** The next word of this line, null at its end. */
  word(): string | null;
  /** Whether the next word of this line is that, given in small letters and written in any; it is passed only then. */
  passes(word: string): boolean;
  /** The next word of this line as a number; NaN where it is none, and where the line has ended. */
  number(): number;
  /** A whole number that the next word begins with, up to a slash or its end; NaN where it begins with none, and the word is then not passed. */
  whole(): number;
  /** Whether this line has no more words. */
  atLineEnd(): boolean;
  /** Goes to the next line; false where there is none. */
  nextLine(): boolean;
}

const [TAB, NEW_LINE, RETURN, SPACE, PLUS, MINUS, POINT, ZERO, NINE, SLASH, EXPONENT] = [
  9, 10, 13, 32, 43, 45, 46, 48, 57, 47, 101,
];
/** The bit by which a small letter differs from its capital. */
const SMALL = 32;

/** Characters of a word that are kept: no word of a format is longer. */
const LONGEST_WORD = 200;

/** Digits of a whole number that a double holds exactly whichever they are, and the powers of ten that it does. */
const EXACT_DIGITS = 15;
const POWERS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/** A line ends with a new line, a return, or both. */
export function textOf(bytes: Uint8Array, from = 0): Text {
  let at = from;
  let line = 1;

  const skip = (): void => {
    while (bytes[at] === SPACE || bytes[at] === TAB) at += 1;
  };
  const isEnd = (byte: number | undefined): boolean => byte === undefined || byte === NEW_LINE || byte === RETURN;
  const isWord = (byte: number | undefined): boolean => !isEnd(byte) && byte !== SPACE && byte !== TAB;

  function word(): string | null {
    skip();
    const start = at;
    while (isWord(bytes[at])) at += 1;
    if (at === start) return null;
    return String.fromCharCode(...bytes.subarray(start, Math.min(at, start + LONGEST_WORD)));
  }

  function passes(wanted: string): boolean {
    skip();
    for (let i = 0; i < wanted.length; i++) {
      const [byte, character] = [bytes[at + i]!, wanted.charCodeAt(i)];
      if (byte !== character && (byte | SMALL) !== character) return false;
    }
    if (isWord(bytes[at + wanted.length])) return false;
    at += wanted.length;
    return true;
  }

  /** A number as everybody writes it whose digits and power of ten a double holds is one rounding away (Clinger 1990); any other is read by the language. */
  function number(): number {
    skip();
    const start = at;
    const negative = bytes[at] === MINUS;
    if (negative || bytes[at] === PLUS) at += 1;
    let [value, digits, places, seen] = [0, 0, 0, 0];
    let isFraction = false;
    for (; ; at += 1) {
      const byte = bytes[at];
      if (byte === POINT && !isFraction) isFraction = true;
      else if (byte !== undefined && byte >= ZERO && byte <= NINE) {
        value = value * 10 + (byte - ZERO);
        seen += 1;
        if (digits > 0 || byte !== ZERO) digits += 1;
        if (isFraction) places += 1;
      } else break;
    }
    let power = -places;
    if (seen > 0 && (bytes[at]! | SMALL) === EXPONENT) {
      const sign = bytes[at + 1] === MINUS ? -1 : 1;
      at += bytes[at + 1] === MINUS || bytes[at + 1] === PLUS ? 2 : 1;
      let exponent = 0;
      for (seen = 0; bytes[at]! >= ZERO && bytes[at]! <= NINE; at += 1, seen += 1)
        exponent = exponent * 10 + bytes[at]! - ZERO;
      power += sign * exponent;
    }
    if (seen > 0 && !isWord(bytes[at]) && digits <= EXACT_DIGITS && Math.abs(power) < POWERS.length) {
      const size = power < 0 ? value / POWERS[-power]! : value * POWERS[power]!;
      return negative ? -size : size;
    }
    at = start;
    const text = word();
    return text !== null && /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/u.test(text) ? Number(text) : NaN;
  }

  function whole(): number {
    skip();
    const start = at;
    const negative = bytes[at] === MINUS;
    if (negative) at += 1;
    let value = 0;
    const first = at;
    for (; bytes[at]! >= ZERO && bytes[at]! <= NINE; at += 1) value = value * 10 + bytes[at]! - ZERO;
    if (at === first || (isWord(bytes[at]) && bytes[at] !== SLASH)) {
      at = start;
      return NaN;
    }
    while (isWord(bytes[at])) at += 1;
    return negative ? -value : value;
  }

  function nextLine(): boolean {
    while (!isEnd(bytes[at])) at += 1;
    if (at >= bytes.length) return false;
    at += bytes[at] === RETURN && bytes[at + 1] === NEW_LINE ? 2 : 1;
    line += 1;
    return at < bytes.length;
  }

  return {
    line: () => line,
    at: () => at,
    word,
    passes,
    number,
    whole,
    atLineEnd() {
      skip();
      return isEnd(bytes[at]);
    },
    nextLine,
  };
}
