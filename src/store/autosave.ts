/**
 * Autosave: every change is written a moment after it, the latest alone, and at once when the page goes out of sight.
 * It never writes over what another tab has saved since; from then on it is held until the tab takes that work or
 * moves to a slot of its own. Some of the writes, at most one a minute, are also kept as dated versions.
 */
import type { Kept, Persistence, Stamp, Tabs } from './persistence.ts';

export const DELAY = 300;
const VERSION_EVERY = 60_000;
export const MOST_VERSIONS = 20;

export interface AutosaveHost {
  readonly persistence: Persistence;
  readonly tabs: Tabs;
  /** Names this tab among the tabs of the browser. */
  readonly tab: string;
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
  /** Keeps what is there as a dated version, whenever the last one was. */
  keepVersion(): Promise<void>;
}

export function createAutosave(host: AutosaveHost, firstSlot: string): Autosave {
  let slot = firstSlot;
  let seen = 0;
  let held = false;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let lastVersion: { at: number; text: string } | null = null;
  /** Counts the changes, so that an older write that ends late does not claim that all is saved. */
  let change = 0;

  host.tabs.listen((theirSlot, stamp) => {
    if (theirSlot === slot && stamp.tab !== host.tab && stamp.count > seen) hold();
  });

  function hold(): void {
    held = true;
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
    host.tellBehind();
  }

  async function write(): Promise<void> {
    const kept: Kept = { ...host.read(), slot, savedAt: host.now() };
    const written = change;
    try {
      const stamp = await host.persistence.save(kept, host.tab, seen);
      if (kept.slot !== slot) return;
      if (stamp === null) return hold();
      seen = Math.max(seen, stamp.count);
      host.tabs.announce(slot, stamp);
      if (written === change) host.tell('saved');
      await addVersion(kept.name, kept.text, kept.savedAt, VERSION_EVERY);
    } catch {
      host.tell('failed');
    }
  }

  async function addVersion(name: string, text: string, savedAt: number, every: number): Promise<void> {
    lastVersion ??= await newestVersion();
    if (savedAt - lastVersion.at < every || text === lastVersion.text) return;
    lastVersion = { at: savedAt, text };
    await host.persistence.addVersion({ name, text, savedAt }, MOST_VERSIONS);
  }

  async function newestVersion(): Promise<{ at: number; text: string }> {
    const newest = (await host.persistence.versions())[0];
    return newest ? { at: newest.savedAt, text: newest.text } : { at: -Infinity, text: '' };
  }

  return {
    changed() {
      if (held) return;
      change += 1;
      host.tell('saving');
      if (waiting !== null) clearTimeout(waiting);
      waiting = setTimeout(() => {
        waiting = null;
        void write();
      }, DELAY);
    },
    async flush() {
      if (waiting === null) return;
      clearTimeout(waiting);
      waiting = null;
      await write();
    },
    moveTo(nextSlot, stamp) {
      slot = nextSlot;
      seen = stamp?.count ?? 0;
      held = false;
    },
    slot: () => slot,
    async keepVersion() {
      const { name, text } = host.read();
      try {
        await addVersion(name, text, host.now(), 0);
      } catch {
        host.tell('failed');
      }
    },
  };
}
