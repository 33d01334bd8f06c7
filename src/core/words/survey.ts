/** The survey in the words of the shop: what was measured, whether it agrees, what may have been misread, what is still open. */
import type { Axis, Vec3 } from '../geometry/vector.ts';
import { pointsOf, type Measurement } from '../job/kinds/measurement.ts';
import { isPrimed } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import type { Adjusted, Suspect } from '../survey/adjust.ts';
import type { Misread } from '../survey/misread.ts';
import type { NextMeasurement } from '../survey/next-measurement.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { capital, listed } from './lists.ts';

/** What each axis is called at the car. */
export const AXIS_WORDS: Readonly<Record<Axis, string>> = { x: 'along the car', y: 'to the side', z: 'in height' };

const COORDINATE: Readonly<Record<Axis, string>> = { x: 'station', y: 'offset', z: 'height' };

const DIFFERENCE: Readonly<Record<Axis, string>> = {
  x: 'how much further forward',
  y: 'how much further left',
  z: 'how much higher',
};

/** "the tape from Sill top, left to Tower, left"; "the height of Tower, left". */
export function measurementInWords(job: Job, measurement: Measurement): string {
  const name = (reference: string): string => pointName(job, reference);
  switch (measurement.kind) {
    case 'distance':
      return `the tape from ${name(measurement.from)} to ${name(measurement.to)}`;
    case 'coordinate':
      return `the ${COORDINATE[measurement.axis]} of ${name(measurement.point)}`;
    case 'width':
      return `the width over ${name(measurement.point)}`;
    case 'difference':
      return `${DIFFERENCE[measurement.axis]} ${name(measurement.to)} is than ${name(measurement.from)}`;
    case 'inclination':
      return `the slope from ${name(measurement.from)} to ${name(measurement.to)}`;
  }
}

/** "36 1/2 in", "41.5°": as a field shows it. */
export const readInWords = ({ kind }: Pick<Measurement, 'kind'>, value: number, unit: LengthUnit): string =>
  kind === 'inclination' ? `${formatAngle(value, 1)}°` : `${formatLength(value, unit).text} ${unit}`;

/** Whether the readings agree: one sentence to stand over them. */
export function agreementInWords(job: Job, { residuals, suspects, redundancy }: Adjusted): string {
  if (job.measurements.length === 0) return 'Nothing measured yet.';
  if (redundancy === 0) {
    return 'Nothing checks these readings: each fixes something that no other does. One more measurement would show a slip.';
  }
  if (suspects.length > 0) {
    const which = suspects.length === 1 ? '1 reading does' : `${suspects.length} readings do`;
    return `${which} not agree with the others.`;
  }
  const lengths = residuals.filter(({ index }) => job.measurements[index]!.kind !== 'inclination');
  const most = Math.max(0, ...lengths.map(({ residual }) => Math.abs(residual)));
  return `All readings agree within ${formatLength(most, job.lengthUnit, AGREE_STEP[job.lengthUnit]).text} ${job.lengthUnit}.`;
}

/** How a tape is read. */
const AGREE_STEP: Readonly<Record<LengthUnit, number>> = { in: 1 / 16, mm: 1 };

/** "The tape from A to B reads 63 in; the others say 36 in." */
export function offInWords(job: Job, measurement: Measurement, fits: number): string {
  const show = (value: number): string => readInWords(measurement, value, job.lengthUnit);
  return `${capital(measurementInWords(job, measurement))} reads ${show(measurement.value)}; the others say ${show(fits)}.`;
}

/** The same, and which other readings may as well be wrong. */
export function suspectInWords(job: Job, { index, fits, or }: Suspect): string {
  const says = offInWords(job, job.measurements[index]!, fits);
  if (or.length === 0) return says;
  const others = or.map((other) => measurementInWords(job, job.measurements[other]!));
  return `${says} It may as well be ${listed(others)} that ${or.length === 1 ? 'is' : 'are'} off: nothing tells which.`;
}

/** "It looks like 63 typed for 36." */
export function misreadInWords(job: Job, measurement: Measurement, misread: Misread): string {
  const show = (value: number, unit: LengthUnit = job.lengthUnit): string => readInWords(measurement, value, unit);
  switch (misread.how) {
    case 'swapped':
      return `It looks like ${show(measurement.value, misread.unit)} typed for ${show(misread.reads, misread.unit)}: two digits changed over.`;
    case 'digit':
      return `It looks like ${show(measurement.value, misread.unit)} typed for ${show(misread.reads, misread.unit)}: one digit off.`;
    case 'unit':
      return misread.unit === 'in'
        ? `It looks like inches typed as millimetres: ${show(misread.reads, 'in')}.`
        : `It looks like millimetres typed as inches: ${show(misread.reads, 'mm')}.`;
    case 'mark':
      return `It is ${show(Math.abs(misread.by))} too ${misread.by > 0 ? 'long' : 'short'}: it looks like a tape held at a mark${misread.by > 0 ? ', and the mark not taken off' : ' that was taken off and was not held'}.`;
    case 'sign':
      return `It looks like the other way round: ${show(misread.reads)}.`;
    case 'plumb':
      return `It looks like degrees from plumb: ${show(misread.reads)} from level.`;
    case 'point':
      return `It fits ${pointName(job, misread.point)}${isPrimed(misread.point) ? ' on the other side' : ''} in place of ${pointName(job, pointsOf(measurement).find(([key]) => key === misread.key)![1])}.`;
  }
}

/** "Nothing says where Tower, left is in height." The axis of the car that the direction is nearest to. */
export const looseInWords = (name: string, directions: readonly Vec3[]): string =>
  `Nothing says where ${name} is ${listed([...new Set(directions.map((way) => AXIS_WORDS[nearestAxis(way)]))])}`;

const AXES = ['x', 'y', 'z'] as const;

const nearestAxis = (way: Vec3): Axis =>
  AXES.reduce((best, axis, k) => (Math.abs(way[k]!) > Math.abs(way[AXES.indexOf(best)]!) ? axis : best), 'x');

/** "Measure its height", "Run a tape from it to Sill top, left". */
export const nextInWords = (job: Job, next: NextMeasurement): string =>
  next.kind === 'coordinate'
    ? `Measure its ${COORDINATE[next.axis]}`
    : `Run a tape from it to ${pointName(job, next.to)}`;
