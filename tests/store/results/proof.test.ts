import { beforeAll, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { proof } from '../../../src/core/stages/proof.ts';
import { stock } from '../../../src/core/stages/stock.ts';
import type { Planned } from '../../../src/core/stock/of-job.ts';
import { attempt, type Came } from '../../../src/workers/doing.ts';
import { fewTubes } from '../../few-tubes.ts';
import { BRACKETS_COST, cheaperBySolver } from '../../stock-jobs.ts';
import { documentOf, openBrowser, resultsOf, workHere, type Tab } from '../memory.ts';

let tab: Tab;

beforeAll(async () => {
  tab = await openBrowser().openTab();
  const read = parseJob(cheaperBySolver(fewTubes()));
  if (!read.ok) throw new Error('the job cannot be read');
  expect(documentOf(tab).edit('Another job', () => read.job)).toEqual([]);
  tab.idle();
});

it('a plan that is not proven waits until somebody looks at it, and is shown meanwhile', () => {
  const { plans, proofs, progress } = resultsOf(tab);
  expect([...proofs]).toEqual([['bracket', 'open']]);
  expect(plans.get('bracket')!.plan.cost).toBeGreaterThan(BRACKETS_COST);
  expect(progress.done).toBe(progress.of);
});

it('nothing is done where somebody looked and looks no more', () => {
  tab.results.lookAtProof('bracket')();
  tab.idle();
  expect(resultsOf(tab).proofs.get('bracket')).toBe('open');
});

it('what comes of it stands in place of the plan, and where nothing can, it is said why', () => {
  const own = resultsOf(tab).plans.get('bracket')!;
  const cheaper: Planned = { ...own, plan: { ...own.plan, cost: BRACKETS_COST, leastCost: BRACKETS_COST } };
  for (const came of [
    { ok: true, value: cheaper },
    { ok: false, why: 'no worker' },
  ] as const) {
    const tasks: (() => void)[] = [];
    tab.results.start((_, stage, item, heard) => {
      const done = (): Came<unknown> => {
        if (stage.name === proof.name) return came;
        return stage.name === stock.name ? { ok: true, value: own } : attempt(() => workHere(stage)(item));
      };
      tasks.push(() => heard(done()));
      return () => undefined;
    });
    const endLook = tab.results.lookAtProof('bracket');
    for (let task = tasks.shift(); task !== undefined; task = tasks.shift()) task();
    expect(resultsOf(tab).proofs.get('bracket')).toEqual(came.ok ? 'done' : { why: 'no worker' });
    expect(resultsOf(tab).plans.get('bracket')).toBe(came.ok ? cheaper : own);
    endLook();
  }
});
