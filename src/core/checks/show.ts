/** What findings share: how lengths are told, the usual source, and what is too little to be told. */
import type { LengthUnit } from '../job/types.ts';
import { decimalLength } from '../units/length.ts';

/** A fact of the trade without a published source. */
export const PRACTICE = 'common practice';

/** Under this, mm, the tape does not show it. */
export const UNSEEN = 0.5;

export type Show = (mm: number) => string;

/** A decimal inch, not a fraction: a finding compares, and a rounded fraction may show two unlike lengths alike. */
export const lengthWriter =
  (unit: LengthUnit): Show =>
  (mm) =>
    unit === 'in' ? `${decimalLength(mm, 'in', 3)} in` : `${decimalLength(mm, 'mm', 1)} mm`;
