/** What a notcher is set to, and from where phi counts: random joints against vectors worked out apart ("computed"). */
import { describe, expect, it } from 'vitest';
import type { Member } from '../../src/core/job/kinds/member.ts';
import { copedTo, fixed, jobOf, member, SQUARE, tubeOf, tubeThrough, tubing } from './jobs.ts';
import { straightJoint } from './joints.ts';
import { acuteSide, bowAt, type Straight } from './oracles/centreline.ts';
import { around, difference, inner, outer, size, square, unit, type Triple } from './oracles/space.ts';

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

describe('phi = 0', () => {
  const corners: readonly Triple[] = [
    [0, 0, 0],
    [500, 40, -30],
    [600, 500, 100],
    [500, 700, 600],
  ];

  it('of a bent tube looks to the inside of the bend nearest the end (contract)', () => {
    const tube = tubeThrough(corners, 120);
    const centres = [
      bowAt(corners[0]!, corners[1]!, corners[2]!, 120),
      bowAt(corners[1]!, corners[2]!, corners[3]!, 120),
    ];
    tube.ends.forEach((end, i) => {
      const node = i === 0 ? corners[0]! : corners[3]!;
      const direction = unit(difference(i === 0 ? corners[1]! : corners[2]!, node));
      expect(size(difference(end.direction, direction))).toBeLessThan(1e-12);
      const inside = unit(square(difference(centres[i]!.centre, node), direction));
      expect(size(difference(end.reference, inside))).toBeLessThan(1e-12);
    });
  });

  it('of a straight tube is one line from end to end: the acute side of the cut at A, else at B, else upwards (contract)', () => {
    const sections = [tubing('s', 40, 2)];
    const at = (id: string, position: Triple): ReturnType<typeof fixed> => fixed(id, position);
    const nodes = [
      at('a', [0, 0, 0]),
      at('b', [800, 0, 0]),
      at('a1', [-300, -300, 0]),
      at('a2', [300, 300, 0]),
      at('b1', [500, 0, -300]),
      at('b2', [1100, 0, 300]),
    ];
    const references = (ends: Member['ends']): readonly Triple[] => {
      const members = [
        member('ra', ['a1', 'a2'], 's'),
        member('rb', ['b2', 'b1'], 's'),
        member('t', ['a', 'b'], 's', { ends }),
      ];
      return tubeOf(jobOf({ sections, nodes, members }), 't').ends.map((end) => end.reference);
    };
    const near = (v: Triple): unknown => v.map((value) => expect.closeTo(value, 12));
    // Run A leans to +y as the tube leaves it; from end B, back along -x, run B leans to -z.
    expect(references([copedTo('ra'), copedTo('rb')])).toEqual([near([0, 1, 0]), near([0, 1, 0])]);
    expect(references([SQUARE, copedTo('rb')])).toEqual([near([0, 0, -1]), near([0, 0, -1])]);
    expect(references([SQUARE, SQUARE])).toEqual([near([0, 0, 1]), near([0, 0, 1])]);
  });
});
