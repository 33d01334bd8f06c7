/**
 * The workspace: one job, its history, what is derived from it, and the few things that a screen remembers. A job is
 * shown only together with its derivation, so the two always belong to each other; what cannot be derived is refused
 * and nothing changes. What keeps the work between visits is handed in with `start`.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { Derived } from '../core/derive.ts';
import { serialiseJob } from '../core/job/serialise.ts';
import type { Fault } from '../core/job/fault.ts';
import type { Job } from '../core/job/types.ts';
import * as gestures from '../core/session/gesture.ts';
import type { Gesture } from '../core/session/gesture.ts';
import * as histories from '../core/session/history.ts';
import type { History } from '../core/session/history.ts';
import { keptHistory } from '../core/session/kept.ts';
import { admit, admitDraft, admitText } from './admit.ts';
import { emptyJob } from '../core/job/empty-job.ts';
import { fileNameFor } from './fileName.ts';
import { createKeeping, type KeepingHost } from './keeping.ts';
import { stepNotice } from './notices.ts';
import { createRehearsals } from './rehearsals.ts';
import { stillRehearsed, stillThere } from './selection.ts';
import type { Surroundings } from './surroundings.ts';
import type { Workspace, WorkspaceActions } from './types.ts';

export interface WorkspaceStore extends StoreApi<Workspace> {
  /** Brings back the kept work, or the demo where nothing is kept. */
  start(surroundings: Surroundings): Promise<void>;
  /** Commits the gesture under way and writes at once what waits to be written: the page goes out of sight. */
  flush(): Promise<void>;
}

/** Steps kept each way for the next visit; undo in the open session has no end. */
const KEPT_STEPS = 2000;

export function createWorkspace(): WorkspaceStore {
  let history: History = histories.newHistory(emptyJob('in'));
  let gesture: Gesture = gestures.IDLE;
  /** Derived from the committed job: what a cancelled gesture goes back to. Without what the rehearsals find. */
  let settled: Derived = deriveUndrawn(history);
  /** What is called when the gesture ends. */
  let ended: (() => void) | null = null;
  const keeping = createKeeping({
    get: () => get(),
    set: (change) => set(change),
    read,
    isMidway: () => gesture.state !== 'idle',
    history: () => history,
    replace,
  });
  const rehearsals = createRehearsals(keeping.whenIdle, showLearnt);

  const actions: WorkspaceActions = {
    edit(label, change) {
      if (!get().ready) return [NOT_READY];
      actions.commit();
      return settle(change(history.job), (job) => histories.commitEdit(history, label, job));
    },
    begin(label, whenEnded) {
      if (!get().ready) return;
      actions.commit();
      ended = whenEnded ?? null;
      show(history, gestures.begin(label, history.job), settled);
    },
    preview(change) {
      if (gesture.state === 'idle') return false;
      const admitted = admitDraft(change(gesture.startJob), gesture.startJob, get().derived);
      if (admitted === null) return false;
      show(
        history,
        gestures.preview(gesture, () => admitted.job),
        admitted.derived,
      );
      keeping.changed();
      return true;
    },
    commit() {
      if (gesture.state === 'idle') return;
      const draft = gesture;
      const committed = (job: Job): History =>
        gestures.commit(
          gestures.preview(draft, () => job),
          history,
        );
      if (settle(draft.draft, committed).length > 0) actions.cancel();
    },
    cancel() {
      if (gesture.state === 'idle') return;
      const isChanged = gesture.draft !== gesture.startJob;
      show(history, gestures.IDLE, settled);
      if (isChanged) keeping.changed(); // the draft may have been written
    },
    undo() {
      actions.commit();
      step(histories.undo);
    },
    redo() {
      actions.commit();
      step(histories.redo);
    },
    open(fileName, text) {
      const admitted = admitText(text);
      if (!admitted.ok) return actions.refuse(fileName, admitted.faults);
      takeUp(histories.newHistory(admitted.job), admitted.derived, { fileName });
    },
    newJob(begun = emptyJob(get().job.lengthUnit)) {
      const next = histories.newHistory(begun);
      takeUp(next, deriveUndrawn(next), { fileName: '', station: 'survey' });
    },
    async openDemo() {
      const text = await keeping.fetchDemo();
      if (text !== null) actions.open('demo.cagewright.json', text);
    },
    file() {
      actions.commit();
      return { fileName: fileNameFor(history.job.name), text: serialiseJob(history.job) };
    },
    earlierVersions: keeping.earlierVersions,
    restore(version) {
      const admitted = admitText(version.text);
      if (admitted.ok) actions.edit('Bring back a version', () => admitted.job);
      else actions.refuse(version.name, admitted.faults);
    },
    takeOtherTab: keeping.takeOtherTab,
    async keepAsCopy() {
      actions.commit();
      keeping.stayApart();
      actions.edit('Keep as a copy', (job) => ({ ...job, name: `${job.name} (copy)` }));
      await keeping.flush();
    },
    saveNow: () => void keeping.flush(),
    refuse: (fileName, faults) => set({ refused: { fileName, faults } }),
    dismissRefusal: () => set({ refused: null }),
    dismissNotice: () => set({ notice: null }),
    setStation(station) {
      set({ station, rehearsing: null });
      keeping.rememberTab();
    },
    select(selection) {
      const { rehearsing } = get();
      set({ selection, rehearsing: selection?.kind === 'tube' && selection.id === rehearsing ? rehearsing : null });
      wantRehearsals();
    },
    goTo(at, selection) {
      const lookAt = { at, asked: (get().lookAt?.asked ?? 0) + 1 };
      set({ lookAt, rehearsing: null, ...(selection && { selection }) });
    },
    rehearse(tube) {
      const rehearsing = stillRehearsed(tube, get().derived);
      set(rehearsing === null ? { rehearsing } : { rehearsing, selection: { kind: 'tube', id: rehearsing } });
      wantRehearsals();
    },
    escape() {
      if (gesture.state !== 'idle') actions.cancel();
      else set(get().rehearsing === null ? { selection: null } : { rehearsing: null });
    },
  };

  const store = createStore<Workspace>()(() => ({
    ...shownState(history, gesture, settled),
    rehearsals: new Map(),
    revision: 0,
    opened: 0,
    fileName: '',
    slot: '',
    saved: 'saved',
    trouble: null,
    inSecond: false,
    refused: null,
    notice: null,
    ready: false,
    behind: false,
    station: 'frame',
    selection: null,
    lookAt: null,
    rehearsing: null,
    ...actions,
  }));
  const get = store.getState;
  const set = (change: Partial<Workspace>): void => store.setState(change);

  /** Shows the draft under way, else the committed job, with what is derived from it. */
  function show(nextHistory: History, nextGesture: Gesture, derived: Derived, also: Partial<Workspace> = {}): void {
    history = nextHistory;
    gesture = nextGesture;
    if (gesture.state === 'idle') settled = derived;
    const { revision, selection, rehearsing } = get();
    set({
      ...shownState(history, gesture, rehearsals.addedTo(derived)),
      rehearsals: rehearsals.known(derived),
      revision: revision + 1,
      selection: stillThere(selection, derived),
      rehearsing: stillRehearsed(rehearsing, derived),
      ...also,
    });
    wantRehearsals();
    if (gesture.state !== 'idle') return;
    const call = ended;
    ended = null;
    call?.();
  }

  /** The tube that is chosen first; nothing while a gesture is under way. */
  function wantRehearsals(): void {
    const { selection } = get();
    if (gesture.state === 'idle') rehearsals.want(settled, selection?.kind === 'tube' ? selection.id : null);
    else rehearsals.rest();
  }

  function showLearnt(): void {
    set({ derived: rehearsals.addedTo(settled), rehearsals: rehearsals.known(settled) });
    wantRehearsals();
  }

  /**
   * Takes the history that comes of the job as it was admitted, and ends a gesture; else answers why the job was not admitted, and
   * nothing changes.
   */
  function settle(draft: Job, historyWith: (job: Job) => History): readonly Fault[] {
    const admitted = admit(draft, { job: history.job, derived: settled });
    if (!admitted.ok) return admitted.faults;
    const next = historyWith(admitted.job);
    if (next === history) {
      actions.cancel();
      return [];
    }
    show(next, gestures.IDLE, admitted.derived);
    keeping.changed();
    return [];
  }

  /** A step through the history: what was admitted once is refused only if the kept history was damaged. */
  function step(take: (history: History) => History): void {
    const taken = take(history);
    if (taken === history) return;
    if (settle(taken.job, (job) => ({ ...taken, job })).length > 0) set({ notice: stepNotice });
  }

  /** Puts another document, with the history it brings, in the place of the open one. */
  function replace(next: History, derived: Derived, also: Partial<Workspace>): void {
    show(next, gestures.IDLE, derived, {
      opened: get().opened + 1,
      refused: null,
      selection: null,
      lookAt: null,
      rehearsing: null,
      ready: true,
      ...also,
    });
  }

  /** Takes up another document; only a job in which nothing was ever done gives up its slot to it. */
  function takeUp(next: History, derived: Derived, also: Partial<Workspace>): void {
    actions.commit();
    if (get().behind || !isUntouched(history)) keeping.leave();
    replace(next, derived, also);
    keeping.changed();
    void keeping.flush(); // also what is left of the other
  }

  /**
   * What there is to keep: of a gesture under way its draft, as if it had been committed now, so that undo leads back to
   * before it.
   */
  function read(): ReturnType<KeepingHost['read']> {
    const kept = gestures.commit(gesture, history);
    return {
      name: kept.job.name,
      text: serialiseJob(kept.job),
      history: keptHistory(kept, KEPT_STEPS),
      fileName: get().fileName,
      station: get().station,
    };
  }

  async function flush(): Promise<void> {
    actions.commit();
    await keeping.flush();
  }

  return Object.assign(store, { start: keeping.start, flush });
}

/** What an edit is refused with until the kept work is there. */
const NOT_READY: Fault = { place: '', message: 'the job is not here yet' };

const isUntouched = ({ job, past, future }: History): boolean =>
  past.length + future.length + job.points.length + job.nodes.length + job.members.length === 0;

type ShownState = Pick<Workspace, 'job' | 'derived' | 'undoLabel' | 'redoLabel' | 'gesture'>;

const shownState = (history: History, gesture: Gesture, derived: Derived): ShownState => ({
  job: gestures.shownJob(gesture, history),
  derived,
  undoLabel: histories.undoLabel(history),
  redoLabel: histories.redoLabel(history),
  gesture: gesture.state === 'idle' ? null : gesture.label,
});

function deriveUndrawn({ job }: History): Derived {
  const admitted = admit(job);
  if (!admitted.ok) throw new Error('a job in which nothing is drawn can always be derived');
  return admitted.derived;
}
