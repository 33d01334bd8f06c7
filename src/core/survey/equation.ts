/**
 * What a measurement should read when its points lie at certain places, and how that changes as they move: the one place where it is
 * said what a tape, a level or a rule measures. Lengths mm, inclinations degrees.
 */
import { toDegrees } from '../geometry/angle.ts';
import { AXIS_INDEX, distance, scale, subtract, type Axis, type Vec3 } from '../geometry/vector.ts';
import type { Measurement } from '../job/kinds/measurement.ts';
import type { PointRef } from '../job/reference.ts';

export interface Reading {
  /** mm, or degrees. */
  readonly value: number;
  /** By each point, as it is named: how `value` changes with its place, per mm. */
  readonly slopes: readonly (readonly [PointRef, Vec3])[];
}

/** Where a point lies by its reference, primed or not. */
export type PlaceOf = (reference: PointRef) => Vec3;

/** `sideOf`: 1 for a point that is guessed left of the centre plane or in it, -1 right of it; a width does not say. Points in one place have no direction: the slope is then 0. */
export function readingAt(measurement: Measurement, at: PlaceOf, sideOf: (reference: PointRef) => 1 | -1): Reading {
  switch (measurement.kind) {
    case 'coordinate': {
      const { point, axis } = measurement;
      return { value: at(point)[AXIS_INDEX[axis]], slopes: [[point, along(axis, 1)]] };
    }
    case 'width': {
      const { point } = measurement;
      const twice = 2 * sideOf(point);
      return { value: twice * at(point)[1], slopes: [[point, along('y', twice)]] };
    }
    case 'difference': {
      const { from, to, axis } = measurement;
      const value = at(to)[AXIS_INDEX[axis]] - at(from)[AXIS_INDEX[axis]];
      return { value, slopes: both(measurement, along(axis, 1)) };
    }
    case 'distance': {
      const between = subtract(at(measurement.to), at(measurement.from));
      const value = distance(at(measurement.to), at(measurement.from));
      return { value, slopes: both(measurement, value === 0 ? NONE : scale(between, 1 / value)) };
    }
    case 'inclination': {
      const [x, y, z] = subtract(at(measurement.to), at(measurement.from));
      const level = Math.hypot(x, y);
      const squared = x * x + y * y + z * z;
      const value = toDegrees(Math.atan2(z, level));
      if (squared === 0) return { value: 0, slopes: both(measurement, NONE) };
      // Straight up or down it changes alike whichever way one leans: no slope.
      const aside = level === 0 ? 0 : -z / (level * squared);
      const slope: Vec3 = [toDegrees(aside * x), toDegrees(aside * y), toDegrees(level / squared)];
      return { value, slopes: both(measurement, slope) };
    }
  }
}

const NONE: Vec3 = [0, 0, 0];

const along = (axis: Axis, much: number): Vec3 => [
  axis === 'x' ? much : 0,
  axis === 'y' ? much : 0,
  axis === 'z' ? much : 0,
];

const both = ({ from, to }: { from: PointRef; to: PointRef }, slope: Vec3): Reading['slopes'] => [
  [to, slope],
  [from, scale(slope, -1)],
];
