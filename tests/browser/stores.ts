/** The browser's own stores, laid hands on from beside the program: from a page of the same origin that does not run it. */
import type { BrowserContext, Page } from '@playwright/test';
import type { Kept } from '../../src/store/storage/persistence.ts';

declare global {
  interface Window {
    /** The connection that `hold` holds. */
    held: IDBDatabase;
  }
}

/** As a record lies there, sound or not. */
export interface Laid {
  readonly key: IDBValidKey;
  readonly value: { readonly kept: Kept; readonly stamp: unknown; readonly name: string };
}

/** A page of the program's origin, without the program. */
export async function bare(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  const body = '<link rel="icon" href="data:,">';
  await page.route('**/empty.html', (route) => route.fulfill({ contentType: 'text/html', body }));
  await page.goto('/empty.html');
  return page;
}

/** All records of a store of the database, with their keys. */
export const recordsIn = (page: Page, store: string): Promise<Laid[]> =>
  page.evaluate(async (name) => {
    const opening = indexedDB.open('cagewright');
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      // A database that is not there is not made either.
      opening.onupgradeneeded = () => opening.transaction!.abort();
      opening.addEventListener('error', () => reject(opening.error!));
      opening.onsuccess = () => resolve(opening.result);
    }).catch(() => null);
    if (database === null) return [];
    if (!database.objectStoreNames.contains(name)) {
      database.close();
      return [];
    }
    const records: Laid[] = [];
    const asked = database.transaction(name).objectStore(name).openCursor();
    await new Promise<void>((resolve) => {
      asked.onsuccess = () => {
        if (asked.result === null) return resolve();
        records.push({ key: asked.result.key, value: asked.result.value });
        asked.result.continue();
      };
    });
    database.close();
    return records;
  }, store);

/** The names of the documents in the database, as their jobs have them. */
export const keptNames = async (page: Page): Promise<string[]> =>
  (await recordsIn(page, 'documents')).map(({ value }) => value.kept.name);

/** Puts a record, in the place of the one with that key. In `versions` the key is the record's own date. */
export async function lay(page: Page, store: string, record: unknown, key?: IDBValidKey): Promise<void> {
  const given: Laying = { store, record, key };
  await page.evaluate<void, Laying>(async (laying) => {
    const opening = indexedDB.open('cagewright');
    await new Promise((resolve) => (opening.onsuccess = resolve));
    const transaction = opening.result.transaction(laying.store, 'readwrite');
    transaction.objectStore(laying.store).put(laying.record, laying.key as IDBValidKey | undefined);
    await new Promise((resolve) => (transaction.oncomplete = resolve));
    opening.result.close();
  }, given);
}

interface Laying {
  readonly store: string;
  readonly record: unknown;
  readonly key: unknown;
}

/** Opens the database at a version and holds it, deaf to whoever wants it. Answers false where it could not. */
export const hold = (page: Page, version: number): Promise<boolean> =>
  page.evaluate(async (at) => {
    const opening = indexedDB.open('cagewright', at);
    opening.onupgradeneeded = () => {
      if (opening.result.objectStoreNames.length > 0) return;
      opening.result.createObjectStore('documents').createIndex('savedAt', 'kept.savedAt');
      opening.result.createObjectStore('versions', { keyPath: 'savedAt' }).createIndex('slot', 'slot');
    };
    return new Promise<boolean>((resolve) => {
      opening.onsuccess = () => resolve(Boolean((window.held = opening.result)));
      opening.addEventListener('error', () => resolve(false));
    });
  }, version);

export const letGo = (page: Page): Promise<void> => page.evaluate(() => window.held.close());

export const dropDatabase = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const dropping = indexedDB.deleteDatabase('cagewright');
    await new Promise((resolve) => (dropping.onsuccess = resolve));
  });

/** The files of the second copy, with their texts. */
export const secondCopies = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(async () => {
    const texts: Record<string, string> = {};
    const root = await navigator.storage.getDirectory();
    const folder = await root.getDirectoryHandle('documents').catch(() => null);
    if (folder === null) return texts;
    for await (const handle of folder.values()) {
      // A file that the program writes to between the two cannot be read as it was: then as it is now.
      while (handle.kind === 'file' && texts[handle.name] === undefined) {
        try {
          texts[handle.name] = await (await handle.getFile()).text();
        } catch (error) {
          if ((error as DOMException).name !== 'NotReadableError') throw error;
        }
      }
    }
    return texts;
  });

/** Writes another text into the file of the second copy that was written last. */
export const spoilSecondCopy = (page: Page, change: 'cut short' | 'emptied' | 'another text'): Promise<void> =>
  page.evaluate(async (how) => {
    const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('documents');
    const files: { readonly handle: FileSystemFileHandle; readonly file: File }[] = [];
    for await (const handle of folder.values()) {
      if (handle.kind === 'file') files.push({ handle, file: await handle.getFile() });
    }
    const { handle, file } = files.toSorted((a, b) => b.file.lastModified - a.file.lastModified)[0]!;
    const text = await file.text();
    const writable = await handle.createWritable();
    await writable.write(
      { 'cut short': text.slice(0, text.length / 2), emptied: '', 'another text': '{"a":1}\n2' }[how],
    );
    await writable.close();
  }, change);

export const dropSecondCopies = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    await (await navigator.storage.getDirectory()).removeEntry('documents', { recursive: true });
  });

/**
 * The room that the browser gives to the origin, bytes; null for as much as it likes. Chromium asks what is left once and counts down
 * from there, so a limit holds at once only for an origin that has nothing stored yet, and else once as much was written.
 */
export async function limitRoom(page: Page, origin: string, bytes: number | null): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Storage.overrideQuotaForOrigin', { origin, ...(bytes !== null && { quotaSize: bytes }) });
}

/** What "clear site data" does, also under an open page. */
export async function clearSiteData(page: Page, origin = new URL(page.url()).origin): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
}
