/**
 * A cutting plan that costs less than a given one, or the proof that there is none: depth first over whole sticks, the longest part that is left always on the next one.
 * A stick may waste only so much that all of them together stay below the plan that is known, counted by the prices of prices.ts; the lays of a stick are tried
 * from the least waste up. A search that goes wrong early seldom comes out of it: short ones in shaken orders find what a long one does not.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { laysOn, takeFrom, type Effort, type Lay, type PricedLay, type Problem } from './lays.ts';
import type { Prices } from './prices.ts';

export interface Searched {
  /** tired: as many places as are allowed were looked at, and nothing is proven. */
  readonly ended: 'found' | 'none' | 'tired';
  readonly lays: readonly Lay[];
  readonly looks: number;
}

/** Parts that are held to sticks at one place; where that does not suffice, nothing is proven. */
const MOST_AT_A_PLACE = 1_000_000;

/** Places known to lead nowhere that are kept. */
const MOST_KEPT = 200_000;

/** Looks for a plan that costs no more than the bound and the budget; `most` places are looked at, as long as the effort lasts. `shaken` is added to what a lay spends when lays are put in order. */
export function searchWithin(
  problem: Problem,
  prices: Prices,
  budget: number,
  most: number,
  effort: Effort,
  shaken: () => number = () => 0,
): Searched {
  const { lots, sorts } = problem;
  const left = { lots: lots.map(({ count }) => count), sticks: sorts.map(({ count }) => count) };
  const lays: Lay[] = [];
  /** By what is left the greatest budget with which nothing was found. */
  const failed = new Map<string, number>();
  const rounding = ROUNDING * prices.rate * lots.length;
  let looks = 0;
  let cutShort = false;

  /** With that lot on them, of every sort, the least spent first. */
  const laysWith = (first: number, within: number): readonly PricedLay[] => {
    const found = sorts.flatMap((_, sort) => {
      if (left.sticks[sort]! <= 0 || standsForLater(problem, left.sticks, sort)) return [];
      const here = { left: Math.min(MOST_AT_A_PLACE, effort.left) };
      const before = here.left;
      const of = laysOn(problem, prices, left, { sort, first, within: within + rounding }, here);
      effort.left -= before - here.left;
      cutShort ||= here.left <= 0;
      return of;
    });
    const by = new Map(found.map((lay) => [lay, lay.spent + shaken()]));
    return found.toSorted((one, other) => by.get(one)! - by.get(other)!);
  };

  /** What cheap sticks that stay on the rack would have saved: the plan costs so much more than its sticks spend. */
  const unused = (): number =>
    prices.saved.reduce((sum, saved, sort) => (saved > 0 ? sum + saved * left.sticks[sort]! : sum), 0);

  /** Whether what is left can be laid within the budget; null where it is not known. */
  const finish = (within: number): boolean | null => {
    const first = left.lots.findIndex((count) => count > 0);
    if (first === -1) return within >= unused() - rounding;
    if (looks++ >= most || effort.left <= 0) return null;
    const here = `${left.lots.join()}|${left.sticks.join()}`;
    if ((failed.get(here) ?? -Infinity) >= within) return false;
    for (const lay of laysWith(first, within)) {
      takeFrom(left, lay, 1);
      lays.push(lay);
      const ended = finish(within - lay.spent);
      if (ended !== false) return ended;
      lays.pop();
      takeFrom(left, lay, -1);
    }
    if (failed.size < MOST_KEPT) failed.set(here, within);
    return false;
  };

  const ended = finish(budget);
  if (ended === true) return { ended: 'found', lays, looks };
  return { ended: ended === null || cutShort ? 'tired' : 'none', lays: [], looks };
}

/** Of sorts that are alike the first that is left stands for all. */
function standsForLater({ sorts, room }: Problem, sticks: readonly number[], sort: number): boolean {
  const { cost, batch } = sorts[sort]!;
  return sorts.some(
    (other, i) => i < sort && sticks[i]! > 0 && other.cost === cost && other.batch === batch && room[i] === room[sort],
  );
}
