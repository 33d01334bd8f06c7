/** A stick is sawn, and the plan of the others stands. */
import { expect, it } from 'vitest';
import type { SectionPlan } from '../../../src/core/stock/of-job.ts';
import { planSection } from '../../../src/core/stock/of-job.ts';
import { restOf } from '../../../src/core/stock/rest-of.ts';
import type { ToCut } from '../../../src/core/stock/to-cut.ts';
import type { CutStick, Part, StickSort } from '../../../src/core/stock/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { checkPlan, leastByTrying } from './checked.ts';

const planned = (section: ToCut): SectionPlan => ({ ...section, ...planSection(section) });

function sectionFrom(seed: number): ToCut {
  const draw = drawFrom(seed);
  const tubes = Array.from({ length: 2 + Math.floor(draw.between(0, 4)) }, (_, i): Part => ({
    id: `t${i}`,
    spare: null,
    length: draw.between(300, 2600),
    batch: null,
  }));
  const spares = Array.from({ length: 3 }, (_, i): Part => ({
    id: `spare 0.${i}`,
    spare: 0,
    length: 700,
    batch: null,
  }));
  const sticks = [3000, 4000, 6096].map((length, i): StickSort => ({
    id: `k${i}`,
    length,
    count: draw.oneOf([1, 2, Infinity]),
    cost: draw.oneOf([length, Math.round(draw.between(10, 90))]),
    batch: null,
  }));
  return { section: 'main', parts: [...tubes, ...spares], sticks, sawing: { kerf: 2.5, squareOff: 10 }, hoops: ['t1'] };
}

/** As the job is after it: its parts are made, spares are numbered anew, what is left is a sort of its own. */
function afterSawing({ parts, sticks, ...same }: ToCut, sawn: CutStick): ToCut {
  const spares = sawn.parts.filter(({ spare }) => spare !== null).length;
  const last = parts.filter(({ spare }) => spare !== null).slice(-spares || parts.length);
  return {
    ...same,
    parts: parts.filter((part) => (part.spare === null ? !sawn.parts.includes(part) : !last.includes(part))),
    sticks: [
      ...sticks
        .map((sort) => (sort.id === sawn.stick ? { ...sort, count: sort.count - 1 } : sort))
        .filter(({ count }) => count > 0),
      ...(sawn.left >= 300 ? [{ id: 'left-over', length: sawn.left, count: 1, cost: 1, batch: null }] : []),
    ],
  };
}

it('is still the cheapest, whichever stick is sawn, by trying all', () => {
  let tried = 0;
  for (let seed = 1; seed <= drawn(25, 200); seed++) {
    const section = sectionFrom(seed + 9000);
    const before = planned(section);
    if (before.plan.unplaced.length > 0) continue;
    for (const sawn of before.plan.sticks) {
      const now = afterSawing(section, sawn);
      const rest = restOf(before, now)!;
      checkPlan(rest.plan, now.parts, now.sticks, now.sawing);
      expect(rest.plan.sticks).toHaveLength(before.plan.sticks.length - 1);
      const least = leastByTrying(now.parts, now.sticks, now.sawing);
      expect([seed, rest.plan.cost, rest.plan.leastCost]).toEqual([seed, expect.closeTo(least, 6), rest.plan.cost]);
      tried++;
    }
  }
  expect(tried).toBeGreaterThan(drawn(20, 200));
});

it('of a plan that has no stick for some parts the same are left, and wanted', () => {
  const section = { ...sectionFrom(1), sticks: [{ id: 'k', length: 3000, count: 2, cost: 3000, batch: null }] };
  const before = planned(section);
  expect(before.plan.unplaced.length).toBeGreaterThan(0);
  const now = afterSawing(section, before.plan.sticks[0]!);
  const rest = restOf(before, now)!;
  checkPlan(rest.plan, now.parts, now.sticks, now.sawing);
  expect(rest.plan.unplaced).toHaveLength(before.plan.unplaced.length);
  expect(rest.wanting.map(({ count }) => count)).toEqual(before.wanting.map(({ count }) => count));
});

it('is none where anything else changed', () => {
  const section = sectionFrom(9002);
  const before = planned(section);
  const now = afterSawing(section, before.plan.sticks[0]!);
  expect(restOf(before, now)).not.toBeNull();
  const [part, ...others] = now.parts;
  const changed: readonly ToCut[] = [
    section,
    { ...now, sawing: { kerf: 3, squareOff: 10 } },
    { ...now, parts: [{ ...part!, length: part!.length + 0.1 }, ...others] },
    { ...now, parts: others },
    { ...now, parts: [...now.parts, { ...part!, id: 'new' }] },
    { ...now, sticks: now.sticks.map((sort) => ({ ...sort, cost: sort.cost + 1 })) },
    { ...now, sticks: [...now.sticks, { id: 'other', length: 6096, count: 1, cost: 0, batch: null }] },
    { ...now, section: 'other' },
  ];
  expect(changed.map((each) => restOf(before, each))).toEqual(changed.map(() => null));
});
