/**
 * A shop record that was changed in two places at once. What each has put in, taken out or changed is in the result; only where both
 * have changed the same value one way stands. Records with ids go by their id. Those without are told apart by all that they hold, and of
 * equal ones as many count as there are: one that both have changed is there twice, which a person sees and can mend.
 */
import { sameData } from '../job/equal.ts';
import { MOST_PULLS } from '../job/limits.ts';
import { parseShop } from './parse.ts';
import { serialiseShop } from './serialise.ts';
import { EMPTY_SHOP, type Shop } from './types.ts';

/**
 * The record that comes of `base` when `own` and `theirs` were both made of it; where both have changed the same value, `own`'s. The
 * very same `theirs` where nothing is to be added to it. Always one that the door for files takes: where what one has taken out is
 * still used by what the other has put in, nothing is taken out. Of more pulls than a log holds the oldest are let go.
 */
export function mergeShops(base: Shop, own: Shop, theirs: Shop): Shop {
  if (sameData(base, own)) return theirs;
  for (const from of [base, EMPTY_SHOP]) {
    const merged = parseShop(serialiseShop(merge(from, own, theirs)));
    if (merged.ok) return sameData(merged.shop, theirs) ? theirs : merged.shop;
  }
  return own; // beyond what a file may hold
}

type Fields = Readonly<Record<string, unknown>>;

function merge(base: Shop, own: Shop, theirs: Shop): Shop {
  const [before, one, other] = [base, own, theirs].map((shop) => shop as unknown as Fields) as [Fields, Fields, Fields];
  const keys = new Set([...Object.keys(theirs), ...Object.keys(own)]);
  const entries = Array.from(keys, (key) => [key, mergeValue(before[key], one[key], other[key])] as const);
  const merged = Object.fromEntries(entries.filter(([, value]) => value !== undefined)) as unknown as Shop;
  return { ...merged, pulls: merged.pulls.slice(-MOST_PULLS) };
}

function mergeValue(base: unknown, own: unknown, theirs: unknown): unknown {
  if (sameData(base, own)) return theirs;
  if (sameData(base, theirs)) return own;
  if (!Array.isArray(own) || !Array.isArray(theirs)) return own;
  const before: readonly unknown[] = Array.isArray(base) ? base : [];
  const areNamed = [before, own, theirs].every((list) => list.every(hasId));
  return areNamed ? mergeById(before, own, theirs) : mergeAlike(before, own, theirs);
}

interface WithId {
  readonly id: string;
}

const hasId = (record: unknown): record is WithId =>
  typeof record === 'object' && record !== null && typeof (record as Partial<WithId>).id === 'string';

/** In their order, then what is own. */
function mergeById(base: readonly unknown[], own: readonly unknown[], theirs: readonly unknown[]): readonly unknown[] {
  const [before, one, other] = [base, own, theirs].map(
    (list) => new Map((list as readonly WithId[]).map((record) => [record.id, record])),
  ) as [Map<string, WithId>, Map<string, WithId>, Map<string, WithId>];
  const ids = new Set([...other.keys(), ...one.keys()]);
  return Array.from(ids, (id) => {
    const [was, mine, others] = [before.get(id), one.get(id), other.get(id)];
    // What one has taken out and the other has changed meanwhile stays.
    if (mine === undefined) return sameData(was, others) ? undefined : others;
    if (others === undefined) return sameData(was, mine) ? undefined : mine;
    return sameData(was, mine) ? others : mine;
  }).filter((record) => record !== undefined);
}

/** Theirs without what is taken out of `base`, then what is put in. */
function mergeAlike(base: readonly unknown[], own: readonly unknown[], theirs: readonly unknown[]): readonly unknown[] {
  const [gone, put] = [without(base, own), without(own, base)];
  return [...without(theirs, gone), ...without(put, without(theirs, base))];
}

/** Those for which there is no equal one among the others, each of which stands for one. */
function without(records: readonly unknown[], others: readonly unknown[]): readonly unknown[] {
  const left = new Map<string, number>();
  for (const other of others) left.set(keyOf(other), (left.get(keyOf(other)) ?? 0) + 1);
  return records.filter((record) => {
    const equal = left.get(keyOf(record)) ?? 0;
    left.set(keyOf(record), equal - 1);
    return equal <= 0;
  });
}

/** Records that came through the door have their keys in one order. */
const keyOf = (record: unknown): string => JSON.stringify(record);
