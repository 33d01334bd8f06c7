/**
 * Jobs in which nothing at all may be wasted: triplets that fill a stick, made as E. Falkenauer made them (A hybrid grouping genetic algorithm for bin packing, Journal of Heuristics 2, 1996): whole
 * numbers, of 1000 the first from 380 to 490, the second from 250 to half of what that leaves, the third the rest.
 */
import { expect, it } from 'vitest';
import { planCuts } from '../../../src/core/stock/plan-cuts.ts';
import type { Part } from '../../../src/core/stock/types.ts';
import { drawn } from '../../draws.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';
import { checkPlan } from './checked.ts';

function tripletsOf(count: number, seed: number): readonly Part[] {
  const next = uniformFrom(seed * 7919 + count);
  const whole = (from: number, to: number): number => from + Math.floor(next() * (to - from + 1));
  return Array.from({ length: count / 3 }, () => {
    const first = whole(380, 490);
    const second = whole(250, Math.floor((1000 - first) / 2));
    return [first, second, 1000 - first - second];
  })
    .flat()
    .map((length, i) => ({ id: `t${i}`, spare: null, length, batch: null }));
}

it.each([60, 120])('of %i parts the plan wastes nothing, proven', (count) => {
  const sticks = [{ id: 's', length: 1000, count: Infinity, cost: 1, batch: null }];
  const sawing = { kerf: 0, squareOff: 0 };
  for (let seed = 1; seed <= drawn(5, 20); seed++) {
    const parts = tripletsOf(count, seed);
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect([seed, plan.cost, plan.leastCost]).toEqual([seed, count / 3, count / 3]);
  }
});
