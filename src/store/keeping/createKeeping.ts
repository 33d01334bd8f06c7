/**
 * The work between visits: brings it out when the page starts, has it saved while it changes, and keeps each document in
 * its slot. It follows the document and the editor, the document before whatever searches in it. What the storage cannot do is said in the state; nothing here throws.
 */
import { createStore } from 'zustand/vanilla';
import type { StoreApi } from 'zustand/vanilla';
import type { DocumentStore } from '../document/createDocument.ts';
import type { EditorStore } from '../editor/createEditor.ts';
import type { Stamp } from '../storage/persistence.ts';
import type { Saved, Trouble, Version } from '../types.ts';
import { createAutosave, type Autosave } from './autosave.ts';
import { bringOut, showOpened } from './bringOut.ts';
import { earlierVersions } from './earlierVersions.ts';
import { findKept } from './findKept.ts';
import { demoNotice, notTakenNotice, takenNotice } from './notices.ts';
import type { Surroundings } from './surroundings.ts';
import { toKeep } from './toKeep.ts';

export interface KeepingState {
  /** Which document this is among those that are kept: it stays under another name, and through a reload. '' until it is known. */
  readonly slot: string;
  readonly saved: Saved;
  /** What is wrong with the storage, also while there is nothing to save; null while it can be reached. */
  readonly trouble: Trouble | null;
  /** What could not be saved lies in the second copy. */
  readonly inSecond: boolean;
  /** Another tab has saved newer work on this job: what is done here is kept apart from it until a person chooses. */
  readonly behind: boolean;
}

export interface KeepingActions {
  /** Writes at once what is not saved, without waiting for the next try. */
  saveNow(): void;
  /**
   * The dated copies, what was last saved from other tabs, and what was set aside; newest first. null while the storage
   * cannot be reached.
   */
  earlierVersions(): Promise<readonly Version[] | null>;
  /** The two ways out of `behind`. */
  takeOtherTab(): Promise<void>;
  keepAsCopy(): Promise<void>;
}

export interface KeepingStore extends StoreApi<KeepingState & KeepingActions> {
  /** Brings back the kept work, or the demo where nothing is kept. */
  start(surroundings: Surroundings): Promise<void>;
  /** What is shown is to be saved, though the document was replaced and not changed. */
  changed(): void;
  /** Commits the gesture under way and writes at once what waits to be written: the page goes out of sight. */
  flush(): Promise<void>;
  /** The same, as the last call before the page is gone. */
  pageGoes(): void;
  /** Another document takes the place of the open one, which stays in its slot, with its way back and its versions. */
  leave(): void;
  /** null, and said, where it cannot be fetched. */
  fetchDemo(): Promise<string | null>;
}

/** ms after which whatever cleared the storage is through with the second copy too: that may go later than the first. */
const CLEARED = 3000;

export function createKeeping(document: DocumentStore, editor: EditorStore): KeepingStore {
  let around: Surroundings | null = null;
  let autosave: Autosave | null = null;
  /** Where the tab is sent after a reload: its slot of before, until it has something in another. */
  let ownSlot: string | null = null;
  /** Why the storage cannot be reached, why the kept work was not found yet, and why the last write was not taken. */
  let access: Trouble | null = null;
  let looking: Trouble | null = null;
  let writing: Trouble | null = null;

  const store: StoreApi<KeepingState & KeepingActions> = createStore(() => ({
    slot: '',
    saved: 'saved',
    trouble: null,
    inSecond: false,
    behind: false,
    saveNow: () => void flush(),
    async earlierVersions() {
      if (around === null || autosave === null) return [];
      return earlierVersions(around.persistence, autosave.slot(), around.now());
    },
    takeOtherTab,
    async keepAsCopy() {
      document.getState().commit();
      stayApart();
      document.getState().edit('Keep as a copy', (job) => ({ ...job, name: `${job.name} (copy)` }));
      await flush();
    },
  }));
  const set = (change: Partial<KeepingState>): void => store.setState(change);
  const showTrouble = (): void => set({ trouble: access ?? looking ?? writing });
  const isMidway = (): boolean => document.getState().gesture.state !== 'idle';

  document.subscribe((next, last) => {
    // Of one that takes another's place, whoever replaced it knows whether it is to be saved.
    if (next.opened === last.opened && (next.job !== last.job || next.committed !== last.committed)) changed();
  });

  async function start(surroundings: Surroundings): Promise<void> {
    const { persistence, newSlot, remembered } = surroundings;
    around = surroundings;
    ownSlot = remembered?.slot ?? null;
    const saver = createAutosave(
      {
        ...surroundings,
        read: () => toKeep(document.getState(), editor.getState().station),
        isMidway,
        show(saved, trouble) {
          writing = trouble;
          if (saved === 'saved') looking = null; // it works
          set({ saved });
          showTrouble();
        },
        showBehind: () => set({ behind: true }),
      },
      newSlot(),
    );
    autosave = saver;
    set({ slot: saver.slot() });
    editor.subscribe((next, last) => {
      if (next.station !== last.station) rememberTab();
    });
    const evenOut = (): void => void persistence.evenOut(saver.slot()).catch(() => undefined);
    persistence.watch({
      stands(trouble) {
        access = trouble;
        showTrouble();
      },
      lost() {
        saver.again();
        evenOut();
        setTimeout(evenOut, CLEARED);
      },
      isInSecond: (inSecond) => set({ inSecond }),
      leaving: saver.flush,
    });
    await bringOut({
      document,
      editor,
      surroundings,
      enterSlot,
      fetchDemo,
      evenOut,
      stands(trouble) {
        looking = trouble === 'slow' ? (looking ?? 'slow') : trouble; // what is known says more
        showTrouble();
      },
    });
  }

  async function fetchDemo(): Promise<string | null> {
    try {
      return around === null ? null : await around.fetchDemo();
    } catch {
      editor.getState().say(demoNotice);
      return null;
    }
  }

  function enterSlot(slot: string, stamp: Stamp | null): void {
    autosave?.moveTo(slot, stamp);
    settleIn();
  }

  function settleIn(): void {
    if (autosave === null) return;
    ownSlot = autosave.slot();
    set({ behind: false, slot: ownSlot });
    rememberTab();
  }

  /** The tab finds its document and its station again after a reload. */
  function rememberTab(): void {
    const { station } = editor.getState();
    if (around && autosave) around.remember({ slot: ownSlot ?? autosave.slot(), station });
  }

  function changed(): void {
    if (around === null || autosave === null) return;
    if (ownSlot !== autosave.slot()) {
      ownSlot = autosave.slot();
      rememberTab();
    }
    around.keepForGood();
    autosave.changed();
  }

  async function flush(): Promise<void> {
    document.getState().commit();
    await autosave?.flush();
  }

  function pageGoes(): void {
    void flush();
    around?.persistence.pageGoes();
  }

  async function takeOtherTab(): Promise<void> {
    if (around === null || autosave === null) return;
    const { persistence, now } = around;
    try {
      for (;;) {
        document.getState().commit();
        const { committed } = document.getState();
        await autosave.flush();
        await autosave.keepVersion();
        const found = await findKept(persistence, [autosave.slot()], now());
        // What was done meanwhile is kept first.
        if (document.getState().committed !== committed || isMidway()) continue;
        if (found.opened === null) stayApart();
        else showOpened({ document, editor, enterSlot }, found.opened);
        const notice = takenNotice(found);
        if (notice !== null) editor.getState().say(notice);
        return;
      }
    } catch {
      editor.getState().say(notTakenNotice);
    }
  }

  /** From now on the tab's document is the one that was kept apart. */
  function stayApart(): void {
    if (autosave !== null) enterSlot(autosave.apart(), null);
  }

  function leave(): void {
    if (around === null) return;
    autosave?.leave(around.newSlot());
    settleIn();
  }

  return Object.assign(store, { start, changed, flush, pageGoes, leave, fetchDemo });
}
