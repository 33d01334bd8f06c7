/** How deep a wall lies inside a run tube, and where a curve along it is least. */
import type { Vec3 } from '../geometry/vector.ts';

export interface Deep {
  /** How deep the wall lies inside the run tube, mm. */
  readonly depth: number;
  /** The deepest place, on the wall. */
  readonly at: Vec3;
}

/** mm. What a profile is good to: a wall that stands no deeper in a run tube than this is not inside it. */
export const DEEP = 0.01;

/** Samples of a stretch, before the least of them is closed in on. */
const SAMPLES = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** Times that a stretch is made shorter by that: to a ten-thousandth. */
const CLOSER = 24;

/** Where a curve that has one low or a few is least between a and b. */
export function leastOf(at: (s: number) => number, a: number, b: number): number {
  return leastBelow(at, a, b, Infinity)!;
}

/**
 * The same of a curve that rises and falls by no more than one goes along it, as a distance does; null as soon as that shows that it
 * comes nowhere below `enough`.
 */
export function leastBelow(at: (s: number) => number, a: number, b: number, enough: number): number | null {
  const step = (b - a) / SAMPLES;
  let best = a;
  let least = Infinity;
  for (let i = 0; i <= SAMPLES; i++) {
    const value = at(a + i * step);
    if (value < least) [best, least] = [a + i * step, value];
  }
  if (least - step / 2 > enough) return null;
  let [low, high] = [Math.max(a, best - step), Math.min(b, best + step)];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [at(left), at(right)];
  for (let i = 0; i < CLOSER; i++) {
    if (Math.min(least, atLeft, atRight) - (high - low) > enough) return null;
    if (atLeft < atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = at(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = at(right);
    }
  }
  const middle = (low + high) / 2;
  return at(middle) < least ? middle : best;
}
