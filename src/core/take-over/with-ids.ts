/** A job whose records go by other ids, with all that names them. */
import { mapKeeping } from '../job/map-keeping.ts';
import { bareId, isPrimed, pieceNamed, primed } from '../job/reference.ts';
import { LISTS } from '../job/kinds.ts';
import { referencesOf } from '../job/references.ts';
import type { AnyRecord, Collection, Job, List } from '../job/types.ts';

/** New ids by old ones, of records of one list. */
export type NewIds = ReadonlyMap<string, string>;

/** The job with these ids in the place of those: of the records, of what refers to them, and of what only names them, as a pull its tube. */
export function withIds(job: Job, list: Collection, ids: NewIds): Job {
  if (ids.size === 0) return job;
  const renamed = renaming(job, list, ids);
  const lists = LISTS.map((each) => [each, mapKeeping<AnyRecord>(job[each], inRecord(each, list, ids, renamed))]);
  return inHead({ ...job, ...Object.fromEntries(lists) } as Job, list, renamed);
}

type Rename = (reference: string) => string;

/** Of a reference with its prime, and of a piece by its bar. */
function renaming(job: Job, list: Collection, ids: NewIds): Rename {
  const own = new Set<string>(job[list].map(({ id }) => id));
  return (reference) => {
    const bare = bareId(reference);
    const piece = list !== 'members' || own.has(bare) ? null : pieceNamed(bare);
    const id =
      piece === null ? ids.get(bare) : ids.has(piece.member) ? `${ids.get(piece.member)}.${piece.piece}` : undefined;
    if (id === undefined) return reference;
    return isPrimed(reference) ? primed(id) : id;
  };
}

const inRecord =
  (list: List, to: Collection, ids: NewIds, rename: Rename) =>
  (record: AnyRecord): AnyRecord => {
    let result: unknown = record;
    if (list === to && 'id' in record && ids.has(record.id)) result = { ...record, id: ids.get(record.id) };
    for (const reference of referencesOf(list, record)) {
      if (reference.list === to) result = changedAt(result, keysOf(reference.place), rename);
    }
    for (const { path, names } of NAMED_IN[list] ?? []) if (names === to) result = changedAt(result, path, rename);
    return result as AnyRecord;
  };

/** '.ends[0].against[1]' by its keys. */
const keysOf = (place: string): readonly string[] => place.split(/[.[\]]+/u).filter((key) => key !== '');

interface NamedAt {
  /** '*' is every item of a list. */
  readonly path: readonly string[];
  readonly names: Collection;
}

const ofTube = (...path: readonly string[]): NamedAt => ({ path, names: 'members' });

/** What names a record and is no reference, since it stays when that goes. What was seen and old variants keep their text. */
const NAMED_IN: { readonly [L in List]?: readonly NamedAt[] } = {
  members: [{ path: ['keptAngles', '*', 'corner'], names: 'nodes' }],
  pulls: [ofTube('tube')],
  seen: [ofTube('tube')],
  printed: [ofTube('tube')],
  photos: [ofTube('tubes', '*')],
  sawn: [ofTube('cuts', '*', 'tube'), { path: ['from'], names: 'stickSorts' }, { path: ['kept'], names: 'stickSorts' }],
  made: [ofTube('held', 'ends', '*', 'cutters', '*', 'against')],
  bent: [
    { path: ['drawn', 'die', 'id'], names: 'dies' },
    { path: ['drawn', 'section', 'id'], names: 'sections' },
  ],
};

/** The same of sticks that are being sawn; and numbers stand by the tube. */
const NAMED_IN_STOCK: readonly NamedAt[] = [
  ofTube('begun', '*', 'cuts', '*', 'tube'),
  { path: ['begun', '*', 'stick'], names: 'stickSorts' },
];

function inHead(job: Job, list: Collection, rename: Rename): Job {
  const named = NAMED_IN_STOCK.filter(({ names }) => names === list);
  const stock = named.reduce<unknown>((block, { path }) => changedAt(block, path, rename), job.stock) as Job['stock'];
  const numbers = list === 'members' ? job.numbers : undefined;
  return {
    ...job,
    ...(stock !== undefined && { stock }),
    ...(numbers !== undefined && {
      numbers: Object.fromEntries(Object.entries(numbers).map(([tube, number]) => [rename(tube), number])),
    }),
  };
}

/** The value with the text that stands there changed; the same value where none does, and where it stays. */
function changedAt(value: unknown, [key, ...rest]: readonly string[], change: Rename): unknown {
  if (key === undefined) return typeof value === 'string' ? change(value) : value;
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    return mapKeeping<unknown>(value, (item, i) =>
      key === '*' || key === String(i) ? changedAt(item, rest, change) : item,
    );
  }
  if (!Object.hasOwn(value, key)) return value;
  const before = (value as Readonly<Record<string, unknown>>)[key];
  const after = changedAt(before, rest, change);
  return after === before ? value : { ...value, [key]: after };
}
