/** A bend given a round angle: each way that is offered is taken, the frame derived anew, and the angle measured between the places themselves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { keepAngle, removePathNode } from '../../../src/core/edit/members.ts';
import { moveNode } from '../../../src/core/edit/nodes.ts';
import { distance, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { rounded, roundingsOf } from '../../../src/core/shape/round-angle.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';

const read = (nodes: readonly object[], members: readonly object[]): Job => {
  const parsed = parseJob(
    JSON.stringify({
      format: 'cagewright/job',
      version: 1,
      sections: [{ id: 's', outerDiameter: 44.45, wall: 3 }],
      dies: [{ id: 'd', outerDiameter: 44.45, centrelineRadius: 152.4 }],
      nodes,
      members,
    }),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};
const at = (id: string, position: Vec3): object => ({ id, at: { kind: 'fixed', position } });

function derived(job: Job): Derived {
  const result = derive(job);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** By the law of cosines from three distances, in degrees: how far the way turns at b. */
function turnAt(a: Vec3, b: Vec3, c: Vec3): number {
  const [ab, bc, ac] = [distance(a, b), distance(b, c), distance(a, c)];
  return 180 - (Math.acos((ab * ab + bc * bc - ac * ac) / (2 * ab * bc)) * 180) / Math.PI;
}

const hoop = read(
  [at('foot', [0, 620, 10]), at('shoulder', [5, 600, 560]), at('top', [0, 463, 1120])],
  [{ id: 'hoop', path: ['foot', 'shoulder', 'top', "top'", "shoulder'", "foot'"], section: 's', die: 'd' }],
);

describe('a bend given an angle', () => {
  it.each([
    [1, 12],
    [2, 70],
    [2, 76],
    // On the other side of the car the bare node moves, seen in the mirror.
    [3, 70],
    [4, 15],
  ])('at place %d of a hoop, to %d degrees', (index, angle) => {
    const frame = derived(hoop);
    const [member] = hoop.members;
    const ways = roundingsOf(frame, member!, index, angle);
    expect(ways.length).toBeGreaterThan(1);
    expect(ways.map(({ by }) => by)).toEqual(ways.map(({ by }) => by).toSorted((a, b) => a - b));
    for (const way of ways) {
      const after = derived(rounded(hoop, member!, member!.path[index]!, way, angle));
      const [a, b, c] = [index - 1, index, index + 1].map((i) => after.nodes.get(member!.path[i]!)!);
      expect(turnAt(a!, b!, c!)).toBeCloseTo(angle, 6);
      expect(distance(after.nodes.get(way.node)!, frame.nodes.get(way.node)!)).toBeCloseTo(way.by, 9);
      if (way.keeps !== null) {
        const axis = 'xyz'.indexOf(way.keeps);
        expect(after.nodes.get(way.node)![axis]).toBeCloseTo(frame.nodes.get(way.node)![axis]!, 9);
      }
      expect(after.findings.filter(({ id }) => id === 'bend/angle-not-kept')).toEqual([]);
    }
  });

  it('of any tube in space, whichever place moves', () => {
    const place = fc.tuple(
      fc.integer({ min: -900, max: 900 }),
      fc.integer({ min: 100, max: 800 }),
      fc.integer({ min: 0, max: 1300 }),
    );
    let taken = 0;
    fc.assert(
      fc.property(place, place, place, fc.integer({ min: 5, max: 120 }), (a, b, c, angle) => {
        const job = read(
          [at('a', a), at('b', b), at('c', c)],
          [{ id: 'bar', path: ['a', 'b', 'c'], section: 's', die: 'd', mirror: true }],
        );
        const result = derive(job);
        if (!result.ok || result.value.bars.get('bar')!.bends.length === 0) return;
        for (const way of roundingsOf(result.value, job.members[0]!, 1, angle)) {
          const after = derive(rounded(job, job.members[0]!, 'b', way, angle));
          if (!after.ok) throw new Error(JSON.stringify(after.faults));
          const { nodes } = after.value;
          expect(turnAt(nodes.get('a')!, nodes.get('b')!, nodes.get('c')!)).toBeCloseTo(angle, 5);
          taken++;
        }
      }),
      fixed(drawn(40, 500)),
    );
    expect(taken).toBeGreaterThan(drawn(40, 500));
  });

  it('is offered no way where there is no bend, or where what would move hangs on the corner', () => {
    const frame = derived(hoop);
    expect(roundingsOf(frame, hoop.members[0]!, 0, 30)).toEqual([]);
    // The corner stands in line with both ends: they cannot stand on a ray from it.
    const hanging = read(
      [
        at('a', [0, 300, 0]),
        {
          id: 'c',
          at: { kind: 'lined-up', x: { node: 'a', plus: 0 }, y: { node: 'e', plus: 20 }, z: { value: 1000 } },
        },
        at('e', [400, 350, 1100]),
      ],
      [{ id: 'bar', path: ['a', 'c', 'e'], section: 's', die: 'd' }],
    );
    const ways = roundingsOf(derived(hanging), hanging.members[0]!, 1, 60);
    expect(ways.length).toBeGreaterThan(0);
    expect(new Set(ways.map(({ node }) => node))).toEqual(new Set(['c']));
  });
});

describe('the angle that is kept', () => {
  const [member] = hoop.members;
  const way = roundingsOf(derived(hoop), member!, 1, 12)[0]!;
  const job = rounded(hoop, member!, 'shoulder', way, 12);

  it('is found where it no longer comes out, and let go', () => {
    const other = ['foot', 'top', 'shoulder'].find(
      (id) => id !== way.node && job.nodes.find((node) => node.id === id)!.at.kind === 'fixed',
    )!;
    const moved = moveNode(job, other, [0, 500, other === 'foot' ? 0 : 1100]);
    const found = derived(moved).findings.filter(({ id }) => id === 'bend/angle-not-kept');
    expect(found.map(({ node, bend }) => [node, bend])).toEqual([['shoulder', 1]]);
    expect(
      derived(keepAngle(moved, 'hoop', 'shoulder', null)).findings.filter(({ id }) => id === 'bend/angle-not-kept'),
    ).toEqual([]);
  });

  it('goes with its corner', () => {
    const without = removePathNode(job, 'hoop', 1) as Job;
    expect(without.members[0]!.keptAngles).toBeUndefined();
    expect(keepAngle(hoop, 'hoop', 'top', null)).toBe(hoop);
  });

  it('is refused at what is no corner, or twice', () => {
    const faultsOf = (keptAngles: readonly object[]) => {
      const parsed = parseJob(JSON.stringify({ ...job, members: [{ ...job.members[0], keptAngles }] }));
      return parsed.ok ? [] : parsed.faults.map(({ place, message }) => `${place}: ${message}`);
    };
    expect(faultsOf([{ corner: 'foot', angle: 12 }])).toEqual([
      'members[0].keptAngles[0].corner: "foot" is no corner of the path',
    ]);
    expect(
      faultsOf([
        { corner: 'top', angle: 12 },
        { corner: 'top', angle: 13 },
      ]),
    ).toEqual(['members[0].keptAngles[1].corner: "top" is there already']);
    expect(faultsOf([{ corner: 'top', angle: 300 }])[0]).toMatch(/^members\[0\]\.keptAngles\[0\]\.angle: /u);
  });
});
