/**
 * How thick a heap of places lies at the least: of all pairs of parallel planes that hold them, how near the nearest are, and square to what.
 *
 * The hull of the places is least thick between a face and a corner or between two edges (M. E. Houle and G. T. Toussaint, Computing the width of a set, IEEE
 * PAMI 10 (1988)): square to two ways between places. All such pairs are tried, which takes the fifth power of their number; of more than MOST_TRIED places only the planes
 * through neighbours.
 */
import { cross, dot, length, scale, subtract, type Vec3 } from '../geometry/vector.ts';

/** Places of which every two ways between them are tried: a tube with more bends than fourteen is no tube of a cage. */
const MOST_TRIED = 16;
/** Sine of the angle between two ways under which they are one: what arithmetic leaves of a plane through them is none. */
const ONE_WAY = 1e-9;

/** mm, and the unit direction that it is measured in; the same from whichever end the places are counted. Zero and null of places on one line. */
export function leastThickness(places: readonly Vec3[]): { readonly thickness: number; readonly normal: Vec3 | null } {
  let best: { thickness: number; normal: Vec3 | null } = { thickness: Infinity, normal: null };
  for (const [a, b] of pairsOf(places)) {
    const out = cross(a, b);
    const size = length(out);
    if (size <= ONE_WAY * length(a) * length(b)) continue;
    const normal = scale(out, 1 / size);
    const thickness = extentAlong(places, normal);
    if (thickness < best.thickness) best = { thickness, normal };
  }
  return best.normal === null ? { thickness: 0, normal: null } : best;
}

function extentAlong(places: readonly Vec3[], normal: Vec3): number {
  let [least, most] = [Infinity, -Infinity];
  for (const place of places) {
    const height = dot(place, normal);
    if (height < least) least = height;
    if (height > most) most = height;
  }
  return most - least;
}

/** Of ways between places. */
function* pairsOf(places: readonly Vec3[]): Generator<readonly [Vec3, Vec3]> {
  if (places.length > MOST_TRIED) {
    const steps = places.slice(1).map((place, i) => subtract(place, places[i]!));
    for (const [i, step] of steps.slice(1).entries()) yield [steps[i]!, step];
    return;
  }
  const ways = places.flatMap((from, i) => places.slice(i + 1).map((to) => subtract(to, from)));
  for (const [i, one] of ways.entries()) for (const other of ways.slice(i + 1)) yield [one, other];
}
