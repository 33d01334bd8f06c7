/**
 * How a fault is worded: one line, the place in the file first. Text that came out of a file is quoted, shortened and
 * escaped, so that no file can break the line, turn the reading direction or fill the screen.
 */
/** What is wrong with a file or an edit, and where: "members[3].path[1]". Place '' is the whole file. */
export interface Fault {
  readonly place: string;
  readonly message: string;
}

/** What comes of work that bad data can stop: the value, or what stands in its way. */
export type Outcome<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** More faults than this help nobody: the rest is counted. */
const MOST_FAULTS = 50;
const MOST_CHARACTERS = 40;

/** A fault at that place of the file. */
export const fault = (place: string, message: string): Fault => ({ place, message });

/** Of numbers that are none, or that count things: the same words wherever one comes in. */
export const NOT_FINITE = 'not a finite number';
export const NOT_WHOLE = 'not a whole number';

/** `members[3].path[1]: no node "a-fot"`; without a place, the message alone. */
export const faultLine = ({ place, message }: Fault): string => (place === '' ? message : `${place}: ${message}`);

/** Text from a file or a person, in double quotes: escaped to one line, at most 40 characters. */
export function quoted(text: string): string {
  const start = Array.from(text.slice(0, 2 * MOST_CHARACTERS));
  const whole = text.length <= 2 * MOST_CHARACTERS && start.length <= MOST_CHARACTERS;
  const shown = whole ? text : `${start.slice(0, MOST_CHARACTERS - 1).join('')}…`;
  return printable(JSON.stringify(shown));
}

/** The text with what moves a terminal's cursor, ends a line or turns the reading direction written as \u001b. */
export const printable = (text: string): string =>
  text.replace(
    /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu,
    (character) => `\\u${character.codePointAt(0)!.toString(16).padStart(4, '0')}`,
  );

/** A number in a fault's text: at most three decimals, in the file's own unit, without the noise of binary arithmetic. */
export const figure = (value: number): string => String(Number(value.toFixed(3)));

/** A place in the file from its keys: members[3].path[1]; keys that are not plain words stand quoted in brackets. */
export function placeOf(keys: readonly (string | number)[]): string {
  return keys.reduce<string>((place, key) => {
    if (typeof key === 'number') return `${place}[${key}]`;
    if (!/^[A-Za-z]\w{0,39}$/u.test(key)) return `${place}[${quoted(key)}]`;
    return place === '' ? key : `${place}.${key}`;
  }, '');
}

/** The first 50, and how many more there are. */
export function capped(faults: readonly Fault[]): readonly Fault[] {
  if (faults.length <= MOST_FAULTS) return faults;
  return [...faults.slice(0, MOST_FAULTS), fault('', `and ${faults.length - MOST_FAULTS} more`)];
}
