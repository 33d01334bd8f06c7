/**
 * The undo history as it is kept, read back. Only its shape is checked here; each job that a step leads to goes
 * through the door when the step is taken.
 */
import { newHistory } from '../core/session/history.ts';
import type { History, Step } from '../core/session/history.ts';
import type { Job } from '../core/job/types.ts';

export type KeptHistory = Pick<History, 'past' | 'future'>;

/** The job with its history; without one where what was kept is not a history. */
export function resumeHistory(job: Job, kept: unknown): History {
  return isHistory(kept) ? { job, past: kept.past, future: kept.future } : newHistory(job);
}

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const isHistory = (value: unknown): value is KeptHistory =>
  isRecord(value) && [value['past'], value['future']].every((steps) => Array.isArray(steps) && steps.every(isStep));

const isStep = (value: unknown): value is Step =>
  isRecord(value) &&
  typeof value['label'] === 'string' &&
  isRecord(value['diff']) &&
  Array.isArray(value['diff']['head']) &&
  isRecord(value['diff']['collections']);
