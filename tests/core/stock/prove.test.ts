/** What the solver finds beyond the own search, and both against a plain formulation of the same job: which part lies on which stick. */
import { describe, expect, it } from 'vitest';
import { planCuts } from '../../../src/core/stock/plan-cuts.ts';
import type { Solved, Solver } from '../../../src/core/stock/program.ts';
import { proveCuts } from '../../../src/core/stock/prove.ts';
import type { ToCut } from '../../../src/core/stock/to-cut.ts';
import type { CutPlan, Part, Sawing, StickSort } from '../../../src/core/stock/types.ts';
import { noSolver } from '../../../src/exports/shared/solver.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';
import { BRACKET_SAWING, BRACKET_STICKS, BRACKETS, BRACKETS_COST } from '../../stock-jobs.ts';
import { checkPlan } from './checked.ts';
import { startedSolver } from './solver.ts';

const solver = await startedSolver();

const part = (id: string, length: number, batch: string | null = null): Part => ({ id, spare: null, length, batch });
const toCutOf = (parts: readonly Part[], sticks: readonly StickSort[], sawing: Sawing): ToCut => ({
  section: 'main',
  parts,
  sticks,
  bought: null,
  sawing,
  begun: [],
  hoops: [],
});

/** Each part on one stick; sticks one by one, each used or not. Infinity where they do not suffice. */
function leastBySolver(parts: readonly Part[], sticks: readonly StickSort[], { kerf, squareOff }: Sawing): number {
  const bins = sticks.flatMap((stick) => Array.from({ length: Math.min(stick.count, parts.length) }, () => stick));
  const may = (p: number, b: number) => parts[p]!.batch === null || parts[p]!.batch === bins[b]!.batch;
  const all = parts.flatMap((_, p) => bins.flatMap((__, b) => (may(p, b) ? [[p, b] as const] : [])));
  if (parts.some((_, p) => !all.some(([of]) => of === p))) return Infinity;
  const program = [
    'Minimize',
    ` cost: ${bins.map(({ cost }, b) => `${cost} y${b}`).join('\n + ')}`,
    'Subject To',
    ...parts.map((_, p) => ` one${p}: ${all.flatMap(([of, b]) => (of === p ? [`a${p}_${b}`] : [])).join('\n + ')} = 1`),
    ...bins.map(({ length }, b) => {
      const on = all.flatMap(([p, of]) => (of === b ? [`${parts[p]!.length + kerf} a${p}_${b}`] : []));
      return ` fits${b}: ${[...on, `-${length - squareOff + kerf} y${b}`].join('\n + ').replaceAll('+ -', '- ')} <= 0`;
    }),
    'Binaries',
    ...bins.map((_, b) => ` y${b}`),
    ...all.map(([p, b]) => ` a${p}_${b}`),
    'End',
    '',
  ].join('\n');
  const { ended, values } = solver.solve(program, 1_000_000);
  if (ended === 'none') return Infinity;
  expect(ended).toBe('solved');
  return bins.reduce((sum, { cost }, b) => sum + cost * Math.round(values.get(`y${b}`) ?? 0), 0);
}

function jobFrom(draw: Draw) {
  const batches = draw.chance(0.3) ? [null, null, 'A', 'B'] : [null];
  const parts = Array.from({ length: 3 + Math.floor(draw.between(0, 6)) }, (_, i) =>
    part(`t${i}`, Math.round(10 * draw.between(150, 2600)) / 10, draw.oneOf(batches)),
  );
  const sticks = Array.from({ length: 1 + Math.floor(draw.between(0, 3)) }, (_, i): StickSort => ({
    id: `s${i}`,
    length: draw.oneOf([1900, 3000, 3048, 6096]),
    count: draw.oneOf([1, 2, 3, Infinity]),
    cost: Math.round(draw.between(10, 90)),
    batch: draw.oneOf(batches),
  }));
  return { parts, sticks, sawing: { kerf: draw.oneOf([0, 2.5, 3]), squareOff: draw.oneOf([0, 10]) } };
}

it('of random small jobs own search and the plain formulation agree', () => {
  let placed = 0;
  for (let seed = 1; seed <= drawn(10, 200); seed++) {
    const { parts, sticks, sawing } = jobFrom(drawFrom(seed + 4000));
    const plan = planCuts(parts, sticks, sawing);
    checkPlan(plan, parts, sticks, sawing);
    const least = leastBySolver(parts, sticks, sawing);
    if (plan.unplaced.length > 0) expect([seed, least]).toEqual([seed, Infinity]);
    else expect([seed, plan.cost, plan.leastCost]).toEqual([seed, least, least]);
    placed += Number(plan.unplaced.length === 0);
  }
  expect(placed).toBeGreaterThan(drawn(4, 80));
});

/** A plan that nobody has looked into: a stick a part, and no bound. */
function careless({ parts, sticks, sawing }: ToCut): CutPlan {
  const alone = parts.map((each) => planCuts([each], sticks.slice(0, 1), sawing));
  return {
    sticks: alone.flatMap((plan) => plan.sticks),
    cost: alone.reduce((sum, { cost }) => sum + cost, 0),
    leastCost: 0,
    unplaced: [],
    unfound: [],
  };
}

it.each([
  ['whole', 61, 1],
  ['no whole thousandths', 61.3333, 1 / 3],
])('from a careless plan the solver comes to the cheapest and proves it, alone; prices %s', (_, dear, share) => {
  for (let seed = 1; seed <= drawn(10, 200); seed++) {
    const { parts, sticks, sawing } = jobFrom(drawFrom(seed + 6000));
    const endless = [
      { id: 'long', length: 6096, count: Infinity, cost: dear, batch: null },
      ...sticks.map((stick) => ({ ...stick, cost: stick.cost * share, batch: null })),
    ];
    const free = parts.map((each) => ({ ...each, batch: null }));
    const section = toCutOf(free, endless, sawing);
    const proven = proveCuts(section, careless(section), solver);
    checkPlan(proven, free, endless, sawing);
    const { cost } = planCuts(free, endless, sawing);
    expect([seed, proven.cost, proven.leastCost]).toEqual([seed, expect.closeTo(cost, 6), proven.cost]);
  }
});

describe('many parts of few lengths, which the own search does not come to the end of', () => {
  const parts = BRACKETS.flatMap(([length, count], lot) =>
    Array.from({ length: count }, (_, i) => part(`${lot}.${i}`, length)),
  );
  const sticks = BRACKET_STICKS.map((stick): StickSort => ({ count: Infinity, batch: null, ...stick }));
  const sawing = BRACKET_SAWING;
  const section = toCutOf(parts, sticks, sawing);
  const plan = planCuts(parts, sticks, sawing);

  it('comes out cheaper, proven, and every part still fits', () => {
    expect(plan.cost).toBeGreaterThan(BRACKETS_COST);
    const proven = proveCuts(section, plan, solver);
    checkPlan(proven, parts, sticks, sawing);
    expect([proven.cost, proven.leastCost]).toEqual([BRACKETS_COST, BRACKETS_COST]);
    expect(proveCuts(section, plan, solver)).toEqual(proven);
  });

  it('stays as it is with a solver that knows nothing, or lies', () => {
    expect(proveCuts(section, plan, noSolver)).toEqual(plan);
    const lies = (solved: Solved): Solver => ({ solve: () => solved });
    const everything = new Map(Array.from({ length: 5000 }, (_, i) => [`x${i}`, 1]));
    for (const values of [new Map<string, number>(), everything]) {
      const told = proveCuts(section, plan, lies({ ended: 'tired', values, prices: new Map() }));
      checkPlan(told, parts, sticks, sawing);
      expect(told.cost).toBeLessThanOrEqual(plan.cost);
    }
  });

  it('a plan that is proven is not looked into, nor one of parts of hundreds of lengths', () => {
    const many = Array.from({ length: 200 }, (_, i) => part(`m${i}`, 1000 + i));
    const each = many.map((one) => ({ stick: sticks[0]!.id, parts: [one], left: 0 }));
    const loose: CutPlan = { sticks: each, cost: 1, leastCost: 0, unplaced: [], unfound: [] };
    const done = { ...plan, leastCost: plan.cost };
    const asked: Solver = {
      solve: () => {
        throw new Error('asked');
      },
    };
    expect(proveCuts(section, done, asked)).toBe(done);
    expect(proveCuts(toCutOf(many, sticks, sawing), loose, asked)).toBe(loose);
  });
});
