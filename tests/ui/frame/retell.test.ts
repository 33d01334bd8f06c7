import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setPlace } from '../../../src/core/edit/nodes.ts';
import { distance } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Place } from '../../../src/core/job/places.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deriveFrame } from '../../../src/core/solve/derive-frame.ts';
import type { Frame } from '../../../src/core/solve/types.ts';
import { originOf } from '../../../src/ui/frame/choices.ts';
import { startingPlace, withOrigin } from '../../../src/ui/frame/places.ts';
import { retell } from '../../../src/ui/frame/retell.ts';

function demo(): Job {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
  return parsed.job;
}

function solved(job: Job): Frame {
  const outcome = deriveFrame(job);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('; '));
  return outcome.value;
}

const KINDS: readonly Place['kind'][] = ['fixed', 'point', 'on', 'between', 'ray'];

describe('a place told another way', () => {
  const job = demo();
  const frame = solved(job);

  it.each(KINDS)('stays where it is as %s, for every node, and forms no loop', (kind) => {
    let told = 0;
    for (const { id } of job.nodes) {
      const place = retell(frame, id, kind);
      if (place === null) continue;
      told += 1;
      expect(place.kind).toBe(kind);
      const again = solved(setPlace(job, id, place)).nodes.get(id)!;
      expect(distance(again, frame.nodes.get(id)!)).toBeLessThan(0.011);
    }
    expect(told).toBeGreaterThan(0);
    if (kind === 'fixed' || kind === 'point' || kind === 'ray') expect(told).toBe(job.nodes.length);
  });

  it('does not pretend that a place lies between two nodes that it does not', () => {
    expect(retell(frame, 'no such node', 'between')).toBeNull();
    const alone = solved({ ...job, members: [], nodes: job.nodes.filter(({ at }) => at.kind === 'point').slice(0, 2) });
    const [first] = alone.job.nodes;
    expect(retell(alone, first!.id, 'on')).toBeNull();
  });
});

describe('places to start from', () => {
  const job = demo();

  it('use what is selected, else the first there is', () => {
    const point = job.points[3]!.id;
    expect(startingPlace(job, 'point', { kind: 'point', id: point }, [0, 0, 0])).toMatchObject({ point });
    expect(startingPlace(job, 'point', null, [0, 0, 0])).toMatchObject({ point: job.points[0]!.id });
    expect(startingPlace(job, 'fixed', null, [1, 2, 3])).toEqual({ kind: 'fixed', position: [1, 2, 3] });
  });

  it('are none where there is nothing to stand on', () => {
    const bare = { ...job, points: [], nodes: [], members: [] };
    for (const kind of ['point', 'on', 'between', 'ray'] as const)
      expect(startingPlace(bare, kind, null, [0, 0, 0])).toBeNull();
  });

  it('measure along a tube from either end or from a bend, as one choice and back', () => {
    const at = { kind: 'on', member: 'hoop', from: 'start', distance: 10, offset: [0, 0, 0] } as const;
    for (const origin of ['start', 'end', '2 middle', '1 start']) expect(originOf(withOrigin(at, origin))).toBe(origin);
    expect(withOrigin(withOrigin(at, '2 end'), 'start')).toEqual(at);
  });
});
