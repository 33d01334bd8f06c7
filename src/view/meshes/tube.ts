/**
 * A solved tube as triangles: outer wall, bore, and at both ends the cut face between them, shaped by the end's trim
 * profiles. Closed, wound outwards, and free of any drawing library.
 */
import { addScaled, cross, dot, normalize, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';
import type { SolvedTube, TubeEnd } from '../../core/solve/types.ts';
import { reachedOrTip, sharpDegrees, trimAt } from './profile.ts';
import { spokeAt, sweepFrames, type SweepFrame } from './sweep.ts';

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

/** Points of one wall (outer or bore), ring by ring from A to B, each with its spoke. */
interface Wall {
  readonly rings: readonly (readonly Vec3[])[];
  readonly spokes: readonly (readonly Vec3[])[];
}

function sweepWall(
  frames: readonly SweepFrame[],
  degrees: readonly number[],
  radius: number,
  trims: readonly { readonly a: number; readonly b: number }[],
): Wall {
  const last = frames.length - 1;
  const spokes = frames.map((frame) => degrees.map((phi) => spokeAt(frame, phi * TO_RADIANS)));
  const rings = frames.map((frame, i) =>
    degrees.map((_, k) => {
      const along = i === 0 ? trims[k]!.a : i === last ? -trims[k]!.b : 0;
      return addScaled(addScaled(frame.at, frame.tangent, along), spokes[i]![k]!, radius);
    }),
  );
  return { rings, spokes };
}

/** Growing lists of vertices and triangles. */
function startSteel() {
  const positions: number[] = [];
  const normals: number[] = [];
  const faces: number[] = [];
  const indices: number[] = [];
  const edges: number[] = [];
  return {
    /** Adds a ring of vertices; answers the first one's index. */
    ring(points: readonly Vec3[], spokes: readonly Vec3[], face: number): number {
      const first = faces.length;
      points.forEach((point, k) => {
        positions.push(...point);
        normals.push(...spokes[k]!);
        faces.push(face);
      });
      return first;
    },
    /** Closes the strip between two rings of `count` vertices that begin at `from` and `to`. */
    band(from: number, to: number, count: number): void {
      for (let k = 0; k < count; k += 1) {
        const next = (k + 1) % count;
        indices.push(from + k, to + next, to + k, from + k, from + next, to + next);
      }
    },
    /** Marks a ring as a visible edge. */
    edge(first: number, count: number): void {
      for (let k = 0; k < count; k += 1) edges.push(first + k, first + ((k + 1) % count));
    },
    mesh: (): TubeMesh => ({
      positions: Float32Array.from(positions),
      normals: Float32Array.from(normals),
      faces: Float32Array.from(faces),
      indices: Uint32Array.from(indices),
      edges: Uint32Array.from(edges),
    }),
  };
}

/** Normals of the cut face, out of the steel: square to the rim and to the wall's thickness. */
function cutNormals(outer: readonly Vec3[], inner: readonly Vec3[], outwards: Vec3): Vec3[] {
  const count = outer.length;
  return outer.map((point, k) => {
    const alongRim = subtract(outer[(k + 1) % count]!, outer[(k - 1 + count) % count]!);
    const square = normalize(cross(alongRim, subtract(point, inner[k]!)));
    return dot(square, outwards) < 0 ? scale(square, -1) : square;
  });
}

/** Trims at both ends on each generator line, kept within the straight that the end stands on. */
function trimsOf(
  tube: SolvedTube,
  degrees: readonly number[],
  turn: number,
  a: Float64Array,
  b: Float64Array,
): { a: number; b: number }[] {
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

/**
 * Triangles of the tube. Lines that reach no run are drawn to the tip; an end that is trimmed past its straight is
 * drawn to the bend's tangent. Ends without an own path give an empty mesh.
 */
export function buildTubeMesh(tube: SolvedTube): TubeMesh {
  const [endA, endB] = tube.ends;
  const frames = sweepFrames(tube.path, endA.reference);
  const steel = startSteel();
  const last = frames.at(-1);
  if (last !== undefined) {
    const turn = Math.atan2(dot(endB.reference, last.beside), dot(endB.reference, last.across)) / TO_RADIANS;
    const trimA = readEnd(endA);
    const trimB = readEnd(endB);
    const degrees = generatorDegrees(trimA.sharp, trimB.sharp, turn);
    const count = degrees.length;
    const outerRadius = tube.section.outerDiameter / 2;
    const outer = sweepWall(frames, degrees, outerRadius, trimsOf(tube, degrees, turn, trimA.outer, trimB.outer));
    const inner = sweepWall(
      frames,
      degrees,
      outerRadius - tube.section.wall,
      trimsOf(tube, degrees, turn, trimA.inner, trimB.inner),
    );

    const outerStarts = outer.rings.map((ring, i) => steel.ring(ring, outer.spokes[i]!, OUTER));
    const inwards = inner.spokes.map((ring) => ring.map((spoke) => scale(spoke, -1)));
    const innerStarts = inner.rings.map((ring, i) => steel.ring(ring, inwards[i]!, BORE));
    for (let i = 1; i < frames.length; i += 1) {
      steel.band(outerStarts[i - 1]!, outerStarts[i]!, count);
      steel.band(innerStarts[i]!, innerStarts[i - 1]!, count);
    }
    [0, frames.length - 1].forEach((i) => {
      const outwards = i === 0 ? endA.direction : endB.direction;
      const normals = cutNormals(outer.rings[i]!, inner.rings[i]!, scale(outwards, -1));
      const outerEdge = steel.ring(outer.rings[i]!, normals, CUT);
      const innerEdge = steel.ring(inner.rings[i]!, normals, CUT);
      steel.edge(outerEdge, count);
      steel.edge(innerEdge, count);
      if (i === 0) steel.band(innerEdge, outerEdge, count);
      else steel.band(outerEdge, innerEdge, count);
    });
  }
  return steel.mesh();
}
