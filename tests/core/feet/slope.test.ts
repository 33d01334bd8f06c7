/** A plate's slope as a level shows it, against places of the plane itself; and the edits of feet. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facing, FACES, GREATEST_LEAN, leaned, slopeOf } from '../../../src/core/feet/slope.ts';
import { cross, dot, type Vec3 } from '../../../src/core/geometry/vector.ts';
import {
  addFoot,
  removeFoot,
  setFootHeight,
  setFootKind,
  setFootSize,
  setFootWall,
  setHoles,
  setKink,
  standOnNew,
} from '../../../src/core/edit/feet.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { slopeInWords } from '../../../src/core/words/feet.ts';
import { legJob } from './feet-jobs.ts';

const angle = fc.double({ min: -50, max: 50, noNaN: true });

describe('the slope of a plate', () => {
  it('is what a level laid along it and across it reads, below the horizon where it falls', () => {
    fc.assert(
      fc.property(angle, angle, (forward, left) => {
        const normal = leaned(leaned([0, 0, 1], 0, forward), 1, left);
        // Where the plane meets the upright planes along and across the car.
        const along = cross([0, 1, 0], normal);
        const across = cross(normal, [1, 0, 0]);
        const fall = (way: Vec3, axis: 0 | 1): number => (Math.atan2(-way[2], way[axis]) * 180) / Math.PI;
        expect(dot(along, normal)).toBeCloseTo(0, 9);
        expect(fall(along, 0)).toBeCloseTo(forward, 9);
        expect(fall(across, 1)).toBeCloseTo(left, 9);
        const read = slopeOf(normal);
        if (read.face === 'up') {
          expect(read.leans[0]).toBeCloseTo(forward, 9);
          expect(read.leans[1]).toBeCloseTo(left, 9);
        }
      }),
      { seed: 5 },
    );
  });

  it('stands square each way without a lean, and keeps one lean while the other is typed', () => {
    for (const face of FACES) expect(slopeOf(facing(face))).toEqual({ face, leans: [0, 0] });
    const normal = leaned([0.3, -0.2, 1.7], 0, 12);
    expect(normal.slice(1)).toEqual([-0.2, 1.7]);
    expect(slopeOf(normal).leans[0]).toBeCloseTo(12, 12);
    expect(slopeOf(leaned(facing('back'), 0, -4)).face).toBe('back');
    for (const face of ['up', 'down'] as const)
      expect(slopeOf(leaned(facing(face), 1, GREATEST_LEAN - 1e-9))).toMatchObject({ face });
  });

  it('is said in words', () => {
    expect(slopeInWords([0, 0, 7])).toBe('level');
    expect(slopeInWords(leaned(leaned([0, 0, 1], 0, 3), 1, -2))).toBe('falls 3.0° forward and 2.0° right');
    expect(slopeInWords(leaned(facing('back'), 0, 1.5))).toBe('faces back, leans 1.5° up');
    expect(slopeInWords([0, 1, 0])).toBe('faces left');
  });
});

describe('an edit of feet', () => {
  const start = (): Job => {
    const parsed = parseJob(
      JSON.stringify({ ...legJob({ foot: { kind: 'plate', size: [80, 60], thickness: 3 } }), lengthUnit: 'in' }),
    );
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
    return parsed.job;
  };
  /** As a file takes it, and reads it back. */
  const back = (job: Job): Job => {
    const parsed = parseJob(serialiseJob(job));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
    return parsed.job;
  };

  it('adds one of a usual size in the job’s unit, and puts an end on a new one in one step', () => {
    const added = addFoot(addFoot(start(), 'plate'), 'box');
    expect(added.feet.slice(1)).toEqual([
      { id: 'f2', name: 'Foot plate 2', kind: 'plate', size: [152.4, 152.4], thickness: 3.175 },
      { id: 'f3', name: 'Foot box 1', kind: 'box', size: [101.6, 101.6], thickness: 3.175, height: 76.2 },
    ]);
    const stood = standOnNew(start(), 'leg', 0, 'box', { fit: 'square', allowance: 25 }, 40);
    expect(stood.members[0]!.ends[0]).toEqual({ fit: 'foot', foot: 'f2', normal: [0, 0, 1], allowance: 25 });
    expect(back(stood)).toEqual(stood);
    // Nothing left long there: what the shop leaves at a foot.
    const trimmed = standOnNew(start(), 'leg', 1, 'plate', { fit: 'plate', normal: [0, 1, 0], allowance: 0 }, 40);
    expect(trimmed.members[0]!.ends[1]).toEqual({ fit: 'foot', foot: 'f2', normal: [0, 1, 0], allowance: 40 });
  });

  it('changes a plate to a box and back, leaving no field behind', () => {
    const job = setKink(start(), 'foot', { runs: 'across', at: 20, angle: 10, radius: 3 });
    const box = setFootWall(setFootHeight(setFootKind(job, 'foot', 'box'), 'foot', 60), 'foot', 2);
    expect(box.feet[0]).toEqual({
      id: 'foot',
      name: 'foot',
      kind: 'box',
      size: [80, 60],
      thickness: 3,
      height: 60,
      wall: 2,
    });
    expect(setFootWall(box, 'foot', null).feet[0]).not.toHaveProperty('wall');
    expect(setFootKind(box, 'foot', 'plate').feet[0]).toEqual(start().feet[0]);
    expect(setKink(job, 'foot', null).feet[0]).toEqual(start().feet[0]);
    expect(setFootSize(job, 'foot', 1, 60)).toBe(job);
  });

  it('keeps holes, drops the list with the last, and does not delete what an end stands on', () => {
    const holes = [{ at: [20, 10], diameter: 8.5 }] as const;
    const drilled = setHoles(start(), 'foot', holes);
    expect(back(drilled).feet[0]!.holes).toEqual(holes);
    expect(setHoles(drilled, 'foot', []).feet[0]).not.toHaveProperty('holes');
    expect(removeFoot(drilled, 'foot')).toEqual([
      expect.objectContaining({ message: expect.stringContaining('uses it') as string }),
    ]);
  });
});
