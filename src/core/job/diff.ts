/**
 * What an edit changed: a value of its own that can be applied, turned round and written as JSON. Records are named by collection and
 * id, lists without ids by position, each by no more than what changed (change.ts); a record that a diff does not name keeps its identity when the diff is applied, which is what lets a derivation hand on what it
 * already knows.
 *
 * The order of a collection is given as a list of ids, and only where ids came, went or moved.
 */
import {
  appliedAll,
  changesBetween,
  fits,
  swapped,
  swappedIfFit,
  swapsBetween,
  swapsTurnedRound,
  turnedRound,
  type Change,
  type Swap,
} from './change.ts';
import { COLLECTIONS } from './kinds.ts';
import type { Collection, Job } from './types.ts';

export interface CollectionDiff {
  readonly records: readonly Change[];
  /** Of the list of ids. */
  readonly order?: readonly Swap[];
}

export interface JobDiff {
  /** Everything of the job that is no collection of records, blocks this program does not know among it. */
  readonly head: readonly Change[];
  readonly collections: { readonly [C in Collection]?: CollectionDiff };
}

type AnyRecord = { readonly id: string };

/** Whether it changes nothing. */
export const isEmptyDiff = ({ head, collections }: JobDiff): boolean =>
  head.length === 0 && Object.keys(collections).length === 0;

/** What turns `before` into `after`. */
export function diffJobs(before: Job, after: Job): JobDiff {
  return {
    head: changesBetween(headOf(before), headOf(after)),
    collections: eachCollection((collection) =>
      before[collection] === after[collection] ? undefined : diffRecords(before[collection], after[collection]),
    ),
  };
}

/** The job after the diff; the very same job when the diff is empty. Throws when the diff was made from another job. */
export function applyDiff(job: Job, diff: JobDiff): Job {
  if (isEmptyDiff(diff)) return job;
  const head = appliedAll(headOf(job), diff.head);
  const records = eachCollection((collection) => {
    const changed = diff.collections[collection];
    return changed ? applyToRecords(job[collection], changed) : job[collection];
  });
  return { ...Object.fromEntries(head), ...records } as unknown as Job;
}

/** Whether the job is just what the diff was made from, wherever the diff touches it. */
export function fitsJob(job: Job, { head, collections }: JobDiff): boolean {
  return (
    areThere(headOf(job), head) &&
    COLLECTIONS.every((collection) => {
      const changed = collections[collection];
      if (!changed) return true;
      const present = byId(job[collection]);
      if (!areThere(present, changed.records)) return false;
      const left = appliedAll(present, changed.records);
      const after = swappedIfFit(ids(job[collection]), changed.order ?? []) as readonly string[] | null;
      return (
        after !== null &&
        left.size === after.length &&
        new Set(after).size === after.length &&
        after.every((id) => left.get(id)?.id === id)
      );
    })
  );
}

const areThere = (present: ReadonlyMap<string, unknown>, changed: readonly Change[]): boolean =>
  new Set(changed.map(({ key }) => key)).size === changed.length &&
  changed.every((change) => fits(present.get(change.key), change));

/** The diff that takes the change back. */
export function invertDiff({ head, collections }: JobDiff): JobDiff {
  return {
    head: head.map(turnedRound),
    collections: eachCollection((collection) => {
      const changed = collections[collection];
      if (!changed) return undefined;
      const { records, order } = changed;
      return collectionDiff(records.map(turnedRound), swapsTurnedRound(order ?? []));
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
  collectionDiff(changesBetween(byId(before), byId(after)), swapsBetween(ids(before), ids(after)));

function collectionDiff(records: readonly Change[], order: readonly Swap[]): CollectionDiff | undefined {
  if (order.length > 0) return { records, order };
  return records.length === 0 ? undefined : { records };
}

function applyToRecords(present: readonly AnyRecord[], { records, order }: CollectionDiff): readonly AnyRecord[] {
  const result = appliedAll(byId(present), records);
  const sequence = swapped(ids(present), order ?? []) as readonly string[];
  return sequence.map((id) => {
    const record = result.get(id);
    if (!record) throw new Error(`the diff was made from another job: it has no ${id}`);
    return record;
  });
}
