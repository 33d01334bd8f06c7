/** The survey in the words of the shop: what was measured, what does not agree, what is still open. */
import type { Axis, Vec3 } from '../geometry/vector.ts';
import { pointsOf, type Measurement } from '../job/kinds/measurement.ts';
import { bareId, type PointRef } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import { pointName } from '../solve/names.ts';
import { formatAngle } from '../units/angle.ts';
import { formatLength, type LengthUnit } from '../units/length.ts';
import { capital, listed } from './lists.ts';

/** What each axis is called at the car. */
export const AXIS_WORDS: Readonly<Record<Axis, string>> = { x: 'along the car', y: 'to the side', z: 'in height' };

/** What each coordinate is called. */
export const COORDINATE_WORDS: Readonly<Record<Axis, string>> = { x: 'station', y: 'offset', z: 'height' };

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
      return `the ${COORDINATE_WORDS[measurement.axis]} of ${name(measurement.point)}`;
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

/** "The tape from A to B reads 63 in; the others say 36 in." */
export function offInWords(job: Job, measurement: Measurement, fits: number): string {
  const show = (value: number): string => readInWords(measurement, value, job.lengthUnit);
  const isTyped = (reference: PointRef): boolean =>
    job.points.find(({ id }) => id === bareId(reference))?.by !== 'survey';
  const who = pointsOf(measurement).every(([, point]) => isTyped(point)) ? 'as typed it is' : 'the others say';
  return `${capital(measurementInWords(job, measurement))} reads ${show(measurement.value)}; ${who} ${show(fits)}.`;
}

/** "Nothing says where Tower, left is in height." The axis of the car that the direction is nearest to. */
export const looseInWords = (name: string, directions: readonly Vec3[]): string =>
  `Nothing says where ${name} is ${listed([...new Set(directions.map((way) => AXIS_WORDS[nearestAxis(way)]))])}`;

const AXES = ['x', 'y', 'z'] as const;

const nearestAxis = (way: Vec3): Axis =>
  AXES.reduce((best, axis, k) => (Math.abs(way[k]!) > Math.abs(way[AXES.indexOf(best)]!) ? axis : best), 'x');
