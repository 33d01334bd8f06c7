/**
 * Edits of one record, whatever its kind. Every edit is job -> job; what it does not touch keeps its identity, and an
 * edit that changes nothing, or names a record that is not there, gives the same job back.
 */
import { mapKeeping } from '../job/map-keeping.ts';
import type { Fault } from '../job/fault.ts';
import type { Collection, Job } from '../job/types.ts';

/** The changed job, or why it cannot be changed. */
export type Edited = Job | readonly Fault[];

export type RecordOf<C extends Collection> = Job[C][number];
/** What may be set on a record: anything but its id, which others refer to. */
export type Fields<C extends Collection> = Partial<Omit<RecordOf<C>, 'id'>>;

export function findRecord<C extends Collection>(job: Job, collection: C, id: string): RecordOf<C> | undefined {
  const records: readonly RecordOf<C>[] = job[collection];
  return records.find((record) => record.id === id);
}

/** The job with the record that `change` makes in place of the one with this id. */
export function changeRecord<C extends Collection>(
  job: Job,
  collection: C,
  id: string,
  change: (record: RecordOf<C>) => RecordOf<C>,
): Job {
  return withRecords(
    job,
    collection,
    mapKeeping<RecordOf<C>>(job[collection], (record) => (record.id === id ? change(record) : record)),
  );
}

export const updateRecord = <C extends Collection>(job: Job, collection: C, id: string, fields: Fields<C>): Job =>
  changeRecord(job, collection, id, (record) => patched(record, fields as Partial<RecordOf<C>>));

export const appendRecord = <C extends Collection>(job: Job, collection: C, record: RecordOf<C>): Job =>
  withRecords(job, collection, [...job[collection], record] as readonly RecordOf<C>[]);

export function takeOut(job: Job, collection: Collection, ids: ReadonlySet<string>): Job {
  const records: readonly { readonly id: string }[] = job[collection];
  const rest = records.filter((record) => !ids.has(record.id));
  return rest.length === records.length ? job : { ...job, [collection]: rest };
}

export const withRecords = <C extends Collection>(job: Job, collection: C, records: readonly RecordOf<C>[]): Job =>
  records === job[collection] ? job : { ...job, [collection]: records };

/** The object with these fields; the same object when it has them already. */
export function patched<T extends object>(value: T, fields: Partial<T>): T {
  const keys = Object.keys(fields) as (keyof T)[];
  return keys.every((key) => value[key] === fields[key]) ? value : { ...value, ...fields };
}
