/**
 * Autosave: what is shown is written a moment after it changed (writer.ts). It never writes over what another tab has saved
 * since: from then on this tab is held, and what it writes goes to a slot apart, until the tab takes that work or stays in
 * the slot apart. Some of the writes, at most one a minute, are also kept as dated versions.
 */
import type { Kept, KeptVersion, Persistence, Stamp } from '../storage/persistence.ts';
import type { Tabs } from '../tabs/tabs.ts';
import type { Saved, Trouble } from '../types.ts';
import { createWriter } from '../storage/writer.ts';

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
  /** How the writing stands, and why it failed. */
  show(saved: Saved, trouble: Trouble | null): void;
  /** Another tab has saved newer work in this slot. */
  showBehind(): void;
}

export interface Autosave {
  /** Something changed: it is written after the delay. */
  changed(): void;
  /** Writes now what waits to be written. */
  flush(): Promise<void>;
  /** What was written may be gone: all that is in memory is written again. */
  again(): void;
  /** The next document is another one, in a fresh slot. What is not written yet of this one still will be. */
  leave(nextSlot: string): void;
  /** Continues in a slot at a stamp: null for one that is not written yet. */
  moveTo(slot: string, stamp: Stamp | null): void;
  slot(): string;
  /** The slot that this tab writes to, or would write to, while another has newer work in its own. */
  apart(): string;
  /** Keeps what is there as a dated version, whenever the last one was. Rejects when it could not be kept. */
  keepVersion(): Promise<void>;
}

/** Where a document is kept. */
interface Place {
  readonly slot: string;
  /** How many writes of the slot this tab has seen. */
  seen: number;
  /** Another tab has newer work in the slot: what is written goes to the slot apart. */
  held: boolean;
  /** The slot apart, once it has a name. Nobody else writes there. */
  aside: string | null;
}

type Content = Omit<Kept, 'slot'>;

type DatedVersion = KeptVersion & { readonly slot: string };

export function createAutosave(host: AutosaveHost, firstSlot: string): Autosave {
  let place = placeIn(firstSlot, null);
  /** What was not written yet of documents that were left. */
  let left: readonly { readonly content: Content; readonly place: Place }[] = [];
  let lastVersion: Pick<DatedVersion, 'slot' | 'savedAt' | 'text'> | null = null;
  /** The versions that this tab has kept, oldest first, in case they are lost. */
  let ownVersions: readonly DatedVersion[] = [];
  let areVersionsLost = false;
  /** One at a time: each asks which version was the last. */
  let versioning: Promise<void> | null = null;

  const latest = (): Content => ({ ...host.read(), savedAt: host.now() });

  const jot = (content = latest()): void =>
    host.persistence.jot({ ...content, slot: targetOf(place) }, host.tab, seenThere(place));

  /** The open document and those that were left, none waiting for another: one that is refused does not hold up the rest. */
  async function writeAll(): Promise<void> {
    const [isMidway, content, open] = [host.isMidway(), latest(), place];
    const writes = [write(content, open), ...left.map(writeLeft)];
    const failure = (await Promise.allSettled(writes)).find(({ status }) => status === 'rejected');
    if (failure?.status === 'rejected') throw failure.reason;
    // The document itself is saved; versions that could not be kept are tried again with the next write.
    if (!isMidway && versioning === null) {
      const kept = { ...content, slot: targetOf(open) };
      versioning = keepVersions(kept, VERSION_EVERY).catch(() => undefined);
      void versioning.finally(() => (versioning = null));
    }
  }

  async function writeLeft(one: (typeof left)[number]): Promise<void> {
    await write(one.content, one.place);
    left = left.filter((other) => other !== one);
  }

  const writer = createWriter(() => jot(), writeAll, host.show);

  host.tabs.listen((theirSlot, stamp) => {
    if (theirSlot === place.slot && stamp.tab !== host.tab && stamp.count > place.seen && !place.held) {
      void giveWay(place, host.read().text);
    }
  });

  const targetOf = (of: Place): string => (of.held ? apartOf(of) : of.slot);
  const apartOf = (of: Place): string => (of.aside ??= host.newSlot());
  const seenThere = (of: Place): number => (of.held ? 0 : of.seen);

  async function write(content: Content, to: Place): Promise<void> {
    const slot = targetOf(to);
    const stamp = await host.persistence.save({ ...content, slot }, host.tab, seenThere(to), MOST_DOCUMENTS);
    if (stamp === null) {
      if (slot === targetOf(to)) await giveWay(to, content.text); // else it was for a write before this one
      return write(content, to);
    }
    if (slot === to.slot) to.seen = Math.max(to.seen, stamp.count);
    host.tabs.announce(slot, stamp);
  }

  /**
   * Another tab has written where this document is kept. If it is the same work, as when both write again what was lost, this one
   * goes on from there; else what is written of it goes to the slot apart from now on.
   */
  async function giveWay(of: Place, text: string): Promise<void> {
    const slot = targetOf(of);
    const there = await stampOf(slot, text);
    if (slot !== targetOf(of)) return;
    if (of.held) of.aside = host.newSlot();
    else if (there !== null) of.seen = Math.max(of.seen, there.count);
    else {
      of.held = true;
      if (of === place) host.showBehind();
    }
  }

  /** The stamp of what lies in the slot, if that is this text. */
  async function stampOf(slot: string, text: string): Promise<Stamp | null> {
    try {
      const [copy] = await host.persistence.copies(slot);
      return copy?.checked.ok && copy.checked.value.kept.text === text ? copy.checked.value.stamp : null;
    } catch {
      return null;
    }
  }

  function moveTo(slot: string, stamp: Stamp | null): void {
    place = placeIn(slot, stamp);
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
      if (place.seen === 0 && place.aside === null) return; // nothing was ever written
      areVersionsLost = true; // the last one is among those that are kept again
      writer.again();
    },
    leave(nextSlot) {
      if (!writer.isWritten()) {
        const content = latest();
        jot(content);
        left = [...left, { content, place }];
      }
      moveTo(nextSlot, null);
    },
    moveTo,
    slot: () => place.slot,
    apart: () => apartOf(place),
    async keepVersion() {
      await versioning;
      await keepVersions({ ...latest(), slot: targetOf(place) }, 0);
    },
  };
}

const placeIn = (slot: string, stamp: Stamp | null): Place => ({
  slot,
  seen: stamp?.count ?? 0,
  held: false,
  aside: null,
});
