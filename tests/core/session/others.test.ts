/** A history in which others have a hand: undo takes back what is one's own, and nothing that was written over it. */
import { describe, expect, it } from 'vitest';
import { addPoint, renamePoint } from '../../../src/core/edit/points.ts';
import { addPull } from '../../../src/core/edit/pulls.ts';
import { takeOut } from '../../../src/core/edit/records.ts';
import { applyDiff, fitsJob, invertDiff } from '../../../src/core/job/diff.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import {
  commitEdit,
  commitOther,
  newHistory,
  redo,
  undo,
  undoLabel,
  type History,
} from '../../../src/core/session/history.ts';
import { drawn } from '../../draws.ts';
import { RANDOM_EDITS } from '../../laws/random-edits.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';
import { sampleFile } from '../job/sample.ts';

const parsed = parseJob(JSON.stringify(sampleFile()));
if (!parsed.ok) throw new Error('the sample is a job');
const START = parsed.job;
const [FIRST] = START.points;
const PHONE = { label: 'Edit', by: 'Phone' };

const own = (history: History, label: string, change: (job: Job) => Job): History =>
  commitEdit(history, label, change(history.job));
const other = (history: History, change: (job: Job) => Job): History =>
  commitOther(history, PHONE, change(history.job));
const named = (name: string) => (job: Job) => renamePoint(job, FIRST!.id, name);

/** Every step leads from the one state to the next, all the way. */
function expectWhole({ job, past, future }: History): void {
  let at = job;
  for (const { diff } of past.toReversed()) {
    expect(fitsJob(at, invertDiff(diff))).toBe(true);
    at = applyDiff(at, invertDiff(diff));
  }
  at = job;
  for (const { diff } of future) {
    expect(fitsJob(at, diff)).toBe(true);
    at = applyDiff(at, diff);
  }
}

describe('undo among others', () => {
  it('passes over what others did, and comes back', () => {
    const before = other(own(newHistory(START), 'Name it', named('Mine')), (job) => addPoint(job, 'Theirs', [0, 0, 0]));
    expect(undoLabel(before)).toBe('Name it');
    const undone = undo(before);
    expect(undone.job.points[0]!.name).toBe(FIRST!.name);
    expect(undone.job.points.at(-1)!.name).toBe('Theirs');
    expect(undone.past.map(({ by }) => by)).toEqual(['Phone']);
    expectWhole(undone);
    expect(redo(undone).job).toEqual(before.job);
    expect(undoLabel(undone)).toBeNull();
    expect(undo(undone)).toBe(undone);
  });

  it('leaves what others have written over its own: the step goes, and nothing else', () => {
    const before = own(
      own(newHistory(START), 'Pull', (job) =>
        addPull(job, { die: 'd1', section: 'main', pulled: 92, net: 90, on: '' }),
      ),
      'Name it',
      named('Mine'),
    );
    const over = other(before, named('Theirs'));
    const without = undo(over);
    expect(without.job).toBe(over.job);
    expect(undoLabel(without)).toBe('Pull');
    const undone = undo(without);
    expect(undone.job.points[0]!.name).toBe('Theirs');
    expect(undone.job.pulls.length).toBe(START.pulls.length);
    expectWhole(undone);
  });

  it('takes back its own pull from among those that others have logged since', () => {
    const pull = (net: number) => (job: Job) => addPull(job, { die: 'd1', section: 'main', pulled: 92, net, on: '' });
    const undone = undo(other(own(newHistory(START), 'Pull', pull(90)), pull(91)));
    expect(undone.job.pulls.map(({ net }) => net)).toEqual([...START.pulls.map(({ net }) => net), 91]);
    expectWhole(undone);
  });

  it('keeps what can be done again, as far as it fits what has come', () => {
    const undone = undo(
      own(newHistory(START), 'Take out', (job) =>
        takeOut(job, 'bodyLines', new Set(job.bodyLines.map(({ id }) => id))),
      ),
    );
    const come = other(undone, named('Theirs'));
    expectWhole(come);
    expect(redo(come).job.bodyLines).toEqual([]);
    expect(redo(come).job.points[0]!.name).toBe('Theirs');
  });

  it('leads from state to state, whoever did what in whatever order', () => {
    for (let seed = 1; seed <= drawn(8, 400); seed += 1) {
      const uniform = uniformFrom(seed);
      const below = (count: number): number => Math.floor(uniform() * count);
      let history = newHistory(START);
      for (let step = 0; step < 25; step += 1) {
        const deed = below(6);
        if (deed === 0) history = undo(history);
        else if (deed === 1) history = redo(history);
        else {
          const answer = RANDOM_EDITS[below(RANDOM_EDITS.length)]!(history.job, below(1000), below(1000));
          if (!('format' in answer)) continue;
          history = deed < 4 ? commitEdit(history, 'Edit', answer) : commitOther(history, PHONE, answer);
        }
        expectWhole(history);
      }
    }
  });
});
