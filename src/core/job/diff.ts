/**
 * What an edit changed: a value of its own that can be applied, turned round, joined with the next and written as
 * JSON. Records are told by collection and id, whole; a record that a diff does not name keeps its identity when the
 * diff is applied, which is what lets a derivation hand on what it already knows.
 *
 * The order of a collection is told as whole lists of ids, and only where ids came, went or moved: positions that
 * shift under one another would make joining two diffs a puzzle, and a list of ids is small beside its records.
 */
import { sameData } from './equal.ts';
import type { Job } from './types.ts';
import { COLLECTIONS, type Collection } from './validate.ts';

/** Something with a name before and after; `before` or `after` is absent where it did not exist. */
export interface Change {
  readonly key: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

export interface CollectionDiff {
  readonly records: readonly Change[];
  readonly order?: { readonly before: readonly string[]; readonly after: readonly string[] };
}

export interface JobDiff {
  /** Everything of the job that is no collection of records, blocks this program does not know among it. */
  readonly head: readonly Change[];
  readonly collections: { readonly [C in Collection]?: CollectionDiff };
}

type AnyRecord = { readonly id: string };

export const isEmptyDiff = ({ head, collections }: JobDiff): boolean =>
  head.length === 0 && Object.keys(collections).length === 0;

/** What turns `before` into `after`. */
export function diffJobs(before: Job, after: Job): JobDiff {
  return {
    head: changes(headOf(before), headOf(after)),
    collections: eachCollection((collection) =>
      before[collection] === after[collection] ? undefined : diffRecords(before[collection], after[collection]),
    ),
  };
}

/** The job after the diff; the very same job when the diff is empty. Throws when the diff was made from another job. */
export function applyDiff(job: Job, diff: JobDiff): Job {
  if (isEmptyDiff(diff)) return job;
  const head = applyChanges(headOf(job), diff.head);
  const records = eachCollection((collection) => {
    const changed = diff.collections[collection];
    return changed ? applyToRecords(job[collection], changed) : job[collection];
  });
  return { ...Object.fromEntries(head), ...records } as unknown as Job;
}

/** Whether the job is just what the diff was made from, wherever the diff touches it. */
export function fitsJob(job: Job, { head, collections }: JobDiff): boolean {
  const found = (present: ReadonlyMap<string, unknown>, changed: readonly Change[]) =>
    changed.every(({ key, before }) => sameData(present.get(key), before));
  return (
    found(headOf(job), head) &&
    COLLECTIONS.every((collection) => {
      const changed = collections[collection];
      if (!changed) return true;
      const present = byId(job[collection]);
      const sequence = ids(job[collection]);
      const { before, after } = changed.order ?? { before: sequence, after: sequence };
      const left = applyChanges(present, changed.records);
      return (
        found(present, changed.records) &&
        sameData(sequence, before) &&
        left.size === after.length &&
        new Set(after).size === after.length &&
        after.every((id) => left.get(id)?.id === id)
      );
    })
  );
}

/** The diff that takes the change back. */
export function invertDiff({ head, collections }: JobDiff): JobDiff {
  return {
    head: head.map(turnedRound),
    collections: eachCollection((collection) => {
      const changed = collections[collection];
      if (!changed) return undefined;
      const { records, order } = changed;
      return {
        records: records.map(turnedRound),
        ...(order && { order: { before: order.after, after: order.before } }),
      };
    }),
  };
}

/** One diff that does what `first` and then `second` do. */
export function squashDiffs(first: JobDiff, second: JobDiff): JobDiff {
  return {
    head: joined(first.head, second.head),
    collections: eachCollection((collection) => {
      const [a, b] = [first.collections[collection], second.collections[collection]];
      if (!a || !b) return a ?? b;
      const before = (a.order ?? b.order)?.before ?? [];
      const after = (b.order ?? a.order)?.after ?? [];
      return collectionDiff(joined(a.records, b.records), before, after);
    }),
  };
}

function eachCollection<T>(value: (collection: Collection) => T | undefined): { [C in Collection]?: T } {
  const entries = COLLECTIONS.map((collection) => [collection, value(collection)] as const);
  return Object.fromEntries(entries.filter(([, item]) => item !== undefined)) as { [C in Collection]?: T };
}

const headOf = (job: Job): ReadonlyMap<string, unknown> =>
  new Map(Object.entries(job).filter(([key]) => !(COLLECTIONS as readonly string[]).includes(key)));

const byId = (records: readonly AnyRecord[]): ReadonlyMap<string, AnyRecord> =>
  new Map(records.map((record) => [record.id, record]));

const ids = (records: readonly AnyRecord[]): readonly string[] => records.map(({ id }) => id);

const diffRecords = (before: readonly AnyRecord[], after: readonly AnyRecord[]): CollectionDiff | undefined =>
  collectionDiff(changes(byId(before), byId(after)), ids(before), ids(after));

function collectionDiff(
  records: readonly Change[],
  before: readonly string[],
  after: readonly string[],
): CollectionDiff | undefined {
  if (!sameData(before, after)) return { records, order: { before, after } };
  return records.length === 0 ? undefined : { records };
}

function changes(before: ReadonlyMap<string, unknown>, after: ReadonlyMap<string, unknown>): readonly Change[] {
  const keys = new Set([...before.keys(), ...after.keys()]);
  return [...keys].map((key) => change(key, before.get(key), after.get(key))).filter(matters);
}

const change = (key: string, before: unknown, after: unknown): Change => ({
  key,
  ...(before !== undefined && { before }),
  ...(after !== undefined && { after }),
});

const matters = ({ before, after }: Change): boolean => !sameData(before, after);

const turnedRound = ({ key, before, after }: Change): Change => change(key, after, before);

function joined(first: readonly Change[], second: readonly Change[]): readonly Change[] {
  const result = new Map(first.map((item) => [item.key, item]));
  for (const { key, before, after } of second) {
    const earlier = result.get(key);
    result.set(key, change(key, earlier ? earlier.before : before, after));
  }
  return [...result.values()].filter(matters);
}

function applyChanges<T>(present: ReadonlyMap<string, T>, changed: readonly Change[]): ReadonlyMap<string, T> {
  const result = new Map(present);
  for (const { key, after } of changed) {
    if (after === undefined) result.delete(key);
    else result.set(key, after as T);
  }
  return result;
}

function applyToRecords(present: readonly AnyRecord[], { records, order }: CollectionDiff): readonly AnyRecord[] {
  const result = applyChanges(byId(present), records);
  const sequence = order?.after ?? ids(present);
  return sequence.map((id) => {
    const record = result.get(id);
    if (!record) throw new Error(`the diff was made from another job: it has no ${id}`);
    return record;
  });
}
