/** What the screen is told of cutting plans: one that cannot be had, the one before while another is worked out, one that is being sawn. */
import { beforeEach, expect, it } from 'vitest';
import { variants } from '../../../src/core/compare/variants.ts';
import { keepVariant } from '../../../src/core/edit/variants.ts';
import { updateSpare } from '../../../src/core/edit/stock.ts';
import type { SectionId } from '../../../src/core/job/reference.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { sawStick } from '../../../src/core/shape/saw-stick.ts';
import { stock } from '../../../src/core/stages/stock.ts';
import { attempt, type Came } from '../../../src/workers/doing.ts';
import { fewTubes } from '../../few-tubes.ts';
import { cheaperBySolver } from '../../stock-jobs.ts';
import { documentOf, openBrowser, resultsOf, workHere, type Tab } from '../memory.ts';

const BRACKET = 'bracket' as SectionId;

/** Ten brackets of one length: what is told of a plan is the same however long it is looked for. */
const BRACKETS_OF_ONE_LENGTH = ofOneLength(cheaperBySolver(fewTubes()));

function ofOneLength(text: string): string {
  const job = JSON.parse(text) as { readonly stock: { readonly spares: readonly object[] } };
  return JSON.stringify({ ...job, stock: { ...job.stock, spares: job.stock.spares.slice(0, 1) } });
}

let tab: Tab;

beforeEach(async () => {
  tab = await openBrowser().openTab();
  const read = parseJob(BRACKETS_OF_ONE_LENGTH);
  if (!read.ok) throw new Error('the job cannot be read');
  expect(documentOf(tab).edit('Another job', () => read.job)).toEqual([]);
});

/** All work as it is, but that of the stage. */
function failing(name: string): void {
  tab.results.start((_, stage, item, heard) => {
    const came: Came<unknown> =
      stage.name === name ? { ok: false, why: 'no answer' } : attempt(() => workHere(stage)(item));
    heard(came);
    return () => undefined;
  });
}

it('a plan that fails is named with why, and is no plan that is still to come', () => {
  failing(stock.name);
  expect(resultsOf(tab).plans.size).toBe(0);
  expect(resultsOf(tab).unplanned.get(BRACKET)).toBe('no answer');
});

it('a variant whose figures fail is named with why, as long as somebody looks at the variants', () => {
  expect(documentOf(tab).edit('Keep', (job) => keepVariant(job, 'One', '2026-03-02'))).toEqual([]);
  failing(variants.name);
  expect(resultsOf(tab).unmeasured.size).toBe(0);
  const end = tab.results.lookAt(variants);
  const { id } = documentOf(tab).job.variants[0]!;
  expect([...resultsOf(tab).unmeasured]).toEqual([[id, 'no answer']]);
  end();
});

it('while a plan is worked out anew the last one is there, with the job that it was of, until the new one is', () => {
  tab.idle();
  const { plans, plansBefore } = resultsOf(tab);
  expect(plansBefore.size).toBe(0);
  const [old, job] = [plans.get(BRACKET)!, documentOf(tab).job];
  documentOf(tab).edit('One less', (now) => updateSpare(now, 0, { count: 9 }));
  expect(resultsOf(tab).plans.has(BRACKET)).toBe(false);
  const before = resultsOf(tab).plansBefore.get(BRACKET)!;
  expect(before.plan.plan).toBe(old.plan);
  expect(before.frame.job).toBe(job);
  tab.idle();
  expect(
    resultsOf(tab)
      .plans.get(BRACKET)!
      .plan.sticks.flatMap(({ parts }) => parts),
  ).toHaveLength(9);
  expect(resultsOf(tab).plansBefore.size).toBe(0);
});

it('another document that is opened has no plan before', () => {
  tab.idle();
  tab.opening.open('other.cagewright.json', BRACKETS_OF_ONE_LENGTH.replace('"count":10', '"count":11'));
  expect(documentOf(tab).job.spares[0]!.count).toBe(11);
  expect(resultsOf(tab).plansBefore.size).toBe(0);
});

it('what is left of a plan that is being sawn is known at once', () => {
  tab.idle();
  const { plan } = resultsOf(tab).plans.get(BRACKET)!;
  const [first, ...others] = plan.sticks;
  const rest = { sticks: others.map((each, i) => ({ ...each, number: i + 2 })), proven: false };
  documentOf(tab).edit('Sawn', (job) => sawStick(job, documentOf(tab).derived, first!, { on: '2026-03-02', rest }));
  expect(
    resultsOf(tab)
      .plans.get(BRACKET)!
      .plan.sticks.map(({ number }) => number),
  ).toEqual(others.map((_, i) => i + 2));
});
