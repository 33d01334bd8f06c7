/** The choice of marks in the workspace: an edit like any other, and where a new job gets it from. */
import { expect, it } from 'vitest';
import { setMarking, setTubeOrder } from '../../src/core/edit/feeds.ts';
import { feedOf } from '../../src/core/solve/feed.ts';
import { emptyJob } from '../../src/core/job/empty-job.ts';
import { openBrowser } from './memory.ts';

it('from which end, and in which order, is taken back and done again, with what is to be cut', async () => {
  const { workspace } = await openBrowser().openTab();
  const state = () => workspace.getState();
  const cut = () => feedOf(state().job, state().derived.byId.get('leg')!).cutLength;
  state().edit('Machines that hold more', (job) => ({
    ...job,
    dies: job.dies.map((die) => ({ ...die, leastGrip: 480 })),
  }));
  const fromA = cut();
  expect(state().edit('Mark from end B', (job) => setMarking(job, { from: 'B' }))).toEqual([]);
  // tests/exports/cut-length.test.ts has the lengths.
  expect(cut() - fromA).toBeCloseTo(19.81, 2);
  const order = [1, 2].map((bend) => ({ bend, front: 'A' as const }));
  expect(state().edit('Order of bending', (job) => setTubeOrder(job, 'leg', order))).toEqual([]);
  expect(cut()).toBe(fromA);
  expect(state().undoLabel).toBe('Order of bending');
  state().undo();
  expect(cut() - fromA).toBeCloseTo(19.81, 2);
  state().undo();
  expect(cut()).toBe(fromA);
  expect(state().job.marking).toBeUndefined();
  state().redo();
  expect(state().job.marking).toEqual({ from: 'B', mark: 'start', fine: false });
});

it('a new job is what it is begun with, and else says nothing of its marks', async () => {
  const { workspace } = await openBrowser().openTab();
  const marking = { from: 'B', mark: 'clamp', fine: true } as const;
  workspace.getState().newJob({ ...emptyJob('in'), marking });
  expect(workspace.getState().job.marking).toEqual(marking);
  workspace.getState().newJob();
  expect(workspace.getState().job.marking).toBeUndefined();
});
