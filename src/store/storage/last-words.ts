/**
 * What had not arrived in the database when the page went. A browser drops a transaction of a page that is gone, though it was sent and
 * committed; its settings (`localStorage`) it writes within the call. So what a page changes in its last moment, the text of a field
 * above all, is put there, deflated, until the next page has entered it.
 */
import { deflateSync, inflateSync, strFromU8, strToU8 } from 'fflate';

export interface LastWords {
  /** Where there is no room, or no such storage, it is not put: it is on its way to the database all the same. */
  put(name: string, value: unknown): void;
  forget(name: string): void;
  /** All that lie there, of all pages, by their names; sound or not. */
  found(): ReadonlyMap<string, unknown>;
}

/** `key` begins the names under which they lie, and no others. `storage` throws where the browser has it switched off. */
export function createLastWords(key: string, storage: () => Storage): LastWords {
  function withStorage<T>(task: (open: Storage) => T, otherwise: T): T {
    try {
      return task(storage());
    } catch {
      return otherwise;
    }
  }

  return {
    put: (name, value) => withStorage((open) => open.setItem(key + name, packed(value)), undefined),
    forget: (name) => withStorage((open) => open.removeItem(key + name), undefined),
    found: () =>
      withStorage((open) => {
        const keys = Array.from({ length: open.length }, (_, at) => open.key(at) ?? '');
        const own = keys.filter((each) => each.startsWith(key));
        return new Map(own.map((each) => [each.slice(key.length), unpacked(open.getItem(each) ?? '')]));
      }, new Map<string, unknown>()),
  };
}

/** A character a byte: a browser counts characters, and a job is a fifth as many. */
const packed = (value: unknown): string => strFromU8(deflateSync(strToU8(JSON.stringify(value)), { level: 1 }), true);

/** What cannot be unpacked is found as it lies there. */
function unpacked(text: string): unknown {
  try {
    return JSON.parse(strFromU8(inflateSync(strToU8(text, true)))) as unknown;
  } catch {
    return text;
  }
}
