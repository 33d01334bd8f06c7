/** What was found of where a tube was measured in the car: figures that cannot all be so, and one that hardly tells. Apart from what screens say, for the bay needs this at once. */
import type { SeatLoose, SeatMissed } from '../checks/made-types.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';
import type { SeatPlace } from '../job/kinds/bent.ts';
import { listed } from './lists.ts';

/** Within a sentence. */
export const SEAT_PLACE: Readonly<Record<SeatPlace, string>> = { A: 'end A', middle: 'its middle', B: 'end B' };

const THAN_MEASURED = [
  ['further forward', 'further back'],
  ['further to the left', 'further to the right'],
  ['higher', 'lower'],
] as const;

/** After the tube's name. */
export function seatMissedInWords(
  { missed, apart }: Pick<SeatMissed, 'missed' | 'apart'>,
  show: (mm: number) => string,
): string {
  const lengths = apart.map(
    ({ places: [from, to], measured, built }) =>
      `${SEAT_PLACE[from]} and ${SEAT_PLACE[to]} were measured ${show(measured)} apart and lie ${show(built)} apart on the tube`,
  );
  const why = lengths.length === 0 ? '' : `: ${listed(lengths)}`;
  const stands = missed.map(({ place, by }) => `${SEAT_PLACE[place]} ${offInWords(by, show)}`);
  return `what was measured in the car cannot all be so${why}. Measure again. It stands where the figures are missed least: ${listed(stands)} than measured.`;
}

/** After the tube's name. */
export const seatLooseInWords = ({ place, axis, moves }: SeatLoose, show: (mm: number) => string): string =>
  `of where it stands in the car the ${AXIS_WORD[axis]} of ${SEAT_PLACE[place]} hardly tells: measured ${show(1)} otherwise, it moves the tube by ${show(moves)}. Clear that figure, or measure there in another direction too.`;

/** As the fields are called. */
export const AXIS_WORD: Readonly<Record<Axis, string>> = { x: 'along', y: 'offset', z: 'height' };

/** "2.0 mm higher": along x, y and z; what is 0 is left out. */
export const offInWords = (by: Vec3, show: (mm: number) => string): string =>
  listed(
    by.flatMap((part, axis) =>
      part === 0 ? [] : [`${show(Math.abs(part))} ${THAN_MEASURED[axis]![part > 0 ? 0 : 1]}`],
    ),
  );
