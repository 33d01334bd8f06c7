/** Where a tube was measured in the car, in words: the places, and how what was measured cannot all be so. */
import type { SeatLoose, SeatMissed } from '../checks/made-types.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';
import type { SeatPlace } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import { nodeName } from '../solve/names.ts';
import type { SolvedTube } from '../solve/types.ts';
import { formatLength } from '../units/length.ts';
import { listed } from './lists.ts';

/** Within a sentence. */
export const SEAT_PLACE: Readonly<Record<SeatPlace, string>> = { A: 'end A', middle: 'its middle', B: 'end B' };

/** Over its fields. */
export const SEAT_TITLE: Readonly<Record<SeatPlace, string>> = { A: 'End A', middle: 'Middle', B: 'End B' };

/** Where on the tube a tape is laid for it. */
export function seatPlaceInWords(
  tube: Pick<SolvedTube, 'bends' | 'developedLength' | 'ends'>,
  at: SeatPlace,
  job: Job,
): string {
  if (at === 'middle') return `On the centreline, half way along it: ${middleInWords(tube, job.lengthUnit)}.`;
  const { node, fit } = tube.ends[at === 'A' ? 0 : 1];
  const onCar = fit === 'foot' || fit === 'plate';
  const where = node === null ? '' : `: ${nodeName(job, node)}`;
  return onCar ? `Where its centreline meets the car${where}.` : `Where its centreline ends${where}.`;
}

function middleInWords(
  { bends, developedLength }: Pick<SolvedTube, 'bends' | 'developedLength'>,
  unit: Job['lengthUnit'],
): string {
  const half = developedLength / 2;
  const after = bends.findLastIndex(({ start }) => start <= half);
  const bend = bends[after];
  if (bend === undefined) return `${lengthInWords(half, unit)} from end A`;
  return half <= bend.end
    ? `in bend ${after + 1}`
    : `${lengthInWords(half - bend.end, unit)} on from where bend ${after + 1} ends`;
}

const lengthInWords = (mm: number, unit: Job['lengthUnit']): string => `${formatLength(mm, unit).text} ${unit}`;

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
const AXIS_WORD: Readonly<Record<Axis, string>> = { x: 'along', y: 'offset', z: 'height' };

/** "2.0 mm higher": along x, y and z; what is 0 is left out. */
export const offInWords = (by: Vec3, show: (mm: number) => string): string =>
  listed(
    by.flatMap((part, axis) =>
      part === 0 ? [] : [`${show(Math.abs(part))} ${THAN_MEASURED[axis]![part > 0 ? 0 : 1]}`],
    ),
  );
