import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { risingRoots, stretchesBelow } from '../../../src/core/numerics/quartic.ts';

/** The quartic with the four given roots moved so that they sum to zero: coefficients by Vieta's formulas. */
function fromRoots(roots: readonly number[]) {
  const mean = roots.reduce((sum, root) => sum + root, 0) / 4;
  const [a, b, c, d] = roots.map((root) => root - mean) as [number, number, number, number];
  return {
    p: a * b + a * c + a * d + b * c + b * d + c * d,
    q: -(a * b * c + a * b * d + a * c * d + b * c * d),
    c: a * b * c * d,
    sorted: [a, b, c, d].toSorted((x, y) => x - y),
  };
}

const solve = (p: number, q: number, c: number, touch: number, far: number) => {
  const out = new Float64Array(2);
  return [...out.subarray(0, risingRoots(p, q, c, touch, far, NaN, out))];
};

describe('rising roots of a quartic', () => {
  it('are the second and fourth of four real roots', () => {
    const gap = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(gap, gap, gap), ([first, second, third]) => {
        const { p, q, c, sorted } = fromRoots([0, first, first + second, first + second + third]);
        const found = solve(p, q, c, 1e-6, sorted[3]! + 1);
        expect(found).toHaveLength(2);
        expect(found[0]).toBeCloseTo(sorted[1]!, 6);
        expect(found[1]).toBeCloseTo(sorted[3]!, 6);
      }),
      { seed: 20260301, numRuns: 500 },
    );
  });
  it('is the upper of two real roots, whatever the complex pair', () => {
    // (s^2 - 2as + a^2 - d^2)(s^2 + 2as + e): roots a +- d, and a complex pair about -a for e > a^2.
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 900, noNaN: true }),
        (a, d, over) => {
          const [m, e] = [a * a - d * d, a * a + over];
          const found = solve(m + e - 4 * a * a, 2 * a * (m - e), m * e, 1e-9, Math.abs(a) + d + 1);
          expect(found).toHaveLength(1);
          expect(found[0]).toBeCloseTo(a + d, 7);
        },
      ),
      { seed: 20260302, numRuns: 500 },
    );
  });
  it('are the same whatever the guess', () => {
    const { p, q, c, sorted } = fromRoots([-90, -20, 15, 120]);
    for (const guess of [NaN, -1000, sorted[1]!, sorted[1]! + 1e-9, 0, sorted[3]! - 5, sorted[3]! + 5, 1000]) {
      const out = new Float64Array(2);
      expect(risingRoots(p, q, c, 1e-6, sorted[3]! + 1, guess, out)).toBe(2);
      expect(out[0]).toBeCloseTo(sorted[1]!, 9);
      expect(out[1]).toBeCloseTo(sorted[3]!, 9);
    }
  });
  it('a graze from outside is one root, a graze from inside none, a miss none', () => {
    const double = fromRoots([7, 7, -3, -11]);
    expect(solve(double.p, double.q, double.c, 1e-6, 50).at(-1)).toBeCloseTo(7, 5);
    // s^2 (s^2 - 100): touches zero from below at 0, leaves only at 10.
    expect(solve(-100, 0, 0, 1e-9, 20)).toEqual([10]);
    expect(solve(1, 0, 1, 1e-9, 20)).toEqual([]);
    expect(solve(0, 0, 0, 1e-9, 20)).toEqual([0]);
  });
});

describe('stretches where a quartic is not above zero', () => {
  const below = (roots: readonly number[], touch: number): number[] => {
    const { p, q, c, sorted } = fromRoots(roots);
    const out = new Float64Array(4);
    return [...out.subarray(0, 2 * stretchesBelow(p, q, c, touch, Math.max(-sorted[0]!, sorted[3]!) + 1, out))];
  };
  it('lie between its first root and second, and its third and fourth', () => {
    const gap = fc.double({ min: 0.5, max: 300, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(gap, gap, gap), ([first, second, third]) => {
        const roots = [0, first, first + second, first + second + third];
        const found = below(roots, 1e-6);
        expect(found).toHaveLength(4);
        fromRoots(roots).sorted.forEach((root, i) => expect(found[i]).toBeCloseTo(root, 6));
      }),
      { seed: 20260303, numRuns: 500 },
    );
  });
  it('are one where two touch, and of no length where it only touches zero', () => {
    for (const [roots, expected] of [
      [
        [-40, 0, 0, 40],
        [-40, 40],
      ],
      [
        [-60, 20, 20, 20.5],
        [-60, 20.5],
      ],
      [
        [-30, -30, 20, 40],
        [-30, -30, 20, 40],
      ],
      [
        [-45, -5, 25, 25],
        [-45, -5, 25, 25],
      ],
    ] as const) {
      const found = below(roots, 1e-4);
      const mean = roots.reduce<number>((sum, root) => sum + root, 0) / 4;
      expect(found).toHaveLength(expected.length);
      expected.forEach((s, i) => expect(found[i]).toBeCloseTo(s - mean, 3));
    }
  });
});
