/**
 * The open job: the committed one with its history, the draft of a gesture under way, and what is derived from the one that is
 * shown. Job and derivation are set together, in one notification, so the two always belong to each other; what cannot be derived
 * is refused and nothing changes. It knows nothing of where work is kept, nor of what a screen remembers: those follow it.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Derived } from '../../core/derive.ts';
import { keepNumbers } from '../../core/edit/numbers.ts';
import { emptyJob } from '../../core/job/empty-job.ts';
import type { Fault } from '../../core/job/fault.ts';
import { inNames } from '../../core/job/in-names.ts';
import { serialiseJob } from '../../core/job/serialise.ts';
import type { Job } from '../../core/job/types.ts';
import * as gestures from '../../core/session/gesture.ts';
import type { Gesture } from '../../core/session/gesture.ts';
import * as histories from '../../core/session/history.ts';
import type { History } from '../../core/session/history.ts';
import { admit, admitDraft } from './admit.ts';
import { fileNameFor } from '../../exports/shared/file-name.ts';

/** What undo, redo and a cancelled gesture start from: another object after each of them that changed the job, and after each edit. */
export interface Committed {
  readonly history: History;
  readonly derived: Derived;
}

export interface DocumentState {
  readonly committed: Committed;
  readonly gesture: Gesture;
  /** The job shown: the draft while a gesture is under way, else the committed one. */
  readonly job: Job;
  /** Derived from the job shown. What the slow stages find of it comes later, and stands in the results. */
  readonly derived: Derived;
  /** Counts up with each shown job. */
  readonly revision: number;
  /** Counts up with each document that takes the place of another, and not with what is done in it. */
  readonly opened: number;
  readonly fileName: string;
  /** False until the kept work, or the demo, is shown: `job` is an empty one until then, and takes no edit. */
  readonly ready: boolean;
}

export interface DocumentActions {
  /** One undo step; no tube gets another number by it, unless it is about numbers. Answers the faults and leaves everything as it was if the job cannot be derived. */
  edit(label: string, change: (job: Job) => Job): readonly Fault[];
  /** A fact that no undo unmakes, and no step (noteFact): a gesture under way is committed first. Refused as an edit is. */
  note(change: (job: Job) => Job): readonly Fault[];
  /** What was done on another device: a step that undo passes over. Refused as an edit is; a gesture under way would undo it, and is to be waited for. */
  adopt(job: Job, done: { readonly label: string; readonly by: string }): readonly Fault[];
  /**
   * A gesture: begin keeps the start job, preview shows a draft made from it, commit makes one undo step, cancel drops
   * it. Whatever asks for the job itself (saving, undo, opening another) commits it first; `ended` is called once,
   * however it ended.
   */
  begin(label: string, ended?: () => void): void;
  /** Answers false, and shows nothing new, if no gesture is under way or the draft cannot be derived. */
  preview(change: (startJob: Job) => Job): boolean;
  commit(): void;
  cancel(): void;
  /** A step through the history. False where it cannot be taken, the kept history being damaged. */
  undo(): boolean;
  redo(): boolean;
  /** The job as the text of a job file, and the name to save it under; commits a gesture under way. */
  file(): { readonly fileName: string; readonly text: string };
  /** Puts another document, with the history it brings, in the place of the open one. */
  replace(next: Committed, fileName: string): void;
}

export type DocumentStore = StoreApi<DocumentState & DocumentActions>;

/** What an edit is refused with until the kept work is there. */
const NOT_READY: Fault = { place: '', message: 'the job is not here yet' };

export function createDocument(): DocumentStore {
  /** What is called when the gesture ends. */
  let ended: (() => void) | null = null;

  const store: DocumentStore = createStore(() => ({
    ...shownOf(undrawn(emptyJob('in')), gestures.IDLE),
    revision: 0,
    opened: 0,
    fileName: '',
    ready: false,
    edit(label, change) {
      if (!get().ready) return [NOT_READY];
      get().commit();
      const { history } = get().committed;
      return settle(keepNumbers(history.job, change(history.job)), (job) => histories.commitEdit(history, label, job));
    },
    note(change) {
      if (!get().ready) return [NOT_READY];
      get().commit();
      const { history } = get().committed;
      return settle(change(history.job), (job) => histories.noteFact(history, job));
    },
    adopt(job, done) {
      if (!get().ready || get().gesture.state !== 'idle') return [NOT_READY];
      return settle(job, (admitted) => histories.commitOther(get().committed.history, done, admitted));
    },
    begin(label, whenEnded) {
      if (!get().ready) return;
      get().commit();
      ended = whenEnded ?? null;
      const { committed } = get();
      show(committed, gestures.begin(label, committed.history.job));
    },
    preview(change) {
      const { gesture, committed, derived } = get();
      if (gesture.state === 'idle') return false;
      const draft = keepNumbers(gesture.startJob, change(gesture.startJob));
      const admitted = admitDraft(draft, gesture.startJob, derived);
      if (admitted === null) return false;
      show(
        committed,
        gestures.preview(gesture, () => admitted.job),
        admitted.derived,
      );
      return true;
    },
    commit() {
      const { gesture, committed } = get();
      if (gesture.state === 'idle') return;
      const withDraft = (job: Job): History =>
        gestures.commit(
          gestures.preview(gesture, () => job),
          committed.history,
        );
      if (settle(gesture.draft, withDraft).length > 0) get().cancel();
    },
    cancel() {
      const { gesture, committed } = get();
      if (gesture.state !== 'idle') show(committed, gestures.IDLE);
    },
    undo: () => step(histories.undo),
    redo: () => step(histories.redo),
    file() {
      get().commit();
      const { job } = get();
      return { fileName: fileNameFor(job.name), text: serialiseJob(job) };
    },
    replace: (next, fileName) =>
      show(next, gestures.IDLE, next.derived, { fileName, opened: get().opened + 1, ready: true }),
  }));
  const get = store.getState;

  function show(
    committed: Committed,
    gesture: Gesture,
    derived = committed.derived,
    also: Partial<DocumentState> = {},
  ) {
    store.setState({ ...shownOf(committed, gesture, derived), revision: get().revision + 1, ...also });
    if (gesture.state !== 'idle') return;
    const call = ended;
    ended = null;
    call?.();
  }

  /**
   * Takes the history that comes of the job as it was admitted, and ends a gesture; else answers why the job was not admitted, and
   * nothing changes.
   */
  function settle(draft: Job, historyWith: (job: Job) => History): readonly Fault[] {
    const { committed, cancel } = get();
    const admitted = admit(draft, { job: committed.history.job, derived: committed.derived });
    if (!admitted.ok) return inNames(draft, admitted.faults);
    const history = historyWith(admitted.job);
    if (history === committed.history) cancel();
    else show({ history, derived: admitted.derived }, gestures.IDLE);
    return [];
  }

  /** What was admitted once is refused only if the kept history was damaged. */
  function step(take: (history: History) => History): boolean {
    get().commit();
    const { history } = get().committed;
    const taken = take(history);
    return taken === history || settle(taken.job, (job) => ({ ...taken, job })).length === 0;
  }

  return store;
}

/** A job in which nothing is drawn, and nothing was done yet. */
export function undrawn(job: Job): Committed {
  const admitted = admit(job);
  if (!admitted.ok) throw new Error('a job in which nothing is drawn can always be derived');
  return { history: histories.newHistory(admitted.job), derived: admitted.derived };
}

/** What there is to keep: of a gesture under way its draft, as if it had been committed now, so that undo leads back to before it. */
export const historyToKeep = ({ gesture, committed }: DocumentState): History =>
  gestures.commit(gesture, committed.history);

type Shown = Pick<DocumentState, 'committed' | 'gesture' | 'job' | 'derived'>;

const shownOf = (committed: Committed, gesture: Gesture, derived = committed.derived): Shown => ({
  committed,
  gesture,
  job: gestures.shownJob(gesture, committed.history),
  derived,
});
