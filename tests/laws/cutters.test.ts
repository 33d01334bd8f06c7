/** Laws of several cutters, and of tubes that are far away. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TubeEnd } from '../../src/core/solve/types.ts';
import { corners, derivedOrSkipped, fixed, jobOf, place, plainFrame, type Triple } from './frames.ts';
import { drawn } from '../draws.ts';

/** Runs through the node at the origin or a little past it, bent or not; the branch leaves along +x and bends later. */
const run = fc.record({
  through: fc.tuple(
    fc.integer({ min: -20, max: 20 }),
    fc.integer({ min: -20, max: 20 }),
    fc.integer({ min: -20, max: 20 }),
  ),
  lean: fc.integer({ min: -60, max: 60 }),
  bearing: fc.integer({ min: 0, max: 359 }),
  bends: fc.boolean(),
});

type Run = typeof run extends fc.Arbitrary<infer R> ? R : never;

function runPath({ through, lean, bearing, bends }: Run): Triple[] {
  const [t, b] = [(lean * Math.PI) / 180, (bearing * Math.PI) / 180];
  const axis: Triple = [Math.sin(t), Math.cos(t) * Math.cos(b), Math.cos(t) * Math.sin(b)];
  const at = (k: number): Triple => [through[0] + k * axis[0], through[1] + k * axis[1], through[2] + k * axis[2]];
  return bends ? [at(-500), at(60), [at(60)[0] - 400, at(60)[1] + 100, at(60)[2] - 150]] : [at(-400), at(400)];
}

/** End A of a branch coped to these of the runs; its bend fixes where phi counts from, whichever tube is cut first. */
function copedEnd(runs: readonly Triple[][], against: readonly number[]): TubeEnd {
  const nodes: object[] = [];
  const lay = (id: string, path: readonly Triple[]): string[] =>
    path.map((position, i) => {
      nodes.push({ id: `${id}n${i}`, at: { kind: 'fixed', position } });
      return `${id}n${i}`;
    });
  const members = runs.map((path, i) => ({ id: `r${i}`, path: lay(`r${i}`, path), section: 'main', die: 'd' }));
  const ends = [{ fit: 'cope', against: against.map((i) => `r${i}`) }, { fit: 'square' }];
  const path = lay('b', [
    [0, 0, 0],
    [700, 0, 0],
    [1000, 300, 200],
  ]);
  return derivedOrSkipped(
    jobOf({ nodes, members: [...members, { id: 'b', path, section: 'light', die: 'd', ends }] }),
  ).byId.get('b')!.ends[0];
}

const larger = (a: number, b: number): number => (Number.isNaN(a) ? b : Number.isNaN(b) ? a : Math.max(a, b));

describe('several cutters', () => {
  it('leave the largest of what each leaves, in whatever order they cut', () => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 2, maxLength: 4 }), (runs) => {
        const paths = runs.map(runPath);
        const order = paths.map((_, i) => i);
        const together = copedEnd(paths, order);
        const backwards = copedEnd(paths, order.toReversed());
        const each = order.map((i) => copedEnd(paths, [i]));
        for (const face of ['outer', 'inner'] as const) {
          const envelope = each.map((end) => end[face]).reduce((a, b) => a.map((s, phi) => larger(s, b[phi]!)));
          expect(together[face]).toEqual(envelope);
          expect(backwards[face]).toEqual(envelope);
        }
        expect(together.cuts).toEqual(each.map((end) => end.cuts[0]));
      }),
      fixed(drawn(15, 60)),
    );
  });

  it('change nothing where one of them misses', () => {
    fc.assert(
      fc.property(run, fc.integer({ min: 60, max: 400 }), (one, aside) => {
        // Beside the branch, the first at its edge: 22.225 + 19 < 60.
        const missing: Triple[] = [
          [-500, aside, 0],
          [500, aside, 300],
        ];
        const beside: Triple[] = missing.map(([x, y]): Triple => [x, y, 0]);
        const across: Triple[] = missing.map(([x, y]): Triple => [x + 500, y, x]);
        const paths = [runPath(one), beside, across];
        const alone = copedEnd(paths, [0]);
        const both = copedEnd(paths, [0, 1, 2]);
        expect(both.outer).toEqual(alone.outer);
        expect(both.inner).toEqual(alone.inner);
        expect([both.tip, both.throat]).toEqual([alone.tip, alone.throat]);
        expect(both.cuts.map((cut) => cut.reaches)).toEqual([alone.cuts[0]!.reaches, false, false]);
      }),
      fixed(drawn(12, 40)),
    );
  });
});

describe('a later member that touches nothing', () => {
  it('leaves every other tube as it was', () => {
    fc.assert(
      fc.property(plainFrame, corners(place, 2, 4), (job, path) => {
        const before = derivedOrSkipped(job);
        const far = path.map(([x, y, z], i) => ({
          id: `far${i}`,
          name: '',
          at: { kind: 'fixed', position: [x + 9000, y, z] } as const,
        }));
        const member = { ...job.members[0]!, id: 'far', path: far.map((node) => node.id) };
        const after = derivedOrSkipped({ ...job, nodes: [...far, ...job.nodes], members: [...job.members, member] });
        expect(after.tubes.slice(0, -1)).toEqual(before.tubes);
      }),
      fixed(drawn(10, 40)),
    );
  });
});
