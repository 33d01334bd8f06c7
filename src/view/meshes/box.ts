/** The corners, faces and edges of an envelope's box. */
import { toRadians } from '../../core/geometry/angle.ts';
import { add, rotateAbout, X_AXIS, Y_AXIS, Z_AXIS, type Vec3 } from '../../core/geometry/vector.ts';
import type { Envelope } from '../../core/job/kinds/envelope.ts';

/** Turned about the fixed x, then y, then z axes. */
const turned = (v: Vec3, [x, y, z]: Envelope['rotation']): Vec3 =>
  rotateAbout(rotateAbout(rotateAbout(v, X_AXIS, toRadians(x)), Y_AXIS, toRadians(y)), Z_AXIS, toRadians(z));

/** Corner i: bits 0, 1, 2 of i say which side along the box's own x, y, z. Car axes, mm. */
export function boxCorners({ centre, size, rotation }: Envelope): readonly Vec3[] {
  return Array.from({ length: 8 }, (_, i) => {
    const side = (axis: 0 | 1 | 2): number => (size[axis] / 2) * ((i >> axis) & 1 ? 1 : -1);
    return add(centre, turned([side(0), side(1), side(2)], rotation));
  });
}

/** Corners of each face, counter-clockwise seen from outside. */
export const BOX_FACES = [
  [0, 4, 6, 2],
  [1, 3, 7, 5],
  [0, 1, 5, 4],
  [2, 6, 7, 3],
  [0, 2, 3, 1],
  [4, 5, 7, 6],
] as const;

export const BOX_EDGES = [
  [0, 1],
  [2, 3],
  [4, 5],
  [6, 7],
  [0, 2],
  [1, 3],
  [4, 6],
  [5, 7],
  [0, 4],
  [1, 5],
  [2, 6],
  [3, 7],
] as const;
