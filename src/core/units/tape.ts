/**
 * A place as a tape shows it: the nearest of its divisions, and whether the place lies a hair beyond that or short of it, as
 * the trade writes it: 23 3/8 + or 23 3/8 − (common practice).
 */
import { formatLength, MM_PER_INCH, ROUND_OFF, type LengthUnit, type ShownLength } from './length.ts';

export interface TapeReading extends ShownLength {
  /** '+': a hair more than is shown, counted away from the tape's zero; '−': a hair less; '': on the division. */
  readonly leans: '' | '+' | '−';
}

/** Nobody sees less than this on a tape, mm: so far from a division a place still counts as on it. */
const UNSEEN = 0.05;

/** Divisions of the coarse and of the fine tape of a unit, mm. */
export const tapesOf = (unit: LengthUnit): readonly [number, number] =>
  unit === 'in' ? [MM_PER_INCH / 16, MM_PER_INCH / 32] : [1, 0.5];

/** Of a place in mm from the tape's zero, below 0 on its other side; with no more digits than the tape has. */
export function tapeReading(place: number, unit: LengthUnit, fine: boolean): TapeReading {
  const step = tapesOf(unit)[fine ? 1 : 0];
  const at = Math.round(place / step) * step;
  const over = at < 0 ? at - place : place - at;
  return {
    ...formatLength(at, unit, unit === 'in' ? (fine ? 1 / 32 : 1 / 16) : fine ? 0.1 : 1),
    exact: Math.abs(over) <= ROUND_OFF,
    leans: Math.abs(over) < UNSEEN ? '' : over > 0 ? '+' : '−',
  };
}

/** The reading as it is spoken: "23 3/8 in, a hair more". */
export const spokenReading = ({ text, leans }: TapeReading, unit: LengthUnit): string =>
  leans === '' ? `${text} ${unit}` : `${text} ${unit}, a hair ${leans === '+' ? 'more' : 'less'}`;

/** What the signs mean, once beside any readings that carry one; a hair is up to half a division of the tape. */
export const leansOfTape = (unit: LengthUnit, fine: boolean): string =>
  `+ is a hair more, − a hair less: up to ${HAIRS[unit][fine ? 1 : 0]} ${unit}.`;

/** Half of tapesOf. */
const HAIRS = { in: ['1/32', '1/64'], mm: ['0.5', '0.25'] } as const;
