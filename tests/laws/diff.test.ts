import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyDiff, diffJobs, invertDiff, isEmptyDiff } from '../../src/core/job/diff.ts';
import { COLLECTIONS } from '../../src/core/job/kinds.ts';
import { commitEdit, newHistory, redo, undo } from '../../src/core/session/history.ts';
import { anyJob, deepFreeze } from './jobs.ts';
import { drawn } from '../draws.ts';

const pair = fc.tuple(anyJob, anyJob).map(deepFreeze);
const runs = { seed: 31, numRuns: drawn(120, 400) };

describe('diffs of any two jobs', () => {
  it('apply to the first gives the second', () => {
    fc.assert(
      fc.property(pair, ([before, after]) => {
        expect(applyDiff(before, diffJobs(before, after))).toEqual(after);
      }),
      runs,
    );
  });

  it('inverted, gives the first back', () => {
    fc.assert(
      fc.property(pair, ([before, after]) => {
        const diff = deepFreeze(diffJobs(before, after));
        expect(applyDiff(after, invertDiff(diff))).toEqual(before);
        expect(invertDiff(invertDiff(diff))).toEqual(diff);
        expect(invertDiff(diff)).toEqual(expect.objectContaining({ head: expect.any(Array) }));
      }),
      runs,
    );
  });

  it('survive JSON', () => {
    fc.assert(
      fc.property(pair, ([before, after]) => {
        const diff = diffJobs(before, after);
        const copy = JSON.parse(JSON.stringify(diff)) as typeof diff;
        expect(copy).toEqual(diff);
        expect(applyDiff(before, copy)).toEqual(after);
      }),
      runs,
    );
  });

  it('leave what they do not name as the same object', () => {
    fc.assert(
      fc.property(pair, ([before, after]) => {
        const diff = diffJobs(before, after);
        const result = applyDiff(before, diff);
        for (const collection of COLLECTIONS) {
          const changed = diff.collections[collection];
          if (!changed) expect(result[collection]).toBe(before[collection]);
          const named = new Set(changed?.records.map(({ key }) => key));
          for (const record of result[collection]) {
            if (named.has(record.id)) continue;
            expect(record).toBe(before[collection].find(({ id }) => id === record.id));
          }
        }
      }),
      runs,
    );
  });

  it('are empty only between equal jobs', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const copy = structuredClone(job);
        expect(isEmptyDiff(diffJobs(job, copy))).toBe(true);
        expect(applyDiff(job, diffJobs(job, copy))).toBe(job);
        expect(isEmptyDiff(diffJobs(job, { ...job, name: 'another' }))).toBe(false);
      }),
      runs,
    );
  });
});

describe('history', () => {
  it('undoes and redoes any run of edits, all the way', () => {
    fc.assert(
      fc.property(fc.array(anyJob.map(deepFreeze), { minLength: 1, maxLength: 6 }), (jobs) => {
        let history = newHistory(jobs[0]!);
        const seen = [history.job];
        for (const job of jobs.slice(1)) {
          const next = commitEdit(history, 'edit', job);
          if (next !== history) seen.push(job);
          history = next;
        }
        for (const job of seen.toReversed()) {
          expect(history.job).toEqual(job);
          history = undo(history);
        }
        for (const job of seen) {
          expect(history.job).toEqual(job);
          history = redo(history);
        }
        expect(history.past).toHaveLength(seen.length - 1);
      }),
      { seed: 32, numRuns: drawn(60, 200) },
    );
  });
});
