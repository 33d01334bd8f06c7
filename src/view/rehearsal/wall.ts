/**
 * The outside of a tube along a path, laid into arrays that are kept: while the tube is bent its wall is laid anew with
 * every frame, and nothing may be made for a vertex.
 */
import type { Path } from '../../core/geometry/path.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { sweepFrames, type SweepFrame } from '../../core/mesh/sweep.ts';

const SIDES = 20;

export interface Wall {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
  /** 0 on the wall, 1 on the face at the end. */
  readonly faces: Float32Array;
  readonly indices: Uint32Array;
}

/** Room for so many rings. */
export const makeWall = (rings: number): Wall => ({
  positions: new Float32Array(3 * SIDES * rings),
  normals: new Float32Array(3 * SIDES * rings),
  faces: new Float32Array(SIDES * rings),
  indices: bandIndices(rings),
});

function bandIndices(rings: number): Uint32Array {
  const indices: number[] = [];
  for (let ring = 0; ring + 1 < rings; ring += 1)
    for (let side = 0; side < SIDES; side += 1) {
      const next = (side + 1) % SIDES;
      const [a, b] = [ring * SIDES, (ring + 1) * SIDES];
      indices.push(a + side, a + next, b + next, a + side, b + next, b + side);
    }
  return Uint32Array.from(indices);
}

/** Rings that a path is drawn with, the face at its end counted. */
export const ringsOf = (path: Path): number => sweepFrames(path, asideOf(path)).length + 2;

/** Lays the path's wall and the face at its end; answers how many of `indices` draw them. */
export function layWall({ positions, normals, faces }: Wall, path: Path, radius: number): number {
  const frames = sweepFrames(path, asideOf(path));
  const last = frames.at(-1);
  if (last === undefined) return 0;
  const layRing = (ring: number, { at, tangent, across, beside }: SweepFrame, out: number, face: 0 | 1): void => {
    for (let side = 0; side < SIDES; side += 1) {
      const phi = (2 * Math.PI * side) / SIDES;
      const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
      const vertex = ring * SIDES + side;
      faces[vertex] = face;
      for (let axis = 0; axis < 3; axis += 1) {
        const spoke = across[axis]! * cos + beside[axis]! * sin;
        positions[3 * vertex + axis] = at[axis]! + spoke * out;
        normals[3 * vertex + axis] = face === 0 ? spoke : tangent[axis]!;
      }
    }
  };
  frames.forEach((frame, ring) => layRing(ring, frame, radius, 0));
  // The face: its rim with normals of its own, and its middle.
  layRing(frames.length, last, radius, 1);
  layRing(frames.length + 1, last, 0, 1);
  return 6 * SIDES * (frames.length + 1);
}

/** Any direction off the tube's own at its start. */
const asideOf = ({ pieces }: Path): Vec3 => (Math.abs(pieces[0]?.startTangent[2] ?? 0) < 0.8 ? [0, 0, 1] : [1, 0, 0]);
