/** Shapes whose surfaces are known, as vertices and triangles; and a row of made-up places. */
import type { ScanData } from '../../../src/core/scan/types.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';

export type Triple = [number, number, number];

export interface Shape {
  readonly vertices: readonly Triple[];
  readonly faces: readonly Triple[];
}

/** A ball, closed: `around` times `up` patches, a triangle each at the poles. Not one vertex lies on a plane through its middle along an axis but by chance of `turn`. */
export function ball(radius: number, middle: Triple, around: number, up: number, turn = 0.1): Shape {
  const vertices: Triple[] = [[middle[0], middle[1], middle[2] + radius]];
  for (let i = 1; i < up; i++) {
    for (let k = 0; k < around; k++) {
      const [polar, angle] = [(Math.PI * i) / up, turn + (2 * Math.PI * k) / around];
      vertices.push([
        middle[0] + radius * Math.sin(polar) * Math.cos(angle),
        middle[1] + radius * Math.sin(polar) * Math.sin(angle),
        middle[2] + radius * Math.cos(polar),
      ]);
    }
  }
  vertices.push([middle[0], middle[1], middle[2] - radius]);
  const at = (i: number, k: number): number => 1 + (i - 1) * around + (k % around);
  const last = vertices.length - 1;
  const faces: Triple[] = [];
  for (let k = 0; k < around; k++) {
    faces.push([0, at(1, k), at(1, k + 1)], [last, at(up - 1, k + 1), at(up - 1, k)]);
    for (let i = 1; i < up - 1; i++) {
      faces.push([at(i, k), at(i + 1, k), at(i + 1, k + 1)], [at(i, k), at(i + 1, k + 1), at(i, k + 1)]);
    }
  }
  return { vertices, faces };
}

/** A pipe along z, open at both ends. */
export function pipe(radius: number, from: number, to: number, around: number): Shape {
  const ring = (z: number): Triple[] =>
    Array.from({ length: around }, (_, k) => {
      const angle = (2 * Math.PI * k) / around;
      return [radius * Math.cos(angle), radius * Math.sin(angle), z];
    });
  const faces = Array.from({ length: around }, (_, k): Triple[] => {
    const next = (k + 1) % around;
    return [
      [k, next, around + next],
      [k, around + next, around + k],
    ];
  }).flat();
  return { vertices: [...ring(from), ...ring(to)], faces };
}

export function cloud(count: number, size: Triple, seed: number): readonly Triple[] {
  const next = uniformFrom(seed);
  return Array.from({ length: count }, () => [next() * size[0], next() * size[1], next() * size[2]]);
}

export const dataOf = ({ vertices, faces }: Shape): ScanData => ({
  kind: faces.length > 0 ? 'triangles' : 'points',
  positions: Float64Array.from(vertices.flat()),
  triangles: Uint32Array.from(faces.flat()),
});

/** Corner after corner of every triangle; of a cloud its points. */
export const soupOf = ({ positions, triangles }: ScanData): number[] =>
  triangles.length === 0
    ? [...positions]
    : [...triangles].flatMap((vertex) => [...positions.subarray(3 * vertex, 3 * vertex + 3)]);

export const soupOfShape = ({ vertices, faces }: Shape): number[] =>
  (faces.length === 0 ? vertices : faces.flat().map((vertex) => vertices[vertex]!)).flat();

/** As 32-bit floats keep it. */
export const asFloats = (shape: Shape): Shape => ({
  ...shape,
  vertices: shape.vertices.map((vertex) => vertex.map(Math.fround) as Triple),
});
