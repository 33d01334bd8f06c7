/**
 * Where the data of scans are kept in the browser: a database of their own, so that they never hold up, crowd out or migrate with the work. Each
 * lies under its sum (core/scan/sum.ts); of many the ones that were used last stay.
 */
import { openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { isScanData, type ScanData } from '../../core/scan/types.ts';

interface Schema extends DBSchema {
  scans: { key: string; value: { readonly data: unknown; readonly usedAt: number }; indexes: { usedAt: number } };
}

export interface ScanShelf {
  /** Null where there is none under that sum, or none that is sound; rejects where the storage cannot be reached. */
  get(sum: string): Promise<ScanData | null>;
  put(sum: string, data: ScanData): Promise<void>;
}

/** Of the largest some 30 MB each; more than a job may have. */
const MOST_KEPT = 20;

export function openScanShelf(now: () => number): ScanShelf {
  let opened: Promise<IDBPDatabase<Schema>> | null = null;

  /** Opened when it is first asked for, and again where that failed or the browser has closed it. */
  function database(): Promise<IDBPDatabase<Schema>> {
    const forget = (): void => void (opened = null);
    opened ??= openDB<Schema>('cagewright-scans', 1, {
      upgrade: (made) => void made.createObjectStore('scans').createIndex('usedAt', 'usedAt'),
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
      const found = await base.get('scans', sum);
      if (found === undefined || !isScanData(found.data)) return null;
      await base.put('scans', { ...found, usedAt: now() }, sum);
      return found.data;
    },
    async put(sum, data) {
      const transaction = (await database()).transaction('scans', 'readwrite');
      const { store } = transaction;
      await store.put({ data, usedAt: now() }, sum);
      const keys = await store.index('usedAt').getAllKeys();
      await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST_KEPT)).map((key) => store.delete(key)));
      await transaction.done;
    },
  };
}
