import { describe, expect, it } from 'vitest';
import type { Job } from '../../../src/core/job/types.ts';
import * as session from '../../../src/core/session/session.ts';
import { sampleFile } from '../job/sample.ts';

const job = sampleFile() as unknown as Job;
const start = session.startSession(job);
const named = (name: string): Job => ({ ...job, name });
const shown = (at: session.Session) => session.shownJob(at).name;

describe('edits', () => {
  const two = session.edit(session.edit(start, 'First', named('one')), 'Second', named('two'));

  it('are undone and redone, each by its label', () => {
    const undone = session.undo(two);
    expect([shown(undone), session.undoLabel(undone), session.redoLabel(undone)]).toEqual(['one', 'First', 'Second']);
    expect(shown(session.redo(undone))).toBe('two');
    expect([session.undoLabel(start), session.redoLabel(start)]).toEqual([null, null]);
  });

  it('stop at either end', () => {
    const bottom = session.undo(session.undo(two));
    expect(session.undo(bottom).history).toBe(bottom.history);
    expect(session.redo(two).history).toBe(two.history);
  });

  it('drop what could be redone when something else is done', () => {
    expect(session.redoLabel(session.edit(session.undo(two), 'Other', named('three')))).toBeNull();
  });

  it('take no step when nothing changes', () => {
    const undone = session.undo(two);
    expect(session.edit(undone, 'Nothing', structuredClone(session.committedJob(undone))).history).toBe(undone.history);
  });

  it('give untouched records back as the same objects', () => {
    const back = session.undo(session.edit(start, 'Fewer points', { ...job, points: [job.points[0]!] }));
    expect(session.committedJob(back).points[0]).toBe(job.points[0]);
    expect(session.committedJob(back).members).toBe(job.members);
    expect(session.committedJob(back)).toEqual(job);
  });
});

describe('a gesture', () => {
  const drafted = session.preview(session.preview(session.begin(start, 'Rename'), named('one')), named('two'));

  it('shows its draft and leaves the committed job alone', () => {
    expect([shown(drafted), session.committedJob(drafted), session.gestureLabel(drafted)]).toEqual([
      'two',
      job,
      'Rename',
    ]);
    expect(session.undoLabel(drafted)).toBeNull();
  });

  it('is one step', () => {
    const after = session.commit(drafted);
    expect(shown(after)).toBe('two');
    expect(after.history.past.map(({ label }) => label)).toEqual(['Rename']);
    expect(session.gestureLabel(after)).toBeNull();
    expect(session.shownJob(session.undo(after))).toEqual(job);
  });

  it('leaves nothing behind when it is dropped or changed nothing', () => {
    expect(session.cancel(drafted)).toEqual(start);
    expect(session.commit(session.begin(start, 'Rename')).history).toBe(start.history);
    expect(session.undo(drafted)).toEqual(start);
  });

  it('is needed for a draft to show', () => {
    expect(session.preview(start, named('one'))).toBe(start);
    expect(session.commit(start)).toBe(start);
  });
});

describe('a kept history', () => {
  const first = session.edit(start, 'First', { ...job, points: job.points.toReversed() });
  const second = session.edit(first, 'Second', { ...session.committedJob(first), dies: [], name: 'two' });
  const third = session.edit(second, 'Third', { ...session.committedJob(second), bodyLines: [] });
  const at = session.undo(third);
  const kept = () => JSON.parse(JSON.stringify(session.keptHistory(at))) as { past: never[]; future: never[] };

  it('comes back whole', () => {
    const back = session.resumeSession(session.committedJob(at), kept());
    expect(back).toEqual(at);
    expect(session.committedJob(session.undo(session.undo(back)))).toEqual(job);
    expect(session.committedJob(session.redo(back))).toEqual(session.committedJob(third));
  });

  it('is let go where it does not fit the job any more', () => {
    const other: Job = { ...session.committedJob(at), points: [] };
    const back = session.resumeSession(other, kept());
    expect(back.history.past.map(({ label }) => label)).toEqual(['Second']);
    expect(back.history.future.map(({ label }) => label)).toEqual(['Third']);
    expect(session.resumeSession(job, kept()).history.past).toEqual([]);
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
    expect(session.resumeSession(job, damaged)).toEqual(start);
  });

  it('is let go when its ids do not hang together', () => {
    const broken = (records: object[], before: string[], after: string[]) => ({
      past: [{ label: 'x', diff: { head: [], collections: { dies: { records, order: { before, after } } } } }],
      future: [],
    });
    expect(session.resumeSession(job, broken([], ['gone'], ['d1'])).history.past).toEqual([]);
    expect(session.resumeSession(job, broken([], ['d1', 'd1'], ['d1'])).history.past).toEqual([]);
    expect(session.resumeSession(job, broken([{ key: 'd2', before: 7 }], ['d1', 'd2'], ['d1'])).history.past).toEqual(
      [],
    );
  });
});
