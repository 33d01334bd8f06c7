/** The browser's database and the channel between tabs, behind the interfaces of persistence.ts. */
import { openDB } from 'idb';
import type { DBSchema, IDBPDatabase } from 'idb';
import { mayWriteOver } from './persistence.ts';
import type { Kept, KeptVersion, Persistence, Stamp, Tabs } from './persistence.ts';

interface Schema extends DBSchema {
  documents: { key: string; value: { kept: Kept; stamp: Stamp }; indexes: { savedAt: number } };
  versions: { key: number; value: KeptVersion; indexes: { slot: string } };
}

/** Opens the database; where the browser does not let the page keep anything, every call rejects. */
export function openIndexedDb(): Persistence {
  const opened = openDatabase();
  // A failure is told by the calls that wait for it, not by the console.
  opened.catch(() => undefined);

  return {
    async load(slot) {
      const documents = (await opened).transaction('documents').store;
      const own = slot === null ? undefined : await documents.get(slot);
      return own ?? (await documents.index('savedAt').openCursor(null, 'prev'))?.value ?? null;
    },

    async save(kept, tab, seen, most) {
      const transaction = (await opened).transaction(['documents', 'versions'], 'readwrite');
      const documents = transaction.objectStore('documents');
      const versions = transaction.objectStore('versions');
      const stored = await documents.get(kept.slot);
      if (!mayWriteOver(stored?.stamp, tab, seen)) return null;
      const stamp = { tab, count: (stored?.stamp.count ?? 0) + 1 };
      if (stored === undefined) {
        const oldestFirst = await documents.index('savedAt').getAllKeys();
        for (const slot of oldestFirst.slice(0, Math.max(0, oldestFirst.length + 1 - most))) {
          const copies = await versions.index('slot').getAllKeys(slot);
          await Promise.all([documents.delete(slot), ...copies.map((key) => versions.delete(key))]);
        }
      }
      await documents.put({ kept, stamp }, kept.slot);
      await transaction.done;
      return stamp;
    },

    async documents() {
      return (await (await opened).getAll('documents')).map(({ kept }) => kept);
    },

    async versions() {
      return (await (await opened).getAll('versions')).toReversed();
    },

    async addVersion(version, most) {
      const transaction = (await opened).transaction('versions', 'readwrite');
      await transaction.store.put(version);
      const keys = await transaction.store.index('slot').getAllKeys(version.slot);
      await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => transaction.store.delete(key)));
      await transaction.done;
    },
  };
}

/** Async, so that a browser without any database at all rejects too, and does not throw. */
const openDatabase = async (): Promise<IDBPDatabase<Schema>> =>
  openDB<Schema>('cagewright', 2, {
    upgrade(database, before, _, transaction) {
      if (before < 1) {
        database.createObjectStore('documents').createIndex('savedAt', 'kept.savedAt');
        database.createObjectStore('versions', { keyPath: 'savedAt' });
      }
      transaction.objectStore('versions').createIndex('slot', 'slot');
    },
  });

export function openTabs(): Tabs {
  const channel = new BroadcastChannel('cagewright');
  return {
    announce: (slot, stamp) => channel.postMessage({ slot, stamp }),
    listen(heard) {
      channel.addEventListener('message', (event: MessageEvent<{ slot: string; stamp: Stamp }>) => {
        heard(event.data.slot, event.data.stamp);
      });
    },
  };
}
