/**
 * The connection to the browser's database, opened when it is first asked for and again whenever it is gone: a browser
 * closes it under the page when the disk is full or the person clears the storage. It makes way for any other layout,
 * after a second at most, so that no tab of this program ever blocks a later one.
 */
import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase, OpenDBCallbacks } from 'idb';
import type { Chunks } from './chunks.ts';
import type { Packed } from './packed.ts';
import { troubleOf } from './persistence.ts';
import type { Damaged, Jotted, JottedShop, KeptShop, KeptVersion, Stored, Watcher } from './persistence.ts';
import type { Trouble } from '../types.ts';

/** What lies there was written by this program or by no one knows whom: it is checked on reading (records.ts). */
export interface Schema extends DBSchema {
  documents: { key: string; value: Packed<Stored>; indexes: { savedAt: number } };
  versions: { key: number; value: KeptVersion; indexes: { slot: string } };
  damaged: { key: number; value: Damaged };
  /** By tab, slot, and the how-manieth of the tab it is. */
  jotted: { key: [string, string, number]; value: Packed<Jotted> & { readonly chunks: Chunks } };
  /** By slot and name: steps of the slot's document that stand beside it (chunks.ts). */
  chunks: { key: [string, string]; value: readonly unknown[] };
  /** One record, by a key that is always the same. */
  shop: { key: string; value: KeptShop };
  /** What pages have changed in it, by the name of what was jotted down. */
  jottedShop: { key: string; value: JottedShop };
}

export type Database = IDBPDatabase<Schema>;

/** One more with whatever an earlier build could not read: it says that a newer one has the storage, and sets nothing aside. */
const LAYOUT = 5;
/** ms after which an opening is called slow. */
const SLOW = 2000;
/** ms that the page takes at most to write what waits before it makes way. */
const LEAVE = 1000;

export interface Connection {
  /** Runs the task on the open database; where that turns out to be closed, once more on a new one. */
  run<T>(task: (database: Database) => Promise<T>): Promise<T>;
  watch(watcher: Watcher): void;
}

export function createConnection(): Connection {
  let opened: Promise<Database> | null = null;
  const watchers: Watcher[] = [];

  const stands = (trouble: Trouble | null): void => {
    for (const watcher of watchers) watcher.stands(trouble);
  };

  function open(): Promise<Database> {
    if (opened !== null) return opened;
    const opening = openNow(() => forget(opening));
    opened = opening;
    opening.catch(() => forget(opening));
    return opening;
  }

  /** Closes it; the next call opens another. */
  function forget(which: Promise<Database>): void {
    if (opened === which) opened = null;
    which.then((database) => database.close()).catch(() => undefined);
  }

  async function openNow(forgetIt: () => void): Promise<Database> {
    const slow = setTimeout(() => stands('slow'), SLOW);
    try {
      const database = await openDB<Schema>('cagewright', LAYOUT, {
        upgrade,
        blocked() {
          clearTimeout(slow);
          stands('blocked');
        },
        blocking: (_, wanted) => void makeWay(wanted, forgetIt),
        // By the browser, and perhaps emptied.
        terminated() {
          forgetIt();
          sayLost();
        },
      });
      stands(null);
      return database;
    } catch (error) {
      stands(troubleOf(error));
      throw error;
    } finally {
      clearTimeout(slow);
    }
  }

  function sayLost(): void {
    for (const watcher of watchers) watcher.lost();
  }

  /** Another program wants to lay it out anew, or to delete it (`wanted` is null). */
  async function makeWay(wanted: number | null, forgetIt: () => void): Promise<void> {
    const left = Promise.all(watchers.map((watcher) => watcher.leaving())).catch(() => undefined);
    await Promise.race([left, new Promise((resolve) => setTimeout(resolve, LEAVE))]);
    forgetIt();
    if (wanted === null) sayLost();
    else await open().catch(() => undefined); // says `newer`, unless the other program gave it up
  }

  async function run<T>(task: (database: Database) => Promise<T>): Promise<T> {
    const opening = open();
    try {
      return await task(await opening);
    } catch (error) {
      // Whatever went wrong, but for a want of room: the next try has a new connection.
      if (troubleOf(error) !== 'full') forget(opening);
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      return task(await open());
    }
  }

  return { run, watch: (watcher) => void watchers.push(watcher) };
}

const upgrade: NonNullable<OpenDBCallbacks<Schema>['upgrade']> = (database, before, _, transaction) => {
  if (before < 1) {
    database.createObjectStore('documents').createIndex('savedAt', 'kept.savedAt');
    database.createObjectStore('versions', { keyPath: 'savedAt' });
  }
  if (before < 2) transaction.objectStore('versions').createIndex('slot', 'slot');
  if (before < 3) {
    database.createObjectStore('damaged', { autoIncrement: true });
    database.createObjectStore('jotted');
  }
  if (before < 4) {
    database.createObjectStore('chunks');
    database.createObjectStore('shop');
  }
  // The text of a document is deflated from here on; one that was not, is read as it is (packed.ts).
  if (before < 5) database.createObjectStore('jottedShop');
};
