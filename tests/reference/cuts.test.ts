/** What a notcher is set to, and from where phi counts: random joints against vectors worked out apart ("computed"). */
import { describe, expect, it } from 'vitest';
import { tubeOf } from './jobs.ts';
import { straightJoint } from './joints.ts';
import { acuteSide, type Straight } from './oracles/centreline.ts';
import { around, difference, inner, outer, size } from './oracles/space.ts';

const DEGREE = Math.PI / 180;
const SEEDS = Array.from({ length: 60 }, (_, i) => 9001 + i);

describe('each cut of a straight branch', () => {
  it.each(SEEDS)('has its angles, clocking, offset and saw, joint %i', (seed) => {
    const { job, which, end } = straightJoint(seed);
    const solved = tubeOf(job, 'branch').ends[which];
    expect(solved.cuts).toHaveLength(end.cutters.length);
    end.cutters.forEach((cutter, i) => {
      const cut = solved.cuts[i]!;
      const run = cutter.parts[0] as Straight;
      const acute = acuteSide(end.direction, run.direction);
      const cosine = Math.abs(inner(end.direction, run.direction));
      expect(Math.cos(cut.includedAngle)).toBeCloseTo(cosine, 10);
      expect(Math.sin(cut.offSquare)).toBeCloseTo(cosine, 10);
      // Turned by its clocking, the reference comes to the acute side.
      expect(size(difference(around(end.direction, solved.reference, cut.clocking / DEGREE), acute))).toBeLessThan(
        1e-9,
      );
      expect(cut.axisOffset).toBeCloseTo(inner(difference(end.node, run.from), outer(end.direction, acute)), 8);
      expect(cut.sawDiameter).toBeCloseTo(2 * cutter.radius, 9);
      expect(cut.onBend).toBe(false);
    });
  });
});
