/** Places that hang on others: what is kept from before only saves time, and a car that is moved or turned takes all of them along. */
import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../src/core/derive.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Coordinate } from '../../src/core/job/places/coordinate.ts';
import type { Place } from '../../src/core/job/places.ts';
import type { Job } from '../../src/core/job/types.ts';
import { drawn } from '../draws.ts';
import { derivedOrSkipped, fixed, isSound, mirroredFrame, place, plainFrame, type Triple } from './frames.ts';
import { placedDrafts, withPlaces } from './placed.ts';

const changed = <T>(list: readonly T[], at: number, change: (item: T) => T): T[] =>
  list.map((item, i) => (i === at % list.length ? change(item) : item));

const edits: fc.Arbitrary<(job: Job) => Job> = fc.oneof(
  fc.tuple(fc.nat(30), place).map(([n, position]) => (job: Job) => ({
    ...job,
    nodes: changed(job.nodes, n, (node) =>
      node.at.kind === 'fixed' ? { ...node, at: { ...node.at, position } } : node,
    ),
  })),
  fc.tuple(fc.nat(1), place).map(([n, position]) => (job: Job) => ({
    ...job,
    points: changed(job.points, n, (point) => ({ ...point, position })),
  })),
  fc.tuple(fc.nat(2), fc.integer({ min: 20, max: 60 })).map(([n, outerDiameter]) => (job: Job) => ({
    ...job,
    sections: changed(job.sections, n, (section) => ({ ...section, outerDiameter })),
  })),
  fc.tuple(fc.nat(9), fc.constantFrom('main', 'small')).map(([n, section]) => (job: Job) => ({
    ...job,
    members: changed(job.members, n, (member) => ({ ...member, section })),
  })),
  fc.tuple(fc.nat(3), fc.integer({ min: -90, max: 90 })).map(([n, by]) => (job: Job) => ({
    ...job,
    nodes: changed(job.nodes, job.nodes.length - 1 - n, (node) => ({ ...node, at: shiftedBy(node.at, [by, by, by]) })),
  })),
  fc.nat(9).map((n) => (job: Job) => ({
    ...job,
    members: changed(job.members, n, (member) => ({ ...member, name: `${member.name}!` })),
  })),
);

const shifted = (given: Coordinate, by: number): Coordinate =>
  given.value === undefined ? given : { ...given, value: given.value + by };

/** The numbers of its own that say where in the car it is. */
function shiftedBy(at: Place, by: Triple): Place {
  if (at.kind === 'fixed')
    return { ...at, position: [at.position[0] + by[0], at.position[1] + by[1], at.position[2] + by[2]] };
  if (at.kind === 'lined-up')
    return { ...at, x: shifted(at.x, by[0]), y: shifted(at.y, by[1]), z: shifted(at.z, by[2]) };
  if (at.kind !== 'on' || at.until === undefined) return at;
  const { axis } = at.until;
  return { ...at, until: { axis, ...shifted(at.until, by['xyz'.indexOf(axis) as 0 | 1 | 2]) } };
}

describe('places that hang on others', () => {
  it('come out the same with what was derived before as without it, edit after edit', () => {
    let derivedAfter = 0;
    fc.assert(
      fc.property(
        fc.oneof(plainFrame, mirroredFrame),
        placedDrafts,
        fc.array(edits, { minLength: 1, maxLength: 6 }),
        (base, drafts, steps) => {
          let job = withPlaces(derivedOrSkipped(base), drafts);
          let previous: Derived = derivedOrSkipped(job);
          for (const step of steps) {
            const next = step(job);
            const [fresh, reused] = [derive(next), derive(next, previous)];
            expect(isDeepStrictEqual(reused, fresh)).toBe(true);
            if (!reused.ok) continue;
            derivedAfter += 1;
            job = next;
            previous = reused.value;
          }
        },
      ),
      fixed(drawn(4, 200)),
    );
    expect(derivedAfter).toBeGreaterThan(drawn(4, 200));
  });

  it('are the same records after an edit that does not touch them', () => {
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), placedDrafts, (base, drafts) => {
        const first = derivedOrSkipped(withPlaces(derivedOrSkipped(base), drafts));
        const again = derive({ ...first.job, name: 'Another', dies: first.job.dies.map((die) => ({ ...die })) }, first);
        if (!again.ok) throw new Error('it was there before');
        for (const [id, at] of first.nodes) expect(again.value.nodes.get(id)).toBe(at);
      }),
      fixed(drawn(3, 100)),
    );
  });

  it('come back whole from the file, and derive to the same', () => {
    fc.assert(
      fc.property(mirroredFrame, placedDrafts, (base, drafts) => {
        const job = withPlaces(derivedOrSkipped(base), drafts);
        const parsed = parseJob(serialiseJob(job));
        expect(parsed).toEqual({ ok: true, job });
      }),
      fixed(drawn(3, 100)),
    );
  });

  it('go along when the whole car is moved', () => {
    fc.assert(
      fc.property(plainFrame, placedDrafts, place, (base, drafts, by) => {
        const before = derivedOrSkipped(withPlaces(derivedOrSkipped(base), drafts, false));
        fc.pre(before.tubes.every(isSound));
        const move = ([x, y, z]: Triple): Triple => [x + by[0], y + by[1], z + by[2]];
        const { job } = before;
        const after = derivedOrSkipped({
          ...job,
          points: job.points.map((point) => ({ ...point, position: move(point.position) })),
          nodes: job.nodes.map((node) => ({ ...node, at: shiftedBy(node.at, by) })),
        });
        for (const { id } of job.nodes) expectNear(after.nodes.get(id)!, move(before.nodes.get(id)!));
      }),
      fixed(drawn(4, 200)),
    );
  });

  it('go along when it is turned about the upright, but for what is lined up with the axes', () => {
    const upright = placedDrafts.map((drafts) =>
      drafts.map((draft) =>
        draft.way === 'lined-up' ? { ...draft, way: 'crossing' as const } : { ...draft, axis: 2 as const },
      ),
    );
    fc.assert(
      fc.property(plainFrame, upright, fc.integer({ min: -180, max: 180 }), (base, drafts, degrees) => {
        const before = derivedOrSkipped(withPlaces(derivedOrSkipped(base), drafts, false));
        fc.pre(before.tubes.every(isSound));
        const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
        const turn = ([x, y, z]: Triple): Triple => [c * x - s * y, s * x + c * y, z];
        const { job } = before;
        const after = derivedOrSkipped({
          ...job,
          points: job.points.map((point) => ({ ...point, position: turn(point.position) })),
          nodes: job.nodes.map((node) => ({ ...node, at: turned(node.at, turn) })),
        });
        for (const { id } of job.nodes) expectNear(after.nodes.get(id)!, turn(before.nodes.get(id)!));
      }),
      fixed(drawn(4, 200)),
    );
  });
});

function turned(at: Place, turn: (v: Triple) => Triple): Place {
  switch (at.kind) {
    case 'fixed':
      return { ...at, position: turn(at.position) };
    case 'on':
      return { ...at, offset: turn(at.offset) };
    case 'point': {
      const { clear } = at;
      return {
        ...at,
        offset: turn(at.offset),
        ...(clear && { clear: { ...clear, direction: turn(clear.direction) } }),
      };
    }
    default:
      return at;
  }
}

/** A line that lies nearly along its tube gives a place that is known the less. */
const expectNear = (a: Triple, b: Triple): void =>
  a.forEach((mm, axis) => expect(Math.abs(mm - b[axis]!)).toBeLessThan(1e-4));
