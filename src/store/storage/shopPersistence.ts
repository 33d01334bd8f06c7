/**
 * What keeps the shop record between visits: the browser's database, and after it a file of the second copy. One record for all
 * tabs, written onto what lies there.
 */
import { sameData } from '../../core/job/equal.ts';
import type { Connection } from './connection.ts';
import { troubleOf, type Damaged, type KeptShop, type Watcher } from './persistence.ts';
import { checkKeptShop } from './records.ts';
import type { ShopFile } from './shopFile.ts';

export interface ShopPersistence {
  /**
   * What lies in the database, then what lies in the second copy, if there is anything; sound or not. `isEven`: it is the same in
   * both, or there can be no second. Rejects where neither can be reached.
   */
  read(): Promise<{ readonly copies: readonly unknown[]; readonly isEven: boolean }>;
  /**
   * Puts what comes of what lies there (undefined: nothing, or it cannot be known), and answers what that was; null, and nothing is
   * changed, where nothing comes of it. Found and put in one transaction. It may ask several times, and the last time counts.
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

export function shopPersistence(
  { run, watch }: Connection,
  second: ShopFile,
  setAside: ShopPersistence['setAside'],
): ShopPersistence {
  return {
    async read() {
      const late = new Promise<null>((resolve) => setTimeout(resolve, PATIENCE, null));
      const there = second.readShop().then((kept) => ({ kept }));
      const other = Promise.race([there.catch(() => null), late]);
      const first: unknown = await run((database) => database.get('shop', KEY)).catch(async (error: unknown) => {
        if (troubleOf(error) === 'newer' || !(await other)?.kept) throw error;
        return undefined;
      });
      const inSecond = await other;
      return {
        copies: [first, inSecond?.kept ?? undefined].filter((copy) => copy !== undefined),
        isEven: inSecond === null || sameData(first ?? null, inSecond.kept),
      };
    },
    async save(next) {
      const blind = next(undefined);
      const toSecond = (kept: KeptShop): Promise<void> => second.writeShop(kept).catch(() => undefined); // there may be none here
      const inSecond = blind === null ? undefined : toSecond(blind);
      const written = await run(async (database) => {
        const transaction = database.transaction('shop', 'readwrite');
        const asked = transaction.store.get(KEY);
        // At once: a page that is closing hears no answer. Where it does, what comes of the answer takes its place.
        const sent = blind === null ? undefined : transaction.store.put(blind, KEY);
        const kept = next(await asked);
        await sent;
        if (kept === null) {
          transaction.abort();
          await transaction.done.catch(() => undefined);
        } else {
          await transaction.store.put(kept, KEY);
          await transaction.done;
        }
        return kept;
      });
      await inSecond;
      if (written !== null && written.text !== blind?.text) await toSecond(written);
      return written;
    },
    setAside,
    watch: (watcher) => watch({ ...watcher, isInSecond: () => undefined }),
  };
}

/** The sound ones first, the one saved last before the others. */
export const bySoundness = (copies: readonly unknown[]): readonly unknown[] =>
  copies.toSorted((a, b) => dateOf(b) - dateOf(a));

function dateOf(found: unknown): number {
  const checked = checkKeptShop(found);
  return checked.ok ? checked.value.savedAt : -1;
}
