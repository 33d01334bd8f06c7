/**
 * What a millimetre of part is worth at the least: the bound of the continuous problem. Were parts as divisible as water, the sticks that cost least for what they give
 * would be used first, as many as there are; the sort at which the length suffices sets the rate r. Then a stick costs c - r (what is cut from it) - m too much, with m what is
 * saved by a stick that is cheaper than r: never below nothing. Over a whole plan these come to its cost less the bound, so that a plan of a cost is looked for among
 * sticks whose sums of them stay within the difference (linear programming duality; Gilmore and Gomory, A linear programming approach to the cutting stock problem, 1961).
 */
import type { Problem } from './lays.ts';
import type { StickSort } from './types.ts';

/** What parts and sticks are worth in a bound on the cost of all plans. */
export interface Worths {
  /** Of one part of each lot, in the order of the lots; money. */
  readonly worth: readonly number[];
  /** What using one of the sort saves beside the rate, in the order of the sorts; 0 of those that are no cheaper. */
  readonly saved: readonly number[];
  /** No plan costs less. */
  readonly bound: number;
}

/** Where a part is worth its length. */
export interface Prices extends Omit<Worths, 'worth'> {
  /** Money for each mm of part and kerf. */
  readonly rate: number;
}

/** Each part at its length. */
export const worthsOf = ({ lots }: Problem, { rate, saved, bound }: Prices): Worths => ({
  worth: lots.map(({ length }) => rate * length),
  saved,
  bound,
});

/** `room` is what each sort gives, and `need` what all parts take, kerfs counted, mm. Null where all sticks together do not suffice. */
export function priced(sorts: readonly StickSort[], room: readonly number[], need: number): Prices | null {
  const byRate = sorts
    .map(({ cost, count }, at) => ({ at, cost, count, rate: cost / room[at]! }))
    .toSorted((one, other) => one.rate - other.rate);
  let left = need;
  for (const [i, { at, rate, count }] of byRate.entries()) {
    const given = count * room[at]!;
    if (left > given) {
      left -= given;
      continue;
    }
    const saved = sorts.map(() => 0);
    const cheaper = byRate.slice(0, i);
    for (const each of cheaper) saved[each.at] = rate * room[each.at]! - each.cost;
    const bound = rate * need - cheaper.reduce((sum, each) => sum + each.count * saved[each.at]!, 0);
    return { rate, saved, bound };
  }
  return null;
}
