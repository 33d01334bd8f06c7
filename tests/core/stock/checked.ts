/** A plan added up anew: every part once, on a stick that there is, of its batch, within its length to a thousandth of a thousandth; the cost; the bound. */
import { expect } from 'vitest';
import type { CutPlan, Part, Sawing, StickSort } from '../../../src/core/stock/types.ts';

/** mm: what sums of a dozen lengths may differ by in double precision. */
const SUMS = 1e-6;

export function checkPlan(
  plan: CutPlan,
  parts: readonly Part[],
  sticks: readonly StickSort[],
  { kerf, squareOff }: Sawing,
): void {
  const ids = (of: readonly Part[]): string[] => of.map(({ id }) => id).toSorted();
  expect(ids([...plan.sticks.flatMap((stick) => stick.parts), ...plan.unplaced])).toEqual(ids(parts));
  const used = new Map<string, number>();
  let cost = 0;
  for (const { stick, parts: on, left } of plan.sticks) {
    const sort = sticks.find(({ id }) => id === stick)!;
    used.set(stick, (used.get(stick) ?? 0) + 1);
    cost += sort.cost;
    const cut = on.reduce((sum, { length }) => sum + length, squareOff + kerf * (on.length - 1));
    expect(cut).toBeLessThanOrEqual(sort.length + SUMS);
    expect(left).toBeCloseTo(Math.max(0, sort.length - cut - kerf), 6);
    for (const { batch } of on) expect(batch === null || batch === sort.batch).toBe(true);
  }
  for (const { id, count } of sticks) expect(used.get(id) ?? 0).toBeLessThanOrEqual(count);
  expect(plan.cost).toBeCloseTo(cost, 6);
  expect(plan.leastCost).toBeLessThanOrEqual(plan.cost + SUMS);
}

/** The least cost of all plans that place every part, by trying what each stick may hold: of few parts. Infinity where there is none. */
export function leastByTrying(
  parts: readonly Part[],
  sticks: readonly StickSort[],
  { kerf, squareOff }: Sawing,
): number {
  const all = 2 ** parts.length - 1;
  const fits = (set: number, { length, batch }: StickSort): boolean => {
    const on = parts.filter((_, i) => (set >> i) % 2 === 1);
    const cut = on.reduce((sum, part) => sum + part.length, squareOff + kerf * (on.length - 1));
    return cut <= length + 1e-9 && on.every((part) => part.batch === null || part.batch === batch);
  };
  const known = new Map<string, number>();
  const least = (left: number, counts: readonly number[]): number => {
    if (left === 0) return 0;
    const key = `${left}|${counts.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const first = left & -left;
    let best = Infinity;
    for (let rest = left ^ first, set = rest; ; set = (set - 1) & rest) {
      for (const [i, stick] of sticks.entries()) {
        if (counts[i]! <= 0 || !fits(set | first, stick)) continue;
        const cost =
          stick.cost +
          least(
            left & ~(set | first),
            counts.map((count, k) => (k === i ? count - 1 : count)),
          );
        best = Math.min(best, cost);
      }
      if (set === 0) break;
    }
    known.set(key, best);
    return best;
  };
  return least(
    all,
    sticks.map(({ count }) => Math.min(count, parts.length)),
  );
}
