import { describe, expect, it } from 'vitest';
import { layLabels, layStick } from '../../../src/ui/shop/stick.ts';
import { bentTube, endWith } from './tubes.ts';

describe('the straight stick on the tape', () => {
  it('reads from the node when the end is cut square at it', () => {
    const stick = layStick(bentTube(2));
    expect(stick.fromNode).toBe(0);
    expect(stick.zones).toEqual([
      { bend: 1, start: 200, end: 300 },
      { bend: 2, start: 400, end: 500 },
    ]);
    expect(stick.ends[1].node).toBe(1000);
  });

  it('moves every place by what the cope takes off end A and what is left on', () => {
    // A tip 20 mm inside the node shortens the stick before every mark by 20; 6 mm left on gives 6 back.
    const tube = bentTube(1, {
      blankLength: 1000 - 20 - 15 + 6 + 2,
      ends: [endWith({ tip: 20, throat: 35, allowance: 6 }), endWith({ tip: 15, throat: 40, allowance: 2 })],
    });
    const stick = layStick(tube);
    expect(stick.zones[0]).toEqual({ bend: 1, start: 186, end: 286 });
    expect(stick.ends[0]).toEqual({ node: -14, tip: 6, throat: 21 });
    expect(stick.ends[1]).toEqual({ node: 986, tip: 971, throat: 946 });
    expect(stick.blank - stick.ends[1].tip).toBe(2);
  });

  it('takes an end that reaches nothing as cut at its node', () => {
    const stick = layStick(bentTube(1, { ends: [endWith({ tip: null, throat: null }), endWith({})] }));
    expect(stick.fromNode).toBe(0);
  });
});

describe('labels under the marks', () => {
  it('stay in one row where there is room, each centred on its mark', () => {
    expect(
      layLabels(
        [
          { at: 50, width: 20 },
          { at: 100, width: 20 },
        ],
        200,
        4,
      ),
    ).toEqual([
      { left: 40, row: 0 },
      { left: 90, row: 0 },
    ]);
  });

  it('never touch, and stay on the sheet', () => {
    const labels = [0, 12, 15, 90, 96, 100].map((at) => ({ at, width: 30 }));
    const laid = layLabels(labels, 100, 2);
    for (const [i, a] of laid.entries()) {
      expect(a.left).toBeGreaterThanOrEqual(0);
      expect(a.left + 30).toBeLessThanOrEqual(100);
      for (const b of laid.slice(i + 1)) if (a.row === b.row) expect(Math.abs(a.left - b.left)).toBeGreaterThanOrEqual(32);
    }
    expect(new Set(laid.map((label) => label.row)).size).toBeGreaterThan(1);
  });
});
