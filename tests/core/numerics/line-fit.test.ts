import fc from 'fast-check';
import jstat from 'jstat';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { fitLine, predictionHalfWidth, studentQuantile975 } from '../../../src/core/numerics/line-fit.ts';

const reading = fc.record({
  x: fc.double({ min: 5, max: 120, noNaN: true }),
  y: fc.double({ min: 0, max: 12, noNaN: true }),
});

describe('a line through readings', () => {
  it('is that of a general statistics library (simple-statistics)', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 3, maxLength: 40 }), (points) => {
        fc.pre(points.some(({ x }) => Math.abs(x - points[0]!.x) > 1));
        const { m, b } = linearRegression(points.map(({ x, y }) => [x, y]));
        const fit = fitLine(points)!;
        expect(fit.slope).toBeCloseTo(m, 8);
        expect(fit.intercept).toBeCloseTo(b, 6);
      }),
      { seed: 20260304, numRuns: 300 },
    );
  });
  it('needs two readings that differ', () => {
    expect(fitLine([])).toBeNull();
    expect(fitLine([{ x: 3, y: 1 }])).toBeNull();
    expect(
      fitLine([
        { x: 3, y: 1 },
        { x: 3, y: 2 },
      ]),
    ).toBeNull();
  });
  it("Student's quantile is that of a general statistics library (jstat), to the table's last figure", () => {
    for (const freedom of [1, 2, 3, 5, 10, 29, 30, 31, 40, 75, 200, 5000]) {
      expect(Math.abs(studentQuantile975(freedom) - jstat.studentt.inv(0.975, freedom))).toBeLessThan(1e-4);
    }
  });
  it('covers 95 % of further readings: seeded normal scatter about a known line', () => {
    const random = seededNormal(20260305);
    let inside = 0;
    const trials = 4000;
    for (let trial = 0; trial < trials; trial++) {
      const reading = (x: number) => ({ x, y: 1.4 + 0.042 * x + 0.3 * random() });
      const fit = fitLine([20, 35, 60, 75, 90].map(reading))!;
      const further = reading(50);
      if (Math.abs(further.y - (fit.intercept + fit.slope * 50)) <= predictionHalfWidth(fit, 50)!) inside++;
    }
    // 95 % with a standard error of sqrt(.95 x .05 / 4000) = 0.34 %: four of them.
    expect(Math.abs(inside / trials - 0.95)).toBeLessThan(0.014);
  });
});

/** Standard normal by Box and Muller from a small seeded generator (mulberry32). */
function seededNormal(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
