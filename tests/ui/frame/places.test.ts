import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { addNode, setPlace } from '../../../src/core/edit/nodes.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { wayOf } from '../../../src/core/shape/ways.ts';
import { originOf, WAYS } from '../../../src/ui/frame/choices.ts';
import {
  amountOf,
  byOtherAxis,
  sourceOf,
  startingPlace,
  withAmount,
  withOrigin,
  withSource,
} from '../../../src/ui/frame/places.ts';

function demo(): Job {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
  return parsed.job;
}

function solved(job: Job): Derived {
  const outcome = derive(job);
  if (!outcome.ok) throw new Error(outcome.faults[0]?.message);
  return outcome.value;
}

describe('places to start from', () => {
  const job = demo();
  const frame = solved(job);

  it('use what is selected, else the first there is', () => {
    const point = job.points[3]!.id;
    expect(startingPlace(frame, 'point', { kind: 'point', id: point }, [0, 0, 0])).toMatchObject({ point });
    expect(startingPlace(frame, 'point', null, [0, 0, 0])).toMatchObject({ point: job.points[0]!.id });
    expect(startingPlace(frame, 'fixed', null, [1, 2, 3])).toEqual({ kind: 'fixed', position: [1, 2, 3] });
  });

  it('are none where there is nothing to stand on', () => {
    const bare = solved({ ...job, points: [], nodes: [], members: [], bent: [], feeds: [], envelopes: [] });
    for (const kind of ['point', 'clear', 'on', 'until', 'crossing', 'between', 'ray', 'lined-up'] as const)
      expect(startingPlace(bare, kind, null, [0, 0, 0])).toBeNull();
  });

  it('of every way can be derived at once, from whatever tube or node is selected', () => {
    for (const way of WAYS) {
      for (const selection of [null, ...job.members.map(({ id }) => ({ kind: 'tube', id }) as const)]) {
        const place = startingPlace(frame, way, selection, [10, 20, 30]);
        expect(place, way).not.toBeNull();
        expect(wayOf(place!)).toBe(way);
        if (way !== 'on') expect(derive(addNode(job, 'new', place!), frame).ok, `${way} ${selection?.id}`).toBe(true);
      }
    }
  });

  it('measure along a tube from either end or from a bend, as one choice and back', () => {
    const at = { kind: 'on', member: 'hoop', from: 'start', distance: 10, offset: [0, 0, 0] } as const;
    for (const origin of ['start', 'end', '2 middle', '1 start']) expect(originOf(withOrigin(at, origin))).toBe(origin);
    expect(withOrigin(withOrigin(at, '2 end'), 'start')).toEqual(at);
  });
});

describe('a coordinate', () => {
  it('is taken from a node or a point and given back as the number that it comes to', () => {
    const number = { value: 812 };
    const followed = withSource(number, "node hoop foot'", 812);
    expect(followed).toEqual({ node: "hoop foot'", plus: 0 });
    expect(sourceOf(followed)).toBe("node hoop foot'");
    expect(withSource(withAmount(followed, 25), 'point sill', 837)).toEqual({ point: 'sill', plus: 25 });
    expect(withSource({ point: 'sill', plus: 25 }, '', 837)).toEqual({ value: 837 });
    expect(sourceOf(number)).toBe('');
    expect([number, followed, withAmount(number, 3)].map(amountOf)).toEqual([812, 0, 3]);
  });

  it('of a place on a tube is changed for another without moving the node', () => {
    const job = demo();
    const hoop = solved(job);
    const at = { kind: 'on', member: 'hoop', until: { axis: 'z', value: 500 }, nth: 2, offset: [1, 2, 3] } as const;
    const before = solved(addNode(job, 'new', at));
    const { id } = before.job.nodes.at(-1)!;
    const after = solved(setPlace(before.job, id, byOtherAxis(hoop, at, 'y')));
    before.nodes.get(id)!.forEach((mm, i) => expect(after.nodes.get(id)![i]).toBeCloseTo(mm, 6));
  });
});
