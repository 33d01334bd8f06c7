/**
 * A shop record that was changed in two places at once. What each has put in, taken out or changed is in the result, field by field;
 * only where both have changed the same field one way stands. Sections and dies go by id and size together (renamed.ts): two new ones
 * that were given the same id are both in it. Records without ids are told apart by all that they hold, and of equal ones as many count
 * as there are: one that both have changed is there twice, which a person sees and can mend.
 */
import { batchKey } from '../job/batch.ts';
import { sameData } from '../job/equal.ts';
import { MOST_PULLS } from '../job/limits.ts';
import { beyond } from './beyond.ts';
import { SHOP_LISTS } from './kinds.ts';
import { parseShop } from './parse.ts';
import { renamedApart } from './renamed.ts';
import { serialiseShop } from './serialise.ts';
import type { Shop } from './types.ts';

/**
 * The record that comes of `base` when `own` and `theirs` were both made of it; where both have changed the same field, `own`'s. The
 * very same `theirs` where nothing is to be added to it. What is in `theirs` keeps its ids. Always one that the door for files takes:
 * where what one has taken out is still used by what the other has put in, no record is taken out. Of more pulls than a log holds the
 * oldest are let go.
 */
export function mergeShops(base: Shop, own: Shop, theirs: Shop): Shop {
  if (sameData(base, own)) return theirs;
  const apart = renamedApart(base, own, theirs);
  for (const from of [apart.base, inBoth(apart.base, apart.own, theirs)]) {
    const merged = parseShop(serialiseShop(merge(from, apart.own, theirs)));
    if (merged.ok) return sameData(merged.shop, theirs) ? theirs : merged.shop;
  }
  return own; // beyond what a file may hold
}

/** The base of two that have taken no record out. */
function inBoth(base: Shop, own: Shop, theirs: Shop): Shop {
  const areIn = (list: 'sections' | 'dies', id: string): boolean =>
    [own, theirs].every((shop) => shop[list].some((one) => one.id === id));
  return {
    ...base,
    ...Object.fromEntries(SHOP_LISTS.map((list) => [list, []])),
    sections: base.sections.filter(({ id }) => areIn('sections', id)),
    dies: base.dies.filter(({ id }) => areIn('dies', id)),
  };
}

type Fields = Readonly<Record<string, unknown>>;

function merge(base: Shop, own: Shop, theirs: Shop): Shop {
  const [before, one, other] = [base, own, theirs].map((shop) => shop as unknown as Fields) as [Fields, Fields, Fields];
  const merged = mergeFields(before, one, other) as unknown as Shop;
  return {
    ...merged,
    pulls: merged.pulls.slice(-MOST_PULLS),
    sticks: mergeSticks(base.sticks, own.sticks, theirs.sticks),
  };
}

/** Sticks are counted: of five, of which one place has sawn one and the other two, two are left. What a stick costs goes by the own, where it was changed there. */
function mergeSticks(base: Sticks, own: Sticks, theirs: Sticks): Sticks {
  const [were, mine, others] = [base, own, theirs].map((sticks) => countedSticks(sticks)) as [
    Counted,
    Counted,
    Counted,
  ];
  const keys = new Set([...others.keys(), ...mine.keys()]);
  return [...keys].flatMap((key) => {
    const [was, one, other] = [were.get(key), mine.get(key), others.get(key)];
    const count = (one?.count ?? 0) + (other?.count ?? 0) - (was?.count ?? 0);
    if (count <= 0 && (one === undefined || other === undefined)) return [];
    const changed = one !== undefined && one.cost !== was?.cost ? one : (other ?? one!);
    return [{ ...changed, count: Math.max(0, count) }];
  });
}

type Sticks = Shop['sticks'];
type Counted = ReadonlyMap<string, Sticks[number]>;

/** Alike in section, length and batch are one. */
function countedSticks(sticks: Sticks): Counted {
  const counted = new Map<string, Sticks[number]>();
  for (const stick of sticks) {
    const key = JSON.stringify([stick.section, stick.length, batchKey(stick.batch)]);
    const before = counted.get(key);
    counted.set(key, before === undefined ? stick : { ...before, count: before.count + stick.count });
  }
  return counted;
}

function mergeFields(base: Fields, own: Fields, theirs: Fields): Fields {
  const keys = new Set([...Object.keys(theirs), ...Object.keys(own)]);
  const entries = Array.from(keys, (key) => [key, mergeValue(base[key], own[key], theirs[key])] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

function mergeValue(base: unknown, own: unknown, theirs: unknown): unknown {
  if (sameData(base, own)) return theirs;
  if (sameData(base, theirs)) return own;
  if (isFields(base) && isFields(own) && isFields(theirs)) return mergeFields(base, own, theirs);
  const before = base ?? [];
  if (!isRecords(before) || !isRecords(own) || !isRecords(theirs)) return own; // what is new in both is not of one making
  return [before, own, theirs].every((list) => list.every(hasId))
    ? mergeById(before, own, theirs)
    : mergeAlike(before, own, theirs);
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A list of records; one of numbers, such as a place, is one value. */
const isRecords = (value: unknown): value is readonly Fields[] => Array.isArray(value) && value.every(isFields);

/** A rule sheet goes by its book and edition. */
const idOf = (record: Fields): unknown => record['id'] ?? record['sheet'];
const hasId = (record: Fields): boolean => typeof idOf(record) === 'string';

/** In their order, then what is own. */
function mergeById(base: readonly Fields[], own: readonly Fields[], theirs: readonly Fields[]): readonly unknown[] {
  const [before, one, other] = [base, own, theirs].map(
    (list) => new Map(list.map((record) => [idOf(record), record])),
  ) as [Map<unknown, Fields>, Map<unknown, Fields>, Map<unknown, Fields>];
  const ids = new Set([...other.keys(), ...one.keys()]);
  return Array.from(ids, (id) => {
    const [was, mine, others] = [before.get(id), one.get(id), other.get(id)];
    // What one has taken out and the other has changed meanwhile stays.
    if (mine === undefined) return sameData(was, others) ? undefined : others;
    if (others === undefined) return sameData(was, mine) ? undefined : mine;
    return mergeValue(was, mine, others);
  }).filter((record) => record !== undefined);
}

/** Theirs without what is taken out of `base`, then what is put in. */
function mergeAlike(base: readonly Fields[], own: readonly Fields[], theirs: readonly Fields[]): readonly Fields[] {
  const [gone, put] = [beyond(base, own, keyOf), beyond(own, base, keyOf)];
  return [...beyond(theirs, gone, keyOf), ...beyond(put, beyond(theirs, base, keyOf), keyOf)];
}

/** Records that came through the door have their keys in one order. */
const keyOf = (record: Fields): string => JSON.stringify(record);
