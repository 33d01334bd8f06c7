/** Sticks are chosen before anybody asks how they are cut; then each choice is gone through. */
import { allLays } from './all-lays.ts';
import { coverWithin } from './cover.ts';
import { isTooDeep, type Effort, type Lay, type Problem } from './lays.ts';
import { needOf, picksBelow, type Pick } from './picks.ts';
import { worthsOf, type Prices } from './prices.ts';
import { roundedUp, stepOn, type Step } from './problem.ts';
import { searchWithin, type Searched } from './search.ts';

/** Picks of sticks that are gone through, and how much of the effort that is left one of them may spend. */
const MOST_PICKS = 300;
const SHARE = 0.6;
/** Of more lengths each place of such a search would cost too much; and what many parts of all lengths waste is little. */
const MOST_LOTS = 250;
/** Places that are looked at where not all lays can be listed. */
const PLAIN = 2000;

/** Lays that a plan is put together of where all are known, what may be looked at to find them, and to put one together. */
const MOST_LAYS = 20_000;
const MOST_LISTED = 5_000_000;
const MOST_COVERED = 8_000_000;

/** To find lays, and to put a plan together of them. */
export interface PickEfforts {
  readonly listing: Effort;
  readonly covering: Effort;
}

/** All that one plan may spend. */
export const pickEfforts = (): PickEfforts => ({ listing: { left: MOST_LISTED }, covering: { left: MOST_COVERED } });

/**
 * Pick by pick, the cheapest first, a plan that costs less than the known one, where there are not too many picks: at a pick only its spare may be wasted. Where none is known, `known` is Infinity. `least`: no plan costs less than
 * that, or than the plan that is found.
 */
export function fromPicks(
  problem: Problem,
  bound: number,
  known: number,
  step: Step,
  { listing, covering }: PickEfforts,
): { readonly least: number; readonly lays: readonly Lay[] | null } {
  if (problem.lots.length > MOST_LOTS || isTooDeep(problem)) return { least: bound, lays: null };
  const below = known - step.size / 2;
  const all = picksBelow(problem, below, MOST_PICKS);
  const picks = all ?? picksBelow(problem, bound + step.size / 2, MOST_PICKS) ?? [];
  let least = all === null ? (picks.length > 0 ? stepOn(bound, step) : bound) : known;
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
