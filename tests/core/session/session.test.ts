import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/core/job/types.ts';
import { begin, commit, IDLE, preview, shownJob } from '../../../src/core/session/gesture.ts';
import { commitEdit, newHistory, redo, redoLabel, undo, undoLabel } from '../../../src/core/session/history.ts';
import { resumeHistory } from '../../../src/core/session/kept.ts';
import { sampleFile } from '../job/sample.ts';

const job = sampleFile() as unknown as Job;
const named =
  (name: string) =>
  (start: Job): Job => ({ ...start, name });

describe('history', () => {
  it('shows what undo and redo would do', () => {
    let history = newHistory(job);
    expect([undoLabel(history), redoLabel(history)]).toEqual([null, null]);
    history = commitEdit(history, 'First', named('one')(job));
    history = commitEdit(history, 'Second', named('two')(history.job));
    history = undo(history);
    expect([history.job.name, undoLabel(history), redoLabel(history)]).toEqual(['one', 'First', 'Second']);
    expect(undo(undo(history))).toEqual(undo(history));
    expect(redo(redo(history)).job.name).toBe('two');
  });

  it('drops what could be redone when something else is done', () => {
    const undone = undo(commitEdit(newHistory(job), 'First', named('one')(job)));
    expect(redoLabel(commitEdit(undone, 'Other', named('three')(job)))).toBeNull();
  });

  it('takes no step for an edit that changes nothing', () => {
    const undone = undo(commitEdit(newHistory(job), 'First', named('one')(job)));
    expect(commitEdit(undone, 'Nothing', structuredClone(undone.job))).toBe(undone);
  });

  it('gives untouched records back as the same objects', () => {
    const history = commitEdit(newHistory(job), 'Name', { ...job, points: [job.points[0]!] });
    expect(undo(history).job.points[0]).toBe(job.points[0]);
    expect(undo(history).job.members).toBe(job.members);
  });
});

describe('a gesture', () => {
  it('is one step, made from the job it began with', () => {
    const history = newHistory(job);
    let gesture = begin('Rename', job);
    gesture = preview(gesture, (start) => named(`${start.name} 1`)(start));
    gesture = preview(gesture, (start) => named(`${start.name} 2`)(start));
    expect(shownJob(gesture, history).name).toBe('Bench frame 2');
    const after = commit(gesture, history);
    expect(after.job.name).toBe('Bench frame 2');
    expect(after.past.map(({ label }) => label)).toEqual(['Rename']);
    expect(undo(after).job).toEqual(job);
  });

  it('leaves nothing behind when it is dropped or changed nothing', () => {
    const history = newHistory(job);
    expect(commit(begin('Rename', job), history)).toBe(history);
    expect(commit(IDLE, history)).toBe(history);
    expect(shownJob(IDLE, history)).toBe(job);
    expect(preview(IDLE, named('one'))).toBe(IDLE);
  });
});

describe('a kept history', () => {
  const first = commitEdit(newHistory(job), 'First', { ...job, points: job.points.toReversed() });
  const second = commitEdit(first, 'Second', { ...first.job, dies: [], name: 'two' });
  const third = commitEdit(second, 'Third', { ...second.job, bodyLines: [] });
  const at = undo(third);
  const kept: unknown = JSON.parse(JSON.stringify({ past: at.past, future: at.future }));
  const labels = (steps: readonly { label: string }[]) => steps.map(({ label }) => label);

  it('comes back whole', () => {
    const back = resumeHistory(at.job, kept);
    expect(back).toEqual(at);
    expect(undo(undo(back)).job).toEqual(job);
    expect(redo(back).job).toEqual(third.job);
  });

  it('is let go from the step on that does not fit the job any more', () => {
    const back = resumeHistory({ ...at.job, points: [] }, kept);
    expect([labels(back.past), labels(back.future)]).toEqual([['Second'], ['Third']]);
    expect(resumeHistory(job, kept).past).toEqual([]);
  });

  it.each([
    undefined,
    null,
    7,
    'x',
    {},
    { past: 7, future: [] },
    { past: [{ label: 'x' }], future: [] },
    { past: [{ label: 'x', diff: { head: [], collections: { strangers: { records: [] } } } }], future: [] },
  ])('is empty when what was kept is %j', (damaged) => {
    expect(resumeHistory(job, damaged)).toEqual(newHistory(job));
  });

  it('is let go when its ids do not hang together', () => {
    const broken = (records: object[], before: string[], after: string[]) => ({
      past: [{ label: 'x', diff: { head: [], collections: { dies: { records, order: { before, after } } } } }],
      future: [],
    });
    expect(resumeHistory(job, broken([], ['gone'], ['d1'])).past).toEqual([]);
    expect(resumeHistory(job, broken([], ['d1', 'd1'], ['d1'])).past).toEqual([]);
    expect(resumeHistory(job, broken([{ key: 'd2', before: 7 }], ['d1', 'd2'], ['d1'])).past).toEqual([]);
  });
});
