/**
 * What can be laid on one stick, with a given part on it. A lay is passed over where another, no worse for what is left, is there too: where a part that is left would
 * still go on it, and where a longer part that is left could stand in the place of some that are on it, which then go where that one was (Martello and Toth, Lower
 * bounds and reduction procedures for the bin packing problem, 1990).
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Prices } from './prices.ts';
import type { StickSort } from './types.ts';

/** Parts of one length and batch: as many as there are. */
export interface Lot {
  /** With its kerf. */
  readonly length: number;
  readonly batch: string | null;
  readonly count: number;
}

/** One stick: of which sort, and how many of each lot. */
export interface Lay {
  readonly sort: number;
  readonly of: readonly number[];
}

/** A lay, and what it costs more than its parts are worth by the prices: never less than nothing. */
export interface PricedLay extends Lay {
  readonly spent: number;
}

export interface Problem {
  readonly sorts: readonly StickSort[];
  /** What a stick of each sort gives, with a kerf, mm. */
  readonly room: readonly number[];
  /** The longest first. */
  readonly lots: readonly Lot[];
}

/** Parts of a plan beyond which no search goes through them one in another: it would be too deep for any machine's stack, and of so many little is wasted. */
const MOST_PARTS = 2500;

/** The same of parts on one stick; more are laid on none. */
export const MOST_ON_ONE = 500;

/** Whether parts are so many, or so short, that no plan of them is searched for in depth. */
export function isTooDeep({ lots, room }: Problem): boolean {
  const parts = lots.reduce((sum, { count }) => sum + count, 0);
  const shortest = lots.reduce((least, { length }) => Math.min(least, length), Infinity);
  const widest = room.reduce((most, each) => Math.max(most, each), 0);
  return parts > MOST_PARTS || Math.min(parts, widest / shortest) > MOST_ON_ONE;
}

/** What there still is. */
export interface Left {
  readonly lots: readonly number[];
  readonly sticks: readonly number[];
}

/** One stick cut by a lay, or put back with -1. */
export function takeFrom(left: { lots: number[]; sticks: number[] }, { sort, of }: Lay, times: 1 | -1): void {
  left.sticks[sort] = left.sticks[sort]! - times;
  for (const [lot, count] of of.entries()) left.lots[lot] = left.lots[lot]! - times * count;
}

/** Whether a part of the lot may be cut from a stick of the sort. */
export const goesOn = ({ lots, sorts }: Problem, lot: number, sort: number): boolean =>
  lots[lot]!.batch === null || lots[lot]!.batch === sorts[sort]!.batch;

/** How much may still be looked at, counted in parts that were held to a stick: where nothing is left of it, not all was seen. */
export interface Effort {
  left: number;
}

/**
 * The lays of one stick of the sort with that lot on it, of which no more than `within` is spent, but for those that another betters; as many as are found before the
 * effort is spent.
 */
export function laysOn(
  problem: Problem,
  prices: Prices,
  left: Left,
  { sort, first, within }: { readonly sort: number; readonly first: number; readonly within: number },
  effort: Effort,
): readonly PricedLay[] {
  const { lots, sorts, room } = problem;
  const wide = room[sort]!;
  if (!goesOn(problem, first, sort) || lots[first]!.length > wide + ROUNDING) return [];
  // Spent is cost + saved - rate * used: within that only from so much used on.
  const dear = sorts[sort]!.cost + prices.saved[sort]!;
  const least = prices.rate === 0 ? 0 : (dear - within) / prices.rate - 2 * ROUNDING;
  const found: PricedLay[] = [];
  const of = lots.map(() => 0);
  const add = (from: number, used: number): void => {
    for (let lot = from; lot < lots.length && effort.left > 0; lot++) {
      effort.left--;
      const { length } = lots[lot]!;
      if (of[lot]! >= left.lots[lot]! || used + length > wide + ROUNDING || !goesOn(problem, lot, sort)) continue;
      of[lot] = of[lot]! + 1;
      add(lot, used + length);
      of[lot] = of[lot]! - 1;
    }
    if (effort.left <= 0 || used < least) return;
    if (isBettered(problem, left, { sort, first, of, slack: wide - used }, effort)) return;
    found.push({ sort, of: [...of], spent: dear - prices.rate * used });
  };
  of[first] = 1;
  add(first, lots[first]!.length);
  return found;
}

/** A lay that is being made, and what is left of its stick, mm. */
interface Made extends Lay {
  readonly first: number;
  readonly slack: number;
}

/** The part that has to be on it stays; of the others some, or none, would go for one that is left. */
function isBettered(problem: Problem, left: Left, made: Made, effort: Effort): boolean {
  const { first, of, slack } = made;
  const members = of
    .flatMap((count, lot) => Array.from({ length: lot === first ? count - 1 : count }, () => problem.lots[lot]!))
    .slice(0, MOST_SWAPPED);
  for (let set = 0; set < 2 ** members.length; set++) {
    const off = members.filter((_, at) => (set >> at) % 2 === 1);
    const long = off.reduce((sum, { length }) => sum + length, 0);
    const batch = off.find((lot) => lot.batch !== null)?.batch ?? null;
    // One for one has to be longer; one for several may be as long as they are together.
    const least = off.length === 1 ? long + 2 * ROUNDING : long;
    if (isThere(problem, left, made, { least, most: long + slack, batch }, effort)) return true;
  }
  return false;
}

/** Of more parts on a stick only so many are tried to be changed: to pass over less is no mistake. */
const MOST_SWAPPED = 8;

/** A part that is left, is not on it, may be cut from it, is of that length, and lies where parts of that batch may. */
function isThere(
  problem: Problem,
  left: Left,
  { sort, of }: Lay,
  { least, most, batch }: { readonly least: number; readonly most: number; readonly batch: string | null },
  effort: Effort,
): boolean {
  const { lots } = problem;
  for (let lot = 0; lot < lots.length; lot++) {
    effort.left--;
    const { length, batch: its } = lots[lot]!;
    if (length < least - ROUNDING) return false;
    if (length > most + ROUNDING || left.lots[lot]! <= of[lot]!) continue;
    if (goesOn(problem, lot, sort) && (batch === null || batch === its)) return true;
  }
  return false;
}
