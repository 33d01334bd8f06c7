/**
 * An undo history that was kept as plain data, checked before it is trusted: every step must have the shape of one,
 * and must fit the job it would be taken from. Steps beyond the first that does not are let go; the rest still works.
 */
import * as v from 'valibot';
import { applyDiff, fitsJob, invertDiff, type JobDiff } from '../job/diff.ts';
import type { Job } from '../job/types.ts';
import { COLLECTIONS } from '../job/validate.ts';
import type { History, Step } from './history.ts';

const change = v.object({
  key: v.string(),
  before: v.exactOptional(v.unknown()),
  after: v.exactOptional(v.unknown()),
});
const ids = v.array(v.string());
const collection = v.object({
  records: v.array(change),
  order: v.exactOptional(v.object({ before: ids, after: ids })),
});
const step = v.object({
  label: v.string(),
  diff: v.object({ head: v.array(change), collections: v.record(v.picklist(COLLECTIONS), collection) }),
});
const steps = v.object({ past: v.array(step), future: v.array(step) });

/** The history of `job` from what was kept beside it; an empty one where nothing usable was. */
export function resumeHistory(job: Job, kept: unknown): History {
  const read = v.safeParse(steps, kept);
  if (!read.success) return { job, past: [], future: [] };
  const past = fitting(job, read.output.past.toReversed(), invertDiff).toReversed();
  const future = fitting(job, read.output.future, (diff) => diff);
  return { job, past, future };
}

/** The steps, nearest first, up to the first that does not fit the job it would be taken from. */
function fitting(job: Job, nearestFirst: readonly Step[], taken: (diff: JobDiff) => JobDiff): readonly Step[] {
  let at = job;
  const misfit = nearestFirst.findIndex(({ diff }) => {
    const next = taken(diff);
    if (!fitsJob(at, next)) return true;
    at = applyDiff(at, next);
    return false;
  });
  return misfit === -1 ? nearestFirst : nearestFirst.slice(0, misfit);
}
