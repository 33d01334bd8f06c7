/** Polynomials made of known roots: what comes back must be those within the interval. Expected values: computed. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootsBetween } from '../../../src/core/numerics/roots-between.ts';

/** The coefficients, the constant first, of k (x - r1)(x - r2) ... */
const madeOf = (k: number, roots: readonly number[]): number[] =>
  roots.reduce<number[]>((made, root) => [0, ...made].map((c, i) => c - root * (made[i] ?? 0)), [k]);

describe('roots in an interval', () => {
  it('are those the polynomial was made of, at most four, and none outside', () => {
    const root = fc.integer({ min: -300, max: 300 }).map((hundredths) => hundredths / 100);
    fc.assert(
      fc.property(fc.uniqueArray(root, { maxLength: 4 }), fc.constantFrom(-3, 0.001, 1, 2000), (roots, k) => {
        const found = rootsBetween(madeOf(k, roots), -1, 1);
        const within = roots.filter((r) => Math.abs(r) < 1).toSorted((a, b) => a - b);
        const inner = found.filter((r) => Math.abs(r) < 1 - 1e-9);
        expect(inner).toHaveLength(within.length);
        inner.forEach((r, i) => expect(r).toBeCloseTo(within[i]!, 8));
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  it('do not need the leading coefficients, nor any', () => {
    expect(rootsBetween([-0.5, 1, 0, 0, 0], -1, 1)).toEqual([0.5]);
    expect(rootsBetween([0, 0, 0], -1, 1).every((r) => Math.abs(r) <= 1)).toBe(true);
    expect(rootsBetween([5], -1, 1)).toEqual([]);
    expect(rootsBetween([1, 0, 1], -1, 1)).toEqual([]);
    expect(rootsBetween([-1, 0, 1], -1, 1)).toEqual([-1, 1]);
  });
});
