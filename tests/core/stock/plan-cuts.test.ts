import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planCuts } from '../../../src/core/stock/plan-cuts.ts';
import type { Part, StickSort } from '../../../src/core/stock/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { checkPlan, leastByTrying } from './checked.ts';
import { tripletsOf } from './triplets.ts';

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

/** Lengths and prices as they are typed; and as they come out of a calculation, left-overs without a price among them. */
const FIGURES = [
  ['to a tenth and whole prices', (mm: number) => Math.round(10 * mm) / 10, Math.round],
  ['as they come', (mm: number) => mm, (cost: number) => Math.round(cost) / 3],
] as const;

it.each(FIGURES)(
  'of random small jobs, figures %s, the plan is the cheapest there is, by trying all',
  (_, length, money) => {
    let unlike = 0;
    for (let seed = 1; seed <= drawn(60, 600); seed++) {
      const draw = drawFrom(seed);
      const lengths = [1900, 3000, 3048, 6096, length(draw.between(900, 3000)), length(draw.between(900, 3000))];
      const batches = draw.chance(0.4) ? [null, null, 'A', 'B'] : [null];
      const parts = Array.from({ length: 2 + Math.floor(draw.between(0, 6)) }, (_, i) =>
        part(`t${i}`, length(draw.between(150, 2600)), draw.oneOf(batches)),
      );
      const sticks = Array.from({ length: 1 + Math.floor(draw.between(0, 3)) }, (_, i) =>
        stick(`s${i}`, draw.oneOf(lengths), {
          count: draw.oneOf([1, 2, 3, Infinity]),
          ...(draw.chance(0.5) && { cost: money(draw.between(10, 90)) }),
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
      expect([seed, plan.cost, plan.leastCost]).toEqual([seed, expect.closeTo(least, 6), plan.cost]);
    }
    expect(unlike).toBeGreaterThan(drawn(20, 200));
  },
);

it('of prices that are no whole thousandths no plan is said to be the cheapest that is a little dearer', () => {
  // One left-over of 1000.05 would do, which costs as much; a step of a thousandth of the dearest stick hid that.
  const sticks = [
    stick('bought', 6096),
    stick('left-over', 1000.51234, { count: 1 }),
    stick('shorter', 1000.05123, { count: 1 }),
  ];
  const plan = planCuts(partsOf([1000]), sticks, WITHOUT_KERF);
  expect([plan.cost, plan.leastCost]).toEqual([1000.05123, 1000.05123]);
});

describe('parts that are nearly alike', () => {
  const sawing = { kerf: 2.5, squareOff: 10 };

  it('alike but for rounding: each is placed once', () => {
    const parts = partsOf([1023, 1023.0000000000001]);
    expect(parts[0]!.length).not.toBe(parts[1]!.length);
    for (const sticks of [[stick('s', 6096)], [stick('s', 1040)]]) {
      const plan = planCuts(parts, sticks, sawing);
      checkPlan(plan, parts, sticks, sawing);
      expect(plan.unplaced).toEqual([]);
    }
  });

  it('of one length, of no batch and of one called by nothing: each is placed once', () => {
    const parts = [part('a', 500), part('b', 500, '')];
    const sticks = [stick('s', 6096, { batch: '' })];
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect(plan.unplaced).toEqual([]);
  });
});

describe('sticks that just suffice', () => {
  const parts = tripletsOf(60, 1);

  it('a plan is found where nothing at all may be wasted', () => {
    const sticks = [stick('s', 1000, { count: 20, cost: 1 })];
    const plan = planCuts(parts, sticks, WITHOUT_KERF);
    checkPlan(plan, parts, sticks, WITHOUT_KERF);
    expect([plan.unplaced, plan.cost, plan.leastCost]).toEqual([[], 20, 20]);
  });

  it('of one stick less it is known that they do not', () => {
    const plan = planCuts(parts, [stick('s', 1000, { count: 19, cost: 1 })], WITHOUT_KERF);
    expect(plan.unplaced.length).toBeGreaterThan(0);
  });
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
    expect(planCuts([], [stick('s', 6096)], WITHOUT_KERF)).toEqual({
      sticks: [],
      cost: 0,
      leastCost: 0,
      unplaced: [],
      unfound: [],
    });
  });

  it('too few sticks: the shortest parts are left over', () => {
    const plan = planCuts(partsOf([3000, 2000, 900, 800]), [stick('s', 6000, { count: 1 })], WITHOUT_KERF);
    expect(plan.unplaced.map(({ length }) => length)).toEqual([800]);
  });

  it('any number of parts ends, of a hundredth of a mm as of more than half a stick, and on the one stick that there is', () => {
    const all = drawn(5000, 20_000);
    const many = (length: number) => partsOf(Array.from({ length: all }, () => length));
    const jobs = [
      [0.01, Infinity, all],
      [4000, Infinity, all],
      [300, 1, 20],
      [300, 40, 800],
    ] as const;
    for (const [length, count, placed] of jobs) {
      const sawing = { kerf: length < 1 ? 0 : 2.5, squareOff: 10 };
      const plan = planCuts(many(length), [stick('s', 6096, { count })], sawing);
      expect([length, count, all - plan.unplaced.length]).toEqual([length, count, placed]);
      expect(plan.unfound).toEqual([]);
    }
  });

  it('thousands of parts end, whole and near the bound', () => {
    const draw = drawFrom(9);
    const parts = partsOf(
      Array.from({ length: drawn(3000, 10_000) }, () => Math.round(10 * draw.between(200, 2700)) / 10),
    );
    const sticks = [stick('s', 6096), stick('l', 7315.2)];
    const sawing = { kerf: 2.5, squareOff: 10 };
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect(plan.cost / plan.leastCost).toBeLessThan(1.01);
  });
});
