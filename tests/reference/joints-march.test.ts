/**
 * Random joints against a search along each generator line that knows no equation of the crossing (oracles/march.ts).
 * Source: computed. The search is good to 1e-4 mm where a line grazes the run (the depth's last digit, and its root), and
 * much better elsewhere.
 */
import { describe, expect, it } from 'vitest';
import { drawn } from '../draws.ts';
import { bothEnds, EVERY_DEGREE, everyDegrees } from './compare.ts';
import { bentJoint, hollowJoint, roughKindOf, seedsOf, straightJoint, type Joint } from './joints.ts';
import { distanceToCentreline } from './oracles/centreline.ts';
import { generatorStart, trimByMarch, type End } from './oracles/march.ts';
import { along } from './oracles/space.ts';

const range = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

/** Lines on which the two differ by more than 1e-4 mm, or on which only one of them finds a crossing. */
function disagreements(ours: Float64Array, end: End, degrees: readonly number[]): unknown[] {
  return degrees.flatMap((phi) => {
    const mine = Number.isNaN(ours[phi]!) ? null : ours[phi]!;
    const searched = trimByMarch(end, phi);
    const agree = mine === null || searched === null ? mine === searched : Math.abs(mine - searched) <= 1e-4;
    return agree ? [] : [{ phi, mine, searched }];
  });
}

function check(joint: Joint, degrees: readonly number[]): void {
  const { solved, end } = bothEnds(joint);
  expect(disagreements(solved.outer, end, degrees)).toEqual([]);
  const bore = { ...end, radius: joint.bore, outside: end.radius };
  expect(disagreements(solved.inner, bore, everyDegrees(12))).toEqual([]);
}

describe('trim of a straight branch, outside and bore, against a search along each line', () => {
  it.each(seedsOf(1, 150, straightJoint, roughKindOf))('to straight runs, joint %i', (seed) =>
    check(straightJoint(seed), everyDegrees(3)),
  );
  it.each(seedsOf(1001, 120, bentJoint, roughKindOf))('to bent runs, joint %i', (seed) =>
    check(bentJoint(seed), everyDegrees(3)),
  );
  it.each(range(30001, drawn(8, 400)))('in hollows, beside joints and through both legs, joint %i', (seed) =>
    check(hollowJoint(seed), everyDegrees(4)),
  );
  it.each(range(5001, drawn(1, 5)))('to straight runs, every degree, joint %i', (seed) =>
    check(straightJoint(seed), EVERY_DEGREE),
  );
  it.each(range(6001, drawn(1, 5)))('to bent runs, every degree, joint %i', (seed) =>
    check(bentJoint(seed), EVERY_DEGREE),
  );
});

describe('the profile rolled up on the branch', () => {
  it.each([...seedsOf(2001, 60, straightJoint, roughKindOf), ...seedsOf(3001, 60, bentJoint, roughKindOf)])(
    'lies on the surface of a run tube, joint %i',
    (seed) => {
      const { solved, end } = bothEnds(seed < 3000 ? straightJoint(seed) : bentJoint(seed));
      const misses = EVERY_DEGREE.filter((phi) => !Number.isNaN(solved.outer[phi]!)).map((phi) => {
        const place = along(generatorStart(end, phi), end.direction, solved.outer[phi]!);
        return Math.min(...end.cutters.map((cutter) => Math.abs(distanceToCentreline(cutter, place) - cutter.radius)));
      });
      expect(Math.max(0, ...misses)).toBeLessThan(1e-6);
    },
  );
});
