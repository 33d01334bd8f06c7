/** A mirrored member made two: on a car alike on both sides nothing changes but names; on one that is not, each side is on its own points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { commitEdit, newHistory, redo, undo } from '../../../src/core/session/history.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { eachSideItsOwn, type TwoMembers } from '../../../src/core/shape/each-side.ts';
import { follow } from '../../../src/core/shape/follow.ts';
import { nodeMoves } from '../../../src/core/shape/node-moves.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, carOff, DEMO, made, placesIn, pointAt, solved } from './sides.ts';

function split(job: Job, id: string): TwoMembers {
  const answer = eachSideItsOwn(job, solved(job), id);
  if (answer === null || Array.isArray(answer)) throw new Error(JSON.stringify(answer));
  return answer as TwoMembers;
}
const refusal = (job: Job, id: string) => {
  const answer = eachSideItsOwn(job, solved(job), id);
  return Array.isArray(answer) ? (answer[0].message as string) : null;
};
const near = (actual: readonly number[], expected: readonly number[]) =>
  expected.forEach((value, axis) => expect(actual[axis]).toBeCloseTo(value, 7));
const side = fc.double({ min: -6, max: 6, noNaN: true });

/** All that is made of a tube, without what it and others are called. */
const steel = ({ corners, straights, bends, blankLength, ends }: SolvedTube) =>
  [
    ...corners.flat(),
    ...straights,
    ...bends.flatMap(({ angle, rotation }) => [angle, rotation]),
    blankLength,
    ...ends.flatMap(({ outer, cuts }) => [
      ...outer,
      ...cuts.flatMap(({ includedAngle, landing }) => [includedAngle, ...landing]),
    ]),
  ].map((value) => (Number.isNaN(value) ? -1e6 : value));

function expectSameSteel(before: Job, after: Job): void {
  const were = solved(before).tubes;
  const are = solved(after).tubes.map(steel);
  expect(are).toHaveLength(were.length);
  for (const tube of were) {
    const numbers = steel(tube);
    const worst = are.map((others) => {
      if (others.length !== numbers.length) return Infinity;
      return Math.max(...others.map((value, i) => Math.abs(value - numbers[i]!)));
    });
    expect(Math.min(...worst), tube.name).toBeLessThan(1e-6);
  }
}

describe('each side its own', () => {
  it('leaves every tube of a car that is alike on both sides as it was, cope for cope', () => {
    const alike = carOff(DEMO, [[0, 0, 0]]);
    const { job, members } = split(alike, 'leg');
    expect(members).toEqual(['leg', 'door', 'door-rear', 'door-front', 'sill', 'strut']);
    expect(job.members.filter(({ mirror }) => mirror).map(({ id }) => id)).toEqual(['stay']);
    expectSameSteel(alike, again(split(job, 'stay').job));
    expect(split(alike, 'stay').members).toEqual(['stay']);
  });

  it('has the right one on the right points, the left one on the left, whichever they followed before', () => {
    fc.assert(
      fc.property(fc.tuple(side, side, side), fc.constantFrom('left', 'right', 'mean'), (off, followed) => {
        const job = carOff(DEMO, [off]);
        const start = made(follow(job, 'leg', followed));
        const { job: after, became } = split(start, 'leg');
        const places = placesIn(again(after));
        const [l, r] = [pointAt(job, 'floor-a-l'), pointAt(job, 'floor-a-r')];
        near(places.get('leg-foot')!, [l[0] - 3.175, l[1] - 7.9375, l[2] + 3.175]);
        near(places.get(became.get("leg-foot'")!)!, [r[0] - 3.175, r[1] + 7.9375, r[2] + 3.175]);
        // No mean is left behind, and what the two had in common still is.
        expect(
          after.nodes.some(
            ({ at }) => at.kind === 'between' && at.fraction === 0.5 && !at.nodes.includes('dash-corner'),
          ),
        ).toBe(false);
        const [leg, other] = after.members.filter(({ role }) => role === 'front-leg');
        expect([leg!.name, other!.name]).toEqual(['Front leg, left', 'Front leg, right']);
        expect(other!.path[0]).toBe("leg-top'");
        expect(after.members.find(({ id }) => id === 'header')!.path).toEqual([
          'header-end',
          became.get("header-end'"),
        ]);
      }),
      fixed(drawn(4, 60)),
    );
  });

  it('keeps every end on what it stood on, on a car that is not alike', () => {
    const { job } = split(DEMO, 'leg');
    const frame = solved(job);
    expect(frame.findings.filter(({ id }) => id === 'end/meets-nothing' || id === 'end/cutter-misses')).toEqual([]);
    const [were, are] = [solved(DEMO).tubes, frame.tubes].map((tubes) =>
      tubes.flatMap(({ ends }) => ends.map(({ cuts }) => cuts.length)).toSorted((a, b) => a - b),
    );
    expect(are).toEqual(were);
  });

  it('says beforehand how far the right one goes', () => {
    const { job, became } = split(DEMO, 'leg');
    const moves = nodeMoves(solved(DEMO), job, became);
    if (!moves.ok) throw new Error('moves');
    const [l, r] = [pointAt(DEMO, 'floor-a-l'), pointAt(DEMO, 'floor-a-r')];
    const foot = moves.value.find(({ node }) => node === "leg-foot'")!;
    expect(foot.by).toBeCloseTo(Math.hypot(l[0] - r[0], l[1] + r[1], l[2] - r[2]), 9);
    expect(moves.value.some(({ node }) => node === 'leg-foot')).toBe(false);
  });

  it('is one step, and undo and redo give the files back byte for byte', () => {
    for (const id of ['leg', 'stay']) {
      const after = split(DEMO, id).job;
      const done = commitEdit(newHistory(DEMO), 'Each side', after);
      expect(serialiseJob(undo(done).job)).toBe(serialiseJob(DEMO));
      expect(serialiseJob(redo(undo(done)).job)).toBe(serialiseJob(after));
    }
  });

  it('renames the image wherever it is named: ends, cutters, bend runs, feeds; and mirrors plates, feet and their holes', () => {
    const foot = { kind: 'foot', foot: 'f', normal: [0, 0.6, 0.8] } as const;
    const fit = { fit: 'foot', foot: 'f', normal: foot.normal };
    const job = jobOf({
      nodes: {
        a: [0, 500, 0],
        b: [0, 400, 900],
        c: [0, 600, 450],
        d: [0, -600, 450],
        e: { kind: 'on', member: "post'", from: 'end', distance: 200, offset: [0, 1, 0] },
        far: [800, -430, 500],
      },
      feet: [
        {
          id: 'f',
          name: 'Foot',
          kind: 'plate',
          size: [100, 120],
          thickness: 3,
          holes: [{ at: [30, 40], diameter: 9 }],
        },
      ],
      members: [
        {
          id: 'post',
          name: 'Post',
          path: ['a', 'b'],
          mirror: true,
          ends: [fit, { fit: 'plate', normal: [0, 0.6, 0.8] }],
          cutBy: ['bar'],
        },
        { id: 'bar', path: ['c', 'd'] },
        { id: 'rod', path: ['e', 'far'], ends: [{ fit: 'cope', against: ["post'"] }, { fit: 'square' }] },
      ],
      feeds: [{ tube: "post.2'", from: 'B' }],
      bent: [{ tube: "post.1'", order: [], bends: [] }],
    });
    const { job: after, members } = split(job, 'post');
    expect(members).toEqual(['post']);
    const [, other] = after.members;
    expect(other).toMatchObject({ name: 'Post, right', path: ["a'", "b'"], cutBy: ['bar'], mirror: false });
    expect(other!.ends).toMatchObject([
      { fit: 'foot', foot: 'f2', normal: [0, -0.6, 0.8] },
      { normal: [0, -0.6, 0.8] },
    ]);
    expect(after.feet[1]).toMatchObject({ holes: [{ at: [30, -40], diameter: 9 }] });
    expect(after.members.at(-1)!.ends[0]).toMatchObject({ against: [other!.id] });
    expect(after.nodes.find(({ id }) => id === 'e')!.at).toMatchObject({ member: other!.id, offset: [0, 1, 0] });
    expect(after.feeds[0]!.tube).toBe(`${other!.id}.2`);
    expect(after.bent[0]!.tube).toBe(`${other!.id}.1`);
    expectSameSteel(job, again(after));
  });

  it('is refused in words where a bar across the car would have to carry one node on both sides, or there is no image', () => {
    const points = [
      { id: 'l', name: 'Floor, left', position: [0, 600, 0] },
      { id: 'r', name: 'Floor, right', position: [0, -606, 0] },
    ];
    const job = jobOf({
      points,
      nodes: {
        foot: { kind: 'point', point: 'l' },
        top: [0, 500, 1000],
        stay: { kind: 'on', member: 'hoop', from: 'start', distance: 300 },
        rear: [-800, 480, 500],
        sill: [900, 600, 0],
      },
      members: [
        { id: 'hoop', name: 'Hoop', path: ['foot', 'top', "top'", "foot'"] },
        { id: 'rear', path: ['stay', 'rear'], mirror: true },
        { id: 'sill', path: ['foot', 'sill'], mirror: true },
      ],
    });
    expect(refusal(job, 'sill')).toContain('stay stands on Hoop on both sides');
    expect(split(job, 'rear').members).toEqual(['rear']);
    const frame = solved(job);
    expect(eachSideItsOwn(job, frame, 'hoop')).toBeNull();
    expect(eachSideItsOwn(job, frame, 'no such member')).toBeNull();
  });
});
