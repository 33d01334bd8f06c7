/**
 * The places that answer all readings best, from good guesses or bad ones. Downhill from a bad guess least squares can end in a hollow that
 * is not the deepest, so where the guesses do not answer the readings another start is made: first what is read along the axes,
 * then point after point from those that are placed, the best tied first, each from all sides. Of two that answer alike, such as a point and its image
 * across the plane of those it is taped from, the one nearer the guess stands (mirror.ts asks about the other).
 */
import { distance, type Vec3 } from '../geometry/vector.ts';
import { pointsOf } from '../job/kinds/measurement.ts';
import { bareId, type PointId } from '../job/reference.ts';
import { placeIn, put, type Network } from './network.ts';
import { solve, type Solution } from './solve.ts';

/** In deviations squared, of the sum: two solutions this near answer alike. */
export const ALIKE = 9;

/** The best solution for the readings of these indices. `near`: places to begin with, of the same network; absent, the guesses. */
export function settle(network: Network, used: readonly number[], near: Float64Array = network.guess): Solution {
  const first = solve(network, used, network.unknown, near);
  if (isAnswered(first)) return first;
  const other = solve(network, used, network.unknown, placed(network, used));
  return other.squares < first.squares - ALIKE ? other : first;
}

/** Whether what is left over is no more than readings scatter: the mean of chi-square, and six of its deviations. */
function isAnswered({ squares, rows, normal }: Solution): boolean {
  const redundancy = rows.length - normal.rank;
  return squares <= redundancy + 6 * Math.sqrt(2 * redundancy) + ALIKE;
}

/** Where points are put one after another, from those that are known. */
function placed(network: Network, used: readonly number[]): Float64Array {
  const isStraight = (index: number): boolean =>
    ['coordinate', 'width', 'difference'].includes(network.measurements[index]!.kind);
  const straight = solve(network, used.filter(isStraight), network.unknown, network.guess);
  const places = straight.places.slice();
  const open = new Set(
    network.unknown.filter((_, i) => straight.normal.open.some((way) => Math.abs(way[i]!) > TOUCHED)),
  );
  const isOpen = (id: PointId): boolean => [0, 1, 2].some((k) => open.has(network.first.get(id)! + k));
  const waiting = new Map(network.asked.filter(({ id }) => isOpen(id)).map(({ id }) => [id, [] as number[]]));
  const touching = used.map((index) => ({
    index,
    points: [...new Set(pointsOf(network.measurements[index]!).map(([, point]) => bareId(point)))],
  }));
  while (waiting.size > 0) {
    for (const ties of waiting.values()) ties.length = 0;
    for (const { index, points } of touching) {
      const left = points.filter((id) => waiting.has(id));
      if (left.length === 1) waiting.get(left[0]!)!.push(index);
    }
    const [id, ties] = [...waiting].reduce((best, one) => (one[1].length > best[1].length ? one : best));
    const unknown = unknownOf(network, id);
    if (ties.length > 0) {
      const best = bestOf(network, ties, unknown, places, id);
      for (const at of unknown) put(network, places, at, best.places[at]!);
    }
    waiting.delete(id);
  }
  return places;
}

/** Of a unit direction: a part of less is none. */
export const TOUCHED = 1e-6;

/** The coordinates of a point that are asked for. */
export const unknownOf = ({ first, unknown }: Network, id: PointId): readonly number[] =>
  [0, 1, 2].map((k) => first.get(id)! + k).filter((at) => unknown.includes(at));

/** Of the places that answer the ties best the one nearest the point's guess. */
function bestOf(
  network: Network,
  ties: readonly number[],
  unknown: readonly number[],
  places: Float64Array,
  id: PointId,
): Solution {
  const from = placeIn(network, network.guess)(id);
  const away = ({ places: there }: Solution): number => distance(placeIn(network, there)(id), from);
  return fromAllSides(network, ties, unknown, places, id).reduce((best, one) => {
    if (Math.abs(one.squares - best.squares) <= ALIKE) return away(one) < away(best) ? one : best;
    return one.squares < best.squares ? one : best;
  });
}

/** One point by its ties to others, which stay where they are: from where it is, and from all corners of a box about what it is tied to. */
export function fromAllSides(
  network: Network,
  ties: readonly number[],
  unknown: readonly number[],
  places: Float64Array,
  id: PointId,
): readonly Solution[] {
  const at = placeIn(network, places);
  const others = ties.flatMap((index) =>
    pointsOf(network.measurements[index]!).flatMap(([, point]) => (bareId(point) === id ? [] : [at(point)])),
  );
  const middle = [0, 1, 2].map((k) => others.reduce((sum, place) => sum + place[k]!, 0) / Math.max(others.length, 1));
  const taped = ties.flatMap((index) => {
    const { kind, value } = network.measurements[index]!;
    return kind === 'distance' ? [value] : [];
  });
  const reach = Math.max(LEAST_REACH, ...taped, ...others.map((place) => distance(place, middle as unknown as Vec3)));
  const corners = CORNERS.map((corner) => {
    const start = places.slice();
    corner.forEach((side, k) => {
      const here = network.first.get(id)! + k;
      if (unknown.includes(here)) put(network, start, here, middle[k]! + side * reach);
    });
    return start;
  });
  return [places, ...corners].map((start) => solve(network, ties, unknown, start));
}

/** mm. Of the box where nothing says how far off the point is. */
const LEAST_REACH = 500;

/** Not quite a cube: a place on an axis of symmetry has no slope to go down. */
const CORNERS: readonly Vec3[] = [
  [1, 0.83, 0.71],
  [1, 0.79, -0.67],
  [1, -0.81, 0.73],
  [1, -0.77, -0.69],
  [-1, 0.84, 0.66],
  [-1, 0.78, -0.72],
  [-1, -0.82, 0.68],
  [-1, -0.76, -0.7],
];
