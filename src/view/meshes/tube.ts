/**
 * A solved tube as triangles: outer wall, bore, and at both ends the cut face between them, shaped by the end's trim
 * profiles. Closed, wound outwards, and free of any drawing library.
 */
import { cross, dot, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import { reachedOrTip, sharpDegrees, trimAt } from './profile.ts';
import { sweepFrames, type SweepFrame } from './sweep.ts';

/** Which face of the tube a vertex belongs to. */
export const OUTER = 0;
export const BORE = 1;
export const CUT = 2;

export interface TubeMesh {
  /** x, y, z of each vertex, mm, car axes. */
  readonly positions: Float32Array;
  /** Unit, out of the steel. */
  readonly normals: Float32Array;
  /** OUTER, BORE or CUT for each vertex. */
  readonly faces: Float32Array;
  /** Three a triangle, counter-clockwise seen from outside the steel. */
  readonly indices: Uint32Array;
  /** Two a stroke: the edges of both cut faces, on the outer wall and on the bore. */
  readonly edges: Uint32Array;
}

const EVEN_STEP = 6;
const TO_RADIANS = Math.PI / 180;

/** An end's trims on both faces of the wall, NaN filled, and where its generator lines must fall. */
interface EndTrim {
  readonly outer: Float64Array;
  readonly inner: Float64Array;
  readonly sharp: readonly number[];
}

function readEnd(end: TubeEnd): EndTrim {
  const tip = end.tip ?? 0;
  const outer = reachedOrTip(end.outer, tip);
  const inner = reachedOrTip(end.inner, tip);
  return { outer, inner, sharp: [...sharpDegrees(outer), ...sharpDegrees(inner)] };
}

/**
 * Generator lines by their angle at end A, degrees in [0, 360), ascending: every 6 degrees, and every corner of either
 * end's profiles. `turn` is the angle, at A, of end B's reference; B's own angles run the other way.
 */
export function generatorDegrees(
  sharpA: readonly number[],
  sharpB: readonly number[],
  turn: number,
): readonly number[] {
  const wrap = (degrees: number): number => ((degrees % 360) + 360) % 360;
  const wanted = [...sharpA, ...sharpB.map((degrees) => wrap(turn - degrees))];
  for (let degrees = 0; degrees < 360; degrees += EVEN_STEP) wanted.push(degrees);
  wanted.sort((a, b) => a - b);
  return wanted
    .filter((degrees, i) => i === 0 || degrees - wanted[i - 1]! > 1e-6)
    .filter((degrees) => degrees < 360 - 1e-6);
}

/** How far a generator line is trimmed at end A, and at end B; mm from the node into the tube. */
interface Trims {
  readonly a: number;
  readonly b: number;
}

/** Trims at both ends on each generator line, kept within the straight that the end stands on. */
function trimsOf(
  tube: SolvedTube,
  degrees: readonly number[],
  turn: number,
  a: Float64Array,
  b: Float64Array,
): readonly Trims[] {
  const bent = tube.bends.length > 0;
  const roomA = Math.max(0, tube.straights[0] ?? 0);
  const roomB = Math.max(0, tube.straights.at(-1) ?? 0);
  return degrees.map((phi) => {
    const atA = trimAt(a, phi);
    const atB = trimAt(b, turn - phi);
    if (bent) return { a: Math.min(atA, roomA), b: Math.min(atB, roomB) };
    const crossed = Math.max(0, atA + atB - tube.path.length) / 2;
    return { a: atA - crossed, b: atB - crossed };
  });
}

/** Flat arrays that rings of `count` vertices are laid into. A drag builds many tubes a frame: nothing is made for a vertex. */
function layRings(rings: number, bands: number, count: number) {
  const positions = new Float32Array(3 * rings * count);
  const normals = new Float32Array(3 * rings * count);
  const faces = new Float32Array(rings * count);
  const indices = new Uint32Array(6 * bands * count);
  const edges: number[] = [];
  let laid = 0;
  let banded = 0;
  return {
    positions,
    normals,
    /** Room for one more ring; answers the index of its first vertex. */
    ring(face: number): number {
      const first = laid * count;
      faces.fill(face, first, first + count);
      laid += 1;
      return first;
    },
    /** Closes the strip between two rings. */
    band(from: number, to: number): void {
      for (let k = 0; k < count; k += 1) {
        const next = (k + 1) % count;
        indices.set([from + k, to + next, to + k, from + k, from + next, to + next], banded);
        banded += 6;
      }
    },
    /** Marks a ring as a visible edge. */
    edge(first: number): void {
      for (let k = 0; k < count; k += 1) edges.push(first + k, first + ((k + 1) % count));
    },
    mesh: (): TubeMesh => ({ positions, normals, faces, indices, edges: Uint32Array.from(edges) }),
  };
}

type Steel = ReturnType<typeof layRings>;

/** Sweeps one wall through the frames; answers each ring's first vertex. `sense` turns the normals: 1 outwards, -1 into the bore. */
function sweepWall(
  steel: Steel,
  frames: readonly SweepFrame[],
  degrees: readonly number[],
  radius: number,
  trims: readonly Trims[],
  face: typeof OUTER | typeof BORE,
): readonly number[] {
  const { positions, normals } = steel;
  const sense = face === OUTER ? 1 : -1;
  const lines = degrees.map((phi) => [Math.cos(phi * TO_RADIANS), Math.sin(phi * TO_RADIANS)] as const);
  return frames.map(({ at, tangent, across, beside }, i) => {
    const first = steel.ring(face);
    lines.forEach(([cos, sin], k) => {
      const along = i === 0 ? trims[k]!.a : i === frames.length - 1 ? -trims[k]!.b : 0;
      for (let axis = 0; axis < 3; axis += 1) {
        const spoke = across[axis]! * cos + beside[axis]! * sin;
        positions[3 * (first + k) + axis] = at[axis]! + tangent[axis]! * along + spoke * radius;
        normals[3 * (first + k) + axis] = spoke * sense;
      }
    });
    return first;
  });
}

/** One edge of a cut face: a copy of a wall's last ring, for normals of its own. */
function copyRing({ positions, ring }: Steel, wall: number, count: number): number {
  const first = ring(CUT);
  positions.copyWithin(3 * first, 3 * wall, 3 * (wall + count));
  return first;
}

/** Normals of a cut face, out of the steel: square to its rim and to the wall's thickness. `outwards` leads off the tube's end. */
function layCutNormals(
  { positions, normals }: Steel,
  outer: number,
  inner: number,
  count: number,
  outwards: Vec3,
): void {
  const vertex = (i: number): Vec3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  for (let k = 0; k < count; k += 1) {
    const alongRim = subtract(vertex(outer + ((k + 1) % count)), vertex(outer + ((k - 1 + count) % count)));
    const square = normalize(cross(alongRim, subtract(vertex(outer + k), vertex(inner + k))));
    const normal = dot(square, outwards) < 0 ? scale(square, -1) : square;
    normals.set(normal, 3 * (outer + k));
    normals.set(normal, 3 * (inner + k));
  }
}

const NO_STEEL: TubeMesh = {
  positions: new Float32Array(),
  normals: new Float32Array(),
  faces: new Float32Array(),
  indices: new Uint32Array(),
  edges: new Uint32Array(),
};

/**
 * Triangles of the tube. Lines that reach no run are drawn to the tip; an end that is trimmed past its straight is
 * drawn to the bend's tangent. A tube without a path gives an empty mesh.
 */
export function buildTubeMesh(tube: SolvedTube): TubeMesh {
  const [endA, endB] = tube.ends;
  const frames = sweepFrames(tube.path, endA.reference);
  const last = frames.at(-1);
  if (last === undefined) return NO_STEEL;

  const turn = Math.atan2(dot(endB.reference, last.beside), dot(endB.reference, last.across)) / TO_RADIANS;
  const [trimA, trimB] = [readEnd(endA), readEnd(endB)];
  const degrees = generatorDegrees(trimA.sharp, trimB.sharp, turn);
  const count = degrees.length;
  const radius = tube.section.outerDiameter / 2;
  const steel = layRings(2 * frames.length + 4, 2 * frames.length, count);
  const outer = sweepWall(
    steel,
    frames,
    degrees,
    radius,
    trimsOf(tube, degrees, turn, trimA.outer, trimB.outer),
    OUTER,
  );
  const bore = radius - tube.section.wall;
  const inner = sweepWall(steel, frames, degrees, bore, trimsOf(tube, degrees, turn, trimA.inner, trimB.inner), BORE);
  for (let i = 1; i < frames.length; i += 1) {
    steel.band(outer[i - 1]!, outer[i]!);
    steel.band(inner[i]!, inner[i - 1]!);
  }
  for (const [ring, end] of [
    [0, endA],
    [frames.length - 1, endB],
  ] as const) {
    const outerEdge = copyRing(steel, outer[ring]!, count);
    const innerEdge = copyRing(steel, inner[ring]!, count);
    layCutNormals(steel, outerEdge, innerEdge, count, scale(end.direction, -1));
    steel.edge(outerEdge);
    steel.edge(innerEdge);
    if (ring === 0) steel.band(innerEdge, outerEdge);
    else steel.band(outerEdge, innerEdge);
  }
  return steel.mesh();
}
