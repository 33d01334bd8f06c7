/** The same vector with one coordinate changed: fields edit one at a time. */
import type { Vec3 } from '../core/geometry/vector.ts';

export const withAxis = (vector: Vec3, axis: 0 | 1 | 2, value: number): Vec3 => [
  axis === 0 ? value : vector[0],
  axis === 1 ? value : vector[1],
  axis === 2 ? value : vector[2],
];
