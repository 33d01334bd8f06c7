import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { symmetricEigen, type Triple } from '../../../src/core/numerics/symmetric-eigen.ts';

type Matrix = readonly [Triple, Triple, Triple];

const entry = fc.oneof(
  fc.integer({ min: -1e9, max: 1e9 }).map((parts) => parts / 1e6),
  fc.constantFrom(0, 1, -1, 1e-9, 1e6),
);
const symmetric = fc.tuple(entry, entry, entry, entry, entry, entry).map(([a, b, c, d, e, f]): Matrix => [
  [a, d, e],
  [d, b, f],
  [e, f, c],
]);
const inner = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const times = (m: Matrix, v: Triple): Triple => [inner(m[0], v), inner(m[1], v), inner(m[2], v)];
const determinant = ([[a, b, c], [d, e, f], [g, h, i]]: Matrix): number =>
  a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);

describe('eigenvalues of a symmetric 3 x 3 matrix', () => {
  it('A v = value v, vectors square and of unit length, trace and determinant kept', () => {
    fc.assert(
      fc.property(symmetric, (matrix) => {
        const size = Math.hypot(...matrix.flat());
        const pairs = symmetricEigen(matrix);
        pairs.forEach(({ value, vector }, i) => {
          times(matrix, vector).forEach((each, k) => {
            expect(Math.abs(each - value * vector[k]!)).toBeLessThanOrEqual(1e-14 * size);
          });
          pairs.forEach((other, k) => {
            expect(Math.abs(inner(vector, other.vector) - (i === k ? 1 : 0))).toBeLessThan(1e-14);
          });
        });
        const [a, b, c] = pairs.map(({ value }) => value) as [number, number, number];
        expect(a >= b && b >= c).toBe(true);
        expect(Math.abs(a + b + c - (matrix[0][0] + matrix[1][1] + matrix[2][2]))).toBeLessThanOrEqual(1e-14 * size);
        expect(Math.abs(a * b * c - determinant(matrix))).toBeLessThanOrEqual(1e-13 * size ** 3);
      }),
      { seed: 20260311, numRuns: 1000 },
    );
  });
  it('agrees with the closed form through the cosine of a third of an angle', () => {
    fc.assert(
      fc.property(symmetric, (matrix) => {
        const size = Math.hypot(...matrix.flat());
        const theirs = byCosines(matrix);
        // Where two values nearly meet, an arc cosine near 1 keeps half the digits.
        symmetricEigen(matrix).forEach(({ value }, i) => {
          expect(Math.abs(value - theirs[i]!)).toBeLessThanOrEqual(1e-7 * size);
        });
      }),
      { seed: 20260312, numRuns: 500 },
    );
  });
  it('a matrix of nothing, a multiple of one, and one of rank one', () => {
    const nothing: Triple = [0, 0, 0];
    expect(symmetricEigen([nothing, nothing, nothing]).map(({ value }) => value)).toEqual([0, 0, 0]);
    const four: Matrix = [
      [4, 0, 0],
      [0, 4, 0],
      [0, 0, 4],
    ];
    expect(symmetricEigen(four).map(({ value }) => value)).toEqual([4, 4, 4]);
    // (1, 2, 2) times itself: 9 along it, nothing square to it.
    const [first, second, third] = symmetricEigen([
      [1, 2, 2],
      [2, 4, 4],
      [2, 4, 4],
    ]);
    expect(first!.value).toBeCloseTo(9, 13);
    first!.vector.forEach((each, i) => expect(each).toBeCloseTo([1 / 3, 2 / 3, 2 / 3][i]!, 14));
    expect(Math.abs(second!.value) + Math.abs(third!.value)).toBeLessThan(1e-14);
  });
});

/** Greatest first. O. K. Smith, Eigenvalues of a symmetric 3 x 3 matrix, Communications of the ACM 4 (1961); memory. */
function byCosines(matrix: Matrix): readonly number[] {
  const mean = (matrix[0][0] + matrix[1][1] + matrix[2][2]) / 3;
  const less = matrix.map((row, i) => row.map((each, k) => each - (i === k ? mean : 0))) as unknown as Matrix;
  const spread = Math.sqrt(less.flat().reduce((sum, each) => sum + each * each, 0) / 6);
  if (spread === 0) return [mean, mean, mean];
  const unit = less.map((row) => row.map((each) => each / spread)) as unknown as Matrix;
  const third = Math.acos(Math.max(-1, Math.min(1, determinant(unit) / 2))) / 3;
  return [0, 2, 1].map((k) => mean + 2 * spread * Math.cos(third + (2 * Math.PI * k) / 3)).toSorted((a, b) => b - a);
}
