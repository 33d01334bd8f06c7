/** A job laid out in cells: what of it goes into which. Its inverse is put-together.ts. */
import { isFields } from '../job/change.ts';
import type { Plain, PlainObject } from '../job/plain.ts';
import type { Job } from '../job/types.ts';
import { keyOf, type Path } from './entries.ts';
import { SHARED_LISTS, type SharedList } from './lists.ts';

/** Where a record stands among the others of its list: a number, less than that of the next; within brackets once it was taken out. */
export const PLACE = '#';

/** In no list. */
export const HEAD = '';

/** What a device says of itself stays with it. */
const OWN: ReadonlySet<string> = new Set(['format', 'version', 'idMark']);

/** By key of the path. */
export type Values = ReadonlyMap<string, { readonly path: Path; readonly value: Plain }>;

/** What the job says beside its lists of records, each figure by itself. A list in a block leaves an empty list, which says that it is there. */
export function headCells(job: Job): Values {
  const values = new Map<string, { path: Path; value: Plain }>();
  const lay = (path: Path, value: Plain): void => {
    if (SHARED_LISTS.has(path.join('.'))) put(path, []);
    else if (!isFields(value) || Object.keys(value).length === 0) put(path, value);
    else for (const [key, inside] of Object.entries(value)) lay([...path, key], inside);
  };
  const put = (path: Path, value: Plain): void => void values.set(keyOf(path), { path: [HEAD, ...path], value });
  for (const [key, value] of Object.entries(job as unknown as PlainObject)) {
    if (!OWN.has(key) && !(SHARED_LISTS.has(key) && Array.isArray(value))) lay([key], value);
  }
  return values;
}

/** The records of a shared list; none where the job has not the list. */
export function recordsOf(job: Job, { at }: SharedList): readonly PlainObject[] {
  let found: unknown = job;
  for (const key of at) found = isFields(found) && Object.hasOwn(found, key) ? found[key] : undefined;
  return (found ?? NONE) as readonly PlainObject[];
}

const NONE: readonly PlainObject[] = [];

/** What a record's list within it goes by, and the items by what each goes by. */
export interface Laid {
  /** By field: of a list within the record an empty one. */
  readonly fields: ReadonlyMap<string, Plain>;
  readonly items: ReadonlyMap<string, ReadonlyMap<string, Plain>>;
}

/** A record by its fields. */
export function laidOut(record: PlainObject, { within = {} }: SharedList): Laid {
  const fields = new Map<string, Plain>();
  const items = new Map<string, ReadonlyMap<string, Plain>>();
  for (const [field, value] of Object.entries(record)) {
    const nameOf = Object.hasOwn(within, field) ? within[field] : undefined;
    if (nameOf === undefined || !Array.isArray(value)) fields.set(field, value);
    else {
      fields.set(field, []);
      items.set(field, new Map(distinct(value.map(nameOf)).map((name, i) => [name, value[i]!])));
    }
  }
  return { fields, items };
}

/** Names of which no two are alike: the second of one name is named so. */
export function distinct(names: readonly string[]): readonly string[] {
  const count = new Map<string, number>();
  return names.map((name) => {
    const nth = (count.get(name) ?? 0) + 1;
    count.set(name, nth);
    return nth === 1 ? name : `${name} #${nth}`;
  });
}
