/**
 * Autosave: every change is written a moment after it, the latest alone, and at once when the page goes out of sight.
 * It never writes over what another tab has saved since: from then on this tab is held, and what it writes goes to a
 * slot apart, until the tab takes that work or stays in the slot apart. Some of the writes, at most one a minute, are
 * also kept as dated versions.
 */
import type { Kept, Persistence, Stamp, Tabs } from './persistence.ts';

export const DELAY = 300;
const VERSION_EVERY = 60_000;
/** Dated versions of one document. */
export const MOST_VERSIONS = 20;
/** Documents in the browser, the newest; one that drops out takes its versions with it. */
export const MOST_DOCUMENTS = 30;

export interface AutosaveHost {
  readonly persistence: Persistence;
  readonly tabs: Tabs;
  /** Names this tab among the tabs of the browser. */
  readonly tab: string;
  newSlot(): string;
  now(): number;
  /** What there is to keep, but for slot and date. */
  read(): Omit<Kept, 'slot' | 'savedAt'>;
  tell(saved: 'saved' | 'saving' | 'failed'): void;
  /** Another tab has saved newer work in this slot. */
  tellBehind(): void;
}

export interface Autosave {
  /** Something changed: it is written after the delay. */
  changed(): void;
  /** Writes now what waits to be written. */
  flush(): Promise<void>;
  /** Continues in a slot at a stamp: null for one that is not written yet. */
  moveTo(slot: string, stamp: Stamp | null): void;
  slot(): string;
  /** The slot that this tab writes to, or would write to, while another has newer work in its own. */
  apart(): string;
  /** Keeps what is there as a dated version, whenever the last one was. Rejects when it could not be kept. */
  keepVersion(): Promise<void>;
}

export function createAutosave(host: AutosaveHost, firstSlot: string): Autosave {
  let slot = firstSlot;
  let seen = 0;
  let held = false;
  let aside: string | null = null;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let lastVersion: { slot: string; at: number; text: string } | null = null;
  /** Counts the changes, so that an older write that ends late does not claim that all is saved. */
  let change = 0;

  host.tabs.listen((theirSlot, stamp) => {
    if (theirSlot === slot && stamp.tab !== host.tab && stamp.count > seen) hold();
  });

  /** A write that waits is not dropped: it goes to the slot apart. */
  function hold(): void {
    held = true;
    host.tellBehind();
  }

  const apart = (): string => (aside ??= host.newSlot());

  const latest = (): Kept => ({ ...host.read(), slot: held ? apart() : slot, savedAt: host.now() });

  async function write(kept: Kept, written: number): Promise<void> {
    try {
      const own = kept.slot === slot ? seen : 0;
      const stamp = await host.persistence.save(kept, host.tab, own, MOST_DOCUMENTS);
      if (stamp === null) return await write({ ...kept, slot: awayFrom(kept.slot) }, written);
      if (kept.slot === slot) seen = Math.max(seen, stamp.count);
      host.tabs.announce(kept.slot, stamp);
      if (written === change) host.tell('saved');
    } catch {
      return host.tell('failed');
    }
    // The document itself is saved; a version that could not be kept is tried again with the next write.
    await addVersion(kept, VERSION_EVERY).catch(() => undefined);
  }

  /** Another tab has written there first: a fresh slot, and the tab keeps to it if it is still on that document. */
  function awayFrom(refused: string): string {
    const fresh = host.newSlot();
    if (refused === slot || refused === aside) {
      aside = fresh;
      hold();
    }
    return fresh;
  }

  async function addVersion({ slot: of, name, text, savedAt }: Kept, every: number): Promise<void> {
    const last = lastVersion?.slot === of ? lastVersion : await newestVersion(of);
    if (savedAt - last.at < every || text === last.text) return;
    await host.persistence.addVersion({ slot: of, name, text, savedAt }, MOST_VERSIONS);
    lastVersion = { slot: of, at: savedAt, text };
  }

  async function newestVersion(of: string): Promise<{ slot: string; at: number; text: string }> {
    const newest = (await host.persistence.versions()).find((version) => version.slot === of);
    return newest ? { slot: of, at: newest.savedAt, text: newest.text } : { slot: of, at: -Infinity, text: '' };
  }

  return {
    changed() {
      change += 1;
      host.tell('saving');
      if (waiting !== null) clearTimeout(waiting);
      waiting = setTimeout(() => {
        waiting = null;
        void write(latest(), change);
      }, DELAY);
    },
    async flush() {
      if (waiting === null) return;
      clearTimeout(waiting);
      waiting = null;
      await write(latest(), change);
    },
    moveTo(nextSlot, stamp) {
      slot = nextSlot;
      seen = stamp?.count ?? 0;
      held = false;
      aside = null;
    },
    slot: () => slot,
    apart,
    keepVersion: () => addVersion(latest(), 0),
  };
}
