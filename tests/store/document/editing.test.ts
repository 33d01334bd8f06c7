import { beforeEach, describe, expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { DEMO, documentOf, editorOf, openBrowser, redoOf, undoOf } from '../memory.ts';
import type { Tab } from '../memory.ts';

const renamed =
  (name: string) =>
  (job: Job): Job => ({ ...job, name });

const moved =
  (by: number) =>
  (job: Job): Job => ({
    ...job,
    points: job.points.map((point, index) =>
      index === 0 ? { ...point, position: [point.position[0] + by, point.position[1], point.position[2]] } : point,
    ),
  });

const firstX = (job: Job): number => job.points[0]!.position[0];

let tab: Tab;

beforeEach(async () => {
  tab = await openBrowser().openTab();
});

describe('edit', () => {
  it('shows the new job with what is derived from it, as one step', () => {
    const before = documentOf(tab);
    expect(before.job.name).toBe(JSON.parse(DEMO).name);
    expect(documentOf(tab).edit('Rename job', renamed('Club coupe'))).toEqual([]);
    expect(documentOf(tab).job.name).toBe('Club coupe');
    expect(documentOf(tab).derived.job).toBe(documentOf(tab).job);
    expect(documentOf(tab).revision).toBe(before.revision + 1);
    expect(undoOf(tab)).toBe('Rename job');
  });

  it('takes a step back and forth to equal jobs', () => {
    const before = documentOf(tab).job;
    documentOf(tab).edit('Move', moved(10));
    const after = documentOf(tab).job;
    documentOf(tab).undo();
    expect(documentOf(tab).job).toEqual(before);
    expect(undoOf(tab)).toBeNull();
    expect(redoOf(tab)).toBe('Move');
    documentOf(tab).redo();
    expect(documentOf(tab).job).toEqual(after);
    expect(redoOf(tab)).toBeNull();
  });

  it('shows what came through the door, not what was handed in', () => {
    const { members } = documentOf(tab).job;
    const old = members.map((member, index) =>
      index === 1
        ? { ...member, name: 'Old', ends: member.ends.map((end) => ({ ...end, allowance: undefined })) }
        : member,
    );
    expect(documentOf(tab).edit('Old bar', (job) => ({ ...job, members: old as unknown as Job['members'] }))).toEqual(
      [],
    );
    const { job, derived, file } = documentOf(tab);
    expect(job.members[1]!.ends.map(({ allowance }) => allowance)).toEqual([0, 0]);
    expect(derived.tubes.filter(({ blankLength }) => !(blankLength > 0))).toEqual([]);
    expect(parseJob(file().text)).toEqual({ ok: true, job });
    expect(job.members[0]).toBe(members[0]);
    documentOf(tab).begin('Old bar');
    expect(documentOf(tab).preview((start) => ({ ...start, members: old as unknown as Job['members'] }))).toBe(true);
    expect(documentOf(tab).job.members[1]!.ends.map(({ allowance }) => allowance)).toEqual([0, 0]);
  });

  it('makes no step of a change that changes nothing', () => {
    const before = documentOf(tab);
    expect(documentOf(tab).edit('Nothing', (job) => ({ ...job }))).toEqual([]);
    expect(undoOf(tab)).toBeNull();
    expect(documentOf(tab).job).toBe(before.job);
  });

  it.each<[string, (job: Job) => Job, RegExp]>([
    ['a dangling reference', (job) => ({ ...job, sections: [] }), /section/],
    ['a number that is none', moved(Number.NaN), /points\[0\]/],
    [
      'a loop of references',
      (job) => ({
        ...job,
        nodes: [
          ...job.nodes,
          { id: 'q1', name: '', at: { kind: 'between', nodes: ['q2', 'q2'], fraction: 0.5 } },
          { id: 'q2', name: '', at: { kind: 'between', nodes: ['q1', 'q1'], fraction: 0.5 } },
        ],
      }),
      /q1|q2|loop/,
    ],
  ])('refuses %s and leaves everything as it was', (_, change, words) => {
    const before = documentOf(tab);
    const faults = documentOf(tab).edit('Break it', change);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults.map(({ place, message }) => `${place} ${message}`).join('\n')).toMatch(words);
    expect(documentOf(tab)).toEqual(before);
  });
});

describe('a gesture', () => {
  it('is one step, made from the job it began with', () => {
    const start = firstX(documentOf(tab).job);
    documentOf(tab).begin('Drag point');
    for (const by of [1, 2, 3]) expect(documentOf(tab).preview(moved(by))).toBe(true);
    expect(firstX(documentOf(tab).job)).toBe(start + 3);
    expect(documentOf(tab).gesture).toMatchObject({ label: 'Drag point' });
    documentOf(tab).commit();
    expect(documentOf(tab).gesture).toEqual({ state: 'idle' });
    expect(undoOf(tab)).toBe('Drag point');
    documentOf(tab).undo();
    expect(firstX(documentOf(tab).job)).toBe(start);
    expect(undoOf(tab)).toBeNull();
  });

  it('leaves nothing behind when it is cancelled', () => {
    const { job, derived } = documentOf(tab);
    documentOf(tab).begin('Drag point');
    documentOf(tab).preview(moved(50));
    editorOf(tab).escape();
    expect(documentOf(tab).job).toBe(job);
    expect(documentOf(tab).derived).toBe(derived);
    expect(undoOf(tab)).toBeNull();
  });

  it('keeps showing the last good draft', () => {
    documentOf(tab).begin('Drag point');
    documentOf(tab).preview(moved(5));
    const { job, revision } = documentOf(tab);
    expect(documentOf(tab).preview((start) => ({ ...start, sections: [] }))).toBe(false);
    expect(documentOf(tab).job).toBe(job);
    expect(documentOf(tab).revision).toBe(revision);
    documentOf(tab).commit();
    expect(documentOf(tab).job.sections.length).toBeGreaterThan(0);
    expect(undoOf(tab)).toBe('Drag point');
  });

  it('is in the file that is saved while it is under way', () => {
    const start = firstX(documentOf(tab).job);
    documentOf(tab).begin('Nudge');
    documentOf(tab).preview(moved(7));
    expect(firstX(JSON.parse(documentOf(tab).file().text))).toBe(start + 7);
    expect(undoOf(tab)).toBe('Nudge');
  });

  it('reports once that it ended, whoever ended it', () => {
    const ends: string[] = [];
    documentOf(tab).begin('kept', () => ends.push('kept'));
    documentOf(tab).preview(moved(1));
    expect(ends).toEqual([]);
    documentOf(tab).commit();
    documentOf(tab).begin('dropped', () => ends.push('dropped'));
    documentOf(tab).cancel();
    documentOf(tab).begin('undone', () => ends.push('undone'));
    documentOf(tab).preview(moved(2));
    documentOf(tab).undo();
    documentOf(tab).begin('followed', () => ends.push('followed'));
    documentOf(tab).begin('saved', () => ends.push('saved'));
    documentOf(tab).preview(moved(3));
    documentOf(tab).file();
    documentOf(tab).undo();
    expect(ends).toEqual(['kept', 'dropped', 'undone', 'followed', 'saved']);
  });

  it('takes no draft once it is over', () => {
    const { job } = documentOf(tab);
    expect(documentOf(tab).preview(moved(5))).toBe(false);
    expect(documentOf(tab).job).toBe(job);
  });

  it('is kept as a step when an edit or an undo comes in between', () => {
    documentOf(tab).begin('Drag point');
    documentOf(tab).preview(moved(5));
    documentOf(tab).edit('Rename job', renamed('Other'));
    documentOf(tab).undo();
    expect(undoOf(tab)).toBe('Drag point');
  });
});

describe('the name to save under', () => {
  it.each([
    ['a\u202egnp.exe', 'a-gnp.exe'],
    ['in\u200bvisible\u2066', 'in-visible-'],
    ['  .hidden ', 'hidden'],
    ['///', '-'],
    ['...', 'job'],
  ])('%j is %j', (name, expected) => {
    documentOf(tab).edit('Rename job', renamed(name));
    expect(documentOf(tab).file().fileName).toBe(`${expected}.cagewright.json`);
  });
});
