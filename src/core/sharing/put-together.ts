/**
 * The job that the cells say, through the door for files: the same on every device that has the same cells, whatever way they came.
 *
 * Two that work apart can make together what neither would: one takes out a point, the other puts a node on it. A record that another
 * refers to is therefore there again, since it was needed; and of two tubes that were given one number the one that had it later gets the
 * next. Whatever else does not go together is not decided here: the door says what is wrong, and persons mend it.
 */
import { isFields } from '../job/change.ts';
import { sameData } from '../job/equal.ts';
import type { Fault } from '../job/fault.ts';
import { isReference } from '../job/kinds/kind.ts';
import { kindOf, LISTS } from '../job/kinds.ts';
import { parseJob, readAgain, shapeAgain } from '../job/parse.ts';
import type { Plain, PlainObject } from '../job/plain.ts';
import { bareId, pieceNamed } from '../job/reference.ts';
import { serialiseJob } from '../job/serialise.ts';
import type { Collection, Job } from '../job/types.ts';
import { remembered } from '../remembered.ts';
import { keyOf, pathOf, type Cells, type Entry, type Group, type Path } from './entries.ts';
import { HEAD, recordsOf } from './laid-out.ts';
import { SHARED_LISTS, type SharedList } from './lists.ts';
import type { Order } from './places.ts';
import { byPlace, recordIn, type Told } from './record-in.ts';
import type { Shared } from './written.ts';

export type Put =
  | {
      readonly ok: true;
      readonly shared: Shared;
      /** What the cells say before anything of it was put right. */
      readonly found: Shared;
    }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** What the cells say, beside the job that the device shows: what is the same in it stays the same object. */
export function putTogether(cells: Cells, shown: Job): Put {
  const needed = new Set<string>();
  const found = fileOf(cells, shown, needed);
  for (;;) {
    const laid = needed.size === 0 ? found : fileOf(cells, shown, needed);
    const { file, orders } = putRight(laid, cells, shown);
    const job = readAgain(file, { file: shown, job: shown });
    if (job !== null) {
      const shared = { job: keepingRecords(job, shown), orders, cells };
      return { ok: true, shared, found: { job: found.file, orders: found.orders, cells } };
    }
    const missing = missingIn(file, shown, cells).filter((key) => !needed.has(key));
    if (missing.length === 0) return { ok: false, faults: faultsOf(file) };
    for (const key of missing) needed.add(key);
  }
}

function faultsOf(file: Job): readonly Fault[] {
  const parsed = parseJob(serialiseJob(file));
  if (parsed.ok) throw new Error('the whole door lets in what it refused record by record');
  return parsed.faults;
}

interface Laid {
  readonly file: Job;
  readonly orders: ReadonlyMap<string, Order>;
}

/** Plain data in the form of a job, which no door has seen. */
function fileOf(cells: Cells, shown: Job, needed: ReadonlySet<string>): Laid {
  const head: Mutable = {};
  const lists = new Map<string, (Told & { readonly key: string })[]>();
  for (const [key, group] of cells) {
    const [list = '', record = ''] = pathOf(key);
    if (list === HEAD) setIn(head, [record], blockOf(group));
    else if (SHARED_LISTS.has(list)) {
      const told = recordIn(group);
      if (told.isGone && !needed.has(key)) continue;
      const there = lists.get(list) ?? [];
      if (there.length === 0) lists.set(list, there);
      there.push({ ...told, key: record });
    }
  }
  const orders = new Map<string, Order>();
  const own = ['format', 'version', 'idMark'].flatMap((key) => (key in shown ? [[key, shown[key as keyof Job]]] : []));
  Object.assign(head, Object.fromEntries(own));
  for (const [name, { at }] of SHARED_LISTS) {
    const told = (lists.get(name) ?? []).toSorted(byPlace);
    if (told.length > 0) orders.set(name, { keys: told.map(({ key }) => key), places: told.map(({ place }) => place) });
    if (at.length === 1 || told.length > 0)
      setIn(
        head,
        at,
        told.map(({ record }) => record),
      );
  }
  return { file: keepingRecords(head as unknown as Job, shown), orders };
}

/** What two have made together that neither would have: numbers that stand twice, a bend run that both have begun. */
function putRight({ file, orders }: Laid, cells: Cells, shown: Job): Laid {
  let [right, rightOrders]: [Job, ReadonlyMap<string, Order>] = [withNumbersApart(file, cells), orders];
  for (const [name, list] of SHARED_LISTS) {
    const [records, order] = [recordsOf(right, list), orders.get(name)];
    if (!list.isOver || order === undefined) continue;
    const one = oneOfEach(records, order, list);
    if (one.records.length === records.length) continue;
    right = { ...right, [name]: one.records };
    rightOrders = new Map(rightOrders).set(name, one.order);
  }
  return { file: right === file ? file : keepingRecords(right, shown), orders: rightOrders };
}

/** Of records under one natural key the last, with what the others have in their lists and it has not. */
function oneOfEach(
  records: readonly PlainObject[],
  { keys, places }: Order,
  list: SharedList,
): { readonly records: readonly PlainObject[]; readonly order: Order } {
  const last = new Map(records.map((record, i) => [list.keyOf!(record), i]));
  const kept = [...last.values()].toSorted((a, b) => a - b);
  const joined = kept.map((at) => {
    const others = records.filter((record, i) => i !== at && list.keyOf!(record) === list.keyOf!(records[at]!));
    return others.reduce((one, other) => joinedLists(one, other, list), records[at]!);
  });
  return { records: joined, order: { keys: kept.map((i) => keys[i]!), places: kept.map((i) => places[i]!) } };
}

function joinedLists(one: PlainObject, other: PlainObject, { within = {} }: SharedList): PlainObject {
  const joined = Object.entries(within).flatMap(([field, nameOf]) => {
    const [own, more] = [one[field] ?? [], other[field] ?? []] as readonly [readonly Plain[], readonly Plain[]];
    const names = new Set(own.map(nameOf));
    const missing = more.filter((item) => !names.has(nameOf(item)));
    return missing.length === 0 ? [] : [[field, [...own, ...missing]] as const];
  });
  return { ...one, ...Object.fromEntries(joined) };
}

type Mutable = { [key: string]: Plain };

/** What stands under one name of the job's head: a value, or a block of values. Where both were written the block counts: the door judges what comes of it. */
const blockOf = remembered((group: Group): Plain | undefined => {
  const values = [...group.values()].filter(({ counts }) => counts.value !== undefined);
  return blockFrom(values.map(({ path, counts }) => ({ path: path.slice(2), value: counts.value! })));
});

interface Leaf {
  readonly path: Path;
  readonly value: Plain;
}

function blockFrom(leaves: readonly Leaf[]): Plain | undefined {
  const inside = new Map<string, Leaf[]>();
  for (const { path, value } of leaves) {
    const [key, ...rest] = path;
    if (key === undefined || key in Object.prototype) continue;
    const there = inside.get(key) ?? [];
    if (there.length === 0) inside.set(key, there);
    there.push({ path: rest, value });
  }
  if (inside.size === 0) return leaves.find(({ path }) => path.length === 0)?.value;
  const block = [...inside].map(([key, within]) => [key, blockFrom(within)] as const);
  return Object.fromEntries(block.filter(([, value]) => value !== undefined)) as PlainObject;
}

/** A list put into the block that it stands in; the block comes with it. */
function setIn(object: Mutable, [key, ...rest]: readonly string[], value: Plain | undefined): void {
  if (value === undefined || key === undefined || key in Object.prototype) return;
  if (rest.length === 0) {
    object[key] = value;
    return;
  }
  const inside: Mutable = isFields(object[key]) ? { ...object[key] } : {};
  object[key] = inside;
  setIn(inside, rest, value);
}

/** The file with the very records, lists and blocks of the job that is shown wherever they hold the same. */
function keepingRecords(file: Job, shown: Job): Job {
  const same = Object.entries(file).map(([key, value]) => {
    const before = (shown as unknown as Readonly<Record<string, unknown>>)[key];
    if (sameData(value, before)) return [key, before] as const;
    const list = SHARED_LISTS.get(key);
    if (list === undefined || !Array.isArray(value)) return [key, value] as const;
    const known = new Map(recordsOf(shown, list).map((record, i) => [list.keyOf?.(record) ?? String(i), record]));
    const kept = (value as readonly PlainObject[]).map((record, i) => {
      const was = known.get(list.keyOf?.(record) ?? String(i));
      return sameData(record, was) ? was : record;
    });
    return [key, kept] as const;
  });
  const isShown =
    same.length === Object.keys(shown).length && same.every(([key, value]) => shown[key as keyof Job] === value);
  return isShown ? shown : (Object.fromEntries(same) as unknown as Job);
}

/** Of tubes that go by one number the one that had it first keeps it, the others get the next that nobody ever had. */
function withNumbersApart(file: Job, cells: Cells): Job {
  const { numbers, lastNumber } = file;
  if (!isFields(numbers)) return file;
  const given = cells.get(keyOf([HEAD, 'numbers']));
  const writtenOf = (tube: string): Entry | undefined => given?.get(keyOf([tube]))?.counts;
  const firstFirst = Object.entries(numbers).toSorted(([a], [b]) => isBefore(writtenOf(a), writtenOf(b)));
  const isNumber = (value: unknown): value is number => typeof value === 'number';
  const greatest = Math.max(0, ...[...Object.values(numbers), lastNumber].filter(isNumber));
  const taken = new Set<number>();
  let last = greatest;
  const apart = firstFirst.map(([tube, number]) => {
    const is = taken.has(number) ? (last += 1) : number;
    taken.add(is);
    return [tube, is] as const;
  });
  if (last === greatest && (lastNumber === undefined || lastNumber === greatest)) return file;
  return { ...file, numbers: Object.fromEntries(apart), lastNumber: last };
}

const isBefore = (a: Entry | undefined, b: Entry | undefined): number =>
  (a?.at ?? 0) - (b?.at ?? 0) || ((a?.device ?? '') < (b?.device ?? '') ? -1 : 1);

/** Keys of records that were taken out and that others refer to; none where the file has not the shape of a job. */
function missingIn(file: Job, shown: Job, cells: Cells): readonly string[] {
  const job = shapeAgain(file, { file: shown, job: shown });
  if (job === null) return [];
  return LISTS.flatMap((list) => {
    const records: readonly object[] = job[list];
    const kind = kindOf(list);
    const beyond = records.flatMap((record, i) => kind.beyondShape?.(record as never, '', i, records as never) ?? []);
    return beyond.filter(isReference).flatMap(({ list: into, to }) => {
      const there = idsIn(job, into);
      const names = [bareId(to), pieceNamed(to)?.member].filter((name) => name !== undefined);
      if (names.some((name) => there.has(name))) return [];
      return names.map((name) => keyOf([into, name])).filter((key) => cells.has(key));
    });
  });
}

const idsIn = (job: Job, list: Collection): ReadonlySet<string> => idsOf(job[list]);
const idsOf = remembered(
  (records: Job[Collection]): ReadonlySet<string> =>
    new Set((records as readonly { readonly id: string }[]).map(({ id }) => id)),
);
