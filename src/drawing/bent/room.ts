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
export function fromWords({ left, right, low, high }: Box, { from, to, half }: Bar): number {
  const sides = [
    side(from, to, left, low),
    side(from, to, right, low),
    side(from, to, right, high),
    side(from, to, left, high),
  ];
  // Of two convex figures that are apart, one lies on one side of an edge of the other.
  const isApart =
    Math.max(from.x, to.x) < left ||
    Math.min(from.x, to.x) > right ||
    Math.max(from.y, to.y) < low ||
    Math.min(from.y, to.y) > high ||
    sides.every((each) => each > 0) ||
    sides.every((each) => each < 0);
  if (!isApart) return -half;
  const toBox = ({ x, y }: Place2): number =>
    Math.max(left - x, x - right, 0) ** 2 + Math.max(low - y, y - high, 0) ** 2;
  return (
    Math.sqrt(
      Math.min(
        toBox(from),
        toBox(to),
        toLine(left, low, from, to),
        toLine(right, low, from, to),
        toLine(right, high, from, to),
        toLine(left, high, from, to),
      ),
    ) - half
  );
}

/** Whether two words stand nearer than `clear`. */
export const crowd = (one: Box, other: Box, clear: number): boolean =>
  one.left < other.right + clear &&
  other.left < one.right + clear &&
  one.low < other.high + clear &&
  other.low < one.high + clear;

/** Between two straights; 0 where they cross. Asked some thousand times a picture, so nothing is made on the way. */
function apart(a: Place2, b: Place2, c: Place2, d: Place2): number {
  if (side(a, b, c.x, c.y) * side(a, b, d.x, d.y) < 0 && side(c, d, a.x, a.y) * side(c, d, b.x, b.y) < 0) return 0;
  return Math.sqrt(
    Math.min(toLine(a.x, a.y, c, d), toLine(b.x, b.y, c, d), toLine(c.x, c.y, a, b), toLine(d.x, d.y, a, b)),
  );
}

/** Of a straight through two places: above zero to its left. */
const side = (from: Place2, to: Place2, x: number, y: number): number =>
  (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);

/** The square of how far a place is from a straight. */
function toLine(x: number, y: number, from: Place2, to: Place2): number {
  const [u, v] = [to.x - from.x, to.y - from.y];
  const squared = u * u + v * v;
  const t = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * u + (y - from.y) * v) / squared));
  return (x - from.x - t * u) ** 2 + (y - from.y - t * v) ** 2;
}
