import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planCuts } from '../../../src/core/stock/plan-cuts.ts';
import type { Part, StickSort } from '../../../src/core/stock/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { checkPlan, leastByTrying } from './checked.ts';

const part = (id: string, length: number, batch: string | null = null): Part => ({ id, spare: null, length, batch });
const partsOf = (lengths: readonly number[]): readonly Part[] => lengths.map((length, i) => part(`t${i}`, length));
const stick = (id: string, length: number, more: Partial<StickSort> = {}): StickSort => ({
  id,
  length,
  count: Infinity,
  cost: length,
  batch: null,
  ...more,
});
const WITHOUT_KERF = { kerf: 0, squareOff: 0 };

interface Packing {
  readonly instances: readonly {
    readonly name: string;
    readonly capacity: number;
    readonly best: number;
    readonly items: readonly number[];
  }[];
}

describe('published packings', () => {
  // OR-Library binpack1 (E. Falkenauer, 1994): sticks of the best known packings, which are proven optima.
  const { instances } = JSON.parse(readFileSync('tests/fixtures/bin-packing.json', 'utf8')) as Packing;
  it.each(instances.map((each) => [each.name, each] as const))(
    '%s comes out at its optimum, proven',
    (_, { capacity, best, items }) => {
      const sticks = [stick('s', capacity, { cost: 1 })];
      const plan = planCuts(partsOf(items), sticks, WITHOUT_KERF);
      checkPlan(plan, partsOf(items), sticks, WITHOUT_KERF);
      expect([plan.cost, plan.leastCost]).toEqual([best, best]);
    },
  );

  it('the same with a kerf, taken off each part and the stick', () => {
    const { capacity, best, items } = instances[1]!;
    const sawing = { kerf: 3, squareOff: 5 };
    const sticks = [stick('s', capacity - 3 + 5, { cost: 1 })];
    const parts = partsOf(items.map((item) => item - 3));
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect(plan.cost).toBe(best);
  });
});

it('of random small jobs the plan is the cheapest there is, by trying all', () => {
  let unlike = 0;
  for (let seed = 1; seed <= drawn(60, 600); seed++) {
    const draw = drawFrom(seed);
    const batches = draw.chance(0.4) ? [null, null, 'A', 'B'] : [null];
    const parts = Array.from({ length: 2 + Math.floor(draw.between(0, 6)) }, (_, i) =>
      part(`t${i}`, Math.round(10 * draw.between(150, 2600)) / 10, draw.oneOf(batches)),
    );
    const sticks = Array.from({ length: 1 + Math.floor(draw.between(0, 3)) }, (_, i) =>
      stick(`s${i}`, draw.oneOf([1900, 3000, 3048, 6096]), {
        count: draw.oneOf([1, 2, 3, Infinity]),
        cost: draw.chance(0.5) ? Math.round(draw.between(10, 90)) : draw.oneOf([1900, 3048, 6096]),
        batch: draw.oneOf(batches),
      }),
    );
    const sawing = { kerf: draw.oneOf([0, 2.5, 3]), squareOff: draw.oneOf([0, 10]) };
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    const least = leastByTrying(parts, sticks, sawing);
    if (plan.unplaced.length > 0) {
      expect([seed, least]).toEqual([seed, Infinity]);
      continue;
    }
    unlike++;
    expect([seed, plan.cost, plan.leastCost]).toEqual([seed, expect.closeTo(least, 6), expect.closeTo(least, 6)]);
  }
  expect(unlike).toBeGreaterThan(drawn(20, 200));
});

describe('what is close', () => {
  it('fits where it comes out even, the last kerf past the end, and not by a thousandth more', () => {
    const sawing = { kerf: 2.5, squareOff: 10 };
    const even = partsOf([1000, 2000, 3000 - 10 - 5]);
    expect(planCuts(even, [stick('s', 6000)], sawing).sticks).toHaveLength(1);
    const more = partsOf([1000, 2000, 3000 - 10 - 5 + 0.001]);
    expect(planCuts(more, [stick('s', 6000)], sawing).sticks).toHaveLength(2);
  });

  it('a remnant is used before a stick is bought, where it costs less', () => {
    const sticks = [stick('bought', 6096, { cost: 80 }), stick('remnant', 1400, { cost: 0, count: 1 })];
    const parts = partsOf([1300, 5000]);
    const plan = planCuts(parts, sticks, { kerf: 2.5, squareOff: 10 });
    expect(plan.cost).toBe(80);
    expect(plan.sticks.map((each) => each.stick).toSorted()).toEqual(['bought', 'remnant']);
  });
});

describe('what there is no plan for', () => {
  it('no sticks, none of them long enough, none of the batch', () => {
    const parts = [part('a', 500), part('b', 7000), part('c', 300, 'H-1')];
    expect(planCuts(parts, [], WITHOUT_KERF).unplaced).toHaveLength(3);
    const plan = planCuts(parts, [stick('s', 6096)], WITHOUT_KERF);
    expect(plan.unplaced.map(({ id }) => id)).toEqual(['b', 'c']);
    expect(planCuts([], [stick('s', 6096)], WITHOUT_KERF)).toEqual({ sticks: [], cost: 0, leastCost: 0, unplaced: [] });
  });

  it('too few sticks: the shortest parts are left over', () => {
    const plan = planCuts(partsOf([3000, 2000, 900, 800]), [stick('s', 6000, { count: 1 })], WITHOUT_KERF);
    expect(plan.unplaced.map(({ length }) => length)).toEqual([800]);
  });

  it('ten thousand parts end, whole and near the bound', () => {
    const draw = drawFrom(9);
    const parts = partsOf(Array.from({ length: 10_000 }, () => Math.round(10 * draw.between(200, 2700)) / 10));
    const sticks = [stick('s', 6096), stick('l', 7315.2)];
    const sawing = { kerf: 2.5, squareOff: 10 };
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect(plan.cost / plan.leastCost).toBeLessThan(1.01);
  });
});
