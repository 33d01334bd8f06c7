/**
 * A solved tube as triangles: outer wall, bore, and at both ends the cut face between them, shaped by the end's trim
 * profiles. Closed, wound outwards, and free of any drawing library.
 */
import { cross, dot, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';
import { profileOf, sharpDegrees, trimAt, type Profile } from './profile.ts';
import { sweepFrames, type SweepFrame } from './sweep.ts';

/** Which face of the tube a vertex belongs to. */
export const OUTER = 0;
export const CUT = 2;
const BORE = 1;

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

/** How finely a tube is laid: degrees between the lines along it, and degrees of bend between two rings. */
export interface Fineness {
  readonly lines: number;
  readonly bend: number;
  /** 'all': each rim has a vertex on every line of its own profile. 'corners': on the even lines and on the profiles' corners. */
  readonly rims: 'all' | 'corners';
}

/** For the screen: few triangles, and the cut's shape kept. */
const DRAWN: Fineness = { lines: 6, bend: 8, rims: 'corners' };

const TO_RADIANS = Math.PI / 180;
const WHOLE_DEGREES = Array.from({ length: 360 }, (_, phi) => phi);
/** Degrees. Lines nearer to one another than this are one. */
const SAME_LINE = 1e-6;
const wrap = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** An end's trims on both faces of the wall, and where its generator lines must fall. */
interface EndTrim {
  readonly outer: Profile;
  readonly inner: Profile;
  readonly sharp: readonly number[];
}

function readEnd(end: TubeEnd): EndTrim {
  const tip = end.tip ?? 0;
  const outer = profileOf(end.outer, end.high === null ? end.lows : [...end.lows, end.high], tip);
  const inner = profileOf(end.inner, [], tip);
  return { outer, inner, sharp: [...sharpDegrees(outer), ...sharpDegrees(inner)] };
}

/** Angles at end A of the lines through end A's rim, along the tube, and through end B's rim; degrees in [0, 360), ascending. */
interface Lines {
  readonly a: readonly number[];
  readonly along: readonly number[];
  readonly b: readonly number[];
}

/** `turn` is the angle, at A, of end B's reference; B's own angles run the other way. */
function linesOf({ lines, rims }: Fineness, trimA: EndTrim, trimB: EndTrim, turn: number): Lines {
  const even = Array.from({ length: 360 / lines }, (_, i) => i * lines);
  const fromB = (degrees: number): number => wrap(turn - degrees);
  if (rims === 'all') {
    const rim = ({ outer }: EndTrim) => [...WHOLE_DEGREES, ...outer.between.map(({ degrees }) => degrees)];
    return { a: ascending(rim(trimA)), along: even, b: ascending(rim(trimB).map(fromB)) };
  }
  const all = ascending([...even, ...trimA.sharp, ...trimB.sharp.map(fromB)]);
  return { a: all, along: all, b: all };
}

/** In order, and each once. */
function ascending(degrees: readonly number[]): readonly number[] {
  const sorted = degrees.toSorted((a, b) => a - b);
  return sorted.filter((each, i) => (i === 0 || each - sorted[i - 1]! > SAME_LINE) && each < 360 - SAME_LINE);
}

/** How far a generator line is trimmed at end A, and at end B; mm from the node into the tube. */
interface Trims {
  readonly a: number;
  readonly b: number;
}

/** Trims at both ends on each generator line, kept within the straight that the end stands on. */
function trimsOf(tube: SolvedTube, degrees: readonly number[], turn: number, a: Profile, b: Profile): readonly Trims[] {
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

/** One ring of vertices: the first of them, and the angle of each. */
interface Ring {
  readonly first: number;
  readonly degrees: readonly number[];
}

/** Flat arrays that rings of vertices are laid into. A drag builds many tubes a frame: nothing is made for a vertex. */
function layRings(vertices: number, triangles: number) {
  const positions = new Float32Array(3 * vertices);
  const normals = new Float32Array(3 * vertices);
  const faces = new Float32Array(vertices);
  const indices = new Uint32Array(3 * triangles);
  const edges: number[] = [];
  let laid = 0;
  let banded = 0;
  return {
    positions,
    normals,
    /** Room for one more ring. */
    ring(degrees: readonly number[], face: number): Ring {
      const first = laid;
      laid += degrees.length;
      faces.fill(face, first, laid);
      return { first, degrees };
    },
    /** Closes the strip between two rings, always on from the line that comes next. */
    band(from: Ring, to: Ring): void {
      const [f, t] = [from.degrees, to.degrees];
      for (let i = 0, k = 0; i < f.length || k < t.length;) {
        const nextF = i + 1 < f.length ? f[i + 1]! : f[0]! + 360;
        const nextT = k + 1 < t.length ? t[k + 1]! : t[0]! + 360;
        const [here, there] = [from.first + (i % f.length), to.first + (k % t.length)];
        // Two that are one line but for rounding go the same way on every machine.
        if (k < t.length && (i >= f.length || nextT <= nextF + SAME_LINE)) {
          k += 1;
          indices.set([here, to.first + (k % t.length), there], banded);
        } else {
          i += 1;
          indices.set([here, from.first + (i % f.length), there], banded);
        }
        banded += 3;
      }
    },
    /** Marks a ring as a visible edge. */
    edge({ first, degrees: { length } }: Ring): void {
      for (let k = 0; k < length; k += 1) edges.push(first + k, first + ((k + 1) % length));
    },
    mesh: (): TubeMesh => ({ positions, normals, faces, indices, edges: Uint32Array.from(edges) }),
  };
}

type Steel = ReturnType<typeof layRings>;

/** Sweeps one wall through the frames; answers its rings. `sense` turns the normals: 1 outwards, -1 into the bore. */
function sweepWall(
  steel: Steel,
  frames: readonly SweepFrame[],
  lines: Lines,
  radius: number,
  trims: { readonly a: readonly Trims[]; readonly b: readonly Trims[] },
  face: typeof OUTER | typeof BORE,
): readonly Ring[] {
  const { positions, normals } = steel;
  const sense = face === OUTER ? 1 : -1;
  const spokesOf = (degrees: readonly number[]) =>
    degrees.map((phi) => [Math.cos(phi * TO_RADIANS), Math.sin(phi * TO_RADIANS)] as const);
  const spokes = new Map([lines.a, lines.along, lines.b].map((degrees) => [degrees, spokesOf(degrees)]));
  const last = frames.length - 1;
  return frames.map(({ at, tangent, across, beside }, i) => {
    const degrees = i === 0 ? lines.a : i === last ? lines.b : lines.along;
    const ring = steel.ring(degrees, face);
    spokes.get(degrees)!.forEach(([cos, sin], k) => {
      const along = i === 0 ? trims.a[k]!.a : i === last ? -trims.b[k]!.b : 0;
      const vertex = 3 * (ring.first + k);
      for (let axis = 0; axis < 3; axis += 1) {
        const spoke = across[axis]! * cos + beside[axis]! * sin;
        positions[vertex + axis] = at[axis]! + tangent[axis]! * along + spoke * radius;
        normals[vertex + axis] = spoke * sense;
      }
    });
    return ring;
  });
}

/** One edge of a cut face: a copy of a wall's last ring, for normals of its own. */
function copyRing({ positions, ring }: Steel, wall: Ring): Ring {
  const copy = ring(wall.degrees, CUT);
  positions.copyWithin(3 * copy.first, 3 * wall.first, 3 * (wall.first + wall.degrees.length));
  return copy;
}

/** Normals of a cut face, out of the steel: square to its rim and to the wall's thickness. `outwards` leads off the tube's end. */
function layCutNormals({ positions, normals }: Steel, outer: Ring, inner: Ring, outwards: Vec3): void {
  const vertex = (i: number): Vec3 => [positions[3 * i]!, positions[3 * i + 1]!, positions[3 * i + 2]!];
  const count = outer.degrees.length;
  for (let k = 0; k < count; k += 1) {
    const before = vertex(outer.first + ((k - 1 + count) % count));
    const alongRim = subtract(vertex(outer.first + ((k + 1) % count)), before);
    const square = normalize(cross(alongRim, subtract(vertex(outer.first + k), vertex(inner.first + k))));
    const normal = dot(square, outwards) < 0 ? scale(square, -1) : square;
    normals.set(normal, 3 * (outer.first + k));
    normals.set(normal, 3 * (inner.first + k));
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
 * Triangles of the tube. Lines that reach no run tube are drawn to the tip; an end that is trimmed past its straight is
 * drawn to the bend's tangent. A tube without a path gives an empty mesh. Without `fineness` it is that of the screen.
 */
export function buildTubeMesh(tube: SolvedTube, fineness: Fineness = DRAWN): TubeMesh {
  const [endA, endB] = tube.ends;
  const frames = sweepFrames(tube.path, endA.reference, fineness.bend * TO_RADIANS);
  const last = frames.at(-1);
  if (last === undefined) return NO_STEEL;

  const turn = Math.atan2(dot(endB.reference, last.beside), dot(endB.reference, last.across)) / TO_RADIANS;
  const [trimA, trimB] = [readEnd(endA), readEnd(endB)];
  const lines = linesOf(fineness, trimA, trimB, turn);
  // Each wall has its rings and their bands; each end a cut face of two rings and one band, as many triangles as vertices.
  const rims = lines.a.length + lines.b.length;
  const walls = 2 * (rims + (frames.length - 2) * lines.along.length);
  const steel = layRings(walls + 2 * rims, 2 * walls);

  const trims = (a: Profile, b: Profile) => {
    const on = (degrees: readonly number[]) => trimsOf(tube, degrees, turn, a, b);
    const atA = on(lines.a);
    return { a: atA, b: lines.b === lines.a ? atA : on(lines.b) };
  };
  const radius = tube.section.outerDiameter / 2;
  const bore = radius - tube.section.wall;
  const outer = sweepWall(steel, frames, lines, radius, trims(trimA.outer, trimB.outer), OUTER);
  const inner = sweepWall(steel, frames, lines, bore, trims(trimA.inner, trimB.inner), BORE);
  for (let i = 1; i < frames.length; i += 1) {
    steel.band(outer[i - 1]!, outer[i]!);
    steel.band(inner[i]!, inner[i - 1]!);
  }
  for (const [ring, end] of [
    [0, endA],
    [frames.length - 1, endB],
  ] as const) {
    const outerEdge = copyRing(steel, outer[ring]!);
    const innerEdge = copyRing(steel, inner[ring]!);
    layCutNormals(steel, outerEdge, innerEdge, scale(end.direction, -1));
    steel.edge(outerEdge);
    steel.edge(innerEdge);
    if (ring === 0) steel.band(innerEdge, outerEdge);
    else steel.band(outerEdge, innerEdge);
  }
  return steel.mesh();
}
