/**
 * What keeps the shop record between visits: the browser's database, and after it a file of the second copy. One record for all
 * tabs, and the last who writes it wins: it is changed seldom and by hand, and every tab hears of it.
 */
import { sameData } from '../../core/job/equal.ts';
import type { Connection } from './connection.ts';
import { troubleOf, type Damaged, type KeptShop } from './persistence.ts';
import { checkKeptShop } from './records.ts';
import type { ShopFile } from './shopFile.ts';

export interface ShopPersistence {
  /**
   * What lies in the database, then what lies in the second copy, if there is anything; sound or not. `isEven`: it is the same in
   * both, or there can be no second. Rejects where neither can be reached.
   */
  read(): Promise<{ readonly copies: readonly unknown[]; readonly isEven: boolean }>;
  save(kept: KeptShop): Promise<void>;
  /** Keeps among what was set aside what could not be read. */
  setAside(damaged: Damaged): Promise<void>;
  /** `lost`: what was kept may be gone. `leaving`: the last moment to write what waits. */
  watch(watcher: { lost(): void; leaving(): Promise<void> }): void;
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
    async save(kept) {
      const [first] = await Promise.allSettled([
        run((database) => database.put('shop', kept, KEY)),
        second.writeShop(kept).catch(() => undefined), // there may be none here
      ]);
      if (first.status === 'rejected') throw first.reason;
    },
    setAside,
    watch: ({ lost, leaving }) => watch({ stands: () => undefined, lost, isInSecond: () => undefined, leaving }),
  };
}

/** The sound ones first, the one saved last before the others. */
export const bySoundness = (copies: readonly unknown[]): readonly unknown[] =>
  copies.toSorted((a, b) => dateOf(b) - dateOf(a));

function dateOf(found: unknown): number {
  const checked = checkKeptShop(found);
  return checked.ok ? checked.value.savedAt : -1;
}
