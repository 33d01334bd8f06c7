/** What a device writes when its job became another: entries in the cells that changed, and in no others. */
import { sameData } from '../job/equal.ts';
import { swapsBetween } from '../job/change.ts';
import type { Plain, PlainObject } from '../job/plain.ts';
import type { Job } from '../job/types.ts';
import { entriesOf, keyOf, type Cells, type Entry, type Path } from './entries.ts';
import { distinct, headCells, laidOut, PLACE, recordsOf, type Laid } from './laid-out.ts';
import { SHARED_LISTS, type SharedList } from './lists.ts';
import { NO_ORDER, placed, type Order } from './places.ts';
import { recordIn } from './record-in.ts';

/** The job as a device shows it, and what it knows of how that came. */
export interface Shared {
  readonly job: Job;
  /** By the list's name. */
  readonly orders: ReadonlyMap<string, Order>;
  /** All that is in it. */
  readonly cells: Cells;
}

/** A device that shows nothing of the job yet. */
export const NOTHING_SHARED: Shared = { job: {} as Job, orders: new Map(), cells: new Map() };

/** Who writes, and when. */
export interface Pen {
  readonly device: string;
  /** Later than every time that the device has seen. */
  readonly at: number;
}

export interface Written {
  readonly entries: readonly Entry[];
  readonly orders: ReadonlyMap<string, Order>;
}

type Put = (path: Path, value: Plain | undefined) => void;

/** What turns the job that is shown into `after`, written with the pen. */
export function writtenBetween({ job, orders, cells }: Shared, after: Job, { device, at }: Pen): Written {
  const entries: Entry[] = [];
  const put: Put = (path, value) => {
    entries.push({ device, path, at, over: knownOf(cells, path, device), value });
  };
  writeHead(headCells(job), headCells(after), put);
  const next = new Map(orders);
  for (const [name, list] of SHARED_LISTS) {
    const lists = [recordsOf(job, list), recordsOf(after, list)] as const;
    if (lists[0] === lists[1]) continue;
    const order = orders.get(name) ?? NO_ORDER;
    const keys = keysAfter(list, lists, order.keys, () => `${at.toString(36)} ${device} ${entries.length}`);
    next.set(name, placed(order, keys));
    writeList({ name, list, cells, put }, lists, [order, next.get(name)!]);
  }
  return { entries, orders: next };
}

/** The latest that is known of other devices where the path leads; of a record's place in the whole record. */
export function knownOf(cells: Cells, path: Path, device: string): number {
  const group = cells.get(keyOf(path.slice(0, 2)));
  const cell = group?.get(keyOf(path.slice(2)));
  const known = path[2] === PLACE ? [...(group?.values() ?? [])] : cell === undefined ? [] : [cell];
  const others = known.flatMap(entriesOf).filter((entry) => entry.device !== device);
  return others.reduce((latest, { at }) => Math.max(latest, at), 0);
}

type Values = ReturnType<typeof headCells>;

function writeHead(before: Values, after: Values, put: Put): void {
  for (const [key, { path, value }] of after) if (!sameData(value, before.get(key)?.value)) put(path, value);
  for (const [key, { path }] of before) if (!after.has(key)) put(path, undefined);
}

type Pair<T> = readonly [before: T, after: T];

/** What the records go by: of those without anything of their own each that is new gets a name. */
function keysAfter(
  { keyOf: nameOf, isOver }: SharedList,
  [before, after]: Pair<readonly PlainObject[]>,
  keys: readonly string[],
  newName: () => string,
): readonly string[] {
  let made = 0;
  if (nameOf !== undefined && isOver) {
    const known = new Map(before.map((record, i) => [nameOf(record), keys[i]!]));
    return after.map((record) => known.get(nameOf(record)) ?? `${nameOf(record)} ${newName()}.${(made += 1)}`);
  }
  if (nameOf !== undefined) return distinct(after.map(nameOf));
  let result = keys;
  for (const swap of swapsBetween(before, after)) {
    if ('fields' in swap) continue;
    const names = swap.after.map(() => `${newName()}.${(made += 1)}`);
    result = [...result.slice(0, swap.at), ...names, ...result.slice(swap.at + swap.before.length)];
  }
  return result;
}

interface Sheet {
  readonly name: string;
  readonly list: SharedList;
  readonly cells: Cells;
  readonly put: Put;
}

function writeList(sheet: Sheet, records: Pair<readonly PlainObject[]>, orders: Pair<Order>): void {
  const { name, list, put } = sheet;
  const [before, after] = [0, 1].map((side) => byKey(records[side]!, orders[side]!)) as unknown as Pair<Standings>;
  for (const [key, { place }] of before) if (!after.has(key)) put([name, key, PLACE], [place]);
  for (const [key, { record, place }] of after) {
    const was = before.get(key);
    if (was?.place !== place) put([name, key, PLACE], place);
    if (was?.record === record) continue;
    writeRecord(sheet, key, was && laidOut(was.record, list), laidOut(record, list));
  }
}

type Standings = ReadonlyMap<string, { readonly record: PlainObject; readonly place: number }>;

const byKey = (records: readonly PlainObject[], { keys, places }: Order): Standings =>
  new Map(records.map((record, i) => [keys[i]!, { record, place: places[i]! }]));

/** A record that was not there writes each field that its cells do not say already, and takes out what they say beside. */
function writeRecord({ name, cells, put }: Sheet, key: string, was: Laid | undefined, is: Laid): void {
  const group = cells.get(keyOf([name, key]));
  const told = group && recordIn(group);
  const before = was ?? told ?? { fields: NOTHING, items: new Map<string, Fields>() };
  const at = [name, key];
  for (const [field, value] of is.fields) if (!sameData(value, before.fields.get(field))) put([...at, field], value);
  for (const field of before.fields.keys()) if (!is.fields.has(field)) put([...at, field], undefined);
  for (const field of new Set([...before.items.keys(), ...is.items.keys()])) {
    const [old, now] = [before.items.get(field) ?? NOTHING, is.items.get(field) ?? NOTHING];
    const order = told?.orders.get(field) ?? NO_ORDER;
    const { keys, places } = placed(order, [...now.keys()]);
    const placeBefore = new Map(order.keys.map((item, i) => [item, order.places[i]!]));
    for (const [i, item] of keys.entries()) {
      const isSame = old.has(item) && sameData(now.get(item), old.get(item)) && placeBefore.get(item) === places[i];
      if (!isSame) put([...at, field, item], [places[i]!, now.get(item)!]);
    }
    for (const item of old.keys()) if (!now.has(item)) put([...at, field, item], undefined);
  }
}

type Fields = ReadonlyMap<string, Plain>;
const NOTHING: Fields = new Map();
