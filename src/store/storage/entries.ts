/**
 * What is done with the documents within one transaction of the database: a document is put with the chunks of its history, found whole
 * again, and let go with all that is its own. What is found there to be unsound is moved to a store of its own, in which the last ones stay
 * for download.
 */
import type { IDBPTransaction } from 'idb';
import type { Chunks } from './chunks.ts';
import type { Schema } from './connection.ts';
import { inflated, unpacked, type Packed } from './packed.ts';
import { mayWriteOver, nextStamp, type Damaged, type Jotted, type Stamp } from './persistence.ts';
import { checkStored, damagedFrom, isDamaged } from './records.ts';

/** Damaged records that are kept, the newest. */
const MOST_DAMAGED = 30;

export const EVERYTHING = ['documents', 'chunks', 'versions', 'damaged'] as const;
export type Everything = IDBPTransaction<Schema, typeof EVERYTHING, 'readwrite'>;

export async function addDamaged(transaction: Everything, damaged: Damaged): Promise<void> {
  const store = transaction.objectStore('damaged');
  const before: unknown[] = await store.getAll();
  if (before.some((one) => isDamaged(one) && one.text === damaged.text)) return;
  await store.add(damaged);
  const keys = await store.getAllKeys();
  await Promise.all(keys.slice(0, Math.max(0, keys.length - MOST_DAMAGED)).map((key) => store.delete(key)));
}

/** Puts the document in its slot with the chunks of its history, unless another tab has written there since it was seen. */
export async function enter(
  transaction: Everything,
  { kept, tab, seen }: Packed<Jotted>,
  chunks: Chunks,
  most: number,
): Promise<Stamp | null> {
  const documents = transaction.objectStore('documents');
  const found: unknown = await documents.get(kept.slot);
  const there = inflated(found);
  const before = there === undefined ? null : checkStored(there, kept.slot);
  if (before?.ok === false) await addDamaged(transaction, damagedFrom(there, before.why, Date.now()));
  const stored = before?.ok ? before.value.stamp : undefined;
  if (!mayWriteOver(stored, tab, seen)) return null;
  if (found === undefined) await dropOldest(transaction, most - 1);
  const stamp = nextStamp(stored, tab, seen);
  await putChunks(transaction, kept.slot, chunks);
  // Last, so that a transaction that the browser ends meanwhile is known by its own error.
  await documents.put({ kept, stamp }, kept.slot);
  return stamp;
}

/** Puts those that do not lie there yet, and lets go of those that the document has no more. */
export async function putChunks(transaction: Everything, slot: string, chunks: Chunks): Promise<void> {
  const store = transaction.objectStore('chunks');
  const there = (await store.getAllKeys(chunksOf(slot))).map(([, name]) => name);
  const gone = there.filter((name) => !chunks.has(name));
  const news = [...chunks].filter(([name]) => !there.includes(name));
  await Promise.all([
    ...gone.map((name) => store.delete([slot, name])),
    ...news.map(([name, steps]) => store.put(steps, [slot, name])),
  ]);
}

/** What lies in the slot, its history whole. */
export async function foundIn(
  documents: { get(slot: string): Promise<unknown> },
  store: ChunkStore,
  slot: string,
): Promise<unknown> {
  const [found, chunks] = await Promise.all([documents.get(slot), chunksIn(store, slot)]);
  return unpacked(found, (name) => chunks.get(name));
}

interface ChunkStore {
  getAllKeys(range: IDBKeyRange): Promise<[string, string][]>;
  getAll(range: IDBKeyRange): Promise<(readonly unknown[])[]>;
}

export async function chunksIn(store: ChunkStore, slot: string): Promise<Chunks> {
  const [keys, values] = await Promise.all([store.getAllKeys(chunksOf(slot)), store.getAll(chunksOf(slot))]);
  return new Map(keys.map(([, name], at) => [name, values[at]!]));
}

/** Every name that the slot's chunks may have. */
const chunksOf = (slot: string): IDBKeyRange => IDBKeyRange.bound([slot, ''], [slot, '\uffff']);

export async function dropDocument(transaction: Everything, slot: string): Promise<void> {
  await Promise.all([
    transaction.objectStore('documents').delete(slot),
    transaction.objectStore('chunks').delete(chunksOf(slot)),
  ]);
}

/** Leaves the `most` documents that were saved last, and lets the others go with their versions. */
export async function dropOldest(transaction: Everything, most: number): Promise<void> {
  const versions = transaction.objectStore('versions');
  const oldestFirst = await transaction.objectStore('documents').index('savedAt').getAllKeys();
  for (const slot of oldestFirst.slice(0, Math.max(0, oldestFirst.length - most))) {
    const copies = await versions.index('slot').getAllKeys(slot);
    await Promise.all([dropDocument(transaction, slot), ...copies.map((key) => versions.delete(key))]);
  }
}
