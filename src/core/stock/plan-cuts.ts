/**
 * The cutting plan of parts of one section from the sticks that there are: the cheapest, proven so in nearly every job of a shop; else the best that was found, with a
 * bound that is proven.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { bestFilled } from './first-plans.ts';
import { isTooDeep, type Effort, type Lay } from './lays.ts';
import { leastSticksFor } from './least-sticks.ts';
import { fromPicks, pickEfforts } from './pick-by-pick.ts';
import { needOf } from './picks.ts';
import { priced } from './prices.ts';
import { costOf, costStep, isLeast, leastBeside, planOf, problemOf, roomOf, roundedUp, sortsOf } from './problem.ts';
import { searchWithin } from './search.ts';
import { shakenRow } from './shaken.ts';
import { fewestLeftOut } from './some-plan.ts';
import type { CutPlan, Part, Sawing, StickSort } from './types.ts';

/** Places that are looked at, first in the plain order, then in shaken ones, and how often: about two seconds. */
const PLAIN = 2000;
const SHAKEN = { looks: 200, times: 60 };
/** Parts that are held to sticks in all of it. */
const MOST_IN_ALL = 6_000_000;
/** Of the budget: by so much lays change places in a shaken order. */
const SHAKE = 0.25;

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
  const fitting = new Set(parts.filter(fits));
  const ofBatches = batchesLeftOut([...fitting], sorts, sawing);
  const lacking = new Set(ofBatches.unplaced);
  const there = inGivingOrder([...fitting].filter((part) => !lacking.has(part)));
  const { count, isProven, lays } = fewestLeftOut(there, sorts, sawing);
  const out = there.slice(0, count);
  const left = there.slice(count).toReversed();
  return {
    ...(left.length === 0 ? NOTHING : cheapest(left, sorts, sawing, lays)),
    unplaced: [...parts.filter((part) => !fitting.has(part)), ...ofBatches.unplaced, ...out],
    unfound: [...ofBatches.unfound, ...(isProven ? [] : out)],
  };
}

const NOTHING = { sticks: [], cost: 0, leastCost: 0 } as const;

/** Of each batch the parts, the shortest first, without which the others of that batch have sticks enough. */
function batchesLeftOut(
  parts: readonly Part[],
  sorts: readonly StickSort[],
  sawing: Sawing,
): Pick<CutPlan, 'unplaced' | 'unfound'> {
  const byBatch = new Map<string, Part[]>();
  for (const part of parts) {
    if (part.batch === null) continue;
    const those = byBatch.get(part.batch);
    if (those === undefined) byBatch.set(part.batch, [part]);
    else those.push(part);
  }
  const each = [...byBatch].map(([batch, those]) => {
    const ofBatch = inGivingOrder(those);
    const sticks = sorts.filter((stick) => stick.batch === batch);
    const { count, isProven } = fewestLeftOut(ofBatch, sticks, sawing);
    return { out: ofBatch.slice(0, count), isProven };
  });
  return {
    unplaced: each.flatMap(({ out }) => out),
    unfound: each.flatMap(({ out, isProven }) => (isProven ? [] : out)),
  };
}

/** The shortest first; but what is of any batch before what is of one: for that there are enough. */
const inGivingOrder = (parts: readonly Part[]): readonly Part[] =>
  parts
    .toReversed()
    .toSorted((one, other) => Number(one.batch !== null) - Number(other.batch !== null) || one.length - other.length);

/** Of parts that can all be placed, as in `known`. */
function cheapest(
  parts: readonly Part[],
  sorts: readonly StickSort[],
  sawing: Sawing,
  known: readonly Lay[],
): Pick<CutPlan, 'sticks' | 'cost' | 'leastCost'> {
  const problem = problemOf(parts, sorts, sawing);
  const prices = priced(sorts, problem.room, needOf(problem))!;
  const step = costStep(sorts);
  const whole = leastSticksFor(problem);
  const bound = roundedUp(Math.max(prices.bound, whole ?? 0), step);
  const asPlan = (lays: readonly Lay[], least: number) => {
    const plan = planOf(lays, problem, parts, sawing);
    return { ...plan, leastCost: leastBeside(plan.cost, least, step) };
  };
  let best = bestFilled(problem, bound + step.size / 2) ?? known;
  if (isLeast(costOf(best, sorts), bound, step)) return asPlan(best, bound);
  const { least, lays } = fromPicks(problem, bound, costOf(best, sorts), step, pickEfforts());
  best = lays ?? best;
  if (isTooDeep(problem)) return asPlan(best, least);
  const effort: Effort = { left: MOST_IN_ALL };
  let turn = 0;
  while (turn <= SHAKEN.times && effort.left > 0) {
    const cost = costOf(best, sorts);
    if (isLeast(cost, least, step)) break;
    const budget = cost - step.size - prices.bound;
    const row = shakenRow(turn);
    const shaken = turn === 0 ? undefined : () => SHAKE * budget * row();
    const looks = turn === 0 ? PLAIN : SHAKEN.looks;
    const searched = searchWithin(problem, prices, budget, looks, effort, shaken);
    if (searched.ended === 'none') return asPlan(best, cost);
    if (searched.ended === 'found') best = searched.lays;
    else turn += 1;
  }
  return asPlan(best, least);
}
