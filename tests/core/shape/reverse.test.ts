/** A member counted from its other end: the steel stays, all that counts from end A says the same place, and twice is nothing. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Derived } from '../../../src/core/derive.ts';
import { keepNumbers } from '../../../src/core/edit/numbers.ts';
import { cutWhere, joinWhere } from '../../../src/core/edit/pieces.ts';
import { numbersOf } from '../../../src/core/job/numbers.ts';
import { pieceNamed } from '../../../src/core/job/reference.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { reverseMember } from '../../../src/core/shape/reverse.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { drawn, oneOfEach } from '../../draws.ts';
import { derivedOrSkipped, fixed, mirroredFrame, plainFrame } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, made, read, solved } from './sides.ts';

const DEMO = read(readFileSync('tests/fixtures/demo-typed.cagewright.json', 'utf8'));

const reversed = (job: Job, id: string, frame: Derived = solved(job)): Job =>
  again(keepNumbers(job, made(reverseMember(job, frame, id))));

/** What is made, from end A: the same read from end B, with the turns of a tube that is fed from there. */
function steel({ corners, straights, bends, blankLength, mass, ends }: SolvedTube): number[] {
  const turns = bends.slice(1).map(({ rotation }) => Math.abs(rotation));
  const angles = bends.flatMap(({ angle, arc }) => [angle, arc]);
  const cuts = ends.flatMap(({ tip, throat }) => [tip ?? -1, throat ?? -1]);
  return [...corners.flat(), ...straights, ...angles, ...turns, ...cuts, blankLength, mass];
}
const fromB = (tube: SolvedTube): SolvedTube => ({
  ...tube,
  corners: tube.corners.toReversed(),
  straights: tube.straights.toReversed(),
  // The turn into a bend is the turn out of it from the other side.
  bends: tube.bends.toReversed().map((bend, i, row) => ({ ...bend, rotation: i === 0 ? 0 : row[i - 1]!.rotation })),
  ends: [tube.ends[1], tube.ends[0]],
});
function expectSame(actual: SolvedTube, expected: SolvedTube, within: number): void {
  const [a, b] = [steel(actual), steel(expected)];
  expect(a).toHaveLength(b.length);
  a.forEach((value, i) => expect(Math.abs(value - b[i]!), `${actual.id} ${i}`).toBeLessThan(within));
}

/** Every tube is what it was; those of the member read from the other end, a bar's pieces in the other order. */
function expectSameSteel(before: Derived, after: Derived, id: string): void {
  expect(after.tubes).toHaveLength(before.tubes.length);
  for (const tube of before.tubes) {
    if (tube.member.id !== id) {
      expectSame(after.byId.get(tube.id)!, tube, 1e-6);
      continue;
    }
    const same = after.tubes.find(({ number }) => number === tube.number)!;
    expect(pieceNamed(same.id)?.piece ?? 0).toBe(tube.piece === null ? 0 : tube.piece.count + 1 - tube.piece.number);
    expectSame(same, fromB(tube), 1e-6);
    tube.corners.forEach((corner, i) =>
      expect(Math.hypot(...corner.map((value, axis) => value - same.corners.at(-1 - i)![axis]!))).toBeLessThan(1e-9),
    );
  }
}

describe('a reversed member', () => {
  const members = oneOfEach(
    DEMO.members,
    ({ path, mirror, cutBy }) => `${path.length} ${mirror} ${cutBy !== undefined}`,
  );
  it.each(members.map(({ id }) => id))('is the same steel in the demo, and twice the same file: %s', (id) => {
    const before = solved(DEMO);
    const job = reversed(DEMO, id, before);
    const after = solved(job);
    expectSameSteel(before, after, id);
    expect(after.findings.length).toBe(before.findings.length);
    expect(job.members.find((each) => each.id === id)!.path.toReversed()).toEqual(
      DEMO.members.find((each) => each.id === id)!.path,
    );
    expect(serialiseJob(reversed(job, id, after))).toBe(serialiseJob(DEMO));
  });

  it('is the same steel on random frames, and twice the same file', () => {
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), fc.nat(9), (job, at) => {
        const before = derivedOrSkipped(job);
        const { id } = job.members[at % job.members.length]!;
        const answer = reverseMember(job, before, id);
        fc.pre(!Array.isArray(answer));
        const once = again(answer as Job);
        const after = derivedOrSkipped(once);
        for (const tube of before.tubes) {
          const same = after.byId.get(tube.id)!;
          const expected = tube.member.id === id ? tube.corners.toReversed() : tube.corners;
          expected.forEach((corner, i) =>
            expect(Math.hypot(...corner.map((value, axis) => value - same.corners[i]![axis]!))).toBeLessThan(1e-9),
          );
          expect(same.blankLength).toBeCloseTo(tube.blankLength, 4);
        }
        expect(serialiseJob(made(reverseMember(once, after, id)))).toBe(serialiseJob(job));
      }),
      fixed(drawn(20, 600)),
    );
  });

  const bar = { id: 'bar', path: ['a', 'b', 'c', 'd'] };
  const nodes = {
    a: [0, 300, 0],
    b: [0, 300, 800],
    c: [700, 300, 800],
    d: [900, 300, 0],
    high: { kind: 'on', member: 'bar', until: { axis: 'z', value: 500 }, nth: 2 },
    after: { kind: 'on', member: 'bar', bend: 1, where: 'end', distance: 40 },
    near: { kind: 'on', member: 'bar', from: 'start', distance: 120 },
  };

  it('has its nodes, feeds, pulls, kept angles and marks counted from the other end', () => {
    const job = jobOf({
      nodes,
      members: [{ ...bar, keptAngles: [{ corner: 'b', angle: 90 }] }],
      feeds: [
        {
          tube: 'bar',
          from: 'A',
          order: [
            { bend: 2, front: 'A' },
            { bend: 1, front: 'B' },
          ],
        },
      ],
      pulls: [{ die: 'd', section: 'main', pulled: 93, net: 90, tube: 'bar', bend: 1 }],
      seen: [{ finding: 'bend/short-straight', tube: 'bar', bend: 1, end: 'B', as: '{}' }],
    });
    const turned = reversed(job, 'bar');
    const at = (id: string) => turned.nodes.find((node) => node.id === id)!.at;
    expect(at('high')).toMatchObject({ nth: 1 });
    expect(at('after')).toMatchObject({ bend: 2, where: 'start', distance: -40 });
    expect(at('near')).toMatchObject({ from: 'end', distance: 120 });
    expect(turned.members[0]!.keptAngles).toEqual([{ corner: 'b', angle: 90 }]);
    expect(turned.feeds).toEqual([
      {
        tube: 'bar',
        from: 'B',
        order: [
          { bend: 1, front: 'B' },
          { bend: 2, front: 'A' },
        ],
      },
    ]);
    expect(turned.pulls[0]).toMatchObject({ tube: 'bar', bend: 2 });
    expect(turned.seen[0]).toMatchObject({ bend: 2, end: 'A' });
    expect(serialiseJob(reversed(turned, 'bar'))).toBe(serialiseJob(job));
  });

  it('keeps the numbers on the pieces, whose names change', () => {
    const harness = DEMO.members.find(({ cutBy }) => cutBy !== undefined)!;
    const [were, are] = [numbersOf(DEMO), numbersOf(reversed(DEMO, harness.id))];
    expect(are.get(`${harness.id}.1`)).toBe(were.get(`${harness.id}.2`));
    expect(are.get(`${harness.id}.2`)).toBe(were.get(`${harness.id}.1`));
  });

  it('is refused while a tube of it is being bent, and where a node would not stay', () => {
    const job = jobOf({ nodes, members: [bar], bent: [{ tube: 'bar', order: [] }] });
    expect(reverseMember(job, solved(job), 'bar')).toMatchObject([{ message: expect.stringContaining('bend run') }]);
    // Level from b to c: where it first comes to that height is another place from the other end.
    const level = { kind: 'on', member: 'bar', until: { axis: 'z', value: 800 }, nth: 1 };
    const flat = jobOf({ nodes: { ...nodes, level }, members: [bar] });
    expect(reverseMember(flat, solved(flat), 'bar')).toMatchObject([
      { message: 'level would not stay where it is: place it another way first' },
    ]);
  });
});

it('numbers put by for the pieces of a bar made whole are those of the same steel', () => {
  const job = jobOf({
    nodes: { a: [0, 0, 0], b: [1000, 0, 0], c: [400, 0, -300], d: [400, 0, 300] },
    members: [
      { id: 'post', path: ['c', 'd'] },
      { id: 'bar', path: ['a', 'b'], cutBy: ['post'] },
    ],
  });
  const were = numbersOf(job);
  const whole = keepNumbers(job, made(joinWhere(job, 'bar', 'post')));
  const turned = reversed(whole, 'bar');
  const back = keepNumbers(turned, made(cutWhere(turned, 'bar', 'post')));
  const are = numbersOf(back);
  expect([are.get('bar.1'), are.get('bar.2')]).toEqual([were.get('bar.2'), were.get('bar.1')]);
  expect(reversed(turned, 'bar')).toEqual(whole);
});

it('nodes that a drawn tube named by its ends and corners are named by the ends that they are now; others keep their names', () => {
  const named = { a: 'bar, end A', b: 'bar, corner 1', c: 'My corner', d: 'bar, end B' };
  const job = jobOf({
    nodes: { a: [0, 0, 0], b: [0, 0, 600], c: [600, 0, 900], d: [1500, 0, 900] },
    members: [{ id: 'bar', name: 'bar', path: ['a', 'b', 'c', 'd'] }],
  });
  const told = { ...job, nodes: job.nodes.map((node) => ({ ...node, name: named[node.id as keyof typeof named] })) };
  const turned = reversed(told, 'bar');
  expect(turned.nodes.map(({ name }) => name)).toEqual(['bar, end B', 'bar, corner 2', 'My corner', 'bar, end A']);
  expect(reversed(turned, 'bar')).toEqual(told);
});
