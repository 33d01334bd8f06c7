/**
 * Parallel views of the car on paper. A view is given by where its eye is; on paper x is `right` and y is `up`, in mm of the
 * car, and `depth` grows towards the eye. Front, side and top lie as in third-angle projection: the side is seen from the
 * car's left, so its front points left; the front view stands left of it and the top view over it.
 */
import { cross, dot, normalize, type Vec3 } from '../core/geometry/vector.ts';
import type { Place2 } from './types.ts';

/** Unit vectors, right-handed: right x up = toEye. */
export interface View {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toEye: Vec3;
}

const viewed = (right: Vec3, up: Vec3): View => ({ right, up, toEye: cross(right, up) });

export const SIDE = viewed([-1, 0, 0], [0, 0, 1]);
export const FRONT = viewed([0, 1, 0], [0, 0, 1]);
export const TOP = viewed([-1, 0, 0], [0, -1, 0]);
/** The three axes foreshortened alike, seen from the left, in front and above. */
export const ISOMETRIC = viewed(normalize([-1, 1, 0]), normalize([-1, -1, 2]));

/** The same from the right. */
export const ISOMETRIC_RIGHT = viewed(normalize([1, 1, 0]), normalize([-1, 1, 2]));

export interface Projected extends Place2 {
  readonly depth: number;
}

export const project = ({ right, up, toEye }: View, place: Vec3): Projected => ({
  x: dot(place, right),
  y: dot(place, up),
  depth: dot(place, toEye),
});

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The least rectangle that holds the places; all zero for none. */
export function extentOf(places: Iterable<Place2>): Extent {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of places) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    low = Math.min(low, y);
    high = Math.max(high, y);
  }
  return left > right ? { left: 0, right: 0, low: 0, high: 0 } : { left, right, low, high };
}
