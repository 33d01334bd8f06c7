/** Which sticks a plan may be cut from, before anybody asks how: whole ones, as many as there are, with room enough for all parts together. */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Lot, Problem } from './lays.ts';

/** How many of each sort, in the order of the sorts. */
export interface Pick {
  readonly counts: readonly number[];
  /** Money. */
  readonly cost: number;
  /** What its sticks give more than the parts take, kerfs counted, mm: 0 and more. */
  readonly spare: number;
}

/** Choices that are looked at to list them. */
const MOST_LOOKS = 200_000;

/** What all parts take, kerfs counted, mm. */
export const needOf = ({ lots }: { readonly lots: readonly Lot[] }): number =>
  lots.reduce((sum, { length, count }) => sum + length * count, 0);

/** All that cost less than `below`, the cheapest first, of these the roomiest first; of sticks that cost nothing each has all, which does no harm. Null where there are more than `most`, or too many to look through. */
export function picksBelow(problem: Problem, below: number, most: number): readonly Pick[] | null {
  const { sorts, room, lots } = problem;
  const parts = lots.reduce((sum, { count }) => sum + count, 0);
  const rateOf = (sort: number): number => sorts[sort]!.cost / room[sort]!;
  const order = sorts.map((_, sort) => sort).toSorted((one, other) => rateOf(one) - rateOf(other));
  const there = sorts.map(({ count }) => Math.min(count, parts));
  const found: Pick[] = [];
  const counts = sorts.map(() => 0);
  let looks = 0;

  /** What so much costs at the least from that place in the order on, were sticks as divisible as water. */
  const water = (from: number, wanted: number): number => {
    let left = wanted;
    let money = 0;
    for (let nth = from; nth < order.length && left > ROUNDING * parts; nth++) {
      const sort = order[nth]!;
      const taken = Math.min(left, there[sort]! * room[sort]!);
      money += taken * rateOf(sort);
      left -= taken;
    }
    return left > ROUNDING * parts ? Infinity : money;
  };
  const add = (nth: number, cost: number, left: number): void => {
    if (looks++ > MOST_LOOKS || found.length > most) return;
    const sort = order[nth];
    if (sort === undefined) {
      found.push({ counts: [...counts], cost, spare: -left });
      return;
    }
    const { cost: each } = sorts[sort]!;
    const times = Math.min(there[sort]!, each > 0 ? Math.floor((below - cost) / each) : Infinity);
    for (let some = times; some >= 0; some--) {
      counts[sort] = some;
      const wanted = left - some * room[sort]!;
      const rest = water(nth + 1, wanted);
      if (cost + some * each + rest < below) add(nth + 1, cost + some * each, wanted);
      // Fewer leave more to the sorts that come after, which do not suffice already.
      if (rest === Infinity || each <= 0) break;
    }
    counts[sort] = 0;
  };
  add(0, 0, needOf(problem));
  if (looks > MOST_LOOKS || found.length > most) return null;
  return found.toSorted((one, other) => one.cost - other.cost || other.spare - one.spare);
}
