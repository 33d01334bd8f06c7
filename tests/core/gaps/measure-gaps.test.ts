/** Gaps between tubes: worked by hand, and what a frame that is moved, mirrored or edited keeps of them. */
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { outsideOf } from '../../../src/core/gaps/outside.ts';
import { gapBetween } from '../../../src/core/gaps/tube-gap.ts';
import { drawn } from '../../draws.ts';
import { pairOfTubes } from '../../reference/gap-pairs.ts';
import { derived, inWords } from '../frame.ts';

type Records = Parameters<typeof derived>[0];
const square = [{ fit: 'square' }, { fit: 'square' }];
/** Two tubes 44.45 over the outside: the first along x at no height, the second as given. */
const two = (c: Vec3, d: Vec3, more: object = {}): Records => ({
  nodes: { a: [-500, 0, 0], b: [500, 0, 0], c, d },
  members: [
    { id: 'low', name: 'Low bar', path: ['a', 'b'], ends: square },
    { id: 'high', name: 'High bar', path: ['c', 'd'], ends: square, ...more },
  ],
});
const gapOf = (records: Records): number | undefined => derived(records).gaps[0]?.distance;

describe('the gap of two bars', () => {
  it('that cross is what their axes are apart, less both radii', () => {
    expect(gapOf(two([0, -500, 60], [0, 500, 60]))).toBeCloseTo(60 - 44.45, 9);
    expect(gapOf(two([0, -500, 44.45], [0, 500, 44.45]))).toBeCloseTo(0, 9);
    expect(gapOf(two([0, -500, 34.45], [0, 500, 34.45]))).toBeCloseTo(-10, 6);
  });
  it('is no deeper than to an axis, however far they run through each other', () => {
    expect(gapOf(two([0, -500, 0], [0, 500, 0]))).toBeCloseTo(-22.225, 1);
    expect(gapOf(two([0, -500, 11], [0, 500, 11]))).toBeCloseTo(-22.225, 1);
  });
  it('side by side', () => expect(gapOf(two([-700, 0, 50], [900, 0, 50]))).toBeCloseTo(5.55, 9));
  it('end to end, and end to wall', () => {
    expect(gapOf(two([510, 0, 0], [900, 0, 0]))).toBeCloseTo(10, 9);
    expect(gapOf(two([0, 0, 30], [0, 0, 700]))).toBeCloseTo(30 - 22.225, 6);
    // 5 mm of one in line within the other: its end face is so far from the other's.
    expect(gapOf(two([495, 0, 0], [900, 0, 0]))).toBeCloseTo(-5, 2);
  });
  it('past the end of one, from rim to wall by Pythagoras', () => {
    // The upright bar stands 30 beyond the other's end and 30 aside: its wall is nearest to the rim's side.
    const aside = gapOf(two([500 + 25, 60, -500], [500 + 25, 60, 500]));
    expect(aside).toBeCloseTo(Math.hypot(25, 60 - 22.225) - 22.225, 4);
  });
  it('farther apart than 25 mm is not listed, nor one that is coped to the other', () => {
    expect(gapOf(two([0, -500, 44.45 + 24.9], [0, 500, 44.45 + 24.9]))).toBeCloseTo(24.9, 9);
    expect(gapOf(two([0, -500, 69.5], [0, 500, 69.5]))).toBeUndefined();
    const coped = { ends: [{ fit: 'cope', against: ['low'] }, { fit: 'square' }] };
    expect(gapOf(two([0, 0, 0], [0, 0, 700], coped))).toBeUndefined();
  });
});

describe('two tubes in one place', () => {
  it('are seen to be so in some thousand looks, however long their walls run along each other', () => {
    const [low, high] = derived(two([-500, 0, 0], [500, 0, 0])).tubes.map(outsideOf);
    let looks = 0;
    const counted = {
      ...high!,
      get pieces() {
        looks++;
        return high!.pieces;
      },
    };
    expect(gapBetween(low!, counted, 25)?.distance).toBeCloseTo(0, 9);
    expect(looks).toBeLessThan(3000);
  });
});

describe('what is found of gaps', () => {
  const found = (records: Records) => inWords(derived(records)).map(({ id, message }) => [id, message]);
  it('names both, the depth, and how to mend it', () => {
    expect(found({ ...two([0, -500, 34.45], [0, 500, 34.45]), lengthUnit: 'mm' })).toEqual([
      [
        'gap/runs-through',
        'High bar runs 10.0 mm into Low bar, and neither is coped to the other. Cope High bar to Low bar, or move it 35.0 mm up.',
      ],
    ]);
  });
  it('too little room for the torch, as much as the job asks for', () => {
    const at = (torchGap: number | undefined) =>
      found({ ...two([0, -500, 60], [0, 500, 60]), ...(torchGap !== undefined && { torchGap }) });
    expect(at(undefined)).toEqual([
      [
        'gap/no-room-for-torch',
        'High bar passes 15.5 mm from Low bar; a torch wants 25.0 mm. Move it 9.5 mm up, or cope it to Low bar.',
      ],
    ]);
    expect(at(15)).toEqual([]);
    expect(at(60)[0]![1]).toContain('Move it 44.5 mm up');
  });
  it('none of what a shop is off by, nor in a cluster on one run', () => {
    expect(found({ ...two([0, -500, 44.3], [0, 500, 44.3]), torchGap: 0 })).toEqual([]);
    const cluster = (along: number): Records => ({
      nodes: {
        a: [-500, 0, 0],
        b: [500, 0, 0],
        c: [0, 0, 0],
        d: [0, 300, 600],
        e: [along, 0, 0],
        f: [along, -300, 600],
      },
      members: [
        { id: 'run', path: ['a', 'b'], ends: square },
        { id: 'one', path: ['c', 'd'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
        { id: 'two', path: ['e', 'f'], ends: [{ fit: 'auto' }, { fit: 'square' }] },
      ],
    });
    expect(derived(cluster(50)).gaps).toHaveLength(1);
    expect(found(cluster(50))).toEqual([]);
  });
  it('moved as it says, there is the room that it says', () => {
    for (let seed = 1; seed <= drawn(6, 120); seed++) {
      const { job } = pairOfTubes(seed);
      const before = derivedOf(job);
      const finding = before.findings.find(({ id, tube }) => id === 'gap/runs-through' && tube === 'b');
      if (finding?.id !== 'gap/runs-through' || finding.other !== 'a' || before.byId.get('b')!.bends.length > 0)
        continue;
      if (before.byId.get('a')!.bends.length > 0) continue;
      const after = derivedOf(movedBy(job, finding.move, (id) => id.startsWith('b') || id.startsWith('run-b')));
      const left = after.gaps.find(({ tubes }) => tubes.includes('a') && tubes.includes('b'));
      // On a run of both the move takes the end off it: the wall that was cut away stands there then.
      if (after.byId.get('b')!.ends[0].cuts.some(({ against }) => against === 'run-a')) continue;
      expect(left?.distance ?? 25).toBeGreaterThan(25 - 0.01);
    }
  });
});

const derivedOf = (job: Job, before?: Derived): Derived => {
  const result = derive(job, before);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
};

const placed = (job: Job, place: (at: Vec3) => Vec3, isMoved: (id: string) => boolean = () => true): Job => ({
  ...job,
  nodes: job.nodes.map((node) =>
    node.at.kind === 'fixed' && isMoved(node.id)
      ? { ...node, at: { ...node.at, position: place(node.at.position) } }
      : node,
  ),
  members: job.members.map((member) => ({
    ...member,
    ends: member.ends.map((end) =>
      end.fit === 'plate' && isMoved(member.id) ? { ...end, normal: turnOnly(place, end.normal) } : end,
    ) as unknown as typeof member.ends,
  })),
});
const turnOnly = (place: (at: Vec3) => Vec3, way: Vec3): Vec3 => {
  const [to, from] = [place(way), place([0, 0, 0])];
  return [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
};
const movedBy = (job: Job, by: Vec3, isMoved: (id: string) => boolean): Job =>
  placed(job, (at) => [at[0] + by[0], at[1] + by[1], at[2] + by[2]], isMoved);

describe('a frame that is', () => {
  const moves: readonly [string, (at: Vec3) => Vec3][] = [
    ['moved', ([x, y, z]) => [x + 1234.5, y - 678.9, z + 300.1]],
    ['mirrored', ([x, y, z]) => [x, -y, z]],
    ['turned', ([x, y, z]) => [0.6 * x - 0.8 * y, 0.8 * x + 0.6 * y, z]],
  ];
  it.each(moves)('%s keeps every gap', (_, place) => {
    for (let seed = 1; seed <= drawn(6, 120); seed++) {
      const { job } = pairOfTubes(seed);
      const [before, after] = [derivedOf(job), derivedOf(placed(job, place))];
      expect(after.gaps.map(({ tubes }) => tubes)).toEqual(before.gaps.map(({ tubes }) => tubes));
      // What the search through a wall is left at may be another of its equals.
      after.gaps.forEach(({ distance }, i) => {
        const was = before.gaps[i]!.distance;
        expect(Math.abs(distance - was)).toBeLessThan(was < 0 ? 0.05 : 0.002);
      });
    }
  });

  it('edited keeps the records of tubes that are as they were', () => {
    const { job } = pairOfTubes(3);
    const before = derivedOf(job);
    const renamed = derivedOf(
      { ...job, members: job.members.map((member) => (member.id === 'a' ? { ...member, name: 'other' } : member)) },
      before,
    );
    expect(before.gaps.length).toBeGreaterThan(0);
    expect(renamed.gaps).toBe(before.gaps);
    const moved = movedBy(job, [0.1, 0, 0], (id) => id.startsWith('b'));
    expect(derivedOf(moved, before).gaps).toEqual(derivedOf(moved).gaps);
  });
});
