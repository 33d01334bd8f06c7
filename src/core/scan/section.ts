/**
 * Where a plane cuts a scan. Of a mesh the exact curve: in each triangle the straight line between two of its edges, the lines put together
 * edge by edge, so that a closed surface gives closed curves. Of a cloud the points of a thin slab, laid square onto the plane.
 *
 * A vertex that lies on the plane counts as above it. So each triangle is cut along one line or none, both triangles at an edge see the same place, and
 * nothing has to be told apart by a tolerance; a face that lies in the plane gives its outline where the surface goes on below it, and nothing where it goes on above.
 */
import { addScaled, dot, equal, subtract, type Vec3 } from '../geometry/vector.ts';
import { directionInFile, inCar, type Placing } from './place.ts';
import type { ScanData } from './types.ts';

export interface CuttingPlane {
  /** In the car. */
  readonly point: Vec3;
  /** Unit vector. */
  readonly normal: Vec3;
}

/** A chain of places in the car, mm; of a closed one the last is the first again. */
export type SectionCurve = readonly Vec3[];

/** mm either side of the plane: points of a cloud are some millimetres apart. */
export const SLAB = 5;

/** The signed distance of each vertex from the plane, mm, positive on the side that the normal points to. */
function distancesOf({ positions }: ScanData, placing: Placing, { point, normal }: CuttingPlane): Float64Array {
  const [a, b, c] = directionInFile(placing, normal).map((part) => part * placing.mm) as [number, number, number];
  const from = dot(normal, subtract(placing.shift, point));
  const distances = new Float64Array(positions.length / 3);
  for (let i = 0; i < distances.length; i++) {
    distances[i] = a * positions[3 * i]! + b * positions[3 * i + 1]! + c * positions[3 * i + 2]! + from;
  }
  return distances;
}

/** The places of a cloud within SLAB of the plane, each square onto it. */
export function slabOf(data: ScanData, placing: Placing, plane: CuttingPlane): readonly Vec3[] {
  const distances = distancesOf(data, placing, plane);
  const found: Vec3[] = [];
  for (let i = 0; i < distances.length; i++) {
    if (Math.abs(distances[i]!) > SLAB) continue;
    found.push(addScaled(inCar(placing, vertexOf(data, i)), plane.normal, -distances[i]!));
  }
  return found;
}

/** The curves in which a mesh is cut, each chain as long as it can be. */
export function sectionOf(data: ScanData, placing: Placing, plane: CuttingPlane): readonly SectionCurve[] {
  const distances = distancesOf(data, placing, plane);
  const lines = cutLines(data, distances);
  const placeOf = (edge: number): Vec3 => {
    const vertices = distances.length;
    const [low, high] = [Math.floor(edge / vertices), edge % vertices];
    const share = distances[low]! / (distances[low]! - distances[high]!);
    const [a, b] = [vertexOf(data, low), vertexOf(data, high)];
    return inCar(placing, addScaled(a, subtract(b, a), share));
  };
  return chainsOf(lines).flatMap((edges) => {
    const places = edges.map(placeOf).filter((place, i, all) => i === 0 || !equal(place, all[i - 1]!));
    return places.length < 2 ? [] : [places];
  });
}

const vertexOf = ({ positions }: ScanData, i: number): Vec3 => [
  positions[3 * i]!,
  positions[3 * i + 1]!,
  positions[3 * i + 2]!,
];

/** Two edges of each triangle that is cut, one after the other; an edge by the numbers of its two vertices, the lower one first. */
function cutLines({ triangles }: ScanData, distances: Float64Array): readonly number[] {
  const vertices = distances.length;
  const lines: number[] = [];
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [triangles[at]!, triangles[at + 1]!, triangles[at + 2]!];
    const [u, v, w] = [distances[a]! >= 0, distances[b]! >= 0, distances[c]! >= 0];
    if (u === v && v === w) continue;
    if (u !== v) lines.push(a < b ? a * vertices + b : b * vertices + a);
    if (v !== w) lines.push(b < c ? b * vertices + c : c * vertices + b);
    if (w !== u) lines.push(c < a ? c * vertices + a : a * vertices + c);
  }
  return lines;
}

/** Lines that share an edge, end to end: first the chains that begin or end at a rim of the surface, then the closed ones. */
function chainsOf(lines: readonly number[]): readonly (readonly number[])[] {
  const at = new Map<number, number[]>();
  lines.forEach((edge, i) => {
    const known = at.get(edge);
    if (known === undefined) at.set(edge, [i >> 1]);
    else known.push(i >> 1);
  });
  const isTaken = new Uint8Array(lines.length / 2);
  const chains: number[][] = [];
  function follow(first: number): void {
    const chain = [first];
    for (let edge = first; ;) {
      const line = at.get(edge)!.find((each) => isTaken[each] === 0);
      if (line === undefined) break;
      isTaken[line] = 1;
      edge = lines[2 * line] === edge ? lines[2 * line + 1]! : lines[2 * line]!;
      chain.push(edge);
    }
    if (chain.length > 1) chains.push(chain);
  }
  // An edge of one triangle, or of three, is where a chain ends.
  for (const [edge, meeting] of at) for (let i = 0; i < meeting.length % 2; i++) follow(edge);
  for (const [edge, meeting] of at) for (let i = 0; i < meeting.length; i += 2) follow(edge);
  return chains;
}
