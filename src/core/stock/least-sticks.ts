/**
 * What the sticks cost at the least that give as much length as is needed, whole sticks as they are: a bound that no plan can go below, since whatever is cut from them lies on them. Parts of
 * a batch want as much of their batch. Depth first over the sorts, the cheapest for its length first, against the continuous bound (the covering knapsack problem; Martello and
 * Toth, Knapsack Problems, 1990).
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Problem } from './lays.ts';
import type { StickSort } from './types.ts';

/** Choices that are looked at; beyond that nothing is said. */
const MOST_LOOKS = 200_000;

export interface Need {
  /** mm, kerfs counted. */
  readonly all: number;
  /** Of it what has to be of a batch. */
  readonly ofBatch: ReadonlyMap<string, number>;
}

/** `room` is what each sort gives, mm. Null where all sticks do not suffice, or too much would have to be looked at. */
export function leastSticks(sorts: readonly StickSort[], room: readonly number[], need: Need): number | null {
  const byRate = sorts
    .map(({ cost, count, batch }, at) => ({ cost, count, batch, room: room[at]! + ROUNDING }))
    .toSorted((one, other) => one.cost / one.room - other.cost / other.room);
  const ofBatch = new Map(need.ofBatch);
  let best = Infinity;
  let looks = 0;

  /** Were sticks as divisible as water, from this sort on. */
  const water = (from: number, left: number): number => {
    if (left <= 0) return 0;
    let cost = 0;
    for (const { room: gives, cost: each, count } of byRate.slice(from)) {
      if (left <= count * gives) return cost + (left / gives) * each;
      cost += count * each;
      left -= count * gives;
    }
    return Infinity;
  };

  const choose = (i: number, left: number, spent: number): void => {
    if (looks++ >= MOST_LOOKS || spent + water(i, left) >= best) return;
    const sort = byRate[i];
    if (sort === undefined) {
      if (left <= 0 && [...ofBatch.values()].every((mm) => mm <= 0)) best = spent;
      return;
    }
    const batchLeft = sort.batch === null ? 0 : (ofBatch.get(sort.batch) ?? 0);
    const most = Math.min(sort.count, Math.max(0, Math.ceil(Math.max(left, batchLeft) / sort.room)));
    for (let taken = most; taken >= 0; taken--) {
      if (batchLeft > 0) ofBatch.set(sort.batch!, batchLeft - taken * sort.room);
      choose(i + 1, left - taken * sort.room, spent + taken * sort.cost);
    }
    if (batchLeft > 0) ofBatch.set(sort.batch!, batchLeft);
  };
  choose(0, need.all, 0);
  return looks > MOST_LOOKS || best === Infinity ? null : best;
}

/** The same of a problem, by its lots. */
export function leastSticksFor({ sorts, room, lots }: Problem): number | null {
  const ofBatch = new Map<string, number>();
  for (const { batch, length, count } of lots)
    if (batch !== null) ofBatch.set(batch, (ofBatch.get(batch) ?? 0) + length * count);
  return leastSticks(sorts, room, { all: lots.reduce((sum, { length, count }) => sum + length * count, 0), ofBatch });
}
