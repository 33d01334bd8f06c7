/** What the cutting plan costs: published packings against a solver of linear programs on the plain formulation of the same job, and jobs of the shop as their parts become many. */
import { readFileSync } from 'node:fs';
import { planCuts } from '../../src/core/stock/plan-cuts.ts';
import type { Part, StickSort } from '../../src/core/stock/types.ts';
import { startedSolver } from '../core/stock/solver.ts';
import { drawFrom } from '../reference/oracles/seeded.ts';
import { timeOf } from './clock.ts';

interface Packing {
  readonly instances: readonly {
    readonly name: string;
    readonly capacity: number;
    readonly best: number;
    readonly items: readonly number[];
  }[];
}

const partsOf = (lengths: readonly number[]): readonly Part[] =>
  lengths.map((length, i) => ({ id: `${i}`, spare: null, length, batch: null }));
const endless = (length: number, cost: number): StickSort => ({
  id: `${length}`,
  length,
  count: Infinity,
  cost,
  batch: null,
});

/** Places of the solver's search: so that a run ends, also where it has found nothing by then. */
const MOST_LOOKS = 20;

export interface Against {
  readonly name: string;
  /** ms. */
  readonly own: number;
  readonly solver: number;
  /** Whether the solver has come to the proven optimum within its looks, as the own search has. */
  readonly isProven: boolean;
}

/** One run of each, of the first `count` packings. */
export async function timePackings(count: number): Promise<readonly Against[]> {
  const { instances } = JSON.parse(readFileSync('tests/fixtures/bin-packing.json', 'utf8')) as Packing;
  const solver = await startedSolver();
  return instances.slice(0, count).map(({ name, capacity, best, items }) => {
    const sticks = [endless(capacity, 1)];
    let cost = 0;
    const own = timeOf(() => (cost = planCuts(partsOf(items), sticks, { kerf: 0, squareOff: 0 }).cost));
    if (cost !== best) throw new Error(`${name} came out at ${cost}, not ${best}`);
    const program = plainProgram(items, capacity, best + 1);
    let isProven = false;
    const by = timeOf(() => (isProven = solver.solve(program, MOST_LOOKS).ended === 'solved'));
    return { name, own, solver: by, isProven };
  });
}

/** Which length lies how often on which of `bins` sticks; of lengths alike it is not asked which is which. */
function plainProgram(items: readonly number[], capacity: number, bins: number): string {
  const lots = [...new Set(items)].map((length) => ({ length, count: items.filter((item) => item === length).length }));
  const all = Array.from({ length: bins }, (_, bin) => bin);
  return [
    'Minimize',
    ` cost: ${all.map((bin) => `y${bin}`).join('\n + ')}`,
    'Subject To',
    ...lots.map(({ count }, lot) => ` all${lot}: ${all.map((bin) => `a${lot}_${bin}`).join('\n + ')} = ${count}`),
    ...all.map(
      (bin) =>
        ` fits${bin}: ${lots.map(({ length }, lot) => `${length} a${lot}_${bin}`).join('\n + ')} - ${capacity} y${bin} <= 0`,
    ),
    'Bounds',
    ...all.map((bin) => ` 0 <= y${bin} <= 1`),
    'Generals',
    ...all.map((bin) => ` y${bin}`),
    ...all.flatMap((bin) => lots.map((_, lot) => ` a${lot}_${bin}`)),
    'End',
    '',
  ].join('\n');
}

export interface Grown {
  readonly parts: number;
  /** ms. */
  readonly time: number;
  /** Percent that the plan is over its bound at the most. */
  readonly over: number;
}

/** So many parts of all lengths, on sticks of two lengths that are to be bought. */
export const timeMany = (sizes: readonly number[]): readonly Grown[] =>
  sizes.map((parts) => {
    const draw = drawFrom(parts);
    const lengths = Array.from({ length: parts }, () => Math.round(draw.between(300, 3000) * 10) / 10);
    const sticks = [endless(6096, 61), endless(7315.2, 75)];
    let [cost, least] = [0, 0];
    const time = timeOf(() => {
      const plan = planCuts(partsOf(lengths), sticks, { kerf: 2.5, squareOff: 10 });
      [cost, least] = [plan.cost, plan.leastCost];
    });
    return { parts, time, over: (cost / least - 1) * 100 };
  });
