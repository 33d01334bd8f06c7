import { describe, expect, it } from 'vitest';
import {
  beginRun,
  findRun,
  keepBend,
  logReading,
  removeRun,
  setBentRotation,
  setBentStraight,
  setCheck,
  takeFitted,
  tickStep,
  untickStep,
} from '../../../src/core/edit/bent.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const sample = sampleJob();
const job = deepFreeze<Job>({
  ...sample,
  members: sample.members.map((member) => (member.id === 'hoop' ? { ...member, batch: 'H-204' } : member)),
  bent: [],
});
const ORDER: readonly BendStep[] = [
  { bend: 2, front: 'A' },
  { bend: 1, front: 'B' },
];
const begun = deepFreeze(beginRun(job, 'hoop', ORDER, { legs: [1, 2, 3], angles: [84, 84], rotations: [0, 0] }));
const inFile = (made: Job): void => expect(parseJob(serialiseJob(made))).toEqual({ ok: true, job: made });
const read = (to: Job, bend: number, pulled: number, net: number): Job =>
  deepFreeze(logReading(to, 'hoop', bend, { pulled, net, on: '2026-03-02' }));
const run = (of: Job) => findRun(of, 'hoop')!;

describe('a bend run', () => {
  it('begins with nothing done, once', () => {
    expect(run(begun)).toMatchObject({ tube: 'hoop', order: ORDER, done: [], bends: [], checks: [] });
    expect(beginRun(begun, 'hoop', [], { legs: [], angles: [], rotations: [] })).toBe(begun);
    inFile(begun);
  });
  it('ticks and unticks steps; what is so already stays the same job', () => {
    const ticked = deepFreeze(tickStep(tickStep(begun, 'hoop', 'cut'), 'hoop', 'mark'));
    expect(run(ticked).done).toEqual(['cut', 'mark']);
    expect(tickStep(ticked, 'hoop', 'cut')).toBe(ticked);
    expect(run(untickStep(ticked, 'hoop', 'cut')).done).toEqual(['mark']);
    expect(untickStep(begun, 'hoop', 'cut')).toBe(begun);
    inFile(ticked);
  });
  it('keeps where a bend was begun, however often it is pulled on; a reading without it has none', () => {
    const at = (to: Job, pulled: number, net: number, start?: number): Job =>
      logReading(to, 'hoop', 2, { pulled, net, on: '', ...(start !== undefined && { start }) });
    const once = at(begun, 86, 82, 417.25);
    expect(run(once).bends).toEqual([{ bend: 2, pulled: 86, net: 82, start: 417.25 }]);
    expect(run(at(once, 88, 84, 430)).bends).toEqual([{ bend: 2, pulled: 88, net: 84, start: 417.25 }]);
    expect(run(at(at(begun, 86, 82), 88, 84, 430)).bends).toEqual([{ bend: 2, pulled: 88, net: 84 }]);
    inFile(once);
  });
  it('a reading that is called misread stays with its bend and out of the log, until it is read again', () => {
    const misread = deepFreeze(logReading(begun, 'hoop', 2, { pulled: 88, net: 8.4, on: '', misread: true }));
    expect(misread.pulls).toEqual(begun.pulls);
    expect(run(misread).bends).toEqual([{ bend: 2, pulled: 88, net: 8.4 }]);
    const again = read(misread, 2, 88, 84.5);
    expect(again.pulls).toHaveLength(begun.pulls.length + 1);
    expect(run(again).bends).toEqual([{ bend: 2, pulled: 88, net: 84.5 }]);
  });
  it('logs a reading as a pull of the member’s die, section and batch, in one edit', () => {
    const once = read(begun, 2, 88, 84.5);
    expect(run(once).bends).toEqual([{ bend: 2, pulled: 88, net: 84.5 }]);
    expect(once.pulls).toHaveLength(job.pulls.length + 1);
    expect(once.pulls.at(-1)).toEqual({
      die: 'd1',
      section: 'main',
      batch: 'H-204',
      pulled: 88,
      net: 84.5,
      on: '2026-03-02',
      tube: 'hoop',
      bend: 2,
    });
    inFile(once);
  });
  it('a second reading of the same bend replaces both, and is not yet kept; what else was measured stays', () => {
    const first = setBentStraight(keepBend(read(read(begun, 2, 88, 83), 1, 90, 85), 'hoop', 2), 'hoop', 2, 903);
    const second = read(deepFreeze(first), 2, 89.5, 84);
    expect(run(second).bends).toEqual([
      { bend: 2, pulled: 89.5, net: 84, straight: 903 },
      { bend: 1, pulled: 90, net: 85 },
    ]);
    expect(second.pulls.filter(({ bend }) => bend === 2).map(({ pulled }) => pulled)).toEqual([89.5]);
    expect(second.pulls).toHaveLength(job.pulls.length + 2);
  });
  it('taken away, its pulls stay; the next run of the same tube leaves them alone', () => {
    const away = removeRun(read(begun, 2, 88, 84.5), 'hoop');
    expect(away.bent).toEqual([]);
    const again = read(beginRun(away, 'hoop', ORDER, { legs: [], angles: [], rotations: [] }), 2, 88, 83);
    const twice = read(again, 2, 89, 84);
    expect(twice.pulls.filter(({ bend }) => bend === 2).map(({ pulled, net }) => [pulled, net])).toEqual([
      [88, 84.5],
      [89, 84],
    ]);
    expect(removeRun(job, 'hoop')).toBe(job);
  });
  it('without a run, or for a member without a die, no reading is logged', () => {
    expect(read(job, 2, 88, 84)).toBe(job);
    const straight = beginRun(job, 'stay', [], { legs: [], angles: [], rotations: [] });
    expect(logReading(straight, 'stay', 1, { pulled: 9, net: 8, on: '' })).toBe(straight);
  });
  it('a bend that would have closed when it was let go is no pull: it stays with the bend until that is read again', () => {
    const misread = read(read(begun, 1, 88, 84.5), 1, 84, 88);
    expect(run(misread).bends).toEqual([{ bend: 1, pulled: 84, net: 88 }]);
    expect(misread.pulls).toEqual(job.pulls);
    const right = read(misread, 1, 88, 84);
    expect(run(right).bends).toEqual([{ bend: 1, pulled: 88, net: 84 }]);
    expect(right.pulls.slice(job.pulls.length).map(({ pulled, net }) => [pulled, net])).toEqual([[88, 84]]);
    inFile(misread);
  });
  it('a twin’s reading is logged for its member', () => {
    const mirrored = {
      ...job,
      members: job.members.map((member) => (member.id === 'hoop' ? { ...member, mirror: true } : member)),
    };
    const twin = beginRun(mirrored, "hoop'", ORDER, { legs: [], angles: [], rotations: [] });
    expect(logReading(twin, "hoop'", 1, { pulled: 9, net: 8, on: '' }).pulls.at(-1)).toMatchObject({
      die: 'd1',
      batch: 'H-204',
      tube: "hoop'",
    });
  });
  it('rotation, straight and kept come and go; of a bend not read nothing is kept', () => {
    const once = read(begun, 2, 88, 84.5);
    const all = setBentRotation(setBentStraight(keepBend(once, 'hoop', 2), 'hoop', 2, 903), 'hoop', 2, -1.5);
    expect(run(all).bends[0]).toEqual({ bend: 2, pulled: 88, net: 84.5, kept: true, straight: 903, rotation: -1.5 });
    inFile(all);
    const none = setBentRotation(setBentStraight(keepBend(all, 'hoop', 2, false), 'hoop', 2, null), 'hoop', 2, null);
    expect(run(none).bends).toStrictEqual([{ bend: 2, pulled: 88, net: 84.5 }]);
    expect(setBentStraight(once, 'hoop', 2, null)).toBe(once);
    expect(keepBend(once, 'hoop', 1)).toBe(once);
  });
  it('a check dimension is measured, corrected and taken away', () => {
    const one = deepFreeze(setCheck(begun, 'hoop', 'chord', 1240));
    expect(run(one).checks).toEqual([{ check: 'chord', measured: 1240 }]);
    expect(setCheck(one, 'hoop', 'chord', 1240)).toBe(one);
    expect(run(setCheck(one, 'hoop', 'chord', 1239)).checks).toEqual([{ check: 'chord', measured: 1239 }]);
    expect(run(setCheck(one, 'hoop', 'chord', null)).checks).toEqual([]);
    expect(setCheck(begun, 'hoop', 'chord', null)).toBe(begun);
  });
});

describe('bends that are reckoned from a tape', () => {
  const fitted = [
    { bend: 1, pulled: 83.2, net: 83.2, start: 300, fitted: true },
    { bend: 2, pulled: 90, net: 84.6, rotation: 1.2, start: 500, fitted: true, read: { net: 85, start: 498 } },
  ];
  const half = read(begun, 2, 90, 85);
  const taken = deepFreeze(takeFitted(half, 'hoop', fitted, [{ check: 'chord', measured: 900 }]));

  it('keep the places of those that were made, and are no pulls', () => {
    expect(run(taken).bends).toEqual([fitted[1], fitted[0]]);
    expect(run(taken).checks).toEqual([{ check: 'chord', measured: 900 }]);
    expect(taken.pulls).toBe(half.pulls);
    inFile(taken);
  });
  it('give way to a reading at the machine, which takes the place of the first one in the log', () => {
    const again = read(read(taken, 2, 91, 86), 1, 88, 84);
    expect(run(again).bends).toEqual([
      { bend: 2, pulled: 91, net: 86, start: 498 },
      { bend: 1, pulled: 88, net: 84 },
    ]);
    expect(again.pulls.slice(half.pulls.length - 1).map(({ bend, pulled, net }) => [bend, pulled, net])).toEqual([
      [2, 91, 86],
      [1, 88, 84],
    ]);
  });
});
