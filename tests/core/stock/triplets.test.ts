/** Jobs in which nothing at all may be wasted. */
import { expect, it } from 'vitest';
import { planCuts } from '../../../src/core/stock/plan-cuts.ts';
import { drawn } from '../../draws.ts';
import { checkPlan } from './checked.ts';
import { tripletsOf } from './triplets.ts';

it.each([60, 120])('of %i parts the plan wastes nothing, proven', (count) => {
  const sticks = [{ id: 's', length: 1000, count: Infinity, cost: 1, batch: null }];
  const sawing = { kerf: 0, squareOff: 0 };
  for (let seed = 1; seed <= drawn(3, 20); seed++) {
    const parts = tripletsOf(count, seed);
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    expect([seed, plan.cost, plan.leastCost]).toEqual([seed, count / 3, count / 3]);
  }
});
