/** Plans to begin from: whole, quickly found, rarely the cheapest. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { shakenRow } from './shaken.ts';
import { goesOn, MOST_ON_ONE, takeFrom, type Effort, type Lay, type Problem } from './lays.ts';

/** Plans that are made before the best of them counts; and parts that are held to sticks for all of them, when no more are begun. */
const TRIES = 300;
const MOST_IN_ALL = 5_000_000;

/** Of the parts that would be laid next so many are passed by, turn by turn: what is passed is laid later, and another plan comes of it. */
const PASSED = [0.3, 0.25, 0.35] as const;

/** The cheapest of many; the first that costs no more than `enough`. Null where the sticks suffice in none. */
export function bestFilled(problem: Problem, enough: number): readonly Lay[] | null {
  const row = shakenRow(problem.lots.length);
  const effort: Effort = { left: MOST_IN_ALL };
  let best: readonly Lay[] | null = null;
  let least = Infinity;
  for (let turn = 0; turn < TRIES && (best === null || least > enough) && effort.left > 0; turn++) {
    const share = turn === 0 ? 0 : PASSED[turn % PASSED.length]!;
    const lays = filledSticks(problem, () => share > 0 && row() < share, effort);
    const cost = lays?.reduce((sum, { sort }) => sum + problem.sorts[sort]!.cost, 0) ?? Infinity;
    if (cost >= least) continue;
    best = lays;
    least = cost;
  }
  return best;
}

/**
 * Stick by stick the one that wastes least money on what it gives, filled by the set of parts that leaves least of it, the longest part that is left always among them
 * (Gupta and Ho, A new heuristic algorithm for the one-dimensional bin-packing problem, 1999). Null where the sticks do not suffice that way.
 */
function filledSticks(problem: Problem, isPassed: () => boolean, effort: Effort): readonly Lay[] | null {
  const { lots, sorts, room } = problem;
  const left = { lots: lots.map(({ count }) => count), sticks: sorts.map(({ count }) => count) };
  const lays: Lay[] = [];
  for (let first = 0; first < lots.length;) {
    if (left.lots[first] === 0) {
      first++;
      continue;
    }
    let best: (Lay & { readonly rate: number }) | null = null;
    for (const [sort, { cost }] of sorts.entries()) {
      if (left.sticks[sort]! <= 0) continue;
      const of = fullest(problem, sort, first, left.lots, isPassed, effort);
      if (of === null) continue;
      const used = of.reduce((sum, count, lot) => sum + count * lots[lot]!.length, 0);
      const rate = cost / Math.min(used, room[sort]!);
      if (best === null || rate < best.rate) best = { sort, of, rate };
    }
    if (best === null) return null;
    takeFrom(left, best, 1);
    lays.push({ sort: best.sort, of: best.of });
  }
  return lays;
}

/** Parts that are held to one stick, where the parts are few: of many each is held to it once. */
const MOST_AT_A_STICK = 100_000;

/** What is left least of the stick by, with that lot on it; null where it does not fit. */
function fullest(
  problem: Problem,
  sort: number,
  first: number,
  left: readonly number[],
  isPassed: () => boolean,
  effort: Effort,
): readonly number[] | null {
  const { lots, room } = problem;
  if (!goesOn(problem, first, sort) || lots[first]!.length > room[sort]! + ROUNDING) return null;
  const stopAt = effort.left - Math.max(lots.length, Math.min(MOST_AT_A_STICK, MOST_IN_ALL / lots.length));
  const lengths = lots.map(({ length }) => length);
  const isFor = lots.map((_, lot) => goesOn(problem, lot, sort));
  const of = lots.map(() => 0);
  of[first] = 1;
  let best = [...of];
  let least = room[sort]! - lots[first]!.length;
  const add = (from: number, slack: number, on: number): void => {
    if (slack < least) {
      least = slack;
      best = [...of];
    }
    if (on >= MOST_ON_ONE) return;
    for (let lot = from; lot < lots.length; lot++) {
      if (least <= ROUNDING || effort.left-- <= stopAt) return;
      const length = lengths[lot]!;
      if (of[lot]! >= left[lot]! || length > slack + ROUNDING || !isFor[lot] || isPassed()) continue;
      of[lot] = of[lot]! + 1;
      add(lot, slack - length, on + 1);
      of[lot] = of[lot]! - 1;
    }
  };
  add(first, least, 1);
  return best;
}
