/**
 * A rigid motion: a turn and a shift, no mirror image. And the one that brings some places nearest to others.
 *
 * The best fit by least squares with equal weights puts centroid on centroid, and turns by the unit quaternion that belongs to
 * the greatest eigenvalue of a 4 x 4 matrix made of the products of both (Horn 1987, Closed-form solution of absolute orientation using
 * unit quaternions, Journal of the Optical Society of America A 4, 629). Places on one line, or all in one place, leave the turn about
 * that line open: then the least turn that lays the one line along the other is taken.
 */
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { arcPiece, linePiece, type Path } from './path.ts';
import { ANGLE_ROUNDING } from './tolerance.ts';
import {
  add,
  cross,
  dot,
  length,
  normalize,
  rejectFrom,
  scale,
  subtract,
  X_AXIS,
  Y_AXIS,
  type Vec3,
} from './vector.ts';

export interface RigidMotion {
  /** Where the axes go: rows of the turn's matrix. */
  readonly rows: readonly [Vec3, Vec3, Vec3];
  /** A place, and where it goes. */
  readonly from: Vec3;
  readonly to: Vec3;
}

/** Of a direction. */
export const turned = ({ rows: [x, y, z] }: RigidMotion, direction: Vec3): Vec3 => [
  dot(x, direction),
  dot(y, direction),
  dot(z, direction),
];

/** Of a place. */
export const moved = (motion: RigidMotion, place: Vec3): Vec3 =>
  add(motion.to, turned(motion, subtract(place, motion.from)));

/** The same path elsewhere: lengths, angles and radii are those of before, not worked out again. */
export function movedPath({ pieces, length: developed }: Path, motion: RigidMotion): Path {
  return {
    length: developed,
    pieces: pieces.map((piece) => {
      const from = moved(motion, piece.from);
      if (piece.kind === 'line') return { ...linePiece(from, moved(motion, piece.to), piece.at), length: piece.length };
      const { radius, angle, at } = piece;
      const [tangent, normal] = [turned(motion, piece.startTangent), turned(motion, piece.normal)];
      return { ...arcPiece(from, normalize(tangent), normalize(normal), radius, angle, at), length: piece.length };
    }),
  };
}

/** The motion that brings `places` nearest to `goals`, as many, by the least sum of squared distances; at least one of each. */
export function rigidFit(places: readonly Vec3[], goals: readonly Vec3[]): RigidMotion {
  const [from, to] = [centroid(places), centroid(goals)];
  const a = places.map((place) => subtract(place, from));
  const b = goals.map((goal) => subtract(goal, to));
  const product = (i: number, k: number): number => a.reduce((sum, place, n) => sum + place[i]! * b[n]![k]!, 0);
  const [xx, xy, xz] = [product(0, 0), product(0, 1), product(0, 2)];
  const [yx, yy, yz] = [product(1, 0), product(1, 1), product(1, 2)];
  const [zx, zy, zz] = [product(2, 0), product(2, 1), product(2, 2)];
  const [best, next] = symmetricEigen([
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ]);
  const open = best!.value - next!.value <= ANGLE_ROUNDING * Math.abs(best!.value);
  const rows = open ? leastTurn(farthest(a), farthest(b)) : ofQuaternion(best!.vector);
  return { rows, from, to };
}

function centroid(places: readonly Vec3[]): Vec3 {
  return scale(places.reduce(add), 1 / places.length);
}

/** The line that the places lie on, from the first of them onwards; of length 0 where they are all one place. */
const farthest = (places: readonly Vec3[]): Vec3 => subtract(places.at(-1)!, places[0]!);

/** The turn of a unit quaternion, [cos of half the angle, axis times its sine]. */
export function ofQuaternion(quaternion: readonly number[]): RigidMotion['rows'] {
  const [w, x, y, z] = quaternion as [number, number, number, number];
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
  ];
}

const AS_IT_IS: RigidMotion['rows'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
];

/** About the axis square to both; opposite ones have no such axis, and any that is square to them does. */
function leastTurn(one: Vec3, other: Vec3): RigidMotion['rows'] {
  if (length(one) === 0 || length(other) === 0) return AS_IT_IS;
  const [u, v] = [normalize(one), normalize(other)];
  const half = add(u, v);
  if (length(half) <= ANGLE_ROUNDING) {
    const axis = normalize(rejectFrom(Math.abs(u[0]) < 0.5 ? X_AXIS : Y_AXIS, u));
    return ofQuaternion([0, ...axis]);
  }
  // Half way between both, the turn is by half its angle.
  const h = normalize(half);
  return ofQuaternion([dot(u, h), ...cross(u, h)]);
}
