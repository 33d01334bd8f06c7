/**
 * The cutting plan of parts of one section from the sticks that there are: the cheapest, proven so in nearly every job of a shop; else the best that was found, with a
 * bound that is proven.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { bestFilled } from './first-plans.ts';
import { allLays } from './all-lays.ts';
import { coverWithin } from './cover.ts';
import type { Effort, Lay, Lot, Problem } from './lays.ts';
import { leastSticks } from './least-sticks.ts';
import { needOf, picksBelow, type Pick } from './picks.ts';
import { priced, worthsOf, type Prices } from './prices.ts';
import { costOf, costStep, planOf, problemOf, roomOf, roundedUp, sortsOf } from './problem.ts';
import { searchWithin, type Searched } from './search.ts';
import { shakenRow } from './shaken.ts';
import type { CutPlan, Part, Sawing, StickSort } from './types.ts';

/** Places that are looked at, first in the plain order, then in shaken ones, and how often: about two seconds. */
const PLAIN = 2000;
const SHAKEN = { looks: 200, times: 60 };
/** Parts that are held to sticks in all of it. */
const MOST_IN_ALL = 6_000_000;
/** Of the budget: by so much lays change places in a shaken order. */
const SHAKE = 0.25;

/** Picks of sticks that are gone through, and how much of the effort that is left one of them may spend. */
const MOST_PICKS = 300;
const SHARE = 0.6;
/** Of more lengths each place of such a search would cost too much; and what many parts of all lengths waste is little. */
const MOST_LOTS = 250;

/** Lays that a plan is put together of where all are known, what may be looked at to find them, and to put one together. */
const MOST_LAYS = 20_000;
const MOST_LISTED = 5_000_000;
const MOST_COVERED = 8_000_000;

/** The plan; parts that go on no stick, or for which the sticks do not suffice, are unplaced, of these the shortest first. */
export function planCuts(parts: readonly Part[], sticks: readonly StickSort[], sawing: Sawing): CutPlan {
  const sorts = sortsOf(sticks, sawing);
  // What comes out at nothing, or below, is no tube yet: its bends overlap.
  const fits = (part: Part): boolean =>
    part.length > 0 &&
    sorts.some(
      (stick) =>
        (part.batch === null || part.batch === stick.batch) &&
        part.length + sawing.kerf <= roomOf(stick, sawing) + ROUNDING,
    );
  const placed = parts.filter(fits).toSorted((one, other) => other.length - one.length);
  const unplaced = parts.filter((part) => !fits(part));
  const lacking = lackingOfBatch(placed, sorts, sawing);
  const left = placed.filter((part) => !lacking.has(part));
  unplaced.push(...lacking);
  // What is of any batch gives way first: for what is of one there are enough.
  for (; left.length > 0; unplaced.push(...left.splice(leastWanted(left), 1))) {
    const found = cheapest(left, sorts, sawing);
    if (found !== null) return { ...found, unplaced };
  }
  return { sticks: [], cost: 0, leastCost: 0, unplaced };
}

/** Of each batch the parts, the shortest first, without which the others of that batch have sticks enough. */
function lackingOfBatch(parts: readonly Part[], sorts: readonly StickSort[], sawing: Sawing): ReadonlySet<Part> {
  const lacking = new Set<Part>();
  for (const batch of new Set(parts.flatMap((part) => part.batch ?? []))) {
    const ofBatch = parts.filter((part) => part.batch === batch);
    const sticks = sorts.filter((stick) => stick.batch === batch);
    while (ofBatch.length > 0 && cheapest(ofBatch, sticks, sawing) === null) lacking.add(ofBatch.pop()!);
  }
  return lacking;
}

/** The place of the shortest part that is of any batch; where each is of one, of the shortest. */
function leastWanted(parts: readonly Part[]): number {
  const free = parts.findLastIndex(({ batch }) => batch === null);
  return free === -1 ? parts.length - 1 : free;
}

/** Null where the sticks do not suffice, or nobody found how. */
function cheapest(
  parts: readonly Part[],
  sorts: readonly StickSort[],
  sawing: Sawing,
): Omit<CutPlan, 'unplaced'> | null {
  const problem = problemOf(parts, sorts, sawing);
  const prices = priced(sorts, problem.room, needOf(problem));
  if (prices === null) return null;
  const step = costStep(sorts);
  const whole = leastSticks(sorts, problem.room, { all: needOf(problem), ofBatch: neededOfBatches(problem.lots) });
  const bound = roundedUp(Math.max(prices.bound, whole ?? 0), step);
  const asPlan = (lays: readonly Lay[], leastCost: number) => ({ ...planOf(lays, problem, parts, sawing), leastCost });
  let best = bestFilled(problem, bound + step / 2);
  if (best !== null && costOf(best, sorts) <= bound + step / 2) return asPlan(best, bound);
  const picked = best === null ? { least: bound, lays: null } : fromPicks(problem, bound, costOf(best, sorts), step);
  const { least } = picked;
  best = picked.lays ?? best;
  const effort: Effort = { left: MOST_IN_ALL };
  let turn = 0;
  while (turn <= SHAKEN.times && effort.left > 0) {
    const cost = best === null ? Infinity : costOf(best, sorts);
    if (best !== null && cost <= least + step / 2) return asPlan(best, cost);
    // Endless without a plan: then any will do, and the orders are not shaken.
    const budget = cost - step - prices.bound;
    const row = shakenRow(turn);
    const shaken = turn === 0 || best === null ? undefined : () => SHAKE * budget * row();
    const looks = turn === 0 ? PLAIN : SHAKEN.looks;
    const searched = searchWithin(problem, prices, budget, looks, effort, shaken);
    if (searched.ended === 'none') return best === null ? null : asPlan(best, cost);
    if (searched.ended === 'found') best = searched.lays;
    else turn += 1;
  }
  return best === null ? null : asPlan(best, least);
}

/** mm of each batch that is asked for, kerfs counted. */
function neededOfBatches(lots: readonly Lot[]): ReadonlyMap<string, number> {
  const needed = new Map<string, number>();
  for (const { batch, length, count } of lots)
    if (batch !== null) needed.set(batch, (needed.get(batch) ?? 0) + length * count);
  return needed;
}

/**
 * Pick by pick, the cheapest first, a plan that costs less than the known one, where there are not too many picks: at a pick only its spare may be wasted. `least`: no plan costs less than
 * that, or than the plan that is found.
 */
function fromPicks(
  problem: Problem,
  bound: number,
  known: number,
  step: number,
): { readonly least: number; readonly lays: readonly Lay[] | null } {
  if (problem.lots.length > MOST_LOTS) return { least: bound, lays: null };
  const below = known - step / 2;
  const all = picksBelow(problem, below, MOST_PICKS);
  const picks = all ?? picksBelow(problem, bound + step / 2, MOST_PICKS) ?? [];
  let least = all === null ? bound + (picks.length > 0 ? step : 0) : known;
  const listing: Effort = { left: MOST_LISTED };
  const covering: Effort = { left: MOST_COVERED };
  for (const pick of picks) {
    const searched = withinPick(problem, pick, listing, covering);
    if (searched.ended === 'none') continue;
    least = Math.min(least, roundedUp(pick.cost, step));
    if (searched.ended === 'found') return { least, lays: searched.lays };
  }
  return { least, lays: null };
}

function withinPick(problem: Problem, { counts, spare }: Pick, listing: Effort, covering: Effort): Searched {
  const { sorts, room } = problem;
  // A stick costs what it gives: then what is spent on one is what it wastes.
  const those = { ...problem, sorts: sorts.map((sort, i) => ({ ...sort, count: counts[i]!, cost: room[i]! })) };
  const prices: Prices = { rate: 1, saved: sorts.map(() => 0), bound: needOf(problem) };
  const worths = worthsOf(problem, prices);
  const all = within(listing, (effort) => allLays(those, worths, spare, MOST_LAYS, effort));
  return within(covering, (effort) =>
    all === null ? searchWithin(those, prices, spare, PLAIN, effort) : coverWithin(those, worths, spare, all, effort),
  );
}

/** With a part of the effort: what spends that leaves some for the next. */
function within<T>(effort: Effort, work: (effort: Effort) => T): T {
  const own = { left: SHARE * effort.left };
  const begun = own.left;
  const done = work(own);
  effort.left -= begun - own.left;
  return done;
}
