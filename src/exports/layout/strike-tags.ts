/** What drawing, table and diagonals of a struck tube have alike: how large a figure is, and what its places are called for short. */
import type { StruckPlace } from '../../core/run/strike.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { LENGTH } from '../../drawing/ink.ts';

/** Body of a figure, mm: a fraction is set so large that it can be read. */
export const figureSize = (unit: LengthUnit): number => (unit === 'in' ? LENGTH : 4.4);

export const ENDS = 'AB';

/** Short, as the drawing has it too: A, 1 its corner, 1s, 1e, 1c, 1m. */
export function tagOf({ kind, number }: StruckPlace): string {
  if (kind === 'node') return ENDS[number]!;
  if (kind === 'sawn') return `${ENDS[number]!} sawn`;
  return `${number}${{ corner: '', start: 's', end: 'e', centre: 'c', middle: 'm' }[kind]}`;
}

/** Of a place of the car beside the tube, by its turn: a, b ... z, aa, ab. */
export const bodyTag = (nth: number): string =>
  (nth < LETTERS.length ? '' : bodyTag(Math.floor(nth / LETTERS.length) - 1)) + LETTERS[nth % LETTERS.length]!;

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
