import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyDiff, diffJobs, invertDiff } from '../../src/core/job/diff.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { COLLECTIONS } from '../../src/core/job/kinds.ts';
import { sampleFile } from '../core/job/sample.ts';
import { deepFreeze } from './jobs.ts';
import { RANDOM_EDITS } from './random-edits.ts';
import { drawn } from '../draws.ts';

const edit = fc.tuple(fc.constantFrom(...RANDOM_EDITS), fc.nat(1000), fc.nat(1000));

describe('any run of edits', () => {
  it('leaves what it began with alone, keeps what it does not touch, and ends in a job that a file holds', () => {
    const start = parseJob(JSON.stringify(sampleFile()));
    if (!start.ok) throw new Error('the sample is a job');
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), (edits) => {
        let job = deepFreeze(structuredClone(start.job));
        for (const [run, a, b] of edits) {
          const answer = run(job, a, b);
          if (Array.isArray(answer)) {
            expect(answer.length).toBeGreaterThan(0);
            continue;
          }
          const next = deepFreeze(answer as Job);
          const diff = diffJobs(job, next);
          expect(applyDiff(job, diff)).toEqual(next);
          expect(applyDiff(next, invertDiff(diff))).toEqual(job);
          for (const collection of COLLECTIONS) {
            const named = new Set(diff.collections[collection]?.records.map(({ key }) => key));
            for (const record of next[collection]) {
              if (!named.has(record.id)) expect(record).toBe(job[collection].find(({ id }) => id === record.id));
            }
          }
          job = next;
        }
        expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
      }),
      { seed: 41, numRuns: drawn(40, 600) },
    );
  });
});
