/** Where a gusset could be put, the usual one there, and its edits. */
import { describe, expect, it } from 'vitest';
import {
  addGusset,
  flattenGusset,
  foldGusset,
  removeGusset,
  setFold,
  setGussetLeg,
  updateGusset,
} from '../../../src/core/edit/gussets.ts';
import { gussetTrouble } from '../../../src/core/checks/gusset-findings.ts';
import { derive } from '../../../src/core/derive.ts';
import { gussetsOf, isMade } from '../../../src/core/gusset/gussets.ts';
import { freeCorners } from '../../../src/core/shape/gusset-corners.ts';
import { jointJob, bendJob } from '../gusset/gusset-jobs.ts';

const legsAt = (frame: ReturnType<typeof jointJob>, node: string) =>
  freeCorners(frame, node).map(({ usual }) =>
    usual.between.map(({ member, towards, leg }) => `${member} ${towards} ${leg}`).join(', '),
  );

describe('corners at a node', () => {
  // Three diameters of 44.45 are 133.35: 130 by steps of 5. The corner with a gusset is not offered again.
  it('are those between a run and its branch, either way, without the one that has a gusset', () => {
    expect(legsAt(jointJob(), 'joint')).toEqual(['run A 130, branch B 130']);
    expect(
      legsAt(
        jointJob({
          gusset: {
            node: 'a',
            between: [
              { member: 'run', towards: 'B', leg: 90 },
              { member: 'branch', towards: 'B', leg: 90 },
            ],
          },
        }),
        'joint',
      ),
    ).toEqual(['run A 130, branch B 130', 'run B 130, branch B 130']);
  });

  it('take what a short straight gives, and nothing where that is next to nothing', () => {
    // 120 from the joint's middle less 22.225 of the branch's half: 97.775.
    expect(legsAt(jointJob({ runHalf: 120 }), 'joint')).toEqual(['run A 95, branch B 130']);
    expect(legsAt(jointJob({ runHalf: 40 }), 'joint')).toEqual([]);
  });

  it('are never offered a leg shorter than Checks asks where the straight gives that, though it is no whole step', () => {
    // Two diameters are 88.9; the straight ends at 111.5 - 22.225 = 89.275, whole steps at 85.
    expect(legsAt(jointJob({ runHalf: 111.5 }), 'joint')).toEqual(['run A 88.9, branch B 130']);
    const [corner] = freeCorners(jointJob({ runHalf: 111.5 }), 'joint');
    const job = addGusset(jointJob({ runHalf: 111.5 }).job, corner!.usual);
    const frame = derive(job);
    expect(frame.ok && gussetTrouble(frame.value).filter(({ gusset }) => gusset !== 'g')).toEqual([]);
  });

  it('leave out what is too flat for a sheet', () => {
    expect(legsAt(jointJob({ to: [-600, 0, 60], gusset: { node: 'a' } }), 'joint')).toEqual([]);
  });

  // The stay halves the right angle; out of the plane it stands clear of a sheet that begins 31.4 from the node from 45 degrees on.
  it.each([
    [
      [300, 0, 300],
      ['run A, branch B', 'run B, stay B', 'branch B, stay B'],
    ],
    [
      [300, 100, 300],
      ['run A, branch B', 'run B, stay B', 'branch B, stay B'],
    ],
    [
      [300, 500, 300],
      ['run A, branch B', 'run B, branch B', 'run A, stay B', 'run B, stay B', 'branch B, stay B'],
    ],
  ] as const)('leave out what a third tube parts: towards %s', (over, offered) => {
    const stay = {
      id: 'stay',
      path: ['joint', 'over'],
      ends: [{ fit: 'cope', against: ['run', 'branch'] }, { fit: 'square' }],
    };
    const frame = jointJob({ gusset: { node: 'a' }, nodes: { over }, members: [stay] });
    const free = freeCorners(frame, 'joint').map(({ usual }) =>
      usual.between.map(({ member, towards }) => `${member} ${towards}`).join(', '),
    );
    expect(free).toEqual(expect.arrayContaining([...offered]));
    expect(free.includes('run B, branch B')).toBe((offered as readonly string[]).includes('run B, branch B'));
    // The branch stands between the run's other way and the stay where the three lie in one plane.
    if (over[1] === 0) expect(free).toEqual(offered);
  });

  // CLR 152.4 at a right angle: the tangent lies 152.4 - 22.225 = 130.175 along; one diameter beyond, 174.6: 170.
  it('across a bend reach past its tangents', () => {
    expect(legsAt(bendJob(), 'corner')).toEqual([]);
    const { job } = bendJob();
    const bare = derive({ ...job, gussets: [] });
    expect(bare.ok && legsAt(bare.value, 'corner')).toEqual(['tube A 170, tube B 170']);
  });

  it('each take the usual gusset', () => {
    const frame = jointJob();
    const [free] = freeCorners(frame, 'joint');
    const after = derive(addGusset(frame.job, free!.usual));
    if (!after.ok) throw new Error('not derived');
    expect(gussetsOf(after.value).map(({ made }) => isMade(made))).toEqual([true, true]);
    expect(after.value.job.gussets.at(-1)).toMatchObject({
      name: 'Gusset 2',
      kind: 'flat',
      thickness: 3.048,
      relief: 0,
      mirror: true,
    });
  });
});

it('edits change what they say, and folding is taken back whole', () => {
  const { job } = jointJob();
  const [gusset] = job.gussets;
  expect(setGussetLeg(job, 'g', 1, 75).gussets[0]!.between.map(({ leg }) => leg)).toEqual([100, 75]);
  expect(updateGusset(job, 'g', { relief: 4 }).gussets[0]).toEqual({ ...gusset, relief: 4 });
  const folded = foldGusset(job, 'g', 33);
  expect(folded.gussets[0]).toEqual({ ...gusset, kind: 'bent', width: 33, radius: 3.2 });
  expect(setFold(folded, 'g', { radius: 5 }).gussets[0]).toMatchObject({ width: 33, radius: 5 });
  expect(setFold(job, 'g', { radius: 5 }).gussets[0]).toEqual(gusset);
  expect(flattenGusset(folded, 'g').gussets[0]).toEqual(gusset);
  expect(removeGusset(job, 'g').gussets).toEqual([]);
});
