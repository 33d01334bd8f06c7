/**
 * What is kept between visits, and the narrow door to whatever keeps it. Work lies in slots: one slot is one document,
 * so a copy that was made of another tab's work has a place of its own. The store knows only this interface; the
 * browser's database stands behind it in indexedDb.ts.
 */
import type { Station, Version } from './types.ts';

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
export interface KeptVersion extends Version {
  readonly slot: string;
}

/** Who wrote a slot last, and the how-manieth write it was: a tab may only write over what it has seen. */
export interface Stamp {
  readonly tab: string;
  readonly count: number;
}

export interface Persistence {
  /** The document in the slot; the one that was saved last when the slot is null or empty; null when nothing is kept. */
  load(slot: string | null): Promise<{ readonly kept: Kept; readonly stamp: Stamp } | null>;
  /**
   * Saves unless another tab has written the slot since `seen`; answers the new stamp, or null when it refused. Check
   * and write are one transaction. Several saves of one tab may be under way at once: its own writes never refuse it.
   * A document that is new drops the ones saved longest ago beyond `most`, with their versions.
   */
  save(kept: Kept, tab: string, seen: number, most: number): Promise<Stamp | null>;
  /** Every slot's document, in no order. */
  documents(): Promise<readonly Kept[]>;
  /** Newest first. */
  versions(): Promise<readonly KeptVersion[]>;
  /** Keeps a version and drops the oldest of the same slot beyond `most`. */
  addVersion(version: KeptVersion, most: number): Promise<void>;
}

/** How tabs of one browser tell each other what they saved. */
export interface Tabs {
  announce(slot: string, stamp: Stamp): void;
  listen(heard: (slot: string, stamp: Stamp) => void): void;
}

/** May a tab that has seen `seen` writes of a slot write over `stored`? */
export const mayWriteOver = (stored: Stamp | undefined, tab: string, seen: number): boolean =>
  stored === undefined || stored.tab === tab || stored.count <= seen;
