/** How a job that is begun is marked: a symmetric hoop from its middle where the shop says nothing. What an old file means does not change. */
import { expect, it } from 'vitest';
import { beginRun, findRun } from '../../../src/core/edit/bent.ts';
import { FIRST_MARKING } from '../../../src/core/job/kinds/marking.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import { bendRun } from '../../../src/core/run/run.ts';
import { jobFrom } from '../../../src/core/shop/exchange.ts';
import { EMPTY_SHOP } from '../../../src/core/shop/types.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';

const demo = derivedFrom(demoText());
const hoop = demo.byId.get('hoop')!;
const leg = demo.tubes.find(({ name }) => name === 'Front leg (left)')!;
const marked = (marking: Job['marking']): Job => {
  const { marking: _, ...rest } = demo.job;
  return marking === undefined ? rest : { ...rest, marking };
};

it('begins with hoops from the middle where the shop says nothing, and as the shop marks where it does', () => {
  expect(jobFrom(EMPTY_SHOP, 'in').marking).toEqual({ from: 'middle', mark: 'start', fine: false });
  for (const from of ['A', 'B', 'middle'] as const)
    expect(jobFrom({ ...EMPTY_SHOP, marking: { ...FIRST_MARKING, from } }, 'in').marking!.from).toBe(from);
});

it('says so in its file; a file that says nothing is marked from end A, and stays as it is', () => {
  const begun = jobFrom(EMPTY_SHOP, 'mm');
  expect(parseJob(serialiseJob(begun))).toEqual({ ok: true, job: begun });
  const old = marked(undefined);
  expect(feedOf(old, hoop).from).toBe('A');
  expect(serialiseJob(old)).not.toContain('"marking"');
});

it('marks the hoop from the middle, any other tube from end A; a tube for which somebody picked an end keeps it', () => {
  const { marking } = jobFrom(EMPTY_SHOP, 'in');
  const job = marked(marking);
  expect(feedOf(job, hoop).from).toBe('middle');
  expect(feedOf(job, leg).from).toBe('A');
  expect(feedOf({ ...job, feeds: [{ tube: 'hoop', from: 'A' }] }, hoop).from).toBe('A');
});

it('turns the tube end for end once in the run, between its halves, and both halves read the same', () => {
  const fresh = marked(jobFrom(EMPTY_SHOP, 'in').marking);
  const job = beginRun(fresh, 'hoop', feedOf(fresh, hoop).order, drawnTube(hoop));
  const { steps } = bendRun(hoop, findRun(job, 'hoop')!, feedOf(job, hoop));
  const clamps = steps.flatMap((step) => (step.kind === 'clamp' ? [step] : []));
  expect(clamps.map(({ flip }) => flip)).toEqual([false, false, true, false]);
  const fronts = clamps.map(({ step }) => step.front);
  expect([fronts[0], fronts[2]]).toEqual([fronts[1], fronts[3]]);
  expect(fronts[0]).not.toBe(fronts[2]);
  const at = clamps.map(({ step }) => step.marks[0]!.at);
  expect(at.slice(2)).toEqual(at.slice(0, 2));
});

it('begins with how the shop saws, and says nothing of it where the shop does not', () => {
  const sawing = { kerf: 1.6, keepFrom: 250 };
  expect(jobFrom({ ...EMPTY_SHOP, sawing }, 'mm').stock).toEqual(sawing);
  expect(jobFrom(EMPTY_SHOP, 'mm')).not.toHaveProperty('stock');
});
