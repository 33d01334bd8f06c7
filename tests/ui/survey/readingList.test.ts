import { describe, expect, it } from 'vitest';
import { readReadingList } from '../../../src/ui/survey/readingList.ts';

const job = { points: [{ id: 'p1', name: 'Sill, left', position: [0, 0, 0] as const }], lengthUnit: 'in' as const };
const read = (...rows: readonly (readonly string[])[]) =>
  readReadingList(rows.map((cells) => cells.join('\t')).join('\n'), job);

describe('readings from a spreadsheet', () => {
  it('are read by the word of the shop, with one point or two, and told before they are added', () => {
    const { rows, refusals } = read(
      ['Height', 'Sill, left', '', '6 1/2'],
      ['tape', 'sill, left', 'Roof, left', '36'],
      ['offset', 'Roof, left', '-457.2mm'],
      ['Slope', 'Sill, left', 'Roof, left', '41.5'],
      ['plumb', 'Roof, left', 'Sill, left', ''],
      ['', '', '', ''],
    );
    expect(refusals).toEqual([]);
    expect(rows.map(({ inWords }) => inWords)).toEqual([
      'Height, Sill, left: 6 1/2 in',
      'Distance, sill, left – Roof, left (new point): 36 in',
      'Offset, Roof, left: −18 in',
      'Slope, Sill, left – Roof, left: 41.5°',
      'Plumb, Roof, left – Sill, left',
    ]);
    // 36 x 25.4.
    expect(rows[1]!.said).toEqual({
      way: 'distance',
      from: { name: 'sill, left' },
      to: { name: 'Roof, left' },
      value: expect.closeTo(914.4, 9),
    });
    expect(rows[2]!.said).toEqual({ way: 'offset', from: { name: 'Roof, left' }, value: expect.closeTo(-457.2, 9) });
  });

  it('leave out a row that cannot be read, and say which and why', () => {
    const { rows, refusals } = read(
      ['feel', 'A', 'B', '3'],
      ['distance', 'A', '', '3'],
      ['height', 'A', 'B', '3'],
      ['height', '', '', '3'],
      ['width', 'A', '', '-3'],
      ['slope', 'A', 'B', '95'],
      ['distance', 'A', 'B', '12-3'],
      ['distance', 'A', 'B', '3', 'by hand'],
      ['distance', 'A', 'B', ''],
    );
    expect(rows).toEqual([]);
    expect(refusals.map((line) => line.replace(/: distance, height.*/u, ''))).toEqual([
      'Row 1: “feel” is no kind of measurement',
      'Row 2: names no second point',
      'Row 3: height is read at one point, and the row names two',
      'Row 4: names no point',
      'Row 5: “-3” a tape reads nothing below 0',
      'Row 6: “95” steeper than straight up',
      'Row 7: “12-3” a sum is worked out only where it is typed',
      'Row 8: has 5 cells instead of 4',
      expect.stringMatching(/^Row 9: “” /u),
    ]);
  });
});
