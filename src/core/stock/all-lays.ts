/** All lays that a plan of a given cost can be made of. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { goesOn, type Effort, type Lot, type PricedLay, type Problem } from './lays.ts';
import type { Worths } from './prices.ts';

/** Those of every sort of which no more than `within` is spent. Null where there are more than `most`, or the effort is spent before all are found. */
export function allLays(
  problem: Problem,
  worths: Worths,
  within: number,
  most: number,
  effort: Effort,
): readonly PricedLay[] | null {
  const { lots, sorts, room } = problem;
  const { worth, saved } = worths;
  const rounding = roundingOf(problem, worths);
  const found: PricedLay[] = [];
  for (const [sort, { cost }] of sorts.entries()) {
    const dear = cost + saved[sort]!;
    const least = dear - within - rounding;
    const there = lots.flatMap((_, lot) => (goesOn(problem, lot, sort) ? [lot] : []));
    const shortest = lots[there.at(-1) ?? 0]!.length;
    const { greatest, dearest } = fromThereOn(there, problem, worth);
    const of = lots.map(() => 0);
    effort.left -= lots.length;
    const add = (from: number, used: number, worthIt: number): void => {
      if (used > 0 && worthIt >= least) found.push({ sort, of: [...of], spent: dear - worthIt });
      const slack = room[sort]! + ROUNDING - used;
      const times = Math.floor(slack / shortest);
      for (let at = Math.max(from, firstWithin(there, lots, slack)); at < there.length && found.length <= most; at++) {
        if (effort.left-- <= 0) return;
        // From here on no parts are worth enough, as many as would still go on it.
        if (worthIt + Math.min(times * greatest[at]!, slack * dearest[at]!) < least) return;
        const lot = there[at]!;
        if (of[lot]! >= lots[lot]!.count) continue;
        of[lot]! += 1;
        add(at, used + lots[lot]!.length, worthIt + worth[lot]!);
        of[lot]! -= 1;
      }
    };
    add(0, 0, 0);
  }
  return found.length > most || effort.left <= 0 ? null : found;
}

/** By so much sums of worths may be off, money. */
export const roundingOf = ({ lots }: Problem, { worth }: Worths): number =>
  ROUNDING * lots.length * lots.reduce((most, { length }, lot) => Math.max(most, worth[lot]! / length), 0);

/** Of the lots from each place on: what one part is worth at the most, and a mm. */
function fromThereOn(
  there: readonly number[],
  { lots }: Problem,
  worth: readonly number[],
): { readonly greatest: readonly number[]; readonly dearest: readonly number[] } {
  const greatest: number[] = [];
  const dearest: number[] = [];
  for (let at = there.length - 1; at >= 0; at--) {
    const lot = there[at]!;
    greatest[at] = Math.max(greatest[at + 1] ?? 0, worth[lot]!);
    dearest[at] = Math.max(dearest[at + 1] ?? 0, worth[lot]! / lots[lot]!.length);
  }
  return { greatest, dearest };
}

/** Of the lots of those places, the longest first, the first that is no longer than the slack, as its place in `there`. */
function firstWithin(there: readonly number[], lots: readonly Lot[], slack: number): number {
  let [low, high] = [0, there.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (lots[there[middle]!]!.length > slack) low = middle + 1;
    else high = middle;
  }
  return low;
}
