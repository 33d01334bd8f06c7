/** Whether the sticks suffice at all, and for which of the parts they do. */
import { bestFilled } from './first-plans.ts';
import { isTooDeep, type Effort, type Lay } from './lays.ts';
import { fromPicks, pickEfforts, type PickEfforts } from './pick-by-pick.ts';
import { needOf } from './picks.ts';
import { priced } from './prices.ts';
import { costStep, problemOf } from './problem.ts';
import { searchWithin, type Searched } from './search.ts';
import type { Part, Sawing, StickSort } from './types.ts';

/** Places that are looked at for one set of parts, and parts that are held to sticks for all of them. */
const MOST_LOOKS = 2000;
const MOST_HELD = 6_000_000;

interface Efforts extends PickEfforts {
  readonly search: Effort;
}

export interface LeftOut {
  /** So many of the first are left out. */
  readonly count: number;
  /** No plan has room for one more of them: known, and not only not found. */
  readonly isProven: boolean;
  /** Some plan of the others, whatever it costs. */
  readonly lays: readonly Lay[];
}

/** Of parts in the order in which they give way: how many have to, by doubling from where all sticks are as long as all parts, and then by halving. */
export function fewestLeftOut(parts: readonly Part[], sorts: readonly StickSort[], sawing: Sawing): LeftOut {
  const efforts = { ...pickEfforts(), search: { left: MOST_HELD } };
  let placed = leastByLength(parts, sorts, sawing);
  let tight = placed - 1;
  let isProven = true;
  let lays: readonly Lay[] = [];
  const isPlaced = (count: number): boolean => {
    const searched = somePlan(parts.slice(count), sorts, sawing, efforts);
    if (searched.ended === 'found') lays = searched.lays;
    else [tight, isProven] = [count, searched.ended === 'none'];
    return searched.ended === 'found';
  };
  for (let jump = 1; !isPlaced(placed); jump *= 2) placed = Math.min(placed + jump, parts.length);
  while (placed - tight > 1) {
    const middle = (placed + tight) >> 1;
    if (isPlaced(middle)) placed = middle;
  }
  return { count: placed, isProven, lays };
}

/** So many have to go that the others are no longer than all sticks together. */
function leastByLength(parts: readonly Part[], sorts: readonly StickSort[], sawing: Sawing): number {
  let [low, high] = [0, parts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const { room, lots } = problemOf(parts.slice(middle), sorts, sawing);
    if (priced(sorts, room, needOf({ lots })) === null) low = middle + 1;
    else high = middle;
  }
  return low;
}

function somePlan(parts: readonly Part[], sorts: readonly StickSort[], sawing: Sawing, efforts: Efforts): Searched {
  if (parts.length === 0) return { ended: 'found', lays: [], looks: 0 };
  const problem = problemOf(parts, sorts, sawing);
  const prices = priced(sorts, problem.room, needOf(problem));
  if (prices === null) return { ended: 'none', lays: [], looks: 0 };
  const filled = bestFilled(problem, Infinity);
  if (filled !== null) return { ended: 'found', lays: filled, looks: 0 };
  const picked = fromPicks(problem, prices.bound, Infinity, costStep(sorts), efforts);
  if (picked.lays !== null) return { ended: 'found', lays: picked.lays, looks: 0 };
  if (picked.least === Infinity) return { ended: 'none', lays: [], looks: 0 };
  if (isTooDeep(problem)) return { ended: 'tired', lays: [], looks: 0 };
  return searchWithin(problem, prices, Infinity, MOST_LOOKS, efforts.search);
}
