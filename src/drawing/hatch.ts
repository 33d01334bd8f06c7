/** Hatching under a curve. */
import type { Place2 } from './types.ts';

/**
 * Lines at 45 degrees, `apart` mm from each other, in the region between y = 0 and a curve whose x never falls. Cut off exactly at
 * the curve's straight pieces, at its ends and at the foot.
 */
export function hatched(curve: readonly Place2[], apart: number): [Place2, Place2][] {
  const [first, last] = [curve[0]!, curve.at(-1)!];
  const highest = Math.max(...curve.map(({ y }) => y));
  const step = apart * Math.SQRT2;
  const lines: [Place2, Place2][] = [];
  // Each line is y = x - c; c counts from 0, so that neighbouring pieces are hatched alike.
  for (let c = Math.ceil((first.x - highest) / step) * step; c < last.x; c += step) {
    let from: number | null = null;
    for (let i = 1; i < curve.length; i++) {
      const [a, b] = [curve[i - 1]!, curve[i]!];
      const low = Math.max(a.x, c);
      if (low >= b.x) continue;
      // How far the curve stands over the line, at both ends of this piece of it.
      const over = (x: number): number => a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) - (x - c);
      const [start, end] = [over(low), over(b.x)];
      if (start > 0) from ??= low;
      if (start > 0 !== end > 0) {
        const x = low + ((b.x - low) * start) / (start - end);
        if (from === null) from = x;
        else {
          lines.push(segment(from, x, c));
          from = null;
        }
      }
    }
    if (from !== null) lines.push(segment(from, last.x, c));
  }
  return lines;
}

const segment = (from: number, to: number, c: number): [Place2, Place2] => [
  { x: from, y: from - c },
  { x: to, y: to - c },
];
