import { beforeEach, describe, expect, it } from 'vitest';
import { parseJob } from '../../src/core/job/parse.ts';
import type { Job } from '../../src/core/job/types.ts';
import type { WorkspaceStore } from '../../src/store/createWorkspace.ts';
import { DEMO, openBrowser } from './memory.ts';

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

let workspace: WorkspaceStore;
const state = () => workspace.getState();

beforeEach(async () => {
  workspace = (await openBrowser().openTab()).workspace;
});

describe('edit', () => {
  it('shows the new job with what is derived from it, as one step', () => {
    const before = state();
    expect(before.job.name).toBe(JSON.parse(DEMO).name);
    expect(state().edit('Rename job', renamed('Club coupe'))).toEqual([]);
    expect(state().job.name).toBe('Club coupe');
    expect(state().derived.job).toBe(state().job);
    expect(state().revision).toBe(before.revision + 1);
    expect(state().undoLabel).toBe('Rename job');
  });

  it('takes a step back and forth to equal jobs', () => {
    const before = state().job;
    state().edit('Move', moved(10));
    const after = state().job;
    state().undo();
    expect(state().job).toEqual(before);
    expect(state().undoLabel).toBeNull();
    expect(state().redoLabel).toBe('Move');
    state().redo();
    expect(state().job).toEqual(after);
    expect(state().redoLabel).toBeNull();
  });

  it('shows what came through the door, not what was handed in', () => {
    const { members } = state().job;
    const old = members.map((member, index) =>
      index === 1
        ? { ...member, name: 'Old', ends: member.ends.map((end) => ({ ...end, allowance: undefined })) }
        : member,
    );
    expect(state().edit('Old bar', (job) => ({ ...job, members: old as unknown as Job['members'] }))).toEqual([]);
    const { job, derived, file } = state();
    expect(job.members[1]!.ends.map(({ allowance }) => allowance)).toEqual([0, 0]);
    expect(derived.tubes.filter(({ blankLength }) => !(blankLength > 0))).toEqual([]);
    expect(parseJob(file().text)).toEqual({ ok: true, job });
    expect(job.members[0]).toBe(members[0]);
    state().begin('Old bar');
    expect(state().preview((start) => ({ ...start, members: old as unknown as Job['members'] }))).toBe(true);
    expect(state().job.members[1]!.ends.map(({ allowance }) => allowance)).toEqual([0, 0]);
  });

  it('makes no step of a change that changes nothing', () => {
    const before = state();
    expect(state().edit('Nothing', (job) => ({ ...job }))).toEqual([]);
    expect(state().undoLabel).toBeNull();
    expect(state().job).toBe(before.job);
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
  ])('refuses %s and leaves everything as it was', (_, change, told) => {
    const before = state();
    const faults = state().edit('Break it', change);
    expect(faults.length).toBeGreaterThan(0);
    expect(faults.map(({ place, message }) => `${place} ${message}`).join('\n')).toMatch(told);
    expect(state()).toEqual(before);
  });
});

describe('a gesture', () => {
  it('is one step, made from the job it began with', () => {
    const start = firstX(state().job);
    state().begin('Drag point');
    for (const by of [1, 2, 3]) expect(state().preview(moved(by))).toBe(true);
    expect(firstX(state().job)).toBe(start + 3);
    expect(state().gesture).toBe('Drag point');
    state().commit();
    expect(state().gesture).toBeNull();
    expect(state().undoLabel).toBe('Drag point');
    state().undo();
    expect(firstX(state().job)).toBe(start);
    expect(state().undoLabel).toBeNull();
  });

  it('leaves nothing behind when it is cancelled', () => {
    const { job, derived } = state();
    state().begin('Drag point');
    state().preview(moved(50));
    state().escape();
    expect(state().job).toBe(job);
    expect(state().derived).toBe(derived);
    expect(state().undoLabel).toBeNull();
  });

  it('keeps showing the last good draft', () => {
    state().begin('Drag point');
    state().preview(moved(5));
    const { job, revision } = state();
    expect(state().preview((start) => ({ ...start, sections: [] }))).toBe(false);
    expect(state().job).toBe(job);
    expect(state().revision).toBe(revision);
    state().commit();
    expect(state().job.sections.length).toBeGreaterThan(0);
    expect(state().undoLabel).toBe('Drag point');
  });

  it('is in the file that is saved while it is under way', () => {
    const start = firstX(state().job);
    state().begin('Nudge');
    state().preview(moved(7));
    expect(firstX(JSON.parse(state().file().text))).toBe(start + 7);
    expect(state().undoLabel).toBe('Nudge');
  });

  it('tells once that it ended, whoever ended it', () => {
    const told: string[] = [];
    state().begin('kept', () => told.push('kept'));
    state().preview(moved(1));
    expect(told).toEqual([]);
    state().commit();
    state().begin('dropped', () => told.push('dropped'));
    state().cancel();
    state().begin('undone', () => told.push('undone'));
    state().preview(moved(2));
    state().undo();
    state().begin('followed', () => told.push('followed'));
    state().begin('saved', () => told.push('saved'));
    state().preview(moved(3));
    state().file();
    state().undo();
    expect(told).toEqual(['kept', 'dropped', 'undone', 'followed', 'saved']);
  });

  it('takes no draft once it is over', () => {
    const { job } = state();
    expect(state().preview(moved(5))).toBe(false);
    expect(state().job).toBe(job);
  });

  it('is kept as a step when an edit or an undo comes in between', () => {
    state().begin('Drag point');
    state().preview(moved(5));
    state().edit('Rename job', renamed('Other'));
    state().undo();
    expect(state().undoLabel).toBe('Drag point');
  });
});

describe('opening', () => {
  it('begins a history of its own and forgets an earlier refusal', () => {
    state().edit('Rename job', renamed('Mine'));
    state().open('broken.json', '{');
    state().open('other.cagewright.json', DEMO);
    expect(state().refused).toBeNull();
    expect(state().fileName).toBe('other.cagewright.json');
    expect(state().undoLabel).toBeNull();
  });

  it.each([
    ['no JSON', 'cut here ->'],
    ['another format', '{"format":"x"}'],
    ['nothing', ''],
    ['a dangling section', DEMO.replace(/"section": "[^"]+"/u, '"section": "gone"')],
  ])('refuses %s beside the name of the file', (_, text) => {
    const { job, revision } = state();
    state().open('bad.json', text);
    expect(state().refused?.fileName).toBe('bad.json');
    expect(state().refused!.faults.length).toBeGreaterThan(0);
    expect(state().job).toBe(job);
    expect(state().revision).toBe(revision);
    state().dismissRefusal();
    expect(state().refused).toBeNull();
  });

  it('gives a file that opens again as the same job', () => {
    state().edit('Rename job', renamed('Tube: a/b?'));
    const { fileName, text } = state().file();
    expect(fileName).toBe('Tube- a-b-.cagewright.json');
    const before = state().job;
    state().newJob();
    expect(state().job.members).toEqual([]);
    state().open(fileName, text);
    expect(state().job).toEqual(before);
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
    state().edit('Rename job', renamed(name));
    expect(state().file().fileName).toBe(`${expected}.cagewright.json`);
  });
});

describe('the selection', () => {
  it('ends with what it names', () => {
    const tube = state().derived.tubes[0]!;
    state().select({ kind: 'tube', id: tube.id });
    state().edit('Rename job', renamed('Still there'));
    expect(state().selection).toEqual({ kind: 'tube', id: tube.id });
    state().newJob();
    expect(state().selection).toBeNull();
  });

  it('is told anew with each place that is asked for', () => {
    state().goTo([1, 2, 3]);
    state().goTo([1, 2, 3], { kind: 'envelope', id: 'head' });
    expect(state().lookAt).toEqual({ at: [1, 2, 3], asked: 2 });
    expect(state().selection).toEqual({ kind: 'envelope', id: 'head' });
  });
});
