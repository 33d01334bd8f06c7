/**
 * What a measurement should read when its points lie at certain places, and how that changes as they move: the one place where it is
 * said what a tape, a level or a rule measures. Lengths mm, inclinations degrees.
 */
import { toDegrees } from '../geometry/angle.ts';
import { AXIS_INDEX, length, ORIGIN, scale, subtract, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import { isPrimed, type PointRef } from '../job/reference.ts';
import type { Floor } from './floor.ts';

export interface Reading {
  /** mm, or degrees. */
  readonly value: number;
  /** By each point, as it is named: how `value` changes with its place, per mm. */
  readonly slopes: readonly (readonly [PointRef, Vec3])[];
  /** How it changes with the six figures of how the car stands over the floor's lines; none where it does not, or stands square. */
  readonly pose: readonly number[];
}

/** Where a point lies by its reference, primed or not. */
export type PlaceOf = (reference: PointRef) => Vec3;

/**
 * Tapes and widths are of the car alone; what is read along an axis, and a slope from level, is read over the floor's lines. `sideOf`: 1 for a point
 * that is guessed left of the centre plane or in it, -1 right of it; a width does not say. Points in one place have no direction: the slope is then 0.
 */
export function readingAt(
  measurement: Measurement,
  at: PlaceOf,
  sideOf: (reference: PointRef) => 1 | -1,
  floor: Floor,
): Reading {
  switch (measurement.kind) {
    case 'coordinate': {
      const { point, axis } = measurement;
      const place = floor.place(at(point));
      const slope = along(axis, 1);
      return {
        value: place[AXIS_INDEX[axis]],
        slopes: [[point, floor.slope(slope)]],
        pose: floor.poseSlopes(place, slope, false),
      };
    }
    case 'width': {
      const { point } = measurement;
      // An image lies on the other side, and is as far from its point.
      const twice = 2 * (isPrimed(point) ? -sideOf(point) : sideOf(point));
      return { value: twice * at(point)[1], slopes: [[point, along('y', twice)]], pose: [] };
    }
    case 'distance': {
      const between = subtract(at(measurement.to), at(measurement.from));
      const value = length(between);
      return { value, slopes: both(measurement, value === 0 ? ORIGIN : scale(between, 1 / value)), pose: [] };
    }
    case 'difference':
    case 'inclination': {
      const between = floor.difference(subtract(at(measurement.to), at(measurement.from)));
      const { value, slope } =
        measurement.kind === 'difference' ? differenceOf(between, measurement.axis) : riseOf(between);
      return {
        value,
        slopes: both(measurement, floor.slope(slope)),
        pose: floor.poseSlopes(between, slope, true),
      };
    }
  }
}

const differenceOf = (between: Vec3, axis: Axis) => ({ value: between[AXIS_INDEX[axis]], slope: along(axis, 1) });

/** Degrees above level. */
function riseOf([x, y, z]: Vec3): { readonly value: number; readonly slope: Vec3 } {
  const level = Math.hypot(x, y);
  const squared = x * x + y * y + z * z;
  if (squared === 0) return { value: 0, slope: ORIGIN };
  // Straight up or down it changes alike whichever way one leans: no slope.
  const aside = level === 0 ? 0 : -z / (level * squared);
  return {
    value: toDegrees(Math.atan2(z, level)),
    slope: [toDegrees(aside * x), toDegrees(aside * y), toDegrees(level / squared)],
  };
}

const along = (axis: Axis, much: number): Vec3 => [
  axis === 'x' ? much : 0,
  axis === 'y' ? much : 0,
  axis === 'z' ? much : 0,
];

const both = ({ from, to }: { from: PointRef; to: PointRef }, slope: Vec3): Reading['slopes'] => [
  [to, slope],
  [from, scale(slope, -1)],
];
