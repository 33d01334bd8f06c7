/**
 * An undo history that was kept as plain data, checked before it is trusted: every step must have the shape of one,
 * and must fit the job it would be taken from. Steps from the first that does not are let go; nearer ones still work.
 */
import { isJobDiff } from '../job/diff-shape.ts';
import { applyDiff, fitsJob, invertDiff, type JobDiff } from '../job/diff.ts';
import type { Job } from '../job/types.ts';
import type { History, Step } from './history.ts';

/** The history of `job` from the `{ past, future }` that was kept beside it, as far as it can be used. */
export function resumeHistory(job: Job, kept: unknown): History {
  const { past, future } = isObject(kept) ? kept : {};
  return {
    job,
    past: fitting(job, stepsOf(past).toReversed(), invertDiff).toReversed(),
    future: fitting(job, stepsOf(future), (diff) => diff),
  };
}

/** Whether every step that was kept could be used. Null was kept where there was no history to keep. */
export function isWholeHistory({ past, future }: History, kept: unknown): boolean {
  if (kept === null) return true;
  return isObject(kept) && isAllOf(kept['past'], past) && isAllOf(kept['future'], future);
}

const isAllOf = (kept: unknown, used: readonly Step[]): boolean => Array.isArray(kept) && kept.length === used.length;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isStep = (value: unknown): value is Step =>
  isObject(value) && typeof value['label'] === 'string' && isJobDiff(value['diff']);

const stepsOf = (value: unknown): readonly Step[] => (Array.isArray(value) && value.every(isStep) ? value : []);

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
