/** Two members made one that is mirrored: each side its own and back is the same file, and what is not alike is said. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepNumbers } from '../../../src/core/edit/numbers.ts';
import { updateMember } from '../../../src/core/edit/members.ts';
import { numbersOf } from '../../../src/core/job/numbers.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { eachSideItsOwn, type TwoMembers } from '../../../src/core/shape/each-side.ts';
import { follow } from '../../../src/core/shape/follow.ts';
import { nodeMoves } from '../../../src/core/shape/node-moves.ts';
import { oneForBothSides, type OneMember } from '../../../src/core/shape/one-for-both.ts';
import { drawn } from '../../draws.ts';
import { derivedOrSkipped, fixed, mirroredFrame } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, carOff, DEMO, made, placesIn, read, solved, type Triple } from './sides.ts';

const FULL = read(readFileSync('public/demo.cagewright.json', 'utf8'));

function apart(job: Job, id: string): Job {
  const answer = eachSideItsOwn(job, solved(job), id);
  if (answer === null || Array.isArray(answer)) throw new Error(JSON.stringify(answer));
  return again(keepNumbers(job, (answer as TwoMembers).job));
}
function together(job: Job, id: string): OneMember {
  const answer = oneForBothSides(job, solved(job), id);
  if (answer === null || Array.isArray(answer)) throw new Error(JSON.stringify(answer));
  const one = answer as OneMember;
  return { ...one, job: again(keepNumbers(job, one.job)) };
}

const cars: readonly (readonly [string, Job, Triple])[] = [
  ['first demo, alike', DEMO, [0, 0, 0]],
  ['first demo, right side off', DEMO, [3, -4, 2]],
  ['full cage, alike', FULL, [0, 0, 0]],
  ['full cage, right side off', FULL, [-2, 5, 3]],
];

describe('one for both sides', () => {
  it.each(cars.slice(0, drawn(4, 4)))(
    'is the way back from each side its own, with all that went apart: %s',
    (_, car, off) => {
      for (const id of ['leg', 'door', 'sill']) {
        const start = made(follow(carOff(car, [off]), 'leg', 'left'));
        const two = apart(start, id);
        expect(two.members.length).toBeGreaterThan(start.members.length);
        // A tube keeps its number on the way there: the right one is the same steel.
        expect([...numbersOf(two).values()].toSorted((a, b) => a - b)).toEqual(
          [...numbersOf(start).values()].toSorted((a, b) => a - b),
        );
        const { job } = together(two, id);
        expect(serialiseJob(job)).toBe(serialiseJob(start));
      }
    },
  );

  it('is the way back on random frames too', () => {
    let tried = 0;
    fc.assert(
      fc.property(mirroredFrame, fc.nat(9), (job, at) => {
        const { id } = job.members[at % job.members.length]!;
        const frame = derivedOrSkipped(job);
        const answer = eachSideItsOwn(job, frame, id);
        fc.pre(answer !== null && !Array.isArray(answer));
        const two = again(keepNumbers(job, (answer as TwoMembers).job));
        const back = oneForBothSides(two, derivedOrSkipped(two), id);
        fc.pre(back !== null);
        tried += 1;
        expect(serialiseJob(again(keepNumbers(two, (back as OneMember).job)))).toBe(serialiseJob(job));
      }),
      fixed(drawn(8, 400)),
    );
    expect(tried).toBe(drawn(8, 400));
  });

  it('says how far what stood on the other side goes', () => {
    const start = made(follow(carOff(DEMO, [[3, -4, 2]]), 'leg', 'left'));
    const two = apart(start, 'leg');
    const { job, became } = together(two, 'leg');
    const moves = nodeMoves(solved(two), job, became);
    if (!moves.ok) throw new Error('moves');
    const foot = two.nodes.find(({ name }) => name === 'Front leg foot, right')!.id;
    expect(moves.value.find(({ node }) => node === foot)!.by).toBeCloseTo(Math.hypot(3, 4, 2), 6);
    expect(moves.value.some(({ node }) => node === 'leg-foot')).toBe(false);
  });

  const nodes = { a: [0, 500, 0], b: [0, 400, 900], c: [0, -500, 0], d: [0, -410, 900], e: [0, -700, 900] };
  const records = {
    nodes: { ...nodes, on: { kind: 'on', member: 'right', from: 'start', distance: 200 }, far: [700, -400, 300] },
    members: [
      { id: 'left', name: 'Post', path: ['a', 'b'] },
      { id: 'right', name: 'Other post', path: ['c', 'd'] },
      { id: 'rod', path: ['on', 'far'], ends: [{ fit: 'cope', against: ['right'] }, { fit: 'square' }] },
    ],
    feeds: [{ tube: 'right', from: 'B' }],
    numbers: { left: 1, right: 7, rod: 3 },
    lastNumber: 9,
  };

  it('takes two that were drawn by hand, and what named the other names the image', () => {
    const { job, pairs } = together(jobOf(records), 'left');
    expect([...pairs]).toEqual([['left', 'right']]);
    expect(job.members.map(({ id, name, mirror }) => [id, name, mirror])).toEqual([
      ['left', 'Post', true],
      ['rod', 'rod', false],
    ]);
    expect(job.nodes.find(({ id }) => id === 'on')!.at).toMatchObject({ member: "left'", distance: 200 });
    expect(job.members[1]!.ends[0]).toMatchObject({ against: ["left'"] });
    expect(job.feeds).toEqual([{ tube: "left'", from: 'B' }]);
    expect([...numbersOf(job)]).toEqual([
      ['left', 1],
      ["left'", 7],
      ['rod', 3],
    ]);
    expect(placesIn(job).get("b'")).toEqual([0, -400, 900]);
    // Mirrored and taken away by hand it is another matter: that is drawn anew.
    expect(oneForBothSides(job, solved(job), 'left')).toBeNull();
    expect(updateMember(job, 'left', { mirror: true })).toBe(job);
  });

  it('is nothing where the other side is too far off or of other tube, and refused where ends are cut otherwise', () => {
    const far = jobOf({ ...records, nodes: { ...records.nodes, d: [0, -440, 900] } });
    expect(oneForBothSides(far, solved(far), 'left')).toBeNull();
    const job = jobOf(records);
    const members = job.members.map((each) => (each.id === 'right' ? { ...each, batch: 'H-2' } : each));
    expect(oneForBothSides({ ...job, members }, solved({ ...job, members }), 'left')).toBeNull();
    const cut = jobOf({
      ...records,
      members: records.members.map((each) =>
        each.id === 'right' ? { ...each, ends: [{ fit: 'auto' }, { fit: 'square' }] } : each,
      ),
    });
    expect(oneForBothSides(cut, solved(cut), 'left')).toMatchObject([
      { message: 'end B of Post and that of Other post are not cut alike' },
    ]);
  });

  describe('is refused where the image would not be what the other is', () => {
    const PLATE = { fit: 'foot', foot: 'small', normal: [0, 0, 1] };
    const feet = [
      { id: 'small', name: 'Small', kind: 'plate', size: [100, 100], thickness: 3 },
      { id: 'like', name: 'Like it', kind: 'plate', size: [100, 100], thickness: 3 },
      { id: 'big', name: 'Big', kind: 'box', size: [150, 150], thickness: 4, height: 60 },
    ];
    const asked = (left: object, right: object, others: readonly object[] = [], more: object = {}) => {
      const job = jobOf({
        feet,
        nodes: { ...nodes, f: [600, 500, 100], g: [600, -480, 40], h: [-300, 0, 900], ...more },
        members: [
          { id: 'left', name: 'Left post', path: ['a', 'b'], ...left },
          ...others,
          { id: 'right', name: 'Right post', path: ['c', 'd'], ...right },
        ],
      });
      return oneForBothSides(job, solved(job), 'left');
    };
    const cars = [
      { id: 'x', name: 'Left brace', path: ['b', 'f'] },
      { id: 'y', name: 'Right brace', path: ['d', 'g'] },
    ];
    const unlike = [{ message: 'end A of Left post and that of Right post are not cut alike' }];

    it('on another foot or plate', () => {
      const square = { fit: 'square' };
      const on = (foot: string, normal = [0, 0, 1]) => ({ ends: [{ ...PLATE, foot, normal }, square] });
      expect(asked(on('small'), on('like'))).toMatchObject({ pairs: new Map([['left', 'right']]) });
      expect(asked(on('small'), on('big'))).toMatchObject(unlike);
      expect(asked(on('small', [0, 0.1, 1]), on('like', [0, -0.1, 1]))).toMatchObject({
        became: new Map([
          ['c', "a'"],
          ['d', "b'"],
        ]),
      });
      expect(asked(on('small', [0, 0.1, 1]), on('like', [0, 0.1, 1]))).toMatchObject(unlike);
      const plate = (normal: number[]) => ({ ends: [{ fit: 'plate', normal }, square] });
      expect(asked(plate([0, 0.1, 1]), plate([0, 0, 1]))).toMatchObject(unlike);
    });

    it('coped to what is no mirror image', () => {
      const to = (tube: string) => ({ ends: [{ fit: 'square' }, { fit: 'cope', against: [tube] }] });
      expect(asked(to('x'), to('y'), cars)).toMatchObject([
        { message: 'Right post is not coped to the mirror images of what Left post is coped to' },
      ]);
      // Each other's like, they become one with the posts.
      const [x, y] = cars;
      expect(asked(to('x'), to('y'), [x!, y!], { g: [600, -500, 100] })).toMatchObject({
        pairs: new Map([
          ['left', 'right'],
          ['x', 'y'],
        ]),
      });
    });

    it('on a bar of one side', () => {
      const base = { id: 'base', name: 'Left base', path: ['f', 'k'] };
      const more = { k: [-600, 500, -100], a: { kind: 'on', member: 'base', from: 'start', distance: 600 } };
      expect(asked({}, {}, [base], more)).toMatchObject([
        { message: 'Left post stands on Left base, which is on one side alone' },
      ]);
    });

    it('coped by the build order to what is built between the two', () => {
      const tie = { id: 'tie', name: 'Tie', path: ['h', 'd'] };
      expect(asked({}, {}, [tie])).toMatchObject([
        { message: 'Tie is built between the two, and Right post is coped to it: change the build order first' },
      ]);
    });
  });
});
