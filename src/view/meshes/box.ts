/** The corners, faces and edges of an envelope's box. */
import type { SolidBox } from '../../core/geometry/solid-box.ts';
import { addScaled, type Vec3 } from '../../core/geometry/vector.ts';

/** Corner i: bits 0, 1, 2 of i say which side along the box's own x, y, z. Car axes, mm. */
export const boxCorners = ({ centre, half, axes }: SolidBox): readonly Vec3[] =>
  Array.from({ length: 8 }, (_, i) =>
    axes.reduce((at, axis, bit) => addScaled(at, axis, half[bit]! * ((i >> bit) & 1 ? 1 : -1)), centre),
  );

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
