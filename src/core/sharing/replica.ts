/**
 * One device's side of a shared job: what it shows, and all that has come to it. It writes what is edited on it, takes what others wrote, in
 * whatever order and however often, and catches up when it can. What does not go together is held back: it shows the last job that did, and
 * goes on from that.
 */
import type { Fault } from '../job/fault.ts';
import type { Job } from '../job/types.ts';
import { latestIn, withEntries, type Cells, type Entry } from './entries.ts';
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
  const at = Math.max(now, latestIn(cells) + 1);
  const { entries, orders } = writtenBetween(shown, after, { device, at });
  const own: Shared = { job: after, orders, cells: withEntries(shown.cells, entries) };
  return { replica: { ...replica, shown: own, cells: withEntries(cells, entries) }, entries };
}

/** What others wrote has come. Nothing of it is shown until the device catches up. */
export const received = (replica: Replica, entries: Iterable<Entry>): Replica => ({
  ...replica,
  cells: withEntries(replica.cells, entries),
});

/** What has come is shown, if it can be; else it is held back, and said why. */
export function caughtUp(replica: Replica): Replica {
  const put = putTogether(replica.cells, replica.shown.job);
  return put.ok ? { ...replica, shown: put.shared, held: [] } : { ...replica, held: put.faults };
}
