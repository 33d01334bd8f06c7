/**
 * What a page changes in the shop record, put down at once and without waiting for an answer: sent to the database with its commit in
 * one go, in a store that no other transaction has in its scope, so that it arrives though the page hears nothing for seconds. A write of
 * the record itself has to hear first what lies there. What has not arrived when the page goes is put where it is at once (last-words.ts).
 */
import type { Connection } from './connection.ts';
import type { LastWords } from './last-words.ts';
import type { JottedShop } from './persistence.ts';

export interface ShopJottings {
  /** The name of this page's latest; null before there is one. */
  latest(): string | null;
  /** In the place of this page's one before. */
  jot(jotted: JottedShop): void;
  /** The page is going. */
  pageGoes(): void;
  /** The latest of each page that lie there, by their names; sound or not. */
  read(): Promise<ReadonlyMap<string, unknown>>;
  /** Lets go of those of these names. */
  drop(names: readonly string[]): void;
}

/** The page that gave the name. */
export const pageOf = (name: string): string => name.slice(0, name.lastIndexOf(' '));
/** The how-manieth of its page it is. */
const nthOf = (name: string): number => Number(name.slice(name.lastIndexOf(' ') + 1));

/** `page` is a name that no other has. */
export function createShopJottings(run: Connection['run'], page: string, lastWords: LastWords): ShopJottings {
  let count = 0;
  let latest: string | null = null;
  /** The last that was sent. */
  let lying: string | null = null;
  /** The latest, until it has arrived. */
  let onItsWay: JottedShop | null = null;
  /** The name that this page's last words lie under. */
  let worded: string | null = null;

  /** That one, or a later one, lies in the database: the page did not go after all. */
  function arrived(name: string): void {
    if (worded === null || nthOf(worded) > nthOf(name)) return;
    lastWords.forget(worded);
    worded = null;
  }

  function drop(names: readonly string[]): void {
    if (names.length === 0) return;
    for (const name of names) lastWords.forget(name);
    const own = names.findLast((name) => pageOf(name) === page);
    if (own !== undefined) arrived(own);
    void run(async (database) => {
      const transaction = database.transaction('jottedShop', 'readwrite');
      const sent = [transaction.done, ...names.map((name) => transaction.store.delete(name))];
      transaction.commit?.();
      await Promise.all(sent);
    }).catch(() => undefined); // its name stands in the record: it is not entered again
  }

  return {
    latest: () => latest,
    jot(jotted) {
      count += 1;
      const name = `${page} ${count}`;
      latest = name;
      onItsWay = jotted;
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
        arrived(name);
        if (name === latest) onItsWay = null;
      }).catch(() => undefined);
    },
    pageGoes() {
      if (latest === null || onItsWay === null) return;
      if (worded !== null && worded !== latest) lastWords.forget(worded);
      worded = latest;
      lastWords.put(latest, onItsWay);
    },
    read: () =>
      run(async (database) => {
        const { store } = database.transaction('jottedShop');
        const [names, found] = await Promise.all([store.getAllKeys(), store.getAll()]);
        const all = new Map<string, unknown>(names.map((name, at) => [name, found[at]]));
        for (const [name, words] of lastWords.found()) all.set(name, words);
        // A page's last words say all that it had put down before.
        const earlier = [...all.keys()].filter((name) => [...all.keys()].some((other) => isLaterOf(other, name)));
        for (const name of earlier) all.delete(name);
        drop(earlier);
        return all;
      }),
    drop,
  };
}

const isLaterOf = (other: string, name: string): boolean =>
  pageOf(other) === pageOf(name) && nthOf(other) > nthOf(name);
