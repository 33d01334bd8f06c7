/**
 * The cutting plan of parts of one section from the sticks that there are: the cheapest, proven so in nearly every job of a shop; else the best that was found, with a
 * bound that is proven.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { bestFilled } from './first-plans.ts';
import type { Effort, Lay, Lot, Problem } from './lays.ts';
import { leastSticks } from './least-sticks.ts';
import { priced } from './prices.ts';
import { searchWithin } from './search.ts';
import { shakenRow } from './shaken.ts';
import type { CutPlan, CutStick, Part, Sawing, StickSort } from './types.ts';

/** Places that are looked at, first in the plain order, then in shaken ones, and how often: about two seconds. */
const PLAIN = 2000;
/** The same where nothing at all may be wasted: then there are few lays at a place, and none to shake. */
const EXACT = 100_000;
const SHAKEN = { looks: 200, times: 60 };
/** Parts that are held to sticks in all of it. */
const MOST_IN_ALL = 20_000_000;
/** Of the budget: by so much lays change places in a shaken order. */
const SHAKE = 0.25;

/** The plan; parts that go on no stick, or for which the sticks do not suffice, are unplaced, of these the shortest first. */
export function planCuts(parts: readonly Part[], sticks: readonly StickSort[], sawing: Sawing): CutPlan {
  const room = (stick: StickSort): number => stick.length - sawing.squareOff + sawing.kerf;
  const sorts = sticks.filter((stick) => stick.count > 0 && room(stick) > 0);
  // What comes out at nothing, or below, is no tube yet: its bends overlap.
  const fits = (part: Part): boolean =>
    part.length > 0 &&
    sorts.some(
      (stick) =>
        (part.batch === null || part.batch === stick.batch) && part.length + sawing.kerf <= room(stick) + ROUNDING,
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
  const lots = lotsOf(parts, sawing);
  const problem: Problem = { sorts, room: sorts.map(({ length }) => length - sawing.squareOff + sawing.kerf), lots };
  const need = lots.reduce((sum, { length, count }) => sum + length * count, 0);
  const prices = priced(sorts, problem.room, need);
  if (prices === null) return null;
  const step = costStep(sorts);
  const whole = leastSticks(sorts, problem.room, { all: need, ofBatch: neededOfBatches(lots) });
  const least = roundedUp(Math.max(prices.bound, whole ?? 0), step);
  const asPlan = (lays: readonly Lay[], leastCost: number) => ({ ...planOf(lays, problem, parts, sawing), leastCost });
  let best = bestFilled(problem, least + step / 2);
  const effort: Effort = { left: MOST_IN_ALL };
  let turn = 0;
  while (turn <= SHAKEN.times && effort.left > 0) {
    const cost = best === null ? Infinity : costOf(best, sorts);
    if (best !== null && cost <= least + step / 2) return asPlan(best, cost);
    // Endless without a plan: then any will do, and the orders are not shaken.
    const budget = cost - step - prices.bound;
    const row = shakenRow(turn);
    const shaken = turn === 0 || best === null ? undefined : () => SHAKE * budget * row();
    const isExact = Number.isFinite(budget) && budget <= WHOLE * cost;
    const looks = isExact ? EXACT : turn === 0 ? PLAIN : SHAKEN.looks;
    const searched = searchWithin(problem, prices, budget, looks, effort, shaken);
    if (searched.ended === 'none') return best === null ? null : asPlan(best, cost);
    if (searched.ended === 'found') best = searched.lays;
    else turn += isExact ? SHAKEN.times + 1 : 1;
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

const costOf = (lays: readonly Lay[], sorts: readonly StickSort[]): number =>
  lays.reduce((sum, { sort }) => sum + sorts[sort]!.cost, 0);

/** Costs come in steps of this, where they are whole thousandths of the money's unit: no two plans differ by less. Else next to nothing. */
function costStep(sorts: readonly StickSort[]): number {
  const costs = sorts.map(({ cost }) => cost * FINEST);
  if (costs.some((cost) => Math.abs(cost - Math.round(cost)) > WHOLE)) return WHOLE * Math.max(...costs);
  const step = costs.map(Math.round).reduce(greatestDivisor, 0);
  return Math.max(step, 1) / FINEST;
}

const FINEST = 1000;

const greatestDivisor = (a: number, b: number): number => (b === 0 ? a : greatestDivisor(b, a % b));

/** Of a figure: nearer than this to a whole number it is one. */
const WHOLE = 1e-6;

const roundedUp = (cost: number, step: number): number => Math.ceil(cost / step - WHOLE) * step;

/** Parts that are alike are one lot; the longest first. */
function lotsOf(parts: readonly Part[], { kerf }: Sawing): readonly Lot[] {
  const lots = new Map<string, Lot>();
  for (const { length, batch } of parts) {
    const key = `${length}|${batch ?? ''}`;
    const lot = lots.get(key);
    lots.set(key, { length: length + kerf, batch, count: (lot?.count ?? 0) + 1 });
  }
  return [...lots.values()].toSorted((one, other) => other.length - one.length);
}

/** The lays with the parts that go on them, the stick with the longest part first, and on a stick the longest first: what is dearest to spoil is cut while all sticks are there. */
function planOf(
  lays: readonly Lay[],
  { sorts, lots }: Problem,
  parts: readonly Part[],
  { kerf, squareOff }: Sawing,
): Pick<CutPlan, 'sticks' | 'cost'> {
  const waiting = lots.map((lot) =>
    parts.filter((part) => part.length + kerf === lot.length && part.batch === lot.batch),
  );
  const longest = ({ of }: Lay): number => of.findIndex((count) => count > 0);
  const sticks = lays
    .toSorted((one, other) => longest(one) - longest(other))
    .map(({ sort, of }): CutStick => {
      const on = of.flatMap((count, lot) => waiting[lot]!.splice(0, count));
      const used = on.reduce((sum, { length }) => sum + length + kerf, squareOff);
      return { stick: sorts[sort]!.id, parts: on, left: Math.max(0, sorts[sort]!.length - used) };
    });
  return { sticks, cost: costOf(lays, sorts) };
}
