/**
 * A change made from one job, carried over to another that somebody else has changed since: whatever still is as the change found it is changed, what
 * is not stays. So a person takes back what is their own, and nothing that was written over it.
 */
import { applied, fits, swapped, swapsBetween, type Change, type Swap } from '../job/change.ts';
import { applyDiff, fitsJob, type CollectionDiff, type JobDiff } from '../job/diff.ts';
import { COLLECTIONS } from '../job/kinds.ts';
import { sameData } from '../job/equal.ts';
import type { Job } from '../job/types.ts';

/** The job after as much of the diff as fits it; after all of it where it fits whole. */
export function applyWhatFits(job: Job, diff: JobDiff): Job {
  if (fitsJob(job, diff)) return applyDiff(job, diff);
  const result: Record<string, unknown> = { ...job };
  for (const change of diff.head) setTo(result, change.key, whatFits(result[change.key], change));
  for (const collection of COLLECTIONS) {
    const changed = diff.collections[collection];
    if (changed !== undefined) result[collection] = recordsAfter(job[collection], changed);
  }
  return result as unknown as Job;
}

function setTo(object: Record<string, unknown>, key: string, value: unknown): void {
  if (value === undefined) delete object[key];
  else object[key] = value;
}

/** The value after the change where it fits; of an object, after those of its fields that fit; else as it is. */
function whatFits(value: unknown, change: Change): unknown {
  if (fits(value, change)) return applied(value, change);
  const { fields, items = wholeSwaps(change) } = change;
  if (Array.isArray(value)) return (items ?? []).reduce<readonly unknown[]>(afterSwap, value);
  if (fields === undefined || typeof value !== 'object' || value === null) return value;
  const result: Record<string, unknown> = { ...value };
  for (const field of fields) setTo(result, field.key, whatFits(result[field.key], field));
  return result;
}

/** A list that was given whole is changed item by item, too. */
const wholeSwaps = ({ before, after }: Change): readonly Swap[] | undefined =>
  Array.isArray(before) && Array.isArray(after) ? swapsBetween(before, after) : undefined;

/** Items of a list are looked for where they stood, then nearest to it; new ones are put there, or at the end of a shorter list. */
function afterSwap(list: readonly unknown[], swap: Swap): readonly unknown[] {
  if ('fields' in swap) {
    const isIt = (item: unknown): boolean => fits(item, { key: '', ...swap });
    const at = nearest(list.length, swap.at, (start) => isIt(list[start]));
    return at === null ? list : swapped(list, [{ ...swap, at }]);
  }
  const { before } = swap;
  const at = nearest(list.length - before.length + 1, swap.at, (start) =>
    sameData(list.slice(start, start + before.length), before),
  );
  return at === null ? list : swapped(list, [{ ...swap, at }]);
}

/** The whole number below `count` nearest to one for which it holds; null where it holds for none. */
function nearest(count: number, wanted: number, holds: (at: number) => boolean): number | null {
  for (let away = 0; away <= Math.max(count, wanted); away += 1) {
    for (const at of [wanted - away, wanted + away]) if (at >= 0 && at < count && holds(at)) return at;
  }
  return null;
}

type AnyRecord = { readonly id: string };

function recordsAfter(present: readonly AnyRecord[], { records, order }: CollectionDiff): readonly AnyRecord[] {
  const changes = new Map(records.map((change) => [change.key, change]));
  const added = new Set(
    records
      .filter(({ before, after, fields, items }) => before === undefined && after !== undefined && !fields && !items)
      .map(({ key }) => key),
  );
  const kept = present.flatMap((record) => {
    const change = changes.get(record.id);
    const after = change === undefined ? record : (whatFits(record, change) as AnyRecord | undefined);
    return after ?? [];
  });
  const ids = new Set(kept.map(({ id }) => id));
  let result = kept;
  for (const swap of order ?? []) {
    if ('fields' in swap) continue;
    const news = swap.after.flatMap((id) =>
      added.has(id as string) && !ids.has(id as string) ? [changes.get(id as string)!.after as AnyRecord] : [],
    );
    result = [...result.slice(0, swap.at), ...news, ...result.slice(swap.at)];
  }
  return result;
}
