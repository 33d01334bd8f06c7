/**
 * An undo history in chunks, so that a write carries what is new and not all that was ever done. The steps, done and undone, stand
 * in one row, cut after every twentieth that this page has seen. The last chunk is written with the document; the others are
 * written once each, beside it, under a name of their own. A step that takes the place of undone ones begins a chunk that was
 * never written: nothing that was written is ever changed.
 */
import * as v from 'valibot';
import type { Kept } from './persistence.ts';

const SIZE = 20;

/** Steps by the name of their chunk. */
export type Chunks = ReadonlyMap<string, readonly unknown[]>;

/** What stands with the document: how many steps are done, the names and sizes of the chunks, and the steps of the last one. */
const headSchema = v.object({
  version: v.number(),
  done: v.pipe(v.number(), v.safeInteger(), v.minValue(0)),
  chunks: v.array(v.tuple([v.string(), v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(SIZE))])),
  last: v.array(v.unknown()),
});
type Head = v.InferOutput<typeof headSchema>;

/** What is written: the document, with the head of its history in the place of the whole, and the chunks beside it. */
export interface InChunks<Document> {
  readonly document: Document;
  readonly chunks: Chunks;
}

export interface Chunking {
  /** A history that is none stays as it is. */
  cut<Document extends { readonly kept: Kept }>(document: Document): InChunks<Document>;
}

/** One for all that a page writes. `page` is a name that no other has, so that no two pages give one name to two chunks. */
export function createChunking(page: string): Chunking {
  const numbers = new WeakMap<object, number>();
  let seen = 0;

  function numberOf(step: object): number {
    const known = numbers.get(step);
    if (known !== undefined) return known;
    numbers.set(step, seen);
    return seen++;
  }

  function grouped(steps: readonly object[]): object[][] {
    const groups: object[][] = [];
    let at = -1;
    for (const step of steps) {
      const group = Math.floor(numberOf(step) / SIZE);
      if (group !== at) groups.push([]);
      at = group;
      groups.at(-1)!.push(step);
    }
    return groups;
  }

  // A step is made to follow one other, so what ends with it never differs; what it begins with does, once the oldest are let go.
  const nameOf = (steps: readonly object[]): string => `${page}-${numberOf(steps[0]!)}-${numberOf(steps.at(-1)!)}`;

  return {
    cut(document) {
      const { kept } = document;
      const whole = v.safeParse(wholeSchema, kept.history);
      if (!whole.success) return { document, chunks: new Map() };
      const { version, past, future } = whole.output;
      const groups = grouped([...past, ...future]);
      const last = groups.pop() ?? [];
      const named = groups.map((steps) => [nameOf(steps), steps] as const);
      const head: Head = {
        version,
        done: past.length,
        chunks: named.map(([name, steps]) => [name, steps.length]),
        last,
      };
      return { document: { ...document, kept: { ...kept, history: head } }, chunks: new Map(named) };
    },
  };
}

const steps = v.array(v.custom<object>((step) => typeof step === 'object' && step !== null));
const wholeSchema = v.object({ version: v.number(), past: steps, future: steps });

/** What was found in a document's history, whole again. Of a chunk that is not there the steps are null, which no history takes. */
function wholeAgain(found: unknown, chunk: (name: string) => unknown): unknown {
  const head = v.safeParse(headSchema, found);
  if (!head.success) return found;
  const { version, done, chunks, last } = head.output;
  const all = chunks.flatMap(([name, count]) => {
    const there = chunk(name);
    return Array.isArray(there) && there.length === count ? (there as unknown[]) : Array<null>(count).fill(null);
  });
  all.push(...last);
  return { version, past: all.slice(0, done), future: all.slice(done) };
}

/** The same of what was found in a slot, or jotted down: the history of the document in it, where there is one. */
export function documentAgain<Found>(found: Found, chunk: (name: string) => unknown): Found {
  if (!isObject(found) || !isObject(found['kept'])) return found;
  const { kept } = found;
  return { ...found, kept: { ...kept, history: wholeAgain(kept['history'], chunk) } };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
