/** As much of a browser's database as the first copy asks of it, in memory: transactions that are all or nothing, keys in order. */
import type { Connection, Database } from '../../../src/store/storage/connection.ts';
import { createLastWords, type LastWords } from '../../../src/store/storage/last-words.ts';

type Key = string | number | readonly (string | number)[];
type Records = Map<string, readonly [Key, unknown]>;
interface Range {
  readonly from: Key;
  readonly to: Key;
}

export interface FakeDatabase {
  readonly connection: Connection;
  /** Beside it, in these settings. */
  readonly lastWords: LastWords;
  readonly settings: Storage;
  /** The records of a store, in the order of their keys. */
  all(store: string): readonly unknown[];
  lay(store: string, key: Key, value: unknown): void;
  /** While true, transactions that write documents are refused. */
  full: boolean;
  /** While it is set, whoever wants the database waits for it. */
  pause: Promise<void> | null;
  /** Of all that was put: bytes where it is bytes, else characters as JSON. */
  written: number;
  /** How many transactions were begun on what is jotted. */
  begun: number;
}

export function fakeDatabase(): FakeDatabase {
  const settings = fakeSettings();
  const stores = new Map<string, Records>();
  const recordsOf = (store: string): Records => stores.get(store) ?? stores.set(store, new Map()).get(store)!;
  const sorted = (store: string) => [...recordsOf(store).values()].toSorted(([a], [b]) => compare(a, b));
  const within = (store: string, range?: Range) =>
    range === undefined ? sorted(store) : sorted(store).filter(([key]) => isIn(key, range));
  let counter = 0;

  const storeNamed = (name: string) => ({
    get: async (key: Key) => recordsOf(name).get(JSON.stringify(key))?.[1],
    async put(value: unknown, key: Key = (value as { savedAt: number }).savedAt) {
      if (fake.full && name === 'documents') throw new DOMException('no room', 'QuotaExceededError');
      fake.written += sizeOf(value);
      recordsOf(name).set(JSON.stringify(key), [key, structuredClone(value)]);
    },
    add: async (value: unknown) => fake.lay(name, (counter += 1), value),
    async delete(which: Key | Range) {
      for (const [key] of sorted(name)) if (isIn(key, which)) recordsOf(name).delete(JSON.stringify(key));
    },
    getAll: async (range?: Range) => within(name, range).map(([, value]) => value),
    getAllKeys: async (range?: Range) => within(name, range).map(([key]) => key),
    index: () => ({
      // By the date of what is a document.
      getAllKeys: async () =>
        sorted(name)
          .filter(([, value]) => typeof dateOf(value) === 'number')
          .toSorted(([, a], [, b]) => Number(dateOf(a)) - Number(dateOf(b)))
          .map(([key]) => key),
    }),
  });

  const database = {
    get: async (store: string, key: Key) => storeNamed(store).get(key),
    getAll: async (store: string) => storeNamed(store).getAll(),
    getAllKeys: async (store: string) => storeNamed(store).getAllKeys(),
    delete: async (store: string, key: Key) => storeNamed(store).delete(key),
    transaction(names: string | readonly string[]) {
      if (names === 'jotted') fake.begun += 1;
      const before = new Map([...stores].map(([name, records]) => [name, new Map(records)]));
      return {
        store: typeof names === 'string' ? storeNamed(names) : null,
        objectStore: storeNamed,
        done: Promise.resolve(),
        commit: () => undefined,
        abort: () => before.forEach((records, name) => stores.set(name, records)),
      };
    },
  } as unknown as Database;

  const fake: FakeDatabase = {
    connection: {
      async run(task) {
        if (fake.pause !== null) await fake.pause;
        return task(database);
      },
      watch: () => undefined,
    },
    lastWords: createLastWords('last ', () => settings),
    settings,
    all: (store) => sorted(store).map(([, value]) => value),
    lay: (store, key, value) => void recordsOf(store).set(JSON.stringify(key), [key, value]),
    full: false,
    pause: null,
    written: 0,
    begun: 0,
  };
  return fake;
}

/** What the program asks the browser to make. */
export const KeyRange = { bound: (from: Key, to: Key): Range => ({ from, to }) };

function sizeOf(value: unknown): number {
  let bytes = 0;
  const text = JSON.stringify(value, (_, part: unknown) => {
    if (!(part instanceof Uint8Array)) return part instanceof Map ? [...part] : part;
    bytes += part.length;
    return null;
  });
  return text.length + bytes;
}

const dateOf = (value: unknown): unknown => (value as { kept?: { savedAt?: unknown } } | null)?.kept?.savedAt;

const isIn = (key: Key, which: Key | Range): boolean =>
  typeof which === 'object' && 'from' in which
    ? compare(key, which.from) >= 0 && compare(key, which.to) <= 0
    : compare(key, which) === 0;

function compare(a: Key, b: Key): number {
  const [those, others] = [[a].flat(), [b].flat()];
  const at = those.findIndex((part, index) => part !== others[index]);
  if (at < 0) return those.length - others.length;
  return those[at]! < others[at]! ? -1 : 1;
}

/** A browser's settings in memory. */
export function fakeSettings(): Storage {
  const texts = new Map<string, string>();
  return {
    get length() {
      return texts.size;
    },
    key: (at) => [...texts.keys()][at] ?? null,
    getItem: (name) => texts.get(name) ?? null,
    setItem: (name, text) => void texts.set(name, text),
    removeItem: (name) => void texts.delete(name),
    clear: () => texts.clear(),
  };
}
