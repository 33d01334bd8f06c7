import { describe, expect, it } from 'vitest';
import { layFlags, layStick, stickMarks } from '../../../src/ui/shop/stick.ts';
import { bentTube, endWith } from './tubes.ts';

describe('the straight stick on the tape', () => {
  it('reads from the node when the end is cut square at it', () => {
    const stick = layStick(bentTube(2));
    expect(stick.fromNode).toBe(0);
    expect(stick.zones).toEqual([
      { bend: 1, start: 200, end: 300, clamp: 80 },
      { bend: 2, start: 400, end: 500, clamp: 280 },
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
    expect(stick.zones[0]).toEqual({ bend: 1, start: 186, end: 286, clamp: 66 });
    expect(stick.ends[0]).toEqual({ node: -14, tip: 6, throat: 21 });
    expect(stick.ends[1]).toEqual({ node: 986, tip: 971, throat: 946 });
    expect(stick.blank - stick.ends[1].tip).toBe(2);
  });

  it('takes an end that reaches nothing as cut at its node', () => {
    const stick = layStick(bentTube(1, { ends: [endWith({ tip: null, throat: null }), endWith({})] }));
    expect(stick.fromNode).toBe(0);
  });
});

describe('the marks', () => {
  it('stand in the order of the tape, each told from its zero, with the side the bend lies on', () => {
    expect(stickMarks(bentTube(1)).map(({ words, at, side }) => [words, at, side])).toEqual([
      ['1 clamp', 80, 'B'],
      ['1 start', 200, 'B'],
      ['1 end', 300, 'A'],
    ]);
  });

  it('leave out a clamp that would sit beyond the end', () => {
    const tube = bentTube(1, { ends: [endWith({ tip: 90, throat: 95 }), endWith({})] });
    expect(stickMarks(tube).map(({ kind }) => kind)).toEqual(['start', 'end']);
  });
});

describe('flags on the marks', () => {
  it('stay in one row where there is room, each at its mark', () => {
    const flags = [
      { at: 50, width: 20 },
      { at: 100, width: 20 },
    ];
    expect(layFlags(flags, 200, 4)).toEqual([
      { left: 50, row: 0 },
      { left: 100, row: 0 },
    ]);
  });

  it('never touch, stay on the sheet, and no line runs through a label', () => {
    const flags = [0, 12, 15, 60, 66, 69].map((at) => ({ at, width: 30 }));
    const laid = layFlags(flags, 100, 2);
    for (const [i, a] of laid.entries()) {
      expect(a.left + 30).toBeLessThanOrEqual(100);
      for (const [j, b] of laid.entries()) {
        if (i === j) continue;
        if (a.row === b.row) expect(Math.abs(a.left - b.left)).toBeGreaterThanOrEqual(32);
        const mark = flags[j]!.at;
        if (b.row > a.row) expect(mark <= a.left || mark >= a.left + 30).toBe(true);
      }
    }
  });

  it('answer in the order given', () => {
    const laid = layFlags(
      [
        { at: 100, width: 10 },
        { at: 5, width: 10 },
      ],
      200,
      0,
    );
    expect(laid.map(({ left }) => left)).toEqual([100, 5]);
  });
});
