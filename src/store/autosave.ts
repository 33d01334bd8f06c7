/**
 * Autosave: what is shown is written a moment after it changed (writer.ts). It never writes over what another tab has saved
 * since: from then on this tab is held, and what it writes goes to a slot apart, until the tab takes that work or stays in
 * the slot apart. Some of the writes, at most one a minute, are also kept as dated versions.
 */
import type { Kept, KeptVersion, Persistence, Stamp, Tabs } from './persistence.ts';
import type { Saved, Trouble } from './types.ts';
import { createWriter } from './writer.ts';

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
  /** Whether a gesture is under way: what is written then may yet be dropped, and is no version. */
  isMidway(): boolean;
  tell(saved: Saved, trouble: Trouble | null): void;
  /** Another tab has saved newer work in this slot. */
  tellBehind(): void;
}

export interface Autosave {
  /** Something changed: it is written after the delay. */
  changed(): void;
  /** Writes now what waits to be written. */
  flush(): Promise<void>;
  /** What was written may be gone: all that is in memory is written again. */
  again(): void;
  /** Goes on to another document, in a fresh slot; what is not written yet of this one still will be. */
  leave(nextSlot: string): void;
  /** Continues in a slot at a stamp: null for one that is not written yet. */
  moveTo(slot: string, stamp: Stamp | null): void;
  slot(): string;
  /** The slot that this tab writes to, or would write to, while another has newer work in its own. */
  apart(): string;
  /** Keeps what is there as a dated version, whenever the last one was. Rejects when it could not be kept. */
  keepVersion(): Promise<void>;
}

type DatedVersion = KeptVersion & { readonly slot: string };

export function createAutosave(host: AutosaveHost, firstSlot: string): Autosave {
  let slot = firstSlot;
  let seen = 0;
  let held = false;
  let aside: string | null = null;
  /** What was not written yet of documents that were left. */
  let left: readonly { readonly kept: Kept; readonly seen: number }[] = [];
  let lastVersion: Pick<DatedVersion, 'slot' | 'savedAt' | 'text'> | null = null;
  /** The versions that this tab has kept, oldest first, in case they are lost. */
  let ownVersions: readonly DatedVersion[] = [];
  let areVersionsLost = false;
  /** One at a time: each asks which version was the last. */
  let versioning: Promise<void> | null = null;

  const jot = (): void => host.persistence.jot(latest(), host.tab, seenThere());

  async function writeAll(): Promise<void> {
    for (const one of left) {
      await write(one.kept, one.seen);
      left = left.filter((other) => other !== one);
    }
    const isMidway = host.isMidway();
    const kept = latest();
    await write(kept, seenThere());
    // The document itself is saved; versions that could not be kept are tried again with the next write.
    if (!isMidway && versioning === null) {
      versioning = keepVersions(kept, VERSION_EVERY).catch(() => undefined);
      void versioning.finally(() => (versioning = null));
    }
  }

  const writer = createWriter(jot, writeAll, host.tell);

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

  function moveTo(nextSlot: string, stamp: Stamp | null): void {
    slot = nextSlot;
    seen = stamp?.count ?? 0;
    held = false;
    aside = null;
  }

  /** How many writes of the slot that is written to were seen; nobody else writes to the slot apart. */
  const seenThere = (): number => (held ? 0 : seen);

  async function write(kept: Kept, seenWrites: number): Promise<void> {
    const stamp = await host.persistence.save(kept, host.tab, seenWrites, MOST_DOCUMENTS);
    if (stamp === null) return write({ ...kept, slot: awayFrom(kept.slot) }, 0);
    if (kept.slot === slot) seen = Math.max(seen, stamp.count);
    host.tabs.announce(kept.slot, stamp);
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

  async function keepVersions({ slot: of, name, text, savedAt }: Kept, every: number): Promise<void> {
    if (areVersionsLost) {
      for (const version of ownVersions) await host.persistence.addVersion(version, MOST_VERSIONS);
      areVersionsLost = false;
    }
    const last = lastVersion?.slot === of ? lastVersion : await newestVersion(of);
    if (savedAt - last.savedAt < every || text === last.text) return;
    const version = { slot: of, name, text, savedAt };
    await host.persistence.addVersion(version, MOST_VERSIONS);
    lastVersion = version;
    ownVersions = [...ownVersions, version].slice(-MOST_VERSIONS);
  }

  async function newestVersion(of: string): Promise<Pick<DatedVersion, 'slot' | 'savedAt' | 'text'>> {
    const newest = (await host.persistence.versions()).find((version) => version.slot === of);
    return { slot: of, savedAt: newest?.savedAt ?? -Infinity, text: newest?.text ?? '' };
  }

  return {
    changed: writer.changed,
    flush: writer.flush,
    again() {
      if (seen === 0 && aside === null) return; // nothing was ever written
      areVersionsLost = true; // the last one is among those that are kept again
      writer.again();
    },
    leave(nextSlot) {
      if (!writer.isWritten()) left = [...left, { kept: latest(), seen: seenThere() }];
      moveTo(nextSlot, null);
      void writer.flush();
    },
    moveTo,
    slot: () => slot,
    apart,
    async keepVersion() {
      await versioning;
      await keepVersions(latest(), 0);
    },
  };
}
