/**
 * A drag, or a number being typed: many drafts, one undo step. Every draft is made anew from the job as it stood when
 * the gesture began, so nothing adds up and cancelling has nothing to restore. A draft is simply another job.
 */
import type { Job } from '../job/types.ts';
import { commitEdit, type History } from './history.ts';

export type Gesture =
  | { readonly state: 'idle' }
  | { readonly state: 'previewing'; readonly label: string; readonly startJob: Job; readonly draft: Job };

/** No gesture is under way. */
export const IDLE: Gesture = { state: 'idle' };

/** Begins a gesture from the job as it is. One that was under way is dropped: its drafts were never committed. */
export const begin = (label: string, job: Job): Gesture => ({ state: 'previewing', label, startJob: job, draft: job });

/** The gesture with the draft that `change` makes from its start job. Idle stays idle. */
export const preview = (gesture: Gesture, change: (startJob: Job) => Job): Gesture =>
  gesture.state === 'idle' ? gesture : { ...gesture, draft: change(gesture.startJob) };

/** The history with the last draft committed as one step; the same history when idle or when nothing changed. */
export const commit = (gesture: Gesture, history: History): History =>
  gesture.state === 'idle' ? history : commitEdit(history, gesture.label, gesture.draft);

/** The job to show: the draft under way, else the committed one. */
export const shownJob = (gesture: Gesture, history: History): Job =>
  gesture.state === 'idle' ? history.job : gesture.draft;
