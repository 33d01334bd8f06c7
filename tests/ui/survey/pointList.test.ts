import { describe, expect, it } from 'vitest';
import { readPointList } from '../../../src/ui/survey/pointList.ts';

describe('points from a spreadsheet', () => {
  it('are read in the job’s unit, or in the one that is written', () => {
    const { points, refusals } = readPointList('Sill\t40 1/2\t-26\t180mm\nRoof\t1\' 2"\t0\t45\n', 'in');
    expect(refusals).toEqual([]);
    // 1 in = 25.4 mm, 1 ft = 304.8 mm.
    expect(points).toEqual([
      { name: 'Sill', position: [expect.closeTo(1028.7, 9), expect.closeTo(-660.4, 9), 180] },
      { name: 'Roof', position: [expect.closeTo(355.6, 9), 0, expect.closeTo(1143, 9)] },
    ]);
  });

  it('leave out a row that cannot be read, and say which and why', () => {
    const { points, refusals } = readPointList(
      'Point\tAlong\tOffset\tHeight\nSill\t1\t2\n\t1\t2\t3\nRoof\t1\t2\t3',
      'mm',
    );
    expect(points.map(({ name }) => name)).toEqual(['Roof']);
    expect(refusals).toEqual([
      'Row 1: “Point”, along: “Along” not a length',
      'Row 2: “Sill” has 3 cells instead of 4',
      'Row 3: has no name',
    ]);
  });

  it('are not worked out from sums, which nobody would see read; a fraction joined by a hyphen is none', () => {
    const { points, refusals } = readPointList('Sill\t12-3\t0\t0\nRoof\t21-1/2\t0\t1200 / 2', 'in');
    expect(points).toEqual([]);
    expect(refusals).toEqual([
      'Row 1: “Sill”, along: “12-3” a sum is worked out only where it is typed',
      'Row 2: “Roof”, height: “1200 / 2” a sum is worked out only where it is typed',
    ]);
    expect(readPointList('Roof\t21-1/2\t0\t1200', 'in').points[0]!.position[0]).toBeCloseTo(546.1, 9);
  });

  it('pass over empty rows, and are none in an empty text', () => {
    expect(readPointList('\t\t\t\nRoof\t1\t2\t3', 'mm')).toEqual({
      points: [{ name: 'Roof', position: [1, 2, 3] }],
      refusals: [],
    });
    expect(readPointList('', 'mm').points).toEqual([]);
  });
});
