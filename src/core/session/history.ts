/**
 * Undo and redo without limit: the job, and the committed diffs that led to it. A step is a diff with the words that
 * the undo button shows. Pure: every function gives the next history, or the same one where nothing is to be done.
 */
import { applyDiff, diffJobs, invertDiff, isEmptyDiff, type JobDiff } from '../job/diff.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';

export interface Step {
  /** What was done, in the words of the one who did it: "Move shoulder". */
  readonly label: string;
  readonly diff: JobDiff;
}

export interface History {
  readonly job: Job;
  /** Oldest first. */
  readonly past: readonly Step[];
  /** The next to redo first. */
  readonly future: readonly Step[];
}

/** A job in which nothing was done yet. */
export const newHistory = (job: Job): History => ({ job, past: [], future: [] });

/** `next` becomes the job, as one step. Nothing changed: the same history, and what could be redone stays. */
export function commitEdit(history: History, label: string, next: Job): History {
  const diff = diffJobs(history.job, next);
  if (isEmptyDiff(diff)) return history;
  return { job: next, past: [...history.past, { label: shownName(label), diff }], future: [] };
}

/** The last step taken back; the same history where there is none. */
export function undo(history: History): History {
  const { job, past, future } = history;
  const step = past.at(-1);
  if (!step) return history;
  return { job: applyDiff(job, invertDiff(step.diff)), past: past.slice(0, -1), future: [step, ...future] };
}

/** The next step done again; the same history where there is none. */
export function redo(history: History): History {
  const { job, past, future } = history;
  const [step, ...rest] = future;
  if (!step) return history;
  return { job: applyDiff(job, step.diff), past: [...past, step], future: rest };
}

/** What undo would take back, and redo do again; null where there is nothing. */
export const undoLabel = ({ past }: History): string | null => past.at(-1)?.label ?? null;
export const redoLabel = ({ future }: History): string | null => future[0]?.label ?? null;
