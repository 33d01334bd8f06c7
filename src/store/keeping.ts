/**
 * The work between visits: brings it out when the page starts, has it saved while it changes, and keeps each document in
 * its slot. What the storage cannot do is said in the workspace's state; nothing here throws.
 */
import type { Derived } from '../core/derive.ts';
import type { History } from '../core/session/history.ts';
import { admitText } from './admit.ts';
import { createAutosave } from './autosave.ts';
import type { Autosave, AutosaveHost } from './autosave.ts';
import { earlierVersions } from './earlierVersions.ts';
import { findKept, type Opened } from './findKept.ts';
import { demoNotice, historyNotice, notTakenNotice, startNotice, takenNotice, unreachedNotice } from './notices.ts';
import { troubleOf, type Stamp } from './persistence.ts';
import type { Surroundings } from './surroundings.ts';
import type { Station, Trouble, Version, Workspace } from './types.ts';
import { SLOW, waitAfter } from './writer.ts';

export interface KeepingHost extends Pick<AutosaveHost, 'read' | 'isMidway'> {
  get(): Workspace;
  set(change: Partial<Workspace>): void;
  /** The committed history: another object after each edit. */
  history(): History;
  /** Shows another document. */
  replace(history: History, derived: Derived, also: Partial<Workspace>): void;
}

export interface Keeping {
  /** Brings out the kept work, or the demo where nothing is kept. */
  start(surroundings: Surroundings): Promise<void>;
  changed(): void;
  flush(): Promise<void>;
  /** Another document takes the place of the open one, which stays in its slot, with its way back and its versions. */
  leave(): void;
  /** A tab finds its document and its station again after a reload. */
  rememberTab(): void;
  fetchDemo(): Promise<string | null>;
  earlierVersions(): Promise<readonly Version[] | null>;
  takeOtherTab(): Promise<void>;
  /** From now on the tab's document is the one that was kept apart. */
  stayApart(): void;
  whenIdle(task: () => void): () => void;
}

/** ms after which whatever cleared the storage is through with the second copy too: that may go later than the first. */
const CLEARED = 3000;

export function createKeeping(host: KeepingHost): Keeping {
  const { get, set } = host;
  let around: Surroundings | null = null;
  let autosave: Autosave | null = null;
  /** Where the tab is sent after a reload: its slot of before, until it has something in another. */
  let ownSlot: string | null = null;
  /** Why the storage cannot be reached, why the kept work was not found yet, and why the last write was not taken. */
  let access: Trouble | null = null;
  let looking: Trouble | null = null;
  let writing: Trouble | null = null;

  const showTrouble = (): void => set({ trouble: access ?? looking ?? writing });

  async function start(surroundings: Surroundings): Promise<void> {
    const { persistence, newSlot, remembered } = surroundings;
    around = surroundings;
    ownSlot = remembered?.slot ?? null;
    const saver = createAutosave(
      {
        ...surroundings,
        read: host.read,
        isMidway: host.isMidway,
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

    await look(surroundings, evenOut, 0);
  }

  /** Looks for the kept work, again with growing waits while it cannot be reached. */
  async function look(surroundings: Surroundings, evenOut: () => void, failures: number): Promise<void> {
    const { persistence, remembered, whenIdle, now } = surroundings;
    const stands = (trouble: Trouble | null): void => {
      looking = trouble;
      showTrouble();
    };
    const slow = setTimeout(() => stands(looking ?? 'slow'), SLOW);
    try {
      const slots = await persistence.slots();
      const isOwn = (slot: string): boolean => slot === remembered?.slot;
      const ordered = [...slots.filter(isOwn), ...slots.filter((slot) => !isOwn(slot))];
      const found = await findKept(persistence, ordered, now());
      stands(null);
      if (found.opened !== null) whenIdle(evenOut);
      // The person did not wait for it: what they opened since lies in a slot of its own.
      const isAnotherOpen = get().ready;
      const notice = startNotice(found, isAnotherOpen);
      if (notice !== null) set({ notice });
      if (isAnotherOpen) return;
      if (found.opened === null) await showDemo();
      else show(found.opened, remembered?.station ?? null);
    } catch (error) {
      const trouble = troubleOf(error);
      stands(trouble);
      if (trouble !== 'newer') setTimeout(() => void look(surroundings, evenOut, failures + 1), waitAfter(failures));
      if (get().ready) return;
      if (trouble !== 'newer') set({ notice: unreachedNotice });
      await showDemo();
    } finally {
      clearTimeout(slow);
    }
  }

  function show({ kept, stamp, history, derived, lost }: Opened, station: Station | null): void {
    host.replace(history, derived, { fileName: kept.fileName, station: station ?? kept.station });
    enterSlot(kept.slot, stamp);
    if (lost !== null && get().notice === null) set({ notice: historyNotice(lost.why, lost.steps) });
  }

  async function showDemo(): Promise<void> {
    const demo = await fetchDemo();
    if (get().ready) return;
    const admitted = demo === null ? null : admitText(demo);
    if (!admitted?.ok) return set({ ready: true });
    const history = { job: admitted.job, past: [], future: [] };
    host.replace(history, admitted.derived, { fileName: 'demo.cagewright.json' });
  }

  async function fetchDemo(): Promise<string | null> {
    try {
      return around === null ? null : await around.fetchDemo();
    } catch {
      set({ notice: demoNotice });
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

  function rememberTab(): void {
    if (around && autosave) around.remember({ slot: ownSlot ?? autosave.slot(), station: get().station });
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

  async function takeOtherTab(): Promise<void> {
    if (around === null || autosave === null) return;
    const { persistence, now } = around;
    try {
      for (;;) {
        get().commit();
        const before = host.history();
        await autosave.flush();
        await autosave.keepVersion();
        const found = await findKept(persistence, [autosave.slot()], now());
        // What was done meanwhile is kept first.
        if (host.history() !== before || host.isMidway()) continue;
        if (found.opened === null) stayApart();
        else show(found.opened, get().station);
        const notice = takenNotice(found);
        if (notice !== null) set({ notice });
        return;
      }
    } catch {
      set({ notice: notTakenNotice });
    }
  }

  function stayApart(): void {
    if (autosave !== null) enterSlot(autosave.apart(), null);
  }

  return {
    start,
    changed,
    flush: async () => autosave?.flush(),
    leave() {
      if (around === null) return;
      autosave?.leave(around.newSlot());
      settleIn();
    },
    rememberTab,
    fetchDemo,
    async earlierVersions() {
      if (around === null || autosave === null) return [];
      return earlierVersions(around.persistence, autosave.slot(), around.now());
    },
    takeOtherTab,
    stayApart,
    whenIdle: (task) => around?.whenIdle(task) ?? (() => {}),
  };
}
