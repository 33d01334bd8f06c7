/**
 * What is kept between visits, and the narrow door to whatever keeps it. Work lies in slots: one slot is one document,
 * so a copy that was made of another tab's work has a place of its own. The store knows only this interface; behind it
 * stand the browser's database (indexedDb.ts) and a second copy in files (twoCopies.ts).
 */
import type { Checked } from './records.ts';
import type { Station, Trouble, Version } from '../types.ts';

/** One document as it was last saved. The job is text, so that it comes back through the same door as any file. */
export interface Kept {
  readonly slot: string;
  readonly name: string;
  readonly text: string;
  /** The undo history as plain data; checked before it is trusted. */
  readonly history: unknown;
  readonly fileName: string;
  readonly station: Station;
  readonly savedAt: number;
}

/** A dated copy, and the slot of the document that it is a copy of. */
export interface KeptVersion {
  /** Milliseconds since 1970 UTC; also its key. */
  readonly savedAt: number;
  readonly name: string;
  readonly text: string;
  /** The first layout of the database knew no slots. */
  readonly slot?: string;
}

/** Who wrote a slot last, and the how-manieth write it was: a tab may only write over what it has seen. */
export interface Stamp {
  readonly tab: string;
  readonly count: number;
}

/** A document that its tab has put down and perhaps not saved, with what the tab had seen of its slot. */
export interface Jotted {
  readonly kept: Kept;
  readonly tab: string;
  readonly seen: number;
}

/** The shop record, as text, so that it comes back through the same door as any file. */
export interface KeptShop {
  readonly text: string;
  readonly savedAt: number;
  /** The names of what was jotted down and is in it, the last ones: nothing is entered twice. */
  readonly entered?: readonly string[];
}

/** What a page has made of the shop record and perhaps not saved, beside the record that it was made of; texts, like the record. */
export interface JottedShop {
  readonly base: string;
  readonly own: string;
}

export interface Stored {
  readonly kept: Kept;
  readonly stamp: Stamp;
}

/** What could not be used, taken out of its place and kept for download: the job's text where there is one, else all that was found. */
export interface Damaged extends Version {
  readonly why: string;
}

/** A document as it lies in its slot. */
export interface Copy {
  readonly found: unknown;
  /** The record that was found, or what makes it none. */
  readonly checked: Checked<Stored>;
  /** Takes it out of its slot and keeps it so among the damaged, unless another has been put in its place since. */
  setAside(damaged: Damaged): Promise<void>;
}

export interface Persistence {
  /** The slots in which something lies: those without a date, then the one saved last first. */
  slots(): Promise<readonly string[]>;
  /** What lies in the slot, the copy saved last first; unsound ones come too. */
  copies(slot: string): Promise<readonly Copy[]>;
  /**
   * Saves unless another tab has written the slot since `seen`; answers the new stamp, whose count is beyond `seen`, or
   * null when it refused. Check and write are one transaction. Several saves of one tab may be under way at once: its
   * own writes never refuse it, and they take effect in their order. A document that is new drops the ones saved longest
   * ago beyond `most`, with their versions. An unsound record in the slot is set aside first.
   */
  save(kept: Kept, tab: string, seen: number, most: number): Promise<Stamp | null>;
  /**
   * Puts the document down at once, in a place of the tab's own, and asks nothing: a page that is going, or too busy to hear
   * the storage's answers, could not save. `save` makes up for it; else it is entered when the next page looks for work.
   */
  jot(kept: Kept, tab: string, seen: number): void;
  /** The last call before the page is gone: what was put down and has not arrived is put where the next page finds it. */
  pageGoes(): void;
  /** Newest first. Unsound ones are set aside on the way. */
  versions(): Promise<readonly KeptVersion[]>;
  /** Keeps a version, in the place of one of the same date, and drops the oldest of the same slot beyond `most`. */
  addVersion(version: KeptVersion & { readonly slot: string }, most: number): Promise<void>;
  /** Keeps it among what was set aside. */
  keepDamaged(damaged: Damaged): Promise<void>;
  /** What was set aside, newest first. */
  damaged(): Promise<readonly Damaged[]>;
  /** Where there are several copies: makes again those that are missing, and those of the opened document that are behind. */
  evenOut(opened: string): Promise<void>;
  watch(watcher: Watcher): void;
}

/** What happens to the place itself, beside what the calls answer. */
export interface Watcher {
  /** Why it cannot be reached just now; null once it can. */
  stands(trouble: Trouble | null): void;
  /** It went away under the page, and what it held may be gone: what is in memory is written again. */
  lost(): void;
  /** Whether the second copy has what the first did not take, or does not answer to. */
  isInSecond(itIs: boolean): void;
  /** It is about to be closed for another program: the last moment to write what waits. */
  leaving(): Promise<void>;
}

/** May a tab that has seen `seen` writes of a slot write over `stored`? */
export const mayWriteOver = (stored: Stamp | undefined, tab: string, seen: number): boolean =>
  stored === undefined || stored.tab === tab || stored.count <= seen;

/** The stamp of the next write, beyond all that was seen: what was lost and comes back later is known to be older. */
export const nextStamp = (stored: Stamp | undefined, tab: string, seen: number): Stamp => ({
  tab,
  count: Math.max(stored?.count ?? 0, seen) + 1,
});

export const isSameStamp = (a: Stamp, b: Stamp): boolean => a.tab === b.tab && a.count === b.count;

/** Whether `a` was saved later than `b`: by the count of writes, which no clock can set back, then by the date. */
export const isLater = (a: Stored, b: Stored): boolean =>
  a.stamp.count - b.stamp.count > 0 || (a.stamp.count === b.stamp.count && a.kept.savedAt > b.kept.savedAt);

/** What an error of the browser's storage comes to. Engines word a full disk in several ways. */
export function troubleOf(error: unknown): Trouble {
  const { name, message } = error instanceof Error ? error : { name: '', message: '' };
  if (name === 'QuotaExceededError' || /no.?space|disk full|quota/iu.test(message)) return 'full';
  return name === 'VersionError' ? 'newer' : 'off';
}
