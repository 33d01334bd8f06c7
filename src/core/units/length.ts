/**
 * Lengths as people type and read them: 21 1/2, 21½, 1' 9-1/2", 546mm, 54.6 cm, and sums of them (sum.ts). In the core every
 * length is in millimetres; an inch is 25.4 mm exactly (international inch). A bare number is in the job's own unit.
 *
 * What could be read in two ways is refused with a reason, never guessed: a wrong inch costs a tube.
 */
import { FARTHEST } from '../geometry/tolerance.ts';
import { readSum, type Summed, type Term } from './sum.ts';
import { commaRefusal, DECIMAL, fixedText, plainText, read, refused, type Typed } from './typed.ts';

export type LengthUnit = 'in' | 'mm';

/** Exact by definition (international inch). */
export const MM_PER_INCH = 25.4;

/** Below this, mm, a difference is rounding left by arithmetic, not a length: a shown value counts as exact. */
export const ROUND_OFF = 1e-6;

/** Fifths of a millimetre in a unit: whole numbers, so that 21.5 in is 546.1 mm and not the double before it. */
const FIFTHS_PER: Readonly<Record<string, number>> = {
  cm: 50,
  m: 5000,
  in: 127,
  inch: 127,
  inches: 127,
  '"': 127,
  ft: 1524,
  "'": 1524,
};

const toMillimetres = (count: number, unit: string): number =>
  unit === 'mm' ? count : (count * FIFTHS_PER[unit]!) / 5;

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
  '↉': '0/3',
};

/** A count of some unit: 21, 21.5, 5/16, 21 1/2, 21-1/2. Spaces round the hyphen, or round a lone slash, make a sum of it. */
const COUNT = String.raw`(?:(?:\d+(?: |-)\d+ ?/ ?\d+|\d+/\d+)(?![.\d])|${DECIMAL})`;
const UNIT = String.raw`(?: ?(?:(mm|cm|m|inches|inch|in|ft)(?![a-z])|(["'])))?`;
const SINGLE = new RegExp(`^(${COUNT})${UNIT}`, 'u');
const FEET = String.raw`(${DECIMAL}) ?(?:'|ft(?![a-z]))`;
const FEET_AND_INCHES = new RegExp(`^${FEET}( - | |-)?(${COUNT})(?: ?(?:(?:inches|inch|in)(?![a-z])|"))?`, 'u');
/** What makes the number after feet a length of its own: 6' - 50mm. */
const OTHER_UNIT = /^ ?(?:(?:mm|cm|m|ft)(?![a-z])|')/u;

/**
 * Reads a typed length, or a sum of lengths (sum.ts). Value in mm. A bare number, or fraction, is in `unit`; after feet it is
 * inches. Refused with a reason: nothing typed, commas, a fraction that is none (over zero, or 21 3/2), 12 inches and more
 * after feet, anything beyond 100 m, anything else.
 */
export function parseLength(text: string, unit: LengthUnit): Typed {
  const plain = plainText(text);
  if (plain === '') return refused('type a length');
  const comma = commaRefusal(plain);
  if (comma !== null) return refused(comma);
  const typed = readSum(spellFractions(plain), LENGTHS[unit]);
  return typed.ok && !(Math.abs(typed.value) <= FARTHEST) ? refused('more than 100 m') : typed;
}

const lengthsIn = (unit: LengthUnit): Summed => ({
  what: 'a length',
  unit: ` ${unit}`,
  toBase: (count) => toMillimetres(count, unit),
  term: readTerm,
});
const LENGTHS: Readonly<Record<LengthUnit, Summed>> = { in: lengthsIn('in'), mm: lengthsIn('mm') };

/** 21½ becomes 21 1/2, and the fraction slash a plain one. A digit straight after the sign stays apart from it. */
function spellFractions(plain: string): string {
  return plain
    .replace(/(\d ?)?([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒↉])(?=(\d)?)/gu, (_, before: string | undefined, sign: string, after) =>
      [before === undefined ? '' : `${before.trim()} `, FRACTION_SIGNS[sign], after === undefined ? '' : ' '].join(''),
    )
    .replaceAll('⁄', '/');
}

function readTerm(text: string): Term | Refusal | null {
  const both = FEET_AND_INCHES.exec(text);
  if (both && !OTHER_UNIT.test(text.slice(both[0].length))) {
    const inches = readCount(both[3]!);
    if (!inches.ok) return inches;
    if (inches.value >= 12) return refused('after feet, inches stay below 12');
    // 10' - 6" is how drawings write ten feet six.
    const joined = both[2]?.includes('-') === true || both[3]!.includes('-');
    return {
      ok: true,
      letters: both[0].length,
      value: toMillimetres(Number(both[1]) * 12 + inches.value, 'in'),
      named: true,
      fraction: false,
      joined,
      as: `${both[1]} ft ${joined ? 'and ' : ''}${spelledCount(both[3]!)} in`,
    };
  }
  const single = SINGLE.exec(text);
  if (!single) return null;
  const count = readCount(single[1]!);
  if (!count.ok) return count;
  const unit = single[2] ?? single[3];
  return {
    ok: true,
    letters: single[0].length,
    value: unit === undefined ? count.value : toMillimetres(count.value, unit),
    named: unit !== undefined,
    fraction: unit === undefined && /^\d+\/\d+$/u.test(single[1]!),
    joined: single[1]!.includes('-'),
    as: `${spelledCount(single[1]!)}${unit === undefined ? '' : ` ${SPELLED[unit] ?? unit}`}`,
  };
}

type Refusal = Extract<Typed, { ok: false }>;

const SPELLED: Readonly<Record<string, string>> = { '"': 'in', "'": 'ft', inch: 'in', inches: 'in' };

/** 21-1/2 as "21 and 1/2". */
const spelledCount = (count: string): string => count.replace('-', ' and ').replace(/ ?\/ ?/u, '/');

/** The number of units in a text that matched COUNT. */
function readCount(count: string): Typed {
  const fraction = /^(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/u.exec(count);
  if (!fraction) return read(Number(count));
  const whole = fraction[1] === undefined ? 0 : Number(fraction[1]);
  const numerator = Number(fraction[2]);
  const denominator = Number(fraction[3]);
  if (denominator === 0) return refused('a fraction over zero');
  if (fraction[1] !== undefined && numerator >= denominator) {
    return refused(`${fraction[2]}/${fraction[3]} is not less than 1`);
  }
  return read((whole * denominator + numerator) / denominator);
}

/** A length to set on screen: the parts, so that a fraction can be drawn as one, and the same as text. */
export interface ShownLength {
  /** '−' or ''. */
  readonly sign: '' | '−';
  /** Whole inches, or with decimals the whole number in text. */
  readonly whole: number;
  /** Lowest terms; 0 over 1 where there is no fraction. */
  readonly numerator: number;
  readonly denominator: number;
  /** False when the length was rounded to be shown. */
  readonly exact: boolean;
  /** Reads back through parseLength with the same unit. */
  readonly text: string;
}

/** Inches to the nearest 1/`parts` (16 or 32 in a shop), as a fraction in lowest terms: 21 1/2. */
export function inchFraction(mm: number, parts: number): ShownLength {
  const shown = splitInches(mm, parts);
  return { ...shown, text: `${shown.sign}${inchText(shown)}` };
}

/** A decimal number of `unit`s with `places` decimals: 21.500 or 546.1. */
export function decimalLength(mm: number, unit: LengthUnit, places: number): string {
  return fixedText(unit === 'in' ? mm / MM_PER_INCH : mm, places);
}

/** The smallest step in which a length is shown, in the unit: the same in a field, a table, a picture, a sentence and on a sheet. */
export const SHOWN_STEP: Readonly<Record<LengthUnit, number>> = { in: 1 / 32, mm: 0.1 };

/**
 * A length as a job with this unit shows it, without the unit's name: inches as a fraction, millimetres with decimals.
 * `resolution` is the smallest step shown, in that unit: 1/16, 1/32; 0.1, 0.01, 1. Another than SHOWN_STEP is for what a tape or
 * a steel rule is read to.
 */
export function formatLength(mm: number, unit: LengthUnit, resolution = SHOWN_STEP[unit]): ShownLength {
  if (unit === 'in') return inchFraction(mm, Math.round(1 / resolution));
  const text = decimalLength(mm, 'mm', Math.round(-Math.log10(resolution)));
  const shown = Math.abs(Number(text.replace('−', '-')));
  return {
    sign: text.startsWith('−') ? '−' : '',
    whole: Math.trunc(shown),
    numerator: 0,
    denominator: 1,
    exact: Math.abs(Math.abs(mm) - shown) <= ROUND_OFF,
    text,
  };
}

function splitInches(mm: number, parts: number): Omit<ShownLength, 'text'> {
  const count = Math.round((Math.abs(mm) / MM_PER_INCH) * parts);
  const common = greatestCommonDivisor(count % parts, parts);
  return {
    sign: mm < 0 && count > 0 ? '−' : '',
    whole: Math.floor(count / parts),
    numerator: (count % parts) / common,
    denominator: parts / common,
    exact: Math.abs(Math.abs(mm) - (count / parts) * MM_PER_INCH) <= ROUND_OFF,
  };
}

const greatestCommonDivisor = (a: number, b: number): number => (a === 0 ? b : greatestCommonDivisor(b % a, a));

function inchText({ whole, numerator, denominator }: Pick<ShownLength, 'whole' | 'numerator' | 'denominator'>): string {
  if (numerator === 0) return String(whole);
  return whole === 0 ? `${numerator}/${denominator}` : `${whole} ${numerator}/${denominator}`;
}
