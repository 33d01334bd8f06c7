/** The choice of marks in the job: an edit like any other, and where a new job gets it from. */
import { expect, it } from 'vitest';
import { setMarking, setTubeOrder } from '../../../src/core/edit/feeds.ts';
import { feedOf } from '../../../src/core/solve/feed.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import { documentOf, openBrowser, undoOf } from '../memory.ts';

it('from which end, and in which order, is taken back and done again, with what is to be cut', async () => {
  const tab = await openBrowser().openTab();
  const cut = () => feedOf(documentOf(tab).job, documentOf(tab).derived.byId.get('leg')!).cutLength;
  documentOf(tab).edit('Machines that hold more', (job) => ({
    ...job,
    dies: job.dies.map((die) => ({ ...die, leastGrip: 480 })),
  }));
  const fromA = cut();
  expect(documentOf(tab).edit('Mark from end B', (job) => setMarking(job, { from: 'B' }))).toEqual([]);
  // By hand: the leg's straights are 460.47 and 502.93, its tips 0.00 and 52.59, and 6.35 is left on at B; the end behind wants 480.
  const more = 480 - 460.47 - (480 - 502.93 + 52.59 - 6.35);
  expect(cut() - fromA).toBeCloseTo(more, 1);
  const order = [1, 2].map((bend) => ({ bend, front: 'A' as const }));
  expect(documentOf(tab).edit('Order of bending', (job) => setTubeOrder(job, 'leg', order))).toEqual([]);
  expect(cut()).toBe(fromA);
  expect(undoOf(tab)).toBe('Order of bending');
  documentOf(tab).undo();
  expect(cut() - fromA).toBeCloseTo(more, 1);
  documentOf(tab).undo();
  expect(cut()).toBe(fromA);
  expect(documentOf(tab).job.marking).toBeUndefined();
  documentOf(tab).redo();
  expect(documentOf(tab).job.marking).toEqual({ from: 'B', mark: 'start', fine: false });
});

it('a new job is what it is begun with, and else says nothing of its marks', async () => {
  const tab = await openBrowser().openTab();
  const marking = { from: 'B', mark: 'clamp', fine: true } as const;
  tab.opening.newJob({ ...emptyJob('in'), marking });
  expect(documentOf(tab).job.marking).toEqual(marking);
  tab.opening.newJob();
  expect(documentOf(tab).job.marking).toBeUndefined();
});
