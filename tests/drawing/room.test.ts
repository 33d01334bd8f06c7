/** How far lines and words lie from one another, beside the nearest of many places of each. */
import { describe, expect, it } from 'vitest';
import { between, fromWords, type Bar, type Box } from '../../src/drawing/bent/room.ts';
import type { Place2 } from '../../src/drawing/types.ts';
import { drawn } from '../draws.ts';
import { uniformFrom } from '../reference/oracles/seeded.ts';

const STEPS = 200;

const along = ({ from, to }: Pick<Bar, 'from' | 'to'>): Place2[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => ({
    x: from.x + ((to.x - from.x) * i) / STEPS,
    y: from.y + ((to.y - from.y) * i) / STEPS,
  }));

/** A grid over the whole of it. */
const within = ({ left, right, low, high }: Box): Place2[] =>
  along({ from: { x: left, y: low }, to: { x: right, y: low } }).flatMap(({ x }, i) =>
    i % 4 === 0 ? along({ from: { x, y: low }, to: { x, y: high } }).filter((_, j) => j % 4 === 0) : [],
  );

const least = (ones: readonly Place2[], others: readonly Place2[]): number =>
  ones.reduce((best, { x, y }) => others.reduce((found, o) => Math.min(found, Math.hypot(o.x - x, o.y - y)), best), 99);

describe('the room between lines and words', () => {
  const draw = uniformFrom(4711);
  const place = (): Place2 => ({ x: 10 * draw(), y: 10 * draw() });
  const bars = Array.from({ length: drawn(12, 200) }, (): Bar => {
    const from = place();
    // Some level or upright, some of no length, as pictures have them.
    const to =
      [place(), { x: from.x, y: place().y }, { x: place().x, y: from.y }, from][Math.floor(5 * draw())] ?? place();
    return { from, to, half: draw() };
  });
  const GRID = (10 * Math.SQRT2) / STEPS;

  it('of two lines is from edge to edge', () => {
    for (const [i, one] of bars.entries()) {
      const other = bars[(i + 1) % bars.length]!;
      const seen = least(along(one), along(other)) - one.half - other.half;
      expect(between(one, other)).toBeLessThanOrEqual(seen + 1e-9);
      expect(between(one, other)).toBeGreaterThan(seen - 2 * GRID);
      expect(between(other, one)).toBeCloseTo(between(one, other), 12);
    }
  });

  it('of words and a line is from the block of the words', () => {
    for (const bar of bars) {
      const [a, b] = [place(), place()];
      const box = {
        left: Math.min(a.x, b.x),
        right: Math.max(a.x, b.x),
        low: Math.min(a.y, b.y),
        high: Math.max(a.y, b.y),
      };
      const seen = least(within(box), along(bar)) - bar.half;
      expect(fromWords(box, bar)).toBeLessThanOrEqual(seen + 1e-9);
      expect(fromWords(box, bar)).toBeGreaterThan(seen - 5 * GRID);
    }
  });
});
