/** What is taken on a picture: the tube, lines and words; and how far a further line or word would lie from them. mm of the picture. */
import type { Place2 } from '../types.ts';

/** A straight with round ends; `half` is half its breadth. */
export interface Bar {
  readonly from: Place2;
  readonly to: Place2;
  readonly half: number;
}

/** What level words take. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

export const added = (a: Place2, b: Place2, k = 1): Place2 => ({ x: a.x + k * b.x, y: a.y + k * b.y });
export const less = (a: Place2, b: Place2): Place2 => ({ x: a.x - b.x, y: a.y - b.y });
export const dot2 = (a: Place2, b: Place2): number => a.x * b.x + a.y * b.y;
export const cross2 = (a: Place2, b: Place2): number => a.x * b.y - a.y * b.x;
export const long = (a: Place2): number => Math.hypot(a.x, a.y);

/** From a line's edge to another's; below zero where they lie over one another. */
export const between = (one: Bar, other: Bar): number =>
  apart(one.from, one.to, other.from, other.to) - one.half - other.half;

/** From words to a line's edge. */
export function fromWords({ left, right, low, high }: Box, bar: Bar): number {
  const corners = [
    { x: left, y: low },
    { x: right, y: low },
    { x: right, y: high },
    { x: left, y: high },
  ];
  const holds = ({ x, y }: Place2): boolean => x >= left && x <= right && y >= low && y <= high;
  if (holds(bar.from) || holds(bar.to)) return -bar.half;
  return Math.min(...corners.map((corner, i) => apart(corner, corners[(i + 1) % 4]!, bar.from, bar.to))) - bar.half;
}

/** Whether two words stand nearer than `clear`. */
export const crowd = (one: Box, other: Box, clear: number): boolean =>
  one.left < other.right + clear &&
  other.left < one.right + clear &&
  one.low < other.high + clear &&
  other.low < one.high + clear;

/** Between two straights; 0 where they cross. */
function apart(a: Place2, b: Place2, c: Place2, d: Place2): number {
  const side = (p: Place2, q: Place2, r: Place2): number => cross2(less(q, p), less(r, p));
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(toLine(a, c, d), toLine(b, c, d), toLine(c, a, b), toLine(d, a, b));
}

function toLine(place: Place2, from: Place2, to: Place2): number {
  const way = less(to, from);
  const squared = dot2(way, way);
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, dot2(less(place, from), way) / squared));
  return long(less(place, added(from, way, t)));
}
