/**
 * The lines on the floor that stations, offsets, heights and slopes were read from, where the car does not stand square to them. A place p of the car
 * lies at R p + t over these lines: R turns by yaw about the floor's z, then by pitch about the turned y, then by roll about the turned x, all
 * right-hand. A surveyor's names for the three are Tait and Bryan's angles; their slopes are those of a turn about each axis as it then lies.
 */
import { cross, dot, ORIGIN, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../geometry/vector.ts';
import type { Radians } from '../geometry/angle.ts';

export interface Floor {
  /** Where a place of the car lies over the lines. */
  place(ofCar: Vec3): Vec3;
  /** A difference of two places of the car, over the lines. */
  difference(ofCar: Vec3): Vec3;
  /** A slope over the lines, as one of the car. */
  slope(onFloor: Vec3): Vec3;
  /** How what has that slope over the lines changes with each of the six figures of POSE, at a place or a difference over the lines. */
  poseSlopes(at: Vec3, slope: Vec3, isDifference: boolean): readonly number[];
}

/** Yaw, pitch and roll, each as mm at a metre, so that all figures are of one size; then the shift, mm. */
export const POSE = 6;

/** mm. */
const AT = 1000;

/** Of the car that stands square to them: nothing to find. */
export const SQUARE_FLOOR: Floor = {
  place: (p) => p,
  difference: (p) => p,
  slope: (p) => p,
  poseSlopes: () => [],
};

/** Yaw, pitch and roll, radians, of the six figures. */
export const turnsOf = (pose: ArrayLike<number>): readonly [Radians, Radians, Radians] => [
  pose[0]! / AT,
  pose[1]! / AT,
  pose[2]! / AT,
];

/** The six figures of these. */
export const poseOf = (turns: readonly Radians[], zero: Vec3): readonly number[] => [
  ...turns.map((turn) => turn * AT),
  ...zero,
];

/** With these six figures. */
export function floorOf(pose: ArrayLike<number>): Floor {
  const [yaw, pitch, roll] = turnsOf(pose);
  const shift: Vec3 = [pose[3]!, pose[4]!, pose[5]!];
  const about = (axis: 'x' | 'y' | 'z', angle: Radians, [x, y, z]: Vec3): Vec3 => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    if (axis === 'z') return [c * x - s * y, s * x + c * y, z];
    if (axis === 'y') return [c * x + s * z, y, c * z - s * x];
    return [x, c * y - s * z, s * y + c * z];
  };
  const turned = (p: Vec3): Vec3 => about('z', yaw, about('y', pitch, about('x', roll, p)));
  const axes = [Z_AXIS, about('z', yaw, Y_AXIS), about('z', yaw, about('y', pitch, X_AXIS))];
  const columns = [turned(X_AXIS), turned(Y_AXIS), turned(Z_AXIS)];
  return {
    place: (p) => {
      const [x, y, z] = turned(p);
      return [x + shift[0], y + shift[1], z + shift[2]];
    },
    difference: turned,
    slope: (g) => [dot(columns[0]!, g), dot(columns[1]!, g), dot(columns[2]!, g)],
    poseSlopes: (at, slope, isDifference) => {
      const arm: Vec3 = isDifference ? at : [at[0] - shift[0], at[1] - shift[1], at[2] - shift[2]];
      const turns = axes.map((axis) => dot(slope, cross(axis, arm)) / AT);
      return [...turns, ...(isDifference ? ORIGIN : slope)];
    },
  };
}
