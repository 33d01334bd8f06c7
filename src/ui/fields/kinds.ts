/**
 * The kinds of value a person types: how each is shown, read, read back to the person, and nudged. Every field and
 * every table cell is made from one of these, so that a number behaves the same wherever it stands.
 */
import { GREATEST_ANGLE, LEAST_ANGLE, LEAST_SIZE, LONGEST_NAME } from '../../core/job/limits.ts';
import { shownName } from '../../core/job/shown.ts';
import { formatAngle, parseAngle } from '../../core/units/angle.ts';
import { decimalLength, formatLength, MM_PER_INCH, parseLength, type LengthUnit } from '../../core/units/length.ts';
import { fixedText, plainText } from '../../core/units/typed.ts';

/** `as`: how the text was read, where that has to be said: "47 1/2 ÷ 2". `worked`: it is a sum. */
export type Entered<T> =
  | { readonly ok: true; readonly value: T; readonly as?: string; readonly worked?: true }
  | { readonly ok: false; readonly why: string };

export interface ValueKind<T> {
  /** As it stands in the field; reads back to the same value, to what is shown of it. */
  show(value: T): string;
  read(text: string): Entered<T>;
  /** How a value was understood, in words: "= 21 1/2 in · 546.1 mm"; '' where the text says it all. */
  readBack(value: T): string;
  /** The value `steps` nudges on (negative: back); absent where there is nothing to nudge. */
  nudge?(value: T, steps: number): T;
  /** Which touch keyboard: inches need the space and the slash that a number pad lacks, and what may be below zero the minus. */
  readonly inputMode: 'text' | 'decimal';
}

/** What a field says of a text that it can read: how a sum was read and what it comes to, "47 1/2 ÷ 2 = 23 3/4 in · 603.3 mm". */
export function readBackOf<T>(entered: Extract<Entered<T>, { ok: true }>, kind: ValueKind<T>): string {
  const value = kind.readBack(entered.value);
  if (entered.as === undefined) return value;
  return `${entered.as} ${value === '' ? `= ${kind.show(entered.value)}` : value}`;
}

/** Of many texts at once, where nobody sees how each was read: a sum is not taken, since 12-3 may well be no sum. */
export function readUnseen<T>(text: string, kind: ValueKind<T>): Entered<T> {
  const entered = kind.read(text);
  return entered.ok && entered.worked ? { ok: false, why: 'a sum is worked out only where it is typed' } : entered;
}

/** Lengths in mm, shown in the job's unit; a nudge is 1/16 in or 1 mm. */
export function lengthKind(unit: LengthUnit): ValueKind<number> {
  const step = unit === 'in' ? MM_PER_INCH / 16 : 1;
  return {
    show: (mm) => formatLength(mm, unit).text,
    read: (text) => parseLength(text, unit),
    readBack: (mm) => readLengthBack(mm, unit),
    nudge: (mm, steps) => mm + step * steps,
    inputMode: 'text',
  };
}

const noMinus = (unit: LengthUnit): 'text' | 'decimal' => (unit === 'in' ? 'text' : 'decimal');

/** Walls of tube, read off a certificate rather than a tape: 0.120 in, 3.05 mm. A nudge is 0.001 in or 0.05 mm. */
export function wallKind(unit: LengthUnit): ValueKind<number> {
  const step = unit === 'in' ? MM_PER_INCH / 1000 : 0.05;
  return {
    ...sizeKind(unit),
    show: (mm) => decimalLength(mm, unit, unit === 'in' ? 3 : 2),
    readBack: (mm) => `= ${decimalLength(mm, 'in', 4)} in · ${decimalLength(mm, 'mm', 3)} mm`,
    nudge: (mm, steps) => mm + step * steps,
    inputMode: 'decimal',
  };
}

/** Lengths that are nothing unless greater than zero: diameters, radii, sizes of a box. */
export function sizeKind(unit: LengthUnit): ValueKind<number> {
  const kind = lengthKind(unit);
  return {
    ...kind,
    read(text) {
      const entered = kind.read(text);
      if (!entered.ok || entered.value >= LEAST_SIZE) return entered;
      return { ok: false, why: entered.value <= 0 ? 'has to be more than 0' : `has to be ${LEAST_SIZE} mm or more` };
    },
    inputMode: noMinus(unit),
  };
}

/** How far marks lie off, from 0 to `greatest` mm: decimals of the job's unit, below what a tape's fractions show. A nudge is 0.005 in or 0.1 mm. */
export function deviationKind(unit: LengthUnit, greatest: number): ValueKind<number> {
  const step = unit === 'in' ? MM_PER_INCH / 200 : 0.1;
  const show = (mm: number): string => trimZeros(decimalLength(mm, unit, unit === 'in' ? 3 : 2));
  return {
    show,
    read(text) {
      const entered = parseLength(text, unit);
      if (!entered.ok || (entered.value >= 0 && entered.value <= greatest)) return entered;
      return { ok: false, why: `has to be from 0 to ${show(greatest)} ${unit}` };
    },
    readBack: () => '',
    nudge: (mm, steps) => Math.min(greatest, Math.max(0, mm + step * steps)),
    inputMode: 'decimal',
  };
}

/** What a tape reads: nothing below zero. */
export function tapeKind(unit: LengthUnit): ValueKind<number> {
  const kind = lengthKind(unit);
  return {
    ...kind,
    read(text) {
      const entered = kind.read(text);
      return entered.ok && entered.value < 0 ? { ok: false, why: 'a tape reads nothing below 0' } : entered;
    },
    inputMode: noMinus(unit),
  };
}

/** The same, or nothing where it is not said. */
export const orNothing = <T>(kind: ValueKind<T>): ValueKind<T | null> => ({
  show: (value) => (value === null ? '' : kind.show(value)),
  read: (text) => (text.trim() === '' ? { ok: true, value: null } : kind.read(text)),
  readBack: (value) => (value === null ? '' : kind.readBack(value)),
  inputMode: kind.inputMode,
});

function readLengthBack(mm: number, unit: LengthUnit): string {
  const inches = formatLength(mm, 'in');
  const sign = (unit === 'in' ? inches.exact : formatLength(mm, 'mm').exact) ? '=' : '≈';
  const metric = `${decimalLength(mm, 'mm', 1)} mm`;
  const imperial = `${inches.text} in`;
  return unit === 'in' ? `${sign} ${imperial} · ${metric}` : `${sign} ${metric} · ${imperial}`;
}

/** Angles in degrees, to a hundredth; a nudge is half a degree, what a digital level shows without doubt. */
export const angleKind: ValueKind<number> = {
  show: (degrees) => trimZeros(formatAngle(degrees, 2)),
  read: parseAngle,
  readBack: (degrees) => `= ${trimZeros(formatAngle(degrees, 2))}°`,
  nudge: (degrees, steps) => degrees + steps / 2,
  inputMode: 'text',
};

/** What a bender is pulled to and what comes out of it: a hundredth of a degree to 200. */
export const bendAngleKind: ValueKind<number> = {
  ...angleKind,
  read(text) {
    const entered = parseAngle(text);
    if (!entered.ok) return entered;
    if (entered.value <= 0) return { ok: false, why: 'has to be more than 0°' };
    if (entered.value < LEAST_ANGLE) return { ok: false, why: `has to be ${LEAST_ANGLE}° or more` };
    return entered.value > GREATEST_ANGLE ? { ok: false, why: `beyond ${GREATEST_ANGLE}°` } : entered;
  },
  nudge: (degrees, steps) => Math.min(GREATEST_ANGLE, Math.max(0.5, degrees + steps / 2)),
  inputMode: 'decimal',
};

/** A plane's rotation: from half a turn one way to half a turn the other. */
export const rotationKind: ValueKind<number> = {
  ...angleKind,
  read(text) {
    const entered = parseAngle(text);
    return entered.ok && Math.abs(entered.value) > 180 ? { ok: false, why: 'beyond half a turn' } : entered;
  },
};

/** A day as 2026-03-02, or nothing. */
export const dayKind: ValueKind<string> = {
  show: (day) => day,
  read(text) {
    const day = text.trim();
    const parts = /^(\d{4})-(\d{2})-(\d{2})$/u.exec(day)?.slice(1).map(Number);
    if (day === '' || (parts !== undefined && isDay(parts))) return { ok: true, value: day };
    return { ok: false, why: 'write the day as 2026-03-02' };
  },
  readBack: () => '',
  inputMode: 'text',
};

function isDay([year = 0, month = 0, day = 0]: readonly number[]): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

/** Plain numbers between two limits, both allowed. */
export function numberKind(least: number, greatest: number, step: number): ValueKind<number> {
  return {
    show: (value) => trimZeros(fixedText(value, 4)),
    read: (text) => readNumber(text, least, greatest),
    readBack: () => '',
    nudge: (value, steps) => Math.min(greatest, Math.max(least, value + steps * step)),
    inputMode: least < 0 ? 'text' : 'decimal',
  };
}

function readNumber(text: string, least: number, greatest: number): Entered<number> {
  const plain = plainText(text);
  if (!/^[-+]?(?:\d+\.?\d*|\.\d+)$/u.test(plain))
    return { ok: false, why: plain === '' ? 'type a number' : 'not a number' };
  const value = Number(plain);
  if (value < least || value > greatest) return { ok: false, why: `has to be from ${least} to ${greatest}` };
  return { ok: true, value };
}

/** Words, as typed, without the spaces round them; at most 200 letters. A longer one from a file is shown shortened. */
export function textKind(mayBeEmpty: boolean): ValueKind<string> {
  return {
    show: shownName,
    read(text) {
      const value = text.trim();
      if (value === '' && !mayBeEmpty) return { ok: false, why: 'has to have a name' };
      if (shownName(value) !== value) return { ok: false, why: `more than ${LONGEST_NAME} letters` };
      return { ok: true, value };
    },
    readBack: () => '',
    inputMode: 'text',
  };
}

const trimZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/u, '') : text);
