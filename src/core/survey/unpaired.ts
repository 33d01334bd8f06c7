/** What is said of all points once the pairs are known: which have none, and why; and what the right side of the car is on average. */
import { PAIR_NEAR } from '../geometry/tolerance.ts';
import { distance, mirrored, type Vec3 } from '../geometry/vector.ts';
import type { Point } from '../job/kinds/point.ts';
import { namedAlike, pairsOfPoints } from './point-pairs.ts';

/** A point without a pair. */
export type Alone =
  /** Its own mirror image is within PAIR_NEAR: it stands on the centre plane and wants no pair. */
  | { readonly why: 'centre' | 'none-near'; readonly point: Point }
  /** `named` is called alike but for the side: it lies on the same side of the car, or `off` mm from the mirror image. */
  | { readonly why: 'same-side' | 'too-far'; readonly point: Point; readonly named: Point; readonly off: number };

/** The points without a pair, in the order of the job. */
export function unpaired(points: readonly Point[]): readonly Alone[] {
  const { of } = pairsOfPoints(points);
  const rest = points.filter(({ id }) => !of.has(id));
  return rest.map((point) => aloneFor(point, rest));
}

/** The mean of what the pairs differ by, mm: forward, outward, up; null without a pair. */
export function meanDifference(points: readonly Point[]): Vec3 | null {
  const { pairs } = pairsOfPoints(points);
  if (pairs.length === 0) return null;
  const mean = (axis: 0 | 1 | 2): number => pairs.reduce((sum, { differs }) => sum + differs[axis], 0) / pairs.length;
  return [mean(0), mean(1), mean(2)];
}

function aloneFor(point: Point, rest: readonly Point[]): Alone {
  const { position } = point;
  const off = (other: Point): number => distance(position, mirrored(other.position));
  const named = rest
    .filter((other) => other !== point && namedAlike(point, other))
    .toSorted((a, b) => off(a) - off(b))[0];
  if (named !== undefined) {
    const isSameSide = Math.sign(named.position[1]) === Math.sign(position[1]);
    return { why: isSameSide ? 'same-side' : 'too-far', point, named, off: off(named) };
  }
  return { why: off(point) <= PAIR_NEAR ? 'centre' : 'none-near', point };
}
