/**
 * What changed in a piece of plain data, given by no more than what changed: an object by its fields, a list by what stands in the
 * place of what, what begins and ends alike left out; the rest whole, before and after. Lists whose items have no name are given by
 * position: a change can be applied and turned round.
 */
import { sameData } from './equal.ts';

/** Of the value that goes by the key. It is given in one of three ways. */
export interface Change {
  readonly key: string;
  /** Whole; absent where it did not exist. */
  readonly before?: unknown;
  readonly after?: unknown;
  /** An object, by what changed in it. */
  readonly fields?: readonly Change[];
  /** A list, by one swap after the other, each in what the one before it leaves; and how long the list was. */
  readonly items?: readonly Swap[];
  readonly length?: number;
}

/** From `at` on, items in the place of others; or one item by what changed in it. */
export type Swap =
  | { readonly at: number; readonly before: readonly unknown[]; readonly after: readonly unknown[] }
  | { readonly at: number; readonly fields: readonly Change[] };

type PlainFields = Readonly<Record<string, unknown>>;

/** What turns one value into the other; null where they are the same. */
export function changeOf(key: string, before: unknown, after: unknown): Change | null {
  if (sameData(before, after)) return null;
  if (Array.isArray(before) && Array.isArray(after)) {
    const items = isShort(before) && isShort(after) ? null : swapsBetween(before, after);
    if (items !== null && !isAllOf(items, before)) return { key, items, length: before.length };
  } else if (isFields(before) && isFields(after)) {
    const fields = changesBetween(new Map(Object.entries(before)), new Map(Object.entries(after)));
    if (fields.length < new Set([...Object.keys(before), ...Object.keys(after)]).size) return { key, fields };
  }
  return whole(key, before, after);
}

/** One change for each name whose value is another, or is there on one side alone. */
export function changesBetween(
  before: ReadonlyMap<string, unknown>,
  after: ReadonlyMap<string, unknown>,
): readonly Change[] {
  const keys = new Set([...before.keys(), ...after.keys()]);
  return [...keys].flatMap((key) => changeOf(key, before.get(key), after.get(key)) ?? []);
}

/** What turns one list into the other. */
export function swapsBetween(before: readonly unknown[], after: readonly unknown[]): readonly Swap[] {
  const least = Math.min(before.length, after.length);
  let at = 0;
  while (at < least && sameData(before[at], after[at])) at += 1;
  let alike = 0;
  while (alike < least - at && sameData(before.at(-1 - alike), after.at(-1 - alike))) alike += 1;
  const [those, these] = [before.slice(at, before.length - alike), after.slice(at, after.length - alike)];
  if (those.length + these.length === 0) return [];
  if (those.length !== these.length) return [{ at, before: those, after: these }];
  return moved(those, these, at) ?? eachInPlace(those, these, at) ?? [{ at, before: those, after: these }];
}

/** Whether the value is what the change was made from, wherever it touches it. */
export function fits(value: unknown, { before, fields, items, length }: Change): boolean {
  if (items !== undefined)
    return Array.isArray(value) && value.length === length && swappedIfFit(value, items) !== null;
  if (fields !== undefined) return isFields(value) && fields.every((field) => fits(fieldOf(value, field.key), field));
  return sameData(value, before);
}

/** The list after the swaps, null if they were not made from it. */
export function swappedIfFit(list: readonly unknown[], swaps: readonly Swap[]): readonly unknown[] | null {
  let result = list;
  for (const swap of swaps) {
    const there = result.slice(swap.at, swap.at + lengthOf(swap));
    const isThere = 'fields' in swap ? fits(there[0], { key: '', ...swap }) : sameData(there, swap.before);
    if (!isThere || swap.at > result.length) return null;
    result = swapped(result, [swap]);
  }
  return result;
}

/** The value after the change, undefined where there is none. Throws when the change was made from a value of another kind. */
export function applied(value: unknown, { fields, items, after }: Change): unknown {
  if (items !== undefined && Array.isArray(value)) return swapped(value, items);
  if (fields !== undefined && isFields(value)) {
    return Object.fromEntries(appliedAll(new Map(Object.entries(value)), fields));
  }
  if (items !== undefined || fields !== undefined) throw new Error('the change was made from another value');
  return after;
}

/** What goes by each name after the changes. */
export function appliedAll<T>(present: ReadonlyMap<string, T>, changes: readonly Change[]): ReadonlyMap<string, T> {
  const result = new Map(present);
  for (const change of changes) {
    const after = applied(present.get(change.key), change);
    if (after === undefined) result.delete(change.key);
    else result.set(change.key, after as T);
  }
  return result;
}

/** The list after the swaps; untouched items are the same objects. */
export const swapped = (list: readonly unknown[], swaps: readonly Swap[]): readonly unknown[] =>
  swaps.reduce<readonly unknown[]>((result, swap) => {
    const { at } = swap;
    const put = 'fields' in swap ? [applied(result[at], { key: '', fields: swap.fields })] : swap.after;
    return [...result.slice(0, at), ...put, ...result.slice(at + lengthOf(swap))];
  }, list);

/** The change that takes it back. */
export function turnedRound({ key, before, after, fields, items, length = 0 }: Change): Change {
  if (items !== undefined) return { key, items: swapsTurnedRound(items), length: length + grownBy(items) };
  if (fields !== undefined) return { key, fields: fields.map(turnedRound) };
  return whole(key, after, before);
}

/** The swaps that take these back, from the end of the list to its start. */
export const swapsTurnedRound = (swaps: readonly Swap[]): readonly Swap[] => swaps.toReversed().map(swapTurnedRound);

const swapTurnedRound = (swap: Swap): Swap =>
  'fields' in swap
    ? { at: swap.at, fields: swap.fields.map(turnedRound) }
    : { at: swap.at, before: swap.after, after: swap.before };

const grownBy = (swaps: readonly Swap[]): number =>
  swaps.reduce((sum, swap) => sum + ('fields' in swap ? 0 : swap.after.length - swap.before.length), 0);

const lengthOf = (swap: Swap): number => ('fields' in swap ? 1 : swap.before.length);

const whole = (key: string, before: unknown, after: unknown): Change => ({
  key,
  ...(before !== undefined && { before }),
  ...(after !== undefined && { after }),
});

/** Whether it is an object with fields, and no list. */
export const isFields = (value: unknown): value is PlainFields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const fieldOf = (value: PlainFields, key: string): unknown => (Object.hasOwn(value, key) ? value[key] : undefined);

/** A place or a direction, say, is given whole: it is read at a glance, and its parts say nothing alone. */
const isShort = (list: readonly unknown[]): boolean =>
  list.length <= 3 && list.every((item) => typeof item !== 'object' || item === null);

/** Nothing of the list is left out. */
const isAllOf = ([first, ...others]: readonly Swap[], before: readonly unknown[]): boolean =>
  others.length === 0 && first !== undefined && !('fields' in first) && first.before.length === before.length;

/** One item taken from an end of the stretch to the other; null where it is not just that. */
function moved(before: readonly unknown[], after: readonly unknown[], at: number): readonly Swap[] | null {
  const end = at + before.length - 1;
  const [first, last] = [before.slice(0, 1), before.slice(-1)];
  const isToEnd = sameData([...before.slice(1), ...first], after);
  const isToFront = sameData([...last, ...before.slice(0, -1)], after);
  if (isToEnd === isToFront) return null; // of a few alike, or of two, nobody can say which has moved
  const [from, to, item] = isToEnd ? [at, end, first] : [end, at, last];
  return [
    { at: from, before: item, after: [] },
    { at: to, before: [], after: item },
  ];
}

/** Objects that stay where they are, each by what changed in it; null where there is another item among those that changed. */
function eachInPlace(before: readonly unknown[], after: readonly unknown[], at: number): readonly Swap[] | null {
  const swaps = before.flatMap((item, nth): Swap | readonly [] => {
    const change = changeOf('', item, after[nth]);
    return change === null ? [] : inPlace(at + nth, change);
  });
  const areObjects = before.every(
    (item, nth) => (isFields(item) && isFields(after[nth])) || sameData(item, after[nth]),
  );
  return areObjects ? swaps : null;
}

function inPlace(at: number, { before, after, fields }: Change): Swap {
  return fields === undefined ? { at, before: [before], after: [after] } : { at, fields };
}
