import { describe, expect, it } from 'vitest';
import { addPull, removePull, setBatch, updatePull } from '../../../src/core/edit/pulls.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Pull } from '../../../src/core/job/kinds/pull.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const SMALL: Pull = { die: 'd1', section: 'main', pulled: 26.8, net: 25, on: '' };
const LARGE: Pull = { die: 'd1', section: 'main', batch: 'H-204', pulled: 63.2, net: 60, on: '2026-03-02' };
const sample = sampleJob();
const job = deepFreeze<Job>({ ...sample, pulls: [SMALL, LARGE] });

const inFile = (made: Job): void => expect(parseJob(serialiseJob(made))).toEqual({ ok: true, job: made });

describe('the log of pulls', () => {
  it('takes a pull in last, in a job that a file can hold', () => {
    const added = addPull(job, { ...LARGE, pulled: 94.4, net: 90 });
    expect(added.pulls.map(({ net }) => net)).toEqual([25, 60, 90]);
    expect(added.pulls[0]).toBe(SMALL);
    expect(added.members).toBe(job.members);
    inFile(added);
  });

  it('keeps no empty batch', () => {
    expect(addPull(job, { ...SMALL, batch: '' }).pulls.at(-1)).toStrictEqual(SMALL);
    const without = updatePull(job, 1, { batch: '' });
    expect(without.pulls[1]).not.toHaveProperty('batch');
    inFile(without);
    expect(updatePull(job, 0, { batch: '' })).toBe(job);
  });

  it('changes the one pull that is meant', () => {
    const changed = updatePull(job, 1, { net: 60.5, batch: 'H-205' });
    expect(changed.pulls).toEqual([SMALL, { ...LARGE, net: 60.5, batch: 'H-205' }]);
    expect(changed.pulls[0]).toBe(SMALL);
    expect(updatePull(job, 1, { net: 60 })).toBe(job);
  });

  it('takes out the one pull that is meant', () => {
    expect(removePull(job, 0).pulls).toEqual([LARGE]);
  });

  it('does nothing at an index that is not there', () => {
    expect(updatePull(job, 2, { net: 10 })).toBe(job);
    expect(removePull(job, 2)).toBe(job);
    expect(removePull(job, -1)).toBe(job);
  });
});

describe("a member's batch", () => {
  const { id } = job.members[0]!;

  it('is set, and taken away by an empty one', () => {
    const set = setBatch(job, id, 'H-204');
    expect(set.members[0]).toEqual({ ...job.members[0], batch: 'H-204' });
    expect(set.members[1]).toBe(job.members[1]);
    inFile(set);
    expect(setBatch(set, id, 'H-204')).toBe(set);
    expect(setBatch(set, id, '')).toEqual(job);
    expect(setBatch(job, id, '').members[0]).not.toHaveProperty('batch');
  });
});
