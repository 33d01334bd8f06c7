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
import { damagedNotice, demoNotice, historyNotice, laterNotice, unreachedNotice } from './notices.ts';
import { troubleOf, type Stamp } from './persistence.ts';
import type { Surroundings } from './surroundings.ts';
import type { Station, Trouble, Version, Workspace } from './types.ts';

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
  /** Why the storage cannot be reached, and why it did not take the last write. */
  let access: Trouble | null = null;
  let writing: Trouble | null = null;

  const tellTrouble = (): void => set({ trouble: access ?? writing });

  async function start(surroundings: Surroundings): Promise<void> {
    const { persistence, newSlot, remembered, whenIdle, now } = surroundings;
    around = surroundings;
    ownSlot = remembered?.slot ?? null;
    const saver = createAutosave(
      {
        ...surroundings,
        read: host.read,
        isMidway: host.isMidway,
        tell(saved, trouble) {
          writing = trouble;
          set({ saved });
          tellTrouble();
        },
        tellBehind: () => set({ behind: true }),
      },
      newSlot(),
    );
    autosave = saver;
    set({ slot: saver.slot() });
    const evenOut = (): void => void persistence.evenOut(saver.slot()).catch(() => undefined);
    persistence.watch({
      stands(trouble) {
        access = trouble;
        tellTrouble();
      },
      lost() {
        saver.again();
        evenOut();
        setTimeout(evenOut, CLEARED);
      },
      isInSecond: (inSecond) => set({ inSecond }),
      leaving: saver.flush,
    });

    try {
      const slots = await persistence.slots();
      const isOwn = (slot: string): boolean => slot === ownSlot;
      const ordered = [...slots.filter(isOwn), ...slots.filter((slot) => !isOwn(slot))];
      const { opened, damaged } = await findKept(persistence, ordered, now());
      // The person did not wait for it: what they opened since lies in a slot of its own.
      if (get().ready) return set({ notice: laterNotice });
      if (damaged.length > 0) set({ notice: damagedNotice(damaged, opened !== null) });
      if (opened === null) return await showDemo();
      show(opened, remembered?.station ?? null);
      whenIdle(evenOut);
    } catch (error) {
      writing = troubleOf(error);
      tellTrouble();
      if (get().ready) return;
      if (writing !== 'newer') set({ notice: unreachedNotice });
      await showDemo();
    }
  }

  function show({ kept, stamp, history, derived, isWhole }: Opened, station: Station | null): void {
    host.replace(history, derived, { fileName: kept.fileName, station: station ?? kept.station });
    enterSlot(kept.slot, stamp);
    if (!isWhole && get().notice === null) set({ notice: historyNotice });
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
        const { opened, damaged } = await findKept(persistence, [autosave.slot()], now());
        // What was done meanwhile is kept first.
        if (host.history() !== before || host.isMidway()) continue;
        if (damaged.length > 0) set({ notice: damagedNotice(damaged, opened !== null) });
        return opened === null ? undefined : show(opened, get().station);
      }
    } catch (error) {
      writing = troubleOf(error);
      set({ saved: 'failed' });
      tellTrouble();
    }
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
    stayApart: () => autosave && enterSlot(autosave.apart(), null),
    whenIdle: (task) => around?.whenIdle(task) ?? (() => {}),
  };
}
