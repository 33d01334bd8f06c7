/** Where a tube is measured in the car, in words: the places on it, and what was measured of them. */
import type { Seat, SeatPlace } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import { nodeName, pointName } from '../solve/names.ts';
import type { SolvedTube } from '../solve/types.ts';
import { formatLength } from '../units/length.ts';
import { AXIS_WORD, SEAT_PLACE } from './seat-findings.ts';

/** "end A: along 12 mm, height 3 mm", "its middle: at Sill top". */
export function seatInWords({ at, point, ...measured }: Seat, job: Job): string {
  if (point !== undefined) return `${SEAT_PLACE[at]}: at ${pointName(job, point)}`;
  const figures = AXES.flatMap((axis) => {
    const value = measured[axis];
    return value === undefined ? [] : [`${AXIS_WORD[axis]} ${lengthInWords(value, job.lengthUnit)}`];
  });
  return `${SEAT_PLACE[at]}: ${figures.join(', ')}`;
}

const AXES = ['x', 'y', 'z'] as const;

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
