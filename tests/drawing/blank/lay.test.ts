import { describe, expect, it } from 'vitest';
import { layBlocks } from '../../../src/drawing/blank/lay.ts';

/** Seven, where a row holds two. */
const CROWDED = [10, 20, 30, 300, 310, 315, 318];

describe('blocks of marks under the blank', () => {
  it('stand each under the middle of its bend where there is room', () => {
    expect(layBlocks([50, 120], 40, 200, 10, 6)).toEqual([
      { left: 30, tier: 0, through: [] },
      { left: 100, tier: 0, through: [] },
    ]);
  });

  it('are pushed apart and back from both edges, and keep the order of the tape', () => {
    expect(layBlocks([0, 5, 198, 199], 40, 200, 10, 6).map(({ left }) => left)).toEqual([0, 50, 110, 160]);
  });

  it('stand in tiers by turns where one row cannot hold them, never touching, never over an edge', () => {
    const laid = layBlocks(CROWDED, 110, 320, 10, 6);
    expect(laid.map(({ tier }) => tier)).toEqual([0, 1, 2, 3, 0, 1, 2]);
    for (const { left, tier } of laid) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left + 110).toBeLessThanOrEqual(320);
      const beside = laid.filter((other) => other.tier === tier && other.left > left);
      for (const other of beside) expect(other.left - left).toBeGreaterThanOrEqual(120);
    }
  });

  it('have leaders that keep the order of the tape and run through no block of the tiers above', () => {
    const laid = layBlocks(CROWDED, 110, 320, 10, 6);
    for (const above of [0, 1, 2]) {
      // Blocks and leaders as they follow one another along that tier: each begins where the one before it has ended.
      const along = laid.flatMap(({ left, tier, through }) =>
        tier < above ? [] : tier === above ? [left, left + 110] : [through[above]!],
      );
      expect(along).toEqual(along.toSorted((a, b) => a - b));
      expect(new Set(along).size).toBe(along.length);
    }
    expect(laid.map(({ through }) => through.length)).toEqual([0, 1, 2, 3, 0, 1, 2]);
  });

  it('are none for a tube without bends', () => {
    expect(layBlocks([], 110, 320, 10, 6)).toEqual([]);
  });
});
