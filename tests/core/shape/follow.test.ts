/** Members that follow the left points, the right ones or the mean: their nodes measured against the points themselves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { follow } from '../../../src/core/shape/follow.ts';
import { followedBy, pairsFollowed } from '../../../src/core/shape/followed.ts';
import { nodeMoves } from '../../../src/core/shape/node-moves.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, carOff, DEMO, made, placesIn, pointAt, read, solved, type Triple } from './sides.ts';

const side = fc.double({ min: -8, max: 8, noNaN: true });
const anyOff = fc.array(fc.tuple(side, side, side), { minLength: 1, maxLength: 13 });
const near = (actual: readonly number[], expected: readonly number[]) =>
  expected.forEach((value, axis) => expect(actual[axis]).toBeCloseTo(value, 8));
/** The nodes of the demo's front leg that stand on points, with what they are off them by. */
const LEG = [
  ['leg-screen', 'screen-top', [-34.925, -53.975, -31.75]],
  ['leg-cowl', 'screen-foot', [-104.775, -50.8, -47.625]],
  ['leg-foot', 'floor-a', [-3.175, -7.9375, 3.175]],
] as const;

const POINTS = [
  { id: 'l', name: 'Sill, left', position: [100, 600, 50] },
  { id: 'r', name: 'Sill, right', position: [104, -606, 48] },
  { id: 'lone', name: 'Column', position: [300, 340, 500] },
  { id: 'tunnel', name: 'Tunnel', position: [300, 2, 200] },
];
const TOP = [0, 500, 900];

describe('a member that follows', () => {
  it('the right points stands where they are, seen in a mirror; the mean halfway; and the left again is the same file', () => {
    fc.assert(
      fc.property(anyOff, (off) => {
        const job = carOff(DEMO, off);
        const [right, mean] = [made(follow(job, 'leg', 'right')), made(follow(job, 'leg', 'mean'))];
        const [inRight, inMean] = [placesIn(again(right)), placesIn(again(mean))];
        for (const [node, point, offset] of LEG) {
          const [l, r] = [pointAt(job, `${point}-l`), pointAt(job, `${point}-r`)];
          // The tube on the right is off its own points by the offset seen in a mirror.
          near(inRight.get(`${node}'`)!, [r[0] + offset[0], r[1] - offset[1], r[2] + offset[2]]);
          const middle: Triple = [(l[0] + r[0]) / 2, (l[1] - r[1]) / 2, (l[2] + r[2]) / 2];
          near(inMean.get(node)!, [middle[0] + offset[0], middle[1] + offset[1], middle[2] + offset[2]]);
        }
        const back = (from: Job) => serialiseJob(made(follow(from, 'leg', 'left')));
        expect(back(right)).toBe(serialiseJob(job));
        expect(back(mean)).toBe(serialiseJob(job));
        expect(serialiseJob(made(follow(mean, 'leg', 'right')))).toBe(serialiseJob(right));
        expect(made(follow(mean, 'leg', 'mean'))).toBe(mean);
        expect(made(follow(job, 'leg', 'left'))).toBe(job);
      }),
      fixed(drawn(20, 300)),
    );
  });

  it('is told at the pairs that it goes by', () => {
    const at = (job: Job, pair: string) => {
      const found = pairsFollowed(job).get(pair);
      return found === undefined ? null : [[...found.sides].toSorted(), found.members.includes('leg')];
    };
    for (const side of ['left', 'right', 'mean'] as const) {
      const job = made(follow(DEMO, 'leg', side));
      // Nothing but the leg stands on the windscreen's lower corner.
      expect(at(job, 'screen-foot-l')).toEqual([[side], true]);
    }
    expect(at(DEMO, 'tunnel')).toBeNull();
    expect(pairsFollowed({ ...DEMO, members: [] }).size).toBe(0);
  });

  it('says so, and what it stands on says it for itself', () => {
    const said = (job: Job, id: string) => followedBy(job, id).side;
    expect(said(DEMO, 'leg')).toBe('left');
    const right = made(follow(DEMO, 'leg', 'right'));
    const leg = followedBy(right, 'leg');
    expect(leg.side).toBe('mixed');
    expect(new Set(leg.own.map((guide) => guide.side))).toEqual(new Set(['right']));
    expect([...leg.through].map(([host, guides]) => [host, guides[0]!.side])).toEqual([['hoop', 'left']]);
    expect(
      followedBy(right, 'sill')
        .through.get('leg')!
        .some((guide) => guide.side === 'right'),
    ).toBe(true);
    const mean = made(follow(DEMO, 'strut', 'mean'));
    expect(followedBy(mean, 'strut').own.map((guide) => guide.side)).toEqual(['mean']);
    expect(said(DEMO, 'no such member')).toBe('none');
  });

  it('by a primed reference as by a plain one, by single coordinates and until a point on a tube', () => {
    const lined = { kind: 'lined-up', x: { point: 'r', plus: 3 }, y: { value: 555 }, z: { point: "l'", plus: -4 } };
    const until = { kind: 'on', member: 'post', until: { axis: 'z', point: 'l', plus: 200 } };
    const members = [
      { id: 'post', path: ['low', 'high'] },
      { id: 'bar', path: ['a', 'b'], mirror: true },
    ];
    const job = jobOf({ points: POINTS, nodes: { low: [0, 500, 0], high: TOP, a: lined, b: until }, members });
    expect(followedBy(job, 'bar').side).toBe('mixed');
    const right = made(follow(job, 'bar', 'right'));
    expect(right.nodes[2]!.at).toMatchObject({ x: { point: 'r', plus: 3 }, z: { point: 'r', plus: -4 } });
    expect(right.nodes[3]!.at).toMatchObject({ until: { point: "r'", plus: 200 } });
    const left = made(follow(right, 'bar', 'left'));
    expect(left.nodes[2]!.at).toMatchObject({ x: { point: "l'", plus: 3 }, z: { point: "l'", plus: -4 } });
    const mean = placesIn(made(follow(job, 'bar', 'mean')));
    near(mean.get('a')!, [102 + 3, 555, 49 - 4]);
    near(mean.get('b')!, [0, 500, 249]);
  });

  it('shares the mean with others, and leaves no node behind when the last one goes', () => {
    const at = (offset: Triple) => ({ kind: 'point', point: 'l', offset });
    const bars = ['one', 'two'].map((id) => ({ id, path: [id, 'top'], mirror: true }));
    const job = jobOf({ points: POINTS, nodes: { top: TOP, one: at([1, 2, 3]), two: at([9, 0, 0]) }, members: bars });
    const one = made(follow(job, 'one', 'mean'));
    const both = made(follow(one, 'two', 'mean'));
    expect([one.nodes.length, both.nodes.length]).toEqual([6, 6]);
    const rest = made(follow(both, 'one', 'left'));
    expect(rest.nodes).toHaveLength(6);
    expect(serialiseJob(made(follow(rest, 'two', 'left')))).toBe(serialiseJob(job));
  });

  it('a mean that another node would go by in a circle is made anew', () => {
    const at = { kind: 'point', point: 'l' };
    const job = jobOf({
      points: POINTS,
      nodes: { top: TOP, a: at },
      members: [{ id: 'bar', path: ['a', 'top'], mirror: true }],
    });
    const mean = made(follow(job, 'bar', 'mean'));
    const helper = mean.nodes.find(
      ({ id, at: place }) => id !== 'a' && place.kind === 'point' && place.point === 'l',
    )!.id;
    const other = { ...mean, members: [...mean.members, { ...mean.members[0]!, id: 'other', path: [helper, 'top'] }] };
    near(placesIn(made(follow(read(serialiseJob(other)), 'other', 'mean'))).get(helper)!, [102, 603, 49]);
  });

  it('is refused in words where there is nothing to follow, and where a gap is kept from the trim', () => {
    const lone = { kind: 'point', point: 'lone' };
    const centre = { kind: 'point', point: 'tunnel' };
    const clear = { kind: 'point', point: 'l', clear: { direction: [0, -1, 0], gap: 30 } };
    const member = (...path: string[]) => [{ id: 'bar', path, mirror: true }];
    const bar = jobOf({ points: POINTS, nodes: { top: TOP, lone, centre }, members: member('lone', 'top') });
    expect(follow(bar, 'bar', 'right')).toMatchObject([{ message: expect.stringContaining('has a pair') }]);
    expect(followedBy(bar, 'bar').own).toMatchObject([{ side: 'left', pair: null }]);
    const across = jobOf({ points: POINTS, nodes: { top: TOP, centre }, members: member('centre', 'top') });
    expect(followedBy(across, 'bar').side).toBe('none');
    const gap = jobOf({ points: POINTS, nodes: { top: TOP, clear }, members: member('clear', 'top') });
    expect(follow(gap, 'bar', 'mean')).toMatchObject([{ message: expect.stringContaining('clear of its point') }]);
    const after = placesIn(made(follow(gap, 'bar', 'right')));
    near(after.get("clear'")!, [104, -606 + 30 + 44.45 / 2, 48]);
  });

  it('is shown beforehand: each node and how far it goes, as the derivation then has it', () => {
    const before = solved(DEMO);
    const job = made(follow(DEMO, 'leg', 'right'));
    const moves = nodeMoves(before, job);
    if (!moves.ok) throw new Error('moves');
    const after = derive(job);
    if (!after.ok) throw new Error('derive');
    const expected = [...before.nodes].flatMap(([node, place]) => {
      const there = after.value.nodes.get(node)!;
      const by = Math.hypot(...there.map((value, axis) => value - place[axis]!));
      return by > 1e-7 && !node.endsWith("'") ? [{ node, by: Math.round(by * 1e6) }] : [];
    });
    const byName = (a: { node: string }, b: { node: string }) => (a.node < b.node ? -1 : 1);
    expect(moves.value.map(({ node, by }) => ({ node, by: Math.round(by * 1e6) })).toSorted(byName)).toEqual(
      expected.toSorted(byName),
    );
    expect(expected.length).toBeGreaterThan(LEG.length);
  });
});
