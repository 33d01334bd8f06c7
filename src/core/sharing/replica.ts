/**
 * One device's side of a shared job: what it shows, and all that has come to it. It writes what is edited on it, takes what others wrote, in
 * whatever order and however often, and catches up when it can. What does not go together is held back: it shows the last job that did, and
 * goes on from that.
 */
import type { Fault } from '../job/fault.ts';
import type { Job } from '../job/types.ts';
import { sameData } from '../job/equal.ts';
import type { PlainObject } from '../job/plain.ts';
import { nextTime, pathOf, withEntries, type Cells, type Entry } from './entries.ts';
import { recordsOf } from './laid-out.ts';
import { SHARED_LISTS } from './lists.ts';
import type { Order } from './places.ts';
import { recordIn, type Told } from './record-in.ts';
import { putTogether } from './put-together.ts';
import { NOTHING_SHARED, writtenBetween, type Shared } from './written.ts';

export interface Replica {
  /** No two have one name. */
  readonly device: string;
  readonly shown: Shared;
  /** All that was written anywhere and has come here: what is shown is made of it, and of nothing else. */
  readonly cells: Cells;
  /** Why what has come is not shown; empty where it is. */
  readonly held: readonly Fault[];
}

/** A device that has heard nothing yet, and shows `job` meanwhile. */
export const replicaOf = (device: string, job: Job): Replica => ({
  device,
  shown: { ...NOTHING_SHARED, job },
  cells: new Map(),
  held: [],
});

export interface Edited {
  readonly replica: Replica;
  /** For the others. */
  readonly entries: readonly Entry[];
}

/** The first to share the job writes all of it. `now`: ms since 1970 by the device's clock. */
export const begun = (device: string, job: Job, now: number): Edited =>
  edited({ device, shown: NOTHING_SHARED, cells: new Map(), held: [] }, job, now);

/** The job that is shown became `after` by an edit on this device. */
export function edited(replica: Replica, after: Job, now: number): Edited {
  const { device, shown, cells } = replica;
  const at = nextTime(cells, now);
  const { entries, orders } = writtenBetween(shown, after, { device, at });
  const own: Shared = { job: after, orders, cells: withEntries(shown.cells, entries) };
  return { replica: { ...replica, shown: own, cells: withEntries(cells, entries) }, entries };
}

/** What others wrote has come. Nothing of it is shown until the device catches up. */
export const received = (replica: Replica, entries: Iterable<Entry>): Replica => ({
  ...replica,
  cells: withEntries(replica.cells, entries),
});

/**
 * What has come is shown, if it can be; else it is held back, and said why. What had to be put right in it is written, so that it stays so: every device that puts
 * it right writes the same.
 */
export function caughtUp(replica: Replica, now: number): Edited {
  const { device, cells, shown } = replica;
  const put = putTogether(cells, shown.job);
  if (!put.ok) return { replica: heldBack(replica, put.faults), entries: [] };
  const at = nextTime(cells, now);
  const { entries } = writtenBetween(put.found, put.shared.job, { device, at });
  const all = withEntries(cells, entries);
  return { replica: { ...replica, cells: all, shown: { ...put.shared, cells: all }, held: [] }, entries };
}

/** What has come is not shown, and why. */
export function heldBack(replica: Replica, held: readonly Fault[]): Replica {
  const { shown, cells } = replica;
  const known = shown.cells.size > 0 ? shown : { ...shown, orders: ordersOf(shown.job, cells), cells };
  return { ...replica, shown: known, held };
}

/** The order of a job that was made of cells at another time, by what they say now: a page was loaded anew while something was held back. */
function ordersOf(job: Job, cells: Cells): ReadonlyMap<string, Order> {
  const orders = new Map<string, Order>();
  for (const [name, list] of SHARED_LISTS) {
    const records = recordsOf(job, list);
    const there = [...cells]
      .filter(([key]) => pathOf(key)[0] === name)
      .map(([key, group]) => [pathOf(key)[1]!, recordIn(group)] as const)
      .filter(([, { isGone }]) => !isGone);
    const isIt = (record: PlainObject, told: Told): boolean =>
      list.keyOf === undefined ? sameData(record, told.record) : list.keyOf(record) === list.keyOf(told.record);
    const taken = new Set<string>();
    const keys = records.map((record, i) => {
      const found = there.find(([key, told]) => !taken.has(key) && isIt(record, told))?.[0] ?? `not shared ${i}`;
      taken.add(found);
      return found;
    });
    const places = keys.map((key, i) => there.find(([known]) => known === key)?.[1].place ?? i + 1);
    const isRising = places.every((place, i) => i === 0 || place >= places[i - 1]!);
    if (keys.length > 0) orders.set(name, { keys, places: isRising ? places : keys.map((_, i) => i + 1) });
  }
  return orders;
}
