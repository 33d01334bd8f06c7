/**
 * What keeps the shop record between visits: the browser's database, and after it a file of the second copy. One record for all
 * tabs, written onto what lies there; and until that is done, what each page has changed, jotted down.
 */
import { sameData } from '../../core/job/equal.ts';
import type { Connection } from './connection.ts';
import { troubleOf, type Damaged, type JottedShop, type KeptShop, type Watcher } from './persistence.ts';
import { checkKeptShop } from './records.ts';
import type { LastWords } from './last-words.ts';
import type { ShopFile } from './shopFile.ts';
import { createShopJottings, pageOf } from './shopJottings.ts';

export interface FoundCopies {
  /** What lies in the database, then what lies in the second copy, if there is anything; sound or not. */
  readonly copies: readonly unknown[];
  /** What pages have jotted down and is not in the record yet; sound or not. */
  readonly jotted: readonly unknown[];
  /** It is the same in both copies, or there can be no second. */
  readonly isEven: boolean;
}

export interface ShopPersistence {
  /** Rejects where neither copy can be reached. What was jotted down counts as entered with the next `save`. */
  read(): Promise<FoundCopies>;
  /** Puts down at once what this page has changed, and asks nothing: a page that is going could not save. `save` makes up for it. */
  jot(jotted: JottedShop): void;
  /** The last call before the page is gone: what was put down and has not arrived is put where the next page finds it. */
  pageGoes(): void;
  /**
   * Puts what comes of what lies there (undefined: nothing), and answers what that was; null, and nothing is changed, where nothing
   * comes of it. Found and put in one transaction, then put into the second copy. Where the database refuses, it rejects, and the
   * second copy has what comes of what lies there. It may ask several times.
   */
  save(next: (found: unknown) => KeptShop | null): Promise<KeptShop | null>;
  /** Keeps among what was set aside what could not be read. */
  setAside(damaged: Damaged): Promise<void>;
  /** `lost`: what was kept may be gone. `leaving`: the last moment to write what waits. */
  watch(watcher: Pick<Watcher, 'stands' | 'lost' | 'leaving'>): void;
}

/** The key of the one record. */
const KEY = 'record';
/** ms that the second copy is waited for. */
const PATIENCE = 5000;
/** Names of what is entered that stand with the record: more than pages are ever open at once. */
const MOST_ENTERED = 40;

/** `page` is a name that no other page has. */
export function shopPersistence(
  { run, watch }: Connection,
  second: ShopFile,
  setAside: ShopPersistence['setAside'],
  page: string,
  lastWords: LastWords,
): ShopPersistence {
  const jottings = createShopJottings(run, page, lastWords);
  /** What other pages had jotted down when this one read. */
  let theirs: readonly string[] = [];

  /** In the second copy alone, since the database did not take it; but what a newer program has taken over is not this page's to write. */
  async function saveInSecond(next: (found: unknown) => KeptShop | null, names: readonly string[]): Promise<void> {
    const found = await second.readShop();
    const kept = next(found ?? undefined);
    if (kept !== null) await second.writeShop(marked(kept, found, names));
  }

  /** Unless what lies there is of a newer program, which the database once refused. */
  async function copyToSecond(written: KeptShop, next: (found: unknown) => KeptShop | null): Promise<void> {
    if (next((await second.readShop()) ?? undefined) !== null) await second.writeShop(written);
  }

  return {
    async read() {
      const late = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE, null));
      const there = second.readShop().then((kept) => ({ kept }));
      const other = Promise.race([there.catch(() => null), late]);
      let jotted: ReadonlyMap<string, unknown> = new Map();
      const first: unknown = await run(async (database) => {
        jotted = await jottings.read(); // before the record: of what is saved meanwhile it has the name
        return database.get('shop', KEY);
      }).catch(async (error: unknown) => {
        if (troubleOf(error) === 'newer' || !(await other)?.kept) throw error;
        return undefined;
      });
      const inSecond = await other;
      const copies = [first, inSecond?.kept ?? undefined].filter((copy) => copy !== undefined);
      const entered = enteredIn(bySoundness(copies)[0]);
      const names = [...jotted.keys()];
      jottings.drop(names.filter((name) => entered.includes(name)));
      theirs = names.filter((name) => !entered.includes(name));
      return {
        copies,
        jotted: theirs.map((name) => jotted.get(name)),
        isEven: inSecond === null || sameData(first ?? null, inSecond.kept),
      };
    },
    jot: jottings.jot,
    pageGoes: jottings.pageGoes,
    async save(next) {
      const own = jottings.latest();
      const names = own === null ? theirs : [...theirs, own];
      try {
        const written = await run(async (database) => {
          const transaction = database.transaction('shop', 'readwrite');
          const found: unknown = await transaction.store.get(KEY);
          const kept = next(found);
          if (kept === null) {
            transaction.abort();
            await transaction.done.catch(() => undefined);
            return null;
          }
          const put = marked(kept, found, names);
          await transaction.store.put(put, KEY);
          await transaction.done;
          return put;
        });
        if (written === null) return null;
        jottings.drop(names);
        theirs = theirs.filter((name) => !names.includes(name));
        await copyToSecond(written, next).catch(() => undefined); // there may be none here
        return written;
      } catch (error) {
        if (troubleOf(error) !== 'newer') await saveInSecond(next, names).catch(() => undefined);
        throw error;
      }
    },
    setAside,
    watch: (watcher) => watch({ ...watcher, isInSecond: () => undefined }),
  };
}

/** With these names among those of what is entered in it. */
function marked(kept: KeptShop, found: unknown, names: readonly string[]): KeptShop {
  const pages = new Set(names.map(pageOf)); // of each its latest
  const entered = [...enteredIn(found).filter((name) => !pages.has(pageOf(name))), ...names].slice(-MOST_ENTERED);
  return entered.length === 0 ? kept : { ...kept, entered };
}

function enteredIn(found: unknown): readonly string[] {
  const checked = checkKeptShop(found);
  return (checked.ok && checked.value.entered) || [];
}

/** The sound ones first, the one saved last before the others. */
export const bySoundness = (copies: readonly unknown[]): readonly unknown[] =>
  copies.toSorted((a, b) => dateOf(b) - dateOf(a));

function dateOf(found: unknown): number {
  const checked = checkKeptShop(found);
  return checked.ok ? checked.value.savedAt : -1;
}
