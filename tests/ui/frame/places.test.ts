import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { originOf } from '../../../src/ui/frame/choices.ts';
import { startingPlace, withOrigin } from '../../../src/ui/frame/places.ts';

function demo(): Job {
  const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
  if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
  return parsed.job;
}

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
