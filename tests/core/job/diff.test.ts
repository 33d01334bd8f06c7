import { describe, expect, it } from 'vitest';
import { applyDiff, diffJobs, invertDiff } from '../../../src/core/job/diff.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { sampleJob } from './sample.ts';

const before = sampleJob();

describe('diffJobs', () => {
  it('names what changed and nothing else', () => {
    const [first, second, third] = before.points;
    const moved = { ...second!, position: [0, 0, 1] as const };
    const added = { id: 'new', name: 'new', position: [1, 1, 1] as const };
    const after: Job = { ...before, name: 'Other', points: [added, moved, third!] };
    expect(diffJobs(before, after)).toEqual({
      head: [{ key: 'name', before: 'Bench frame', after: 'Other' }],
      collections: {
        points: {
          records: [
            { key: 'sill-l', before: first },
            { key: 'post', fields: [{ key: 'position', before: second!.position, after: [0, 0, 1] }] },
            { key: 'new', after: added },
          ],
          order: [{ at: 0, before: ['sill-l'], after: ['new'] }],
        },
      },
    });
  });

  it('holds a new build order without repeating the members', () => {
    const after = { ...before, members: before.members.toReversed() };
    expect(diffJobs(before, after).collections).toEqual({
      members: { records: [], order: [{ at: 0, before: ['hoop', 'stay'], after: ['stay', 'hoop'] }] },
    });
  });

  it('brings a removed block of another build back', () => {
    const { later: _, ...without } = before as Job & { later: unknown };
    const diff = diffJobs(before, without);
    expect(applyDiff(before, diff)).toEqual(without);
    expect(applyDiff(without, invertDiff(diff))).toEqual(before);
  });
});

describe('applyDiff', () => {
  it('throws on a job that the diff was not made from', () => {
    const diff = diffJobs(before, { ...before, points: before.points.toReversed() });
    expect(() => applyDiff({ ...before, points: [] }, diff)).toThrow('made from another job');
  });
});
