/**
 * What an edit makes anew, counted by records: as much of a large frame as of a small one. And that a tube which nothing of its
 * own has touched is looked at all the same when another comes to it, or leaves it.
 */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { moveNode } from '../../../src/core/edit/nodes.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jobFrom, latticeOf } from '../../bench/lattice.ts';

function derived(job: Job, previous?: Derived): Derived {
  const result = derive(job, previous);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.value;
}

/** How many tubes and findings are new when a node in the middle is moved. */
function madeAnew(tubes: number): { readonly tubes: number; readonly findings: number; readonly all: number } {
  const before = derived(latticeOf(tubes));
  const { id, at } = before.job.nodes[Math.floor(before.job.nodes.length / 2)]!;
  if (at.kind !== 'fixed') throw new Error('a lattice stands on fixed nodes');
  const after = derived(moveNode(before.job, id, [at.position[0] + 3, at.position[1], at.position[2]]), before);
  const old = new Set<object>([...before.tubes, ...before.findings]);
  const fresh = (records: readonly object[]): number => records.filter((record) => !old.has(record)).length;
  return { tubes: fresh(after.tubes), findings: fresh(after.findings), all: after.findings.length };
}

describe('moving a node', () => {
  it('makes anew the tubes that hang on it and what is found of these, however many others there are', () => {
    const [small, large] = [madeAnew(54), madeAnew(540)];
    expect(large.all).toBeGreaterThan(5 * small.all);
    expect(small.tubes).toBeGreaterThan(3);
    // A node of a lattice has six tubes, and each may cut others at its far end.
    expect(large.tubes).toBeLessThan(30);
    expect(large.findings).toBeLessThan(100);
  });
});

const SECTIONS = [{ id: 's', outerDiameter: 40, wall: 2 }];
const at = (id: string, x: number, y: number, z: number): object => ({
  id,
  at: { kind: 'fixed', position: [x, y, z] },
});

/** Derived on what was derived before, and anew: equal, or the test fails. */
function both(job: Job, previous: Derived): Derived {
  const reused = derived(job, previous);
  expect(reused).toEqual(derived(job));
  return reused;
}

const cutters = ({ byId }: Derived, tube: string, end: 0 | 1): readonly string[] =>
  byId.get(tube)!.ends[end].cuts.map(({ against }) => against);

describe('an end that stays where it is', () => {
  it('is coped to a tube that comes through it, and square again when that leaves', () => {
    const frame = (height: number): Job =>
      jobFrom({
        sections: SECTIONS,
        nodes: [at('a', 0, -500, height), at('b', 0, 500, height), at('p', 0, 0, 300), at('q', 700, 0, 300)],
        members: [
          { id: 'bar', path: ['a', 'b'], section: 's' },
          { id: 'branch', path: ['p', 'q'], section: 's' },
        ],
      });
    // Records that are the same in both are the same objects, as an edit would leave them.
    const away = frame(900);
    const through = { ...away, nodes: frame(300).nodes.map((node, i) => (i < 2 ? node : away.nodes[i]!)) };
    const start = derived(away);
    const met = both(through, start);
    expect([cutters(start, 'branch', 0), cutters(met, 'branch', 0)]).toEqual([[], ['bar']]);
    expect(cutters(both(away, met), 'branch', 0)).toEqual([]);
  });

  it('is coped to the tube that its image comes to stand on, though it stands off its axis', () => {
    // The hoop's left leg is as it was; its right leg, where the image of the node belongs, is put where it mirrors the left.
    const frame = (foot: number): Job =>
      jobFrom({
        sections: SECTIONS,
        dies: [{ id: 'd', outerDiameter: 40, centrelineRadius: 120 }],
        nodes: [
          at('foot-l', 0, 600, 0),
          at('top-l', 0, 600, 1000),
          at('top-r', 0, -600, 1000),
          at('foot-r', 0, foot, 0),
          { id: 'n', at: { kind: 'on', member: 'hoop', from: 'start', distance: 400, offset: [15, 0, 0] } },
          at('far', 900, 600, 0),
        ],
        members: [
          { id: 'hoop', path: ['foot-l', 'top-l', 'top-r', 'foot-r'], section: 's', die: 'd' },
          { id: 'stay', path: ['n', 'far'], section: 's', mirror: true },
        ],
      });
    const skew = frame(-900);
    const even = { ...skew, nodes: frame(-600).nodes.map((node, i) => (i === 3 ? node : skew.nodes[i]!)) };
    const start = derived(skew);
    const stood = both(even, start);
    expect(stood.byId.get("stay'")!.path).toBe(start.byId.get("stay'")!.path);
    expect([cutters(start, "stay'", 0), cutters(stood, "stay'", 0)]).toEqual([[], ['hoop']]);
    expect(cutters(both(skew, stood), "stay'", 0)).toEqual([]);
  });
});
