import { describe, expect, it } from 'vitest';
import { layBlocks } from '../../../src/drawing/blank/lay.ts';

describe('blocks of marks under the blank', () => {
  it('stand each under the middle of its bend where there is room', () => {
    expect(layBlocks([50, 120], 40, 200, 10)).toEqual([
      { left: 30, tier: 0 },
      { left: 100, tier: 0 },
    ]);
  });

  it('are pushed apart and back from both edges, and keep the order of the tape', () => {
    expect(layBlocks([0, 5, 198, 199], 40, 200, 10).map(({ left }) => left)).toEqual([0, 50, 110, 160]);
  });

  it('go on in even tiers where one row cannot hold them, never touching, never over an edge', () => {
    const laid = layBlocks([10, 20, 30, 300, 310, 315, 318], 110, 320, 10);
    expect(laid.map(({ tier }) => tier)).toEqual([0, 0, 1, 1, 2, 2, 3]);
    for (const [index, { left, tier }] of laid.entries()) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left + 110).toBeLessThanOrEqual(320);
      const next = laid[index + 1];
      if (next?.tier === tier) expect(next.left - left).toBeGreaterThanOrEqual(120);
    }
  });

  it('are none for a tube without bends', () => {
    expect(layBlocks([], 110, 320, 10)).toEqual([]);
  });
});
