/**
 * Where a job has its records, and by what one is known again in another state of the job: by its id; without one by what there can be only
 * one of, such as the run of a tube; and what is a plain entry of a log by all that it says. What there is twice of one key is told apart
 * by the count.
 */
import { kindOf, LISTS } from '../job/kinds.ts';
import { bareId } from '../job/reference.ts';
import type { Job, List } from '../job/types.ts';

/** The lists of the job, and two that stand within its blocks. */
export type ShelfName = List | 'samples' | 'took';

export interface Shelf {
  readonly name: ShelfName;
  readonly records: (job: Job) => readonly object[];
  /** The job with these in their place. */
  readonly put: (job: Job, records: readonly object[]) => Job;
  /** Without the count of what has the same one. */
  readonly keyOf: (record: object) => string;
}

type Fields = Readonly<Record<string, unknown>>;

/** The key by some of its fields. */
const by =
  (...fields: readonly string[]) =>
  (record: object): string =>
    fields.map((field) => (record as Readonly<Record<string, string | number>>)[field] ?? '').join('|');

/** All that it says, whatever the order of its keys. */
const whole = (record: object): string => JSON.stringify(inOrder(record));

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, item]) => [key, inOrder(item)]));
}

const WITHOUT_ID: { readonly [L in List]?: Shelf['keyOf'] } = {
  holds: (record) => `${bareId(String((record as Fields)['point']))}|${String((record as Fields)['axis'])}`,
  rules: by('sheet'),
  spares: by('section', 'length', 'batch'),
  pulls: whole,
  bent: by('tube'),
  made: by('tube'),
  feeds: by('tube'),
  seen: by('finding', 'tube', 'end', 'bend'),
  printed: by('tube'),
  certificates: by('section', 'batch'),
};

const ofList = (name: List): Shelf => ({
  name,
  records: (job) => job[name],
  put: (job, records) => ({ ...job, [name]: records }),
  keyOf: kindOf(name).letter === undefined ? (WITHOUT_ID[name] ?? whole) : by('id'),
});

/** The list within a block of the job; the block goes where nothing is left in it. */
function withinBlock(name: 'samples' | 'took', block: 'survey' | 'quote', keyOf: Shelf['keyOf']): Shelf {
  return {
    name,
    keyOf,
    records: (job) => (job[block] as { readonly [K in typeof name]?: readonly object[] } | undefined)?.[name] ?? [],
    put: (job, records) => withField(job, `${block}.${name}`, records.length === 0 ? undefined : records),
  };
}

/** All of them: the lists in the order in which a file holds them. */
export const SHELVES: readonly Shelf[] = [
  ...LISTS.map(ofList),
  withinBlock('samples', 'survey', by('name')),
  withinBlock('took', 'quote', whole),
];

/** The records by their keys, in their order. */
export function keyed({ records, keyOf }: Shelf, job: Job): ReadonlyMap<string, object> {
  const counts = new Map<string, number>();
  return new Map(
    records(job).map((record) => {
      const key = keyOf(record);
      const count = (counts.get(key) ?? 0) + 1;
      counts.set(key, count);
      return [count === 1 ? key : `${key} (${count})`, record];
    }),
  );
}

/** Blocks whose fields are looked at one by one. */
const BLOCKS: readonly string[] = ['survey', 'stock', 'quote'];
const NO_FIELDS = new Set<string>([...LISTS, 'format', 'version', 'idMark', 'numbers', 'lastNumber']);

/** What of the job is no record, by name: carMass, stock.kerf. The numbers of tubes are not among it: they are given once, in each state by itself; nor the mark of its ids, which is a device's own. */
export function headFields(job: Job): ReadonlyMap<string, unknown> {
  return new Map(
    Object.entries(job).flatMap(([key, value]): readonly (readonly [string, unknown])[] => {
      if (NO_FIELDS.has(key)) return [];
      if (!BLOCKS.includes(key) || typeof value !== 'object' || value === null) return [[key, value]];
      const shelved = new Set(SHELVES.map(({ name }): string => name));
      return Object.entries(value as Fields).flatMap(([field, item]) =>
        shelved.has(field) ? [] : [[`${key}.${field}`, item] as const],
      );
    }),
  );
}

/** The job with that field, by its name as headFields has it; undefined takes it away, and its block where nothing else is in it. */
export function withField(job: Job, name: string, value: unknown): Job {
  const [first, second] = name.split('.') as [string, string?];
  if (second === undefined || !BLOCKS.includes(first)) return put(job, name, value) as Job;
  const block = put((job as unknown as Readonly<Record<string, object>>)[first] ?? {}, second, value);
  return put(job, first, Object.keys(block).length === 0 ? undefined : block) as Job;
}

function put(fields: object, key: string, value: unknown): object {
  const { [key]: _, ...rest } = fields as Fields;
  return value === undefined ? rest : { ...fields, [key]: value };
}
