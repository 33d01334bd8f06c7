import { describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { begin, commit, IDLE, preview, shownJob } from '../../../src/core/session/gesture.ts';
import {
  commitEdit,
  newHistory,
  noteFact,
  redo,
  redoLabel,
  undo,
  undoLabel,
} from '../../../src/core/session/history.ts';
import { keptHistory, resumeHistory } from '../../../src/core/session/kept.ts';
import { createChunking, documentAgain } from '../../../src/store/storage/chunks.ts';
import type { Kept } from '../../../src/store/storage/persistence.ts';
import { sampleFile } from '../job/sample.ts';

const opened = (file: unknown): Job => {
  const parsed = parseJob(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};
const job = opened(sampleFile());
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

describe('a fact that no undo unmakes', () => {
  const printed = (revision: string, tube = 'a') => ({ tube, revision, cutLength: 900, on: '2026-03-02' });
  const paper = (of: Job, ...sheets: readonly ReturnType<typeof printed>[]): Job => ({ ...of, printed: sheets });
  const bare = paper(job);

  it('takes no step, and stays whatever is undone and done again', () => {
    let history = commitEdit(newHistory(bare), 'First', named('one')(bare));
    history = commitEdit(history, 'Second', named('two')(history.job));
    history = undo(history);
    const noted = noteFact(history, paper(history.job, printed('r1')));
    expect([undoLabel(noted), redoLabel(noted)]).toEqual(['First', 'Second']);
    expect(noted.past[0]).toBe(history.past[0]);
    for (const there of [undo(noted), redo(noted), undo(undo(redo(noted)))])
      expect(there.job.printed).toEqual([printed('r1')]);
    expect(undo(noted).job.name).toBe(bare.name);
    expect(noteFact(noted, structuredClone(noted.job))).toBe(noted);
  });

  it('leads every step past it: one that changed the same is left with the rest of it, one that was about that alone goes', () => {
    let history = commitEdit(newHistory(bare), 'First', named('one')(bare));
    history = commitEdit(history, 'Paper', paper(history.job, printed('r1')));
    history = commitEdit(history, 'Split', paper(named('two')(history.job), printed('r1', 'b')));
    history = commitEdit(history, 'Third', named('three')(history.job));
    const noted = noteFact(history, paper(history.job, printed('r2', 'b'), printed('r1', 'c')));
    expect(noted.past.map(({ label }) => label)).toEqual(['First', 'Split', 'Third']);
    const names = [noted, undo(noted), undo(undo(noted)), undo(undo(undo(noted)))].map((each) => each.job.name);
    expect(names).toEqual(['three', 'two', 'one', bare.name]);
    const back = redo(redo(redo(undo(undo(undo(noted))))));
    expect(back.job).toEqual(noted.job);
    // And as it is kept beside its text.
    const text = serialiseJob(noted.job);
    const read = parseJob(text);
    if (!read.ok) throw new Error('not read');
    const again = resumeHistory(text, read.job, JSON.parse(JSON.stringify(keptHistory(noted, 100))));
    expect(again.loss).toBeNull();
    expect(again.history.past.map(({ label }) => label)).toEqual(['First', 'Split', 'Third']);
  });
});

describe('chunks of a history that a fact is noted in', () => {
  it('that were written once are not changed: what is under a name before and after is the same', () => {
    const printed = (revision: string) => ({ tube: 'a', revision, cutLength: 900, on: '2026-03-02' });
    let history = newHistory({ ...job, printed: [] });
    for (let i = 0; i < 70; i++) {
      const named = { ...history.job, name: `n${i}` };
      const paper = { ...(i % 7 === 3 ? history.job : named), printed: [printed(`r${i}`)] };
      history = commitEdit(history, `Step ${i}`, i % 7 === 3 || (i > 45 && i % 11 === 5) ? paper : named);
    }
    for (let i = 0; i < 25; i++) history = undo(history);
    const chunking = createChunking('p');
    const cut = (of: typeof history) => {
      const text = serialiseJob(of.job);
      return chunking.cut({ kept: { text, history: keptHistory(of, 1000) } } as unknown as { kept: Kept });
    };
    const before = cut(history);
    expect(before.chunks.size).toBeGreaterThan(2);
    const noted = noteFact(history, { ...history.job, printed: [printed('new')] });
    expect(noted.past.length + noted.future.length).toBe(60);
    const after = cut(noted);
    const both = [...after.chunks].filter(([name]) => before.chunks.has(name));
    for (const [name, steps] of both) expect(steps).toEqual(before.chunks.get(name));
    const all = new Map([...before.chunks, ...after.chunks]);
    const again = documentAgain(JSON.parse(JSON.stringify(after.document)), (name) =>
      JSON.parse(JSON.stringify(all.get(name))),
    );
    const { text, history: kept } = again.kept;
    const read = parseJob(text);
    if (!read.ok) throw new Error('not read');
    const resumed = resumeHistory(text, read.job, kept);
    expect(resumed.loss).toBeNull();
    expect(resumed.history.past.map(({ label }) => label)).toEqual(noted.past.map(({ label }) => label));
    expect(resumed.history.future.map(({ label }) => label)).toEqual(noted.future.map(({ label }) => label));
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
  const kept = JSON.parse(JSON.stringify(keptHistory(at, 9))) as object;
  const resumed = (of: Job, history: unknown) => resumeHistory(serialiseJob(of), of, history);
  const labels = (steps: readonly { label: string }[]) => steps.map(({ label }) => label);

  it('comes back whole', () => {
    const { history: back, loss } = resumed(at.job, kept);
    expect(loss).toBeNull();
    expect(back).toEqual(at);
    expect(undo(undo(back)).job).toEqual(job);
    expect(redo(back).job).toEqual(third.job);
  });

  it('is let go from the step on that does not fit the job any more', () => {
    const { history: back, loss } = resumed({ ...at.job, points: [] }, kept);
    expect(loss).toBe('damaged');
    expect([labels(back.past), labels(back.future)]).toEqual([['Second'], ['Third']]);
    expect(resumed(job, kept).history.past).toEqual([]);
  });

  it.each([
    undefined,
    7,
    'x',
    {},
    { past: 7, future: [] },
    { past: [{ label: 'x' }], future: [] },
    { past: [{ label: 'x', diff: { head: [], collections: { strangers: { records: [] } } } }], future: [] },
  ])('is empty when what was kept is %j', (damaged) => {
    expect(resumed(job, damaged)).toEqual({ history: newHistory(job), loss: 'damaged' });
  });

  it('is empty, and whole, where there was none to keep', () => {
    expect(resumed(job, null)).toEqual({ history: newHistory(job), loss: null });
  });

  it('is known by the version of the job format that it was written in', () => {
    expect(kept).toMatchObject({ version: 1 });
    const { version: _, ...first } = kept as { version: number };
    expect(resumed(at.job, first)).toEqual(resumed(at.job, kept));
    for (const version of [2, 0, 'one', null])
      expect(resumed(at.job, { ...kept, version })).toEqual({ history: newHistory(at.job), loss: 'other version' });
  });

  it('is let go when its ids do not hang together', () => {
    const broken = (records: object[], before: string[], after: string[]) => ({
      past: [{ label: 'x', diff: { head: [], collections: { dies: { records, order: { before, after } } } } }],
      future: [],
    });
    expect(resumed(job, broken([], ['gone'], ['d1'])).history.past).toEqual([]);
    expect(resumed(job, broken([], ['d1', 'd1'], ['d1'])).history.past).toEqual([]);
    expect(resumed(job, broken([{ key: 'd2', before: 7 }], ['d1', 'd2'], ['d1'])).history.past).toEqual([]);
  });
});
