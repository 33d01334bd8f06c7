/**
 * What a job names and a file of it does not hold, kept in the browser under a sum of its bytes: a database of its own for each kind, so that it never holds up,
 * crowds out or migrates with the work. Of many the ones that were used last stay.
 */
import { openDB, type IDBPDatabase } from 'idb';

export interface Shelf<T> {
  /** Null where there is none under that sum, or none that is sound; rejects where the storage cannot be reached. */
  get(sum: string): Promise<T | null>;
  put(sum: string, data: T): Promise<void>;
}

export interface ShelfOf<T> {
  readonly database: string;
  /** The one store in it. */
  readonly store: string;
  /** More are not kept. */
  readonly most: number;
  /** What was kept comes from outside. */
  isSound(data: unknown): data is T;
}

export function openShelf<T>({ database: name, store, most, isSound }: ShelfOf<T>, now: () => number): Shelf<T> {
  let opened: Promise<IDBPDatabase> | null = null;

  /** Opened when it is first asked for, and again where that failed or the browser has closed it. */
  function database(): Promise<IDBPDatabase> {
    const forget = (): void => void (opened = null);
    opened ??= openDB(name, 1, {
      upgrade: (made) => void made.createObjectStore(store).createIndex('usedAt', 'usedAt'),
      blocking: (_, __, event) => {
        forget();
        (event.target as IDBDatabase).close();
      },
      terminated: forget,
    });
    opened.catch(forget);
    return opened;
  }

  return {
    async get(sum) {
      const base = await database();
      const found = (await base.get(store, sum)) as { readonly data: unknown } | undefined;
      if (found === undefined || !isSound(found.data)) return null;
      await base.put(store, { ...found, usedAt: now() }, sum);
      return found.data;
    },
    async put(sum, data) {
      const transaction = (await database()).transaction(store, 'readwrite');
      const records = transaction.objectStore(store);
      await records.put({ data, usedAt: now() }, sum);
      const keys = await records.index('usedAt').getAllKeys();
      await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => records.delete(key)));
      await transaction.done;
    },
  };
}
