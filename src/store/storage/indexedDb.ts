/** The first copy of the work: the browser's database, behind the interface of persistence.ts. */
import type { Chunks } from './chunks.ts';
import type { Connection } from './connection.ts';
import {
  addDamaged,
  chunksIn,
  dropDocument,
  dropOldest,
  enter,
  EVERYTHING,
  foundIn,
  putChunks,
  type Everything,
} from './entries.ts';
import { createJottings } from './jottings.ts';
import type { LastWords } from './last-words.ts';
import { inflated, unpacked, type Packing } from './packed.ts';
import { isLater, mayWriteOver, nextStamp } from './persistence.ts';
import type { Copy, Damaged, Jotted, Persistence, Stamp, Stored } from './persistence.ts';
import { checkJotted, checkStored, checkVersion, damagedFrom, isDamaged, LAST_DATE, type Checked } from './records.ts';

export interface FirstCopy extends Persistence {
  /** Puts it back as it was, with the stamp of the tab that wrote it, unless the slot holds something as late or later. */
  restore(stored: Stored, most: number): Promise<void>;
}

export function openIndexedDb({ run, watch }: Connection, packing: Packing, lastWords: LastWords): FirstCopy {
  const jottings = createJottings(run, packing, lastWords);
  /** Whether all that was jotted down before this page came is entered; what cannot be, the disk being full, is opened from memory. */
  let isEntered = false;
  let unentered: readonly Jotted[] = [];
  /** By slot the chunks that lie there, as far as this page has saved them. */
  const saved = new Map<string, ReadonlySet<string>>();
  watch({
    stands: () => undefined,
    lost: () => saved.clear(),
    isInSecond: () => undefined,
    leaving: async () => undefined,
  });

  const change = <T>(task: (transaction: Everything) => Promise<T>): Promise<T> =>
    run((database) => {
      const transaction = database.transaction(EVERYTHING, 'readwrite');
      const work = task(transaction).catch((error: unknown) => {
        abort(transaction); // all of it or nothing
        throw error;
      });
      return inOne(work, transaction.done);
    });

  return {
    watch,

    async slots() {
      if (!isEntered) await enterAll();
      return run(async (database) => {
        const transaction = database.transaction('documents');
        const dated = transaction.store.index('savedAt').getAllKeys(IDBKeyRange.bound(0, LAST_DATE));
        const all = transaction.store.getAllKeys();
        const [oldestFirst, every] = await inOne(Promise.all([dated, all]), transaction.done);
        // Of one without a date nobody can say that it is older.
        const undated = every.filter((slot) => !oldestFirst.includes(slot));
        return [...new Set([...unentered.map(({ kept }) => kept.slot), ...undated, ...oldestFirst.toReversed()])];
      });
    },

    async copies(slot) {
      const found = await run((database) => {
        const transaction = database.transaction(['documents', 'chunks']);
        const [documents, chunks] = [transaction.objectStore('documents'), transaction.objectStore('chunks')];
        return inOne(foundIn(documents, chunks, slot), transaction.done);
      });
      const checked = checkStored(found, slot);
      const stored: Copy = { found, checked, setAside: (damaged) => setAside(slot, countOf(checked), damaged) };
      const there = checked.ok ? checked.value : undefined;
      const jotted = unentered.filter(({ kept }) => kept.slot === slot).filter((one) => isNews(one, there));
      return [...jotted.map((one) => copyOf(one, there?.stamp)), ...(found === undefined ? [] : [stored])];
    },

    async save(kept, tab, seen, most) {
      const upTo = jottings.count;
      const { document, chunks } = packing.pack({ kept, tab, seen });
      const stamp = await change((transaction) => enter(transaction, document, chunks, most));
      if (stamp === null) return null;
      saved.set(kept.slot, new Set(chunks.keys()));
      jottings.drop(tab, kept.slot, upTo);
      return stamp;
    },

    jot(kept, tab, seen) {
      const there = saved.get(kept.slot);
      jottings.jot({ kept, tab, seen }, (chunk) => there?.has(chunk) === true);
    },

    pageGoes: jottings.pageGoes,

    async versions() {
      const found: unknown[] = await run((database) => database.getAll('versions'));
      const checked = found.map(checkVersion);
      if (checked.some(({ ok }) => !ok)) await setVersionsAside();
      return checked.flatMap((version) => (version.ok ? [version.value] : [])).toReversed();
    },

    addVersion: (version, most) =>
      change(async (transaction) => {
        const versions = transaction.objectStore('versions');
        await versions.put(version);
        const keys = await versions.index('slot').getAllKeys(version.slot);
        await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => versions.delete(key)));
      }),

    async damaged() {
      const found: unknown[] = await run((database) => database.getAll('damaged'));
      return found.filter(isDamaged).toReversed();
    },

    evenOut: async () => undefined, // there is but one here

    restore: (stored, most) =>
      change(async (transaction) => {
        const documents = transaction.objectStore('documents');
        const { slot } = stored.kept;
        const found = await foundIn(documents, transaction.objectStore('chunks'), slot);
        const there = checkStored(found, slot);
        if (there.ok && !isLater(stored, there.value)) return;
        if (found === undefined) await dropOldest(transaction, most - 1);
        else if (!there.ok) await addDamaged(transaction, damagedFrom(found, there.why, Date.now()));
        const { document, chunks } = packing.pack(stored);
        await putChunks(transaction, slot, chunks);
        await documents.put(document, slot);
      }),

    keepDamaged: (damaged) => change((transaction) => addDamaged(transaction, damaged)),
  };

  function setAside(slot: string, count: number | null, damaged: Damaged): Promise<void> {
    return change(async (transaction) => {
      const documents = transaction.objectStore('documents');
      if (countOf(checkStored(inflated(await documents.get(slot)), slot)) !== count) return;
      await addDamaged(transaction, damaged);
      await dropDocument(transaction, slot);
    });
  }

  async function enterAll(): Promise<void> {
    const failed: Jotted[] = [];
    isEntered = await jottings
      .each(async (jotted) => {
        const found = await withItsChunks(jotted);
        const checked = checkJotted(found);
        if (checked.ok) failed.push(checked.value);
        await enterJotted(found);
        if (checked.ok) failed.pop();
      })
      .catch(() => false); // they are there the next time too
    unentered = failed;
  }

  /** With its history whole: what it does not bring itself lies in the slot that it was jotted for. */
  async function withItsChunks(found: unknown): Promise<unknown> {
    const { kept, chunks: own } = (found ?? {}) as Partial<Jotted & { chunks: unknown }>;
    const slot: unknown = kept?.slot;
    const there =
      typeof slot === 'string' ? await run((database) => chunksIn(database.transaction('chunks').store, slot)) : null;
    const brought: Chunks | null = own instanceof Map ? own : null;
    return unpacked(found, (name) => brought?.get(name) ?? there?.get(name));
  }

  /** In its slot, unless it was saved after all; in one of its own where another tab has written since. */
  function enterJotted(found: unknown): Promise<void> {
    return change(async (transaction) => {
      const checked = checkJotted(found);
      if (!checked.ok) return addDamaged(transaction, damagedFrom(found, checked.why, Date.now()));
      const { kept, tab } = checked.value;
      const stored = checkStored(inflated(await transaction.objectStore('documents').get(kept.slot)), kept.slot);
      if (stored.ok && isSaved(checked.value, stored.value)) return;
      const { document, chunks } = packing.pack(checked.value);
      if ((await enter(transaction, document, chunks, Infinity)) !== null) return;
      const apart = { kept: { ...document.kept, slot: `${kept.slot} ${tab}` }, tab, seen: 0 };
      await enter(transaction, apart, chunks, Infinity);
    });
  }

  function setVersionsAside(): Promise<void> {
    return change(async (transaction) => {
      const versions = transaction.objectStore('versions');
      for (const key of await versions.getAllKeys()) {
        const found: unknown = await versions.get(key);
        const checked = checkVersion(found);
        if (checked.ok) continue;
        await addDamaged(transaction, damagedFrom(found, checked.why, Date.now()));
        await versions.delete(key);
      }
    });
  }
}

const isSaved = ({ kept, tab }: Jotted, stored: Stored): boolean =>
  stored.stamp.tab === tab && stored.kept.savedAt >= kept.savedAt;

/** Whether it would be entered in its slot. */
const isNews = (jotted: Jotted, stored: Stored | undefined): boolean =>
  stored === undefined || (!isSaved(jotted, stored) && mayWriteOver(stored.stamp, jotted.tab, jotted.seen));

/** As it will be once it is entered; until then it stays where it is, whatever is wrong with it. */
const copyOf = ({ kept, tab, seen }: Jotted, there: Stamp | undefined): Copy => ({
  found: { kept },
  checked: { ok: true, value: { kept, stamp: nextStamp(there, tab, seen) } },
  setAside: async () => undefined,
});

/** null for one that is unsound. */
const countOf = (checked: Checked<Stored>): number | null => (checked.ok ? checked.value.stamp.count : null);

function abort(transaction: Everything): void {
  try {
    transaction.abort();
  } catch {
    // It has ended already, and that is what the work failed of.
  }
}

/** What the work comes to once its transaction has ended well; a failure of either is one failure. */
async function inOne<T>(work: Promise<T>, done: Promise<void>): Promise<T> {
  const [value] = await Promise.all([work, done]);
  return value;
}
