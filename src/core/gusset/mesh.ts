/**
 * A gusset as triangles, in car axes: slabs for its faces and, of a bent one, the fold between them. Every face is flat with vertices of its own, wound outwards; a bend stands in
 * flats of 2 degrees.
 */
import { cross, normalize, subtract, type Vec3 } from '../geometry/vector.ts';
import { inCar, type Corner } from './corner.ts';
import { placesRound, type Place2 } from './edges.ts';
import type { Face } from './face.ts';
import { offFold, type Folded, type Station } from './fold.ts';
import type { MadeGusset } from './gussets.ts';

export interface GussetMesh {
  /** Closed: a flat one is one, a bent one two faces and the fold. */
  readonly shells: readonly {
    /** x, y, z of each vertex, mm. */
    readonly positions: Float32Array<ArrayBuffer>;
    /** Unit, out of the steel. */
    readonly normals: Float32Array<ArrayBuffer>;
    /** Three a triangle, counter-clockwise seen from outside the steel. */
    readonly indices: Uint32Array<ArrayBuffer>;
  }[];
  /** The outer edges, not those between the flats of a bend: x, y, z of both ends of each stroke. */
  readonly strokes: Float32Array<ArrayBuffer>;
}

/** A flat face with three corners or more, convex. */
type Flat = readonly Vec3[];
type Stroke = readonly [Vec3, Vec3];

interface Shell {
  readonly flats: readonly Flat[];
  readonly strokes: readonly Stroke[];
}

/** The whole gusset. */
export function gussetMesh({ corner, sheet }: MadeGusset, thickness: number): GussetMesh {
  const { shape } = sheet;
  if (shape.kind === 'flat') return meshOf([slab(corner, placesRound(sheet.edges), 0, thickness)]);
  const { fold } = shape;
  const [lower, upper] = fold.faces;
  const [first, last] = [fold.stations[0]!, fold.stations.at(-1)!];
  return meshOf([
    slab(corner, faceRound(fold, lower, first), first.z, thickness),
    slab(corner, faceRound(fold, upper, last), last.z, thickness),
    foldShell(corner, fold, thickness),
  ]);
}

/** Round a face of a bent one, counter-clockwise, from the tube of leg 1 along where the fold begins; places on the corner's plane, mm. */
export function faceRound(fold: Folded, { begins, between }: Face, { ends, p }: Station): readonly Place2[] {
  const [one, two] = ends.map((u) => offFold(fold, [u, p])) as [Place2, Place2];
  return [begins[0], one, two, ...(between === null ? [] : placesRound([between]))];
}

/** Between two planes beside the corner's own, half a thickness either side of `z`. */
function slab(corner: Corner, round: readonly Place2[], z: number, thickness: number): Shell {
  const [low, high] = [-0.5, 0.5].map((share) => round.map((place) => inCar(corner, place, z + share * thickness)));
  const next = (i: number): number => (i + 1) % round.length;
  const sides = round.map((_, i): Flat => [low![i]!, low![next(i)]!, high![next(i)]!, high![i]!]);
  const strokes = [low!, high!].flatMap((places) => places.map((place, i): Stroke => [place, places[next(i)]!]));
  return { flats: [low!.toReversed(), high!, ...sides], strokes };
}

/** From where the one face begins to where the other does; closed there, though no face of steel is. */
function foldShell(corner: Corner, fold: Folded, thickness: number): Shell {
  const rows = fold.stations.map((station) => across(corner, fold, station, thickness));
  const shells = rows.slice(1).map((after, i): Shell => {
    const here = rows[i]!;
    const sides = here.map((place, k): Flat => [place, here[(k + 1) % 4]!, after[(k + 1) % 4]!, after[k]!]);
    return { flats: sides, strokes: here.map((place, k): Stroke => [place, after[k]!]) };
  });
  const ends = [rows[0]!.toReversed(), rows.at(-1)!];
  return {
    flats: [...shells.flatMap(({ flats }) => flats), ...ends],
    strokes: shells.flatMap(({ strokes }) => strokes),
  };
}

/** The sheet cut across at a station: the outside from leg 1 to leg 2, then the inside back. */
function across(corner: Corner, fold: Folded, { p, z, out, ends: [one, two] }: Station, thickness: number): Flat {
  const at = (u: number, share: number): Vec3 =>
    inCar(corner, offFold(fold, [u, p + share * thickness * out[0]]), z + share * thickness * out[1]);
  return [at(one, 0.5), at(two, 0.5), at(two, -0.5), at(one, -0.5)];
}

const meshOf = (shells: readonly Shell[]): GussetMesh => ({
  shells: shells.map(({ flats }) => {
    let count = 0;
    const firsts = flats.map(({ length }) => (count += length) - length);
    return {
      positions: Float32Array.from(flats.flat(2)),
      normals: Float32Array.from(flats.flatMap((flat) => flat.flatMap(() => squareTo(flat)))),
      indices: Uint32Array.from(
        flats.flatMap((flat, i) =>
          flat.slice(2).flatMap((_, k) => [0, k + 1, k + 2].map((corner) => firsts[i]! + corner)),
        ),
      ),
    };
  }),
  strokes: Float32Array.from(shells.flatMap(({ strokes }) => strokes).flat(2)),
});

/** By its first corner and the two farthest round from it: neighbours may stand too near one another. */
function squareTo(flat: Flat): Vec3 {
  const [a, b, c] = [flat[0]!, flat[Math.floor(flat.length / 3)]!, flat[Math.floor((2 * flat.length) / 3)]!];
  return normalize(cross(subtract(b, a), subtract(c, a)));
}
