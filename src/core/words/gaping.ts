/** How far a joint gapes, in the fewest words: the bay says no more of it, and needs them at once. */
import { BRIDGED } from '../forecast/bridged.ts';
import { MM_PER_INCH, type LengthUnit } from '../units/length.ts';
import { comparedLength } from './lengths.ts';

/** mm: an eighth of an inch, which a bead hardly bridges (common practice). */
const HARD = MM_PER_INCH / 8;

/** mm. Less is no gap to anybody. */
export const SHUT = 0.05;

/** How a joint is to be taken: `wide` wants a cure, `open` a steady hand. */
export type Gaping = 'close' | 'open' | 'wide';

export const gapingOf = (gap: number): Gaping => (gap <= BRIDGED ? 'close' : gap <= HARD ? 'open' : 'wide');

const GAPING: Readonly<Record<Gaping, string>> = { close: 'fits', open: 'gapes', wide: 'gapes wide' };

/** "gapes wide, 4.4 mm". */
export const gapInWords = (gap: number, unit: LengthUnit): string =>
  gap < SHUT ? 'shuts' : `${GAPING[gapingOf(gap)]}, ${comparedLength(gap, unit)}`;
