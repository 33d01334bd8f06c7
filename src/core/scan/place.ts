/**
 * From a scan's file into the car and back. First the unit and the axis that points up, both exact; then a rigid motion, the scan's
 * placement. No scale: a scan of the wrong size has the wrong unit, and stretching it would hide that.
 */
import { toDegrees, toRadians } from '../geometry/angle.ts';
import { boxFrame } from '../geometry/solid-box.ts';
import { moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { dot, ORIGIN, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Placement, Scan, ScanUnit, ScanUp } from '../job/kinds/scan.ts';
import type { ScanData } from './types.ts';

/** mm in each unit that a file may be in. */
export const MM_PER: Readonly<Record<ScanUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

/** Rows that turn the axis onto z, the others with it. */
const UPRIGHT: Readonly<Record<ScanUp, readonly [Vec3, Vec3, Vec3]>> = {
  z: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  '-z': [
    [1, 0, 0],
    [0, -1, 0],
    [0, 0, -1],
  ],
  y: [
    [1, 0, 0],
    [0, 0, -1],
    [0, 1, 0],
  ],
  '-y': [
    [1, 0, 0],
    [0, 0, 1],
    [0, -1, 0],
  ],
  x: [
    [0, 1, 0],
    [0, 0, 1],
    [1, 0, 0],
  ],
  '-x': [
    [0, 1, 0],
    [0, 0, -1],
    [-1, 0, 0],
  ],
};

/** A place of the file in mm and upright, before it is laid anywhere. */
export function upright({ unit, up }: Pick<Scan, 'unit' | 'up'>, at: Vec3): Vec3 {
  const mm = MM_PER[unit];
  const [x, y, z] = UPRIGHT[up];
  return [mm * dot(x, at), mm * dot(y, at), mm * dot(z, at)];
}

/** All of it in one: a place p of the file lies at mm (rows p) + shift in the car, rows being a turn. */
export interface Placing {
  readonly mm: number;
  readonly rows: readonly [Vec3, Vec3, Vec3];
  readonly shift: Vec3;
}

/** How a scan lies. */
export function placingOf({ unit, up, placement }: Pick<Scan, 'unit' | 'up' | 'placement'>): Placing {
  const { axes } = boxFrame(ORIGIN, [1, 1, 1], placement.rotation.map(toRadians) as [number, number, number]);
  const stand = UPRIGHT[up];
  const entry = (row: 0 | 1 | 2, column: 0 | 1 | 2): number =>
    axes[0][row] * stand[0][column] + axes[1][row] * stand[1][column] + axes[2][row] * stand[2][column];
  const row = (i: 0 | 1 | 2): Vec3 => [entry(i, 0), entry(i, 1), entry(i, 2)];
  return { mm: MM_PER[unit], rows: [row(0), row(1), row(2)], shift: placement.shift };
}

/** Where a place of the file lies in the car, mm. */
export const inCar = ({ mm, rows: [x, y, z], shift }: Placing, at: Vec3): Vec3 => [
  mm * dot(x, at) + shift[0],
  mm * dot(y, at) + shift[1],
  mm * dot(z, at) + shift[2],
];

/** The place of the file that lies there in the car. */
export const inFile = (placing: Placing, place: Vec3): Vec3 =>
  scale(directionInFile(placing, subtract(place, placing.shift)), 1 / placing.mm);

/** A direction of the car as the file has it: as long as it was. */
export const directionInFile = ({ rows: [x, y, z] }: Placing, along: Vec3): Vec3 => [
  x[0] * along[0] + y[0] * along[1] + z[0] * along[2],
  x[1] * along[0] + y[1] * along[1] + z[1] * along[2],
  x[2] * along[0] + y[2] * along[1] + z[2] * along[2],
];

/** The same with no zero that has a sign: a file has none. */
export const unsigned = ([x, y, z]: Vec3): Vec3 => [x + 0, y + 0, z + 0];

/** The motion as a job keeps it: the turn by three angles in degrees. */
export function placementOf(motion: RigidMotion): Placement {
  const { rows } = motion;
  // Of the turn first about x; the last angle is then found with x known, which holds also where y is a quarter turn and the two are one.
  const x = Math.atan2(rows[2][1], rows[2][2]);
  const [sine, cosine] = [Math.sin(x), Math.cos(x)];
  const y = Math.atan2(-rows[2][0], Math.hypot(rows[0][0], rows[1][0]));
  const z = Math.atan2(sine * rows[0][2] - cosine * rows[0][1], cosine * rows[1][1] - sine * rows[1][2]);
  return { rotation: unsigned([toDegrees(x), toDegrees(y), toDegrees(z)]), shift: unsigned(moved(motion, ORIGIN)) };
}

/** The least and the greatest x, y and z of the file. */
export function reachOf({ positions }: ScanData): { readonly low: Vec3; readonly high: Vec3 } {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < positions.length; i++) {
    const [axis, value] = [i % 3, positions[i]!];
    if (value < low[axis]!) low[axis] = value;
    if (value > high[axis]!) high[axis] = value;
  }
  return { low: low as unknown as Vec3, high: high as unknown as Vec3 };
}

/** Put down where one finds it: on the floor, its middle over the datum. */
export function laidDown(data: ScanData, how: Pick<Scan, 'unit' | 'up'>): Placement {
  const { low, high } = reachOf(data);
  const [a, b] = [upright(how, low), upright(how, high)];
  return {
    rotation: [0, 0, 0],
    shift: unsigned([-(a[0] + b[0]) / 2, -(a[1] + b[1]) / 2, -Math.min(a[2], b[2])]),
  };
}

const QUARTER: RigidMotion = {
  rows: [
    [0, -1, 0],
    [1, 0, 0],
    [0, 0, 1],
  ],
  from: ORIGIN,
  to: ORIGIN,
};

/** The same turned to the left by a quarter about the datum's upright axis, so that its nose comes to point forward. */
export const quarterTurned = (placement: Placement): Placement => movedPlacement(QUARTER, placement);

/** How a scan lies that has been moved with the car. */
export function movedPlacement(motion: RigidMotion, { rotation, shift }: Placement): Placement {
  const { axes } = boxFrame(ORIGIN, [1, 1, 1], rotation.map(toRadians) as [number, number, number]);
  const columns = axes.map((axis) => turned(motion, axis)) as [Vec3, Vec3, Vec3];
  const row = (i: 0 | 1 | 2): Vec3 => [columns[0][i], columns[1][i], columns[2][i]];
  return placementOf({ rows: [row(0), row(1), row(2)], from: ORIGIN, to: moved(motion, shift) });
}
