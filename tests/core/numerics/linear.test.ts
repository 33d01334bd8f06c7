/** Small systems: against a worked example and against their own right side. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { solveLinear } from '../../../src/core/numerics/linear.ts';
import { fixed } from '../../laws/frames.ts';

test('the example of Gauss’s method in The Nine Chapters, ch. 8 problem 1 (from memory): 9 1/4, 4 1/4, 2 3/4', () => {
  const rows = [
    [3, 2, 1],
    [2, 3, 1],
    [1, 2, 3],
  ];
  const x = solveLinear(rows, [39, 34, 26])!;
  for (const [i, expected] of [9.25, 4.25, 2.75].entries()) expect(x[i]).toBeCloseTo(expected, 12);
});

test('a first pivot of nothing is no hindrance; rows that say the same leave it open', () => {
  expect(
    solveLinear(
      [
        [0, 1],
        [1, 0],
      ],
      [2, 3],
    ),
  ).toEqual([3, 2]);
  expect(
    solveLinear(
      [
        [1, 2],
        [2, 4],
      ],
      [1, 2],
    ),
  ).toBe(null);
  expect(solveLinear([], [])).toEqual([]);
});

test('put back in, it gives the right side', () => {
  const number = fc.integer({ min: -1000, max: 1000 });
  const system = fc.integer({ min: 1, max: 5 }).chain((n) => {
    const row = fc.array(number, { minLength: n, maxLength: n });
    return fc.tuple(fc.array(row, { minLength: n, maxLength: n }), row);
  });
  fc.assert(
    fc.property(system, ([rows, right]) => {
      // Heavy on the diagonal, and so never open.
      const heavy = rows.map((row, i) => row.with(i, 5000 + row[i]!));
      const x = solveLinear(heavy, right)!;
      for (const [i, row] of heavy.entries()) {
        expect(row.reduce((sum, each, k) => sum + each * x[k]!, 0)).toBeCloseTo(right[i]!, 9);
      }
    }),
    fixed(200),
  );
});
