/**
 * What a page changes in the shop record, put down at once and without waiting for an answer: sent to the database with its commit in
 * one go, in a store that no other transaction has in its scope, so that it arrives though the page is gone a moment later. A write of
 * the record itself has to hear first what lies there.
 */
import type { Connection } from './connection.ts';
import type { JottedShop } from './persistence.ts';

export interface ShopJottings {
  /** The name of this page's latest; null before there is one. */
  latest(): string | null;
  /** In the place of this page's one before. */
  jot(jotted: JottedShop): void;
  /** All that lie there, of all pages, by their names; sound or not. */
  read(): Promise<ReadonlyMap<string, unknown>>;
  /** Lets go of those of these names. */
  drop(names: readonly string[]): void;
}

/** The page that gave the name. */
export const pageOf = (name: string): string => name.slice(0, name.lastIndexOf(' '));

/** `page` is a name that no other has. */
export function createShopJottings(run: Connection['run'], page: string): ShopJottings {
  let count = 0;
  let latest: string | null = null;
  /** The last that was sent. */
  let lying: string | null = null;

  return {
    latest: () => latest,
    jot(jotted) {
      count += 1;
      const name = `${page} ${count}`;
      latest = name;
      // A failure is said by no one here: what ails the storage, the write says too.
      void run(async (database) => {
        if (name !== latest) return; // while the database was being opened: a later one says all
        const transaction = database.transaction('jottedShop', 'readwrite');
        const { store, done } = transaction;
        const sent: Promise<unknown>[] = [done];
        if (lying !== null) sent.push(store.delete(lying));
        sent.push(store.put(jotted, name));
        lying = name;
        transaction.commit?.(); // the oldest browsers do it themselves, later
        await Promise.all(sent);
      }).catch(() => undefined);
    },
    read: () =>
      run(async (database) => {
        const { store } = database.transaction('jottedShop');
        const [names, found] = await Promise.all([store.getAllKeys(), store.getAll()]);
        return new Map<string, unknown>(names.map((name, at) => [name, found[at]]));
      }),
    drop(names) {
      if (names.length === 0) return;
      void run(async (database) => {
        const transaction = database.transaction('jottedShop', 'readwrite');
        const sent = [transaction.done, ...names.map((name) => transaction.store.delete(name))];
        transaction.commit?.();
        await Promise.all(sent);
      }).catch(() => undefined); // its name stands in the record: it is not entered again
    },
  };
}
