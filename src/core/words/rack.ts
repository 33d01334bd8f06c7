/** Sticks on the rack, in words. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { MOST_STICK_SORTS } from '../job/limits.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { listed } from './lists.ts';

/** mm. */
const FOOT = 304.8;
const METRE = 1000;

/** As it is sold: "20 ft" where it is whole feet, "6 m" where it is whole metres, else in the job's unit. */
export function stickLengthInWords(mm: number, unit: LengthUnit): string {
  const [whole, name] = unit === 'in' ? [FOOT, 'ft'] : [METRE, 'm'];
  const count = Math.round(mm / whole);
  return count > 0 && Math.abs(mm - count * whole) <= ROUNDING
    ? `${count} ${name}`
    : `${formatLength(mm, unit).text} ${unit}`;
}

/** What was left and is not on the shop's rack, which is full; null where nothing was left off it. */
export const offRackInWords = (off: readonly { readonly length: number }[], unit: LengthUnit): string | null =>
  off.length === 0
    ? null
    : `Not put on the shop’s rack: ${listed(off.map(({ length }) => stickLengthInWords(length, unit)))}. It is full with ${MOST_STICK_SORTS} kinds of stick. Take out some that are gone under Shop record, and add it there.`;
