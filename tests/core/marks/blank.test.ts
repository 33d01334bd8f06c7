import { describe, expect, it } from 'vitest';
import { layBlocks, layBlank, blankMarks } from '../../../src/core/marks/blank.ts';
import { bentTube, endWith } from '../run/tubes.ts';

const fed = (bends: number, front: 'A' | 'B' = 'A') =>
  Array.from({ length: bends }, (_, i) => ({ bend: i + 1, front }));

describe('the blank on the tape', () => {
  it('reads from the node when the end is cut square at it', () => {
    const blank = layBlank(bentTube(2), fed(2));
    expect(blank.fromNode).toBe(0);
    expect(blank.zones).toEqual([
      { bend: 1, start: 200, end: 300, clamp: 80, front: 'A' },
      { bend: 2, start: 400, end: 500, clamp: 280, front: 'A' },
    ]);
    expect(blank.ends[1].node).toBe(1000);
  });

  it('moves every place by what the cope takes off end A and what is left on', () => {
    // A tip 20 mm inside the node shortens the blank before every mark by 20; 6 mm left on gives 6 back.
    const tube = bentTube(1, {
      blankLength: 1000 - 20 - 15 + 6 + 2,
      ends: [endWith({ tip: 20, throat: 35, allowance: 6 }), endWith({ tip: 15, throat: 40, allowance: 2 })],
    });
    const blank = layBlank(tube, fed(1));
    expect(blank.zones[0]).toEqual({ bend: 1, start: 186, end: 286, clamp: 66, front: 'A' });
    expect(blank.ends[0]).toEqual({ node: -14, tip: 6, throat: 21 });
    expect(blank.ends[1]).toEqual({ node: 986, tip: 971, throat: 946 });
    expect(blank.length - blank.ends[1].tip).toBe(2);
  });

  it('takes an end that reaches nothing as cut at its node', () => {
    const blank = layBlank(bentTube(1, { ends: [endWith({ tip: null, throat: null }), endWith({})] }), fed(1));
    expect(blank.fromNode).toBe(0);
  });
});

describe('fed from end B', () => {
  const tube = bentTube(1, { straights: [90, 700] });
  it('the grip behind is part of the blank, and moves every place that the tape shows', () => {
    const blank = layBlank(tube, fed(1, 'B'));
    expect(blank.grip).toEqual([60, 0]);
    expect(blank.length).toBe(1060);
    expect(blank.zones[0]).toEqual({ bend: 1, start: 260, end: 360, clamp: 480, front: 'B' });
    expect(blank.ends[0].node).toBe(60);
    expect(layBlank(tube, fed(1)).grip).toEqual([0, 0]);
  });
  it('the bend starts at the tangent nearer end B, and its clamp lies beyond', () => {
    expect(blankMarks(layBlank(tube, fed(1, 'B'))).map(({ words, at, side }) => [words, at, side])).toEqual([
      ['1 end', 260, 'B'],
      ['1 start', 360, 'A'],
      ['1 clamp', 480, 'A'],
    ]);
  });
});

describe('the marks', () => {
  it('stand in the order of the tape, each measured from its zero, with the side the bend lies on', () => {
    expect(blankMarks(layBlank(bentTube(1), fed(1))).map(({ words, at, side }) => [words, at, side])).toEqual([
      ['1 clamp', 80, 'B'],
      ['1 start', 200, 'B'],
      ['1 end', 300, 'A'],
    ]);
  });

  it('have a clamp that would sit beyond the end at the end of what is left on for it', () => {
    // The bend starts 200 from the node, 110 from the tip; the clamp is set 120 before it.
    const tube = bentTube(1, { ends: [endWith({ tip: 90, throat: 95 }), endWith({})] });
    const blank = layBlank(tube, fed(1));
    expect(blank.grip).toEqual([10, 0]);
    expect(blankMarks(blank).map(({ words, at }) => [words, at])).toEqual([
      ['1 clamp', 0],
      ['1 start', 120],
      ['1 end', 220],
    ]);
  });
});

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
