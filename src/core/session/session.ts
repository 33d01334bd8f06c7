/**
 * One document at work: its history, and the gesture under way if there is one. A gesture is a drag, or a number being
 * nudged: many drafts, one undo step. Every draft is made anew from the job as it stood when the gesture began, so
 * nothing adds up and cancelling has nothing to restore. A draft is simply another job.
 */
import type { Job } from '../job/types.ts';
import { commitEdit, newHistory, redo as redone, undo as undone, type History } from './history.ts';
import { readHistory } from './kept.ts';

export type Gesture =
  | { readonly state: 'idle' }
  | { readonly state: 'previewing'; readonly label: string; readonly startJob: Job; readonly draft: Job };

export interface Session {
  readonly history: History;
  readonly gesture: Gesture;
}

const IDLE: Gesture = { state: 'idle' };

export const startSession = (job: Job): Session => ({ history: newHistory(job), gesture: IDLE });

/** A session on a kept job with the history that was kept beside it, as far as that still fits the job. */
export const resumeSession = (job: Job, kept: unknown): Session => ({ history: readHistory(job, kept), gesture: IDLE });

/** What to keep beside the job: plain data, for resumeSession. */
export const keptHistory = ({ history: { past, future } }: Session): unknown => ({ past, future });

/** The job after the last committed step: a draft is not in it. */
export const committedJob = ({ history }: Session): Job => history.job;

/** The job to show: the draft under way, else the committed one. */
export const shownJob = ({ history, gesture }: Session): Job =>
  gesture.state === 'idle' ? history.job : gesture.draft;

/** One undo step, unless nothing changed. A gesture under way is dropped. */
export const edit = ({ history }: Session, label: string, next: Job): Session => ({
  history: commitEdit(history, label, next),
  gesture: IDLE,
});

/** Begins a gesture from the committed job. One that was under way is dropped. */
export const begin = ({ history }: Session, label: string): Session => ({
  history,
  gesture: { state: 'previewing', label, startJob: history.job, draft: history.job },
});

/** Shows a draft, made by the caller from the gesture's start job. Without a gesture nothing happens. */
export const preview = (session: Session, draft: Job): Session =>
  session.gesture.state === 'idle' ? session : { ...session, gesture: { ...session.gesture, draft } };

/** Ends the gesture: its last draft is one undo step, unless nothing changed. */
export const commit = (session: Session): Session =>
  session.gesture.state === 'idle' ? session : edit(session, session.gesture.label, session.gesture.draft);

/** Ends the gesture: its drafts are gone. */
export const cancel = ({ history }: Session): Session => ({ history, gesture: IDLE });

/** Undo and redo end a gesture under way without committing it. */
export const undo = ({ history }: Session): Session => ({ history: undone(history), gesture: IDLE });
export const redo = ({ history }: Session): Session => ({ history: redone(history), gesture: IDLE });

/** What undo would take back, redo do again, and what is being done; null where there is nothing. */
export const undoLabel = ({ history }: Session): string | null => history.past.at(-1)?.label ?? null;
export const redoLabel = ({ history }: Session): string | null => history.future[0]?.label ?? null;
export const gestureLabel = ({ gesture }: Session): string | null => (gesture.state === 'idle' ? null : gesture.label);
