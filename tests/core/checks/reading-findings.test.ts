/** What was read and fits no bend, or cannot be: said in words, and nothing of it is lost from the file. */
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';
import { removePathNode } from '../../../src/core/edit/members.ts';
import { setStands } from '../../../src/core/edit/bent.ts';
import type { BentBend, BentTube } from '../../../src/core/job/kinds/bent.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { drawnTube } from '../../../src/core/run/drawn.ts';
import { commitEdit, newHistory, undo } from '../../../src/core/session/history.ts';
import { findingInWords } from '../../../src/core/words/findings.ts';
import { checkNameInWords, readingInWords } from '../../../src/core/words/readings.ts';
import { jobOf } from '../frame.ts';

const PATH = [
  [0, 610, 0],
  [0, 590, 700],
  [0, 430, 1120],
  [0, -430, 1120],
  [0, -610, 0],
] as const;

const RECORDS = {
  nodes: Object.fromEntries(PATH.map((place, i) => [`h${i}`, place])),
  members: [{ id: 'hoop', name: 'Main hoop', path: PATH.map((_, i) => `h${i}`) }],
};

const plain = derived(jobOf(RECORDS)).byId.get('hoop')!;

/** The planned angles to a tenth. */
const planned = plain.bends.map(({ angle }) => Number(((angle * 180) / Math.PI).toFixed(1)));
const good: readonly BentBend[] = planned.map((net, i) => ({ bend: i + 1, pulled: Number((net + 2).toFixed(1)), net }));

function withRun(bends: readonly BentBend[], more: Partial<BentTube> = {}): Job {
  const order = plain.bends.map((_, i) => ({ bend: i + 1, front: 'A' as const }));
  const run = { tube: 'hoop', order, done: [], bends, checks: [], drawn: drawnTube(plain), ...more };
  return jobOf({ ...RECORDS, bent: [run] });
}

function derived(job: Job, previous?: Derived): Derived {
  const derivation = derive(job, previous);
  if (!derivation.ok) throw new Error(derivation.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return derivation.value;
}

const said = (frame: Derived, id: 'made/readings-unused' | 'made/reading-impossible' | 'made/other-bends') =>
  frame.findings.flatMap((finding) =>
    finding.id === id ? [`${finding.severity}: ${findingInWords(finding, frame)}`] : [],
  );
const unused = (job: Job) => said(derived(job), 'made/readings-unused');
const impossible = (job: Job) => said(derived(job), 'made/reading-impossible');

/** Read, written and read again it is the same text, with all that was measured in it. */
function keeps(job: Job): void {
  const text = serialiseJob(job);
  const parsed = parseJob(text);
  expect(parsed.ok && parsed.job.bent).toEqual(job.bent);
  expect(parsed.ok && serialiseJob(parsed.job)).toBe(text);
}

const withReading = (bend: number, reading: Partial<BentBend>): readonly BentBend[] =>
  good.map((each) => (each.bend === bend ? { ...each, ...reading } : each));

describe('readings', () => {
  it('of its own bends, as machines give them, are nothing to be said', () => {
    for (const stands of [false, true]) {
      expect([...unused(withRun(good, { stands })), ...impossible(withRun(good, { stands }))]).toEqual([]);
    }
  });

  it('of a bend that the tube has not are named, with all that was read, and the others go on', () => {
    const job = withRun([...good, { bend: 4, pulled: 92, net: 88.5, rotation: 3, straight: 310, kept: true }]);
    expect(unused(job)).toEqual([
      'warning: Main hoop: it is drawn with 3 bends now, and these readings of its bend run are of none of them: bend 4 read as 88.5°. They are kept with the run, under Bending in the Shop, and nothing goes by them. Draw the tube as it was bent, or start its run anew.',
    ]);
    keeps(job);
    const frame = derived(setStands(job, 'hoop', true));
    expect(frame.byId.get('hoop')!.asDrawn).not.toBeNull();
    expect(said(frame, 'made/readings-unused')).toHaveLength(1);
  });

  it('of a tube that stands, and is then drawn with another number of bends: words for both, nothing lost, and undo brings the file back', () => {
    const before = withRun(good, {
      stands: true,
      checks: [{ check: 'width', measured: 1250 }],
      seat: [{ at: 'A', z: 2 }],
    });
    const history = newHistory(before);
    const redrawn = removePathNode(before, 'hoop', 1) as Job;
    const after = commitEdit(history, 'Corner out', redrawn);
    const frame = derived(after.job, derived(before));
    expect(frame.byId.get('hoop')!.bends).toHaveLength(2);
    expect(frame.byId.get('hoop')!.asDrawn).toBeNull();
    expect(said(frame, 'made/other-bends')).toHaveLength(1);
    const [words] = said(frame, 'made/readings-unused');
    for (const { bend, net } of good) expect(words).toContain(`bend ${bend} read as ${net.toFixed(1)}°`);
    expect(words).toContain('it is drawn with 2 bends now');
    expect(after.job.bent).toEqual(before.bent);
    keeps(after.job);
    expect(serialiseJob(undo(after).job)).toBe(serialiseJob(before));
    expect(derived(undo(after).job).tubes).toStrictEqual(derived(before).tubes);
    // Of a run that does not lead the same is said, and no error stands in the way of drawing.
    const drawn = derived(setStands(after.job, 'hoop', false));
    expect(said(drawn, 'made/other-bends')).toEqual([]);
    expect(said(drawn, 'made/readings-unused')).toEqual([words]);
  });

  it.each<[string, number, Partial<BentBend>, string]>([
    [
      'turns back on itself',
      3,
      { pulled: 199, net: 195, kept: true },
      'bend 3 is read as 195.0°, and no tube turns back on itself: it cannot stand in the frame as it came out. It was left so. Read it again in its bend run.',
    ],
    [
      'opened to more than it was pulled to',
      3,
      { pulled: 60, net: 70 },
      'bend 3 was pulled to 60.0° and read as 70.0°: a bend opens when it is let go, it does not close. Read it again in its bend run.',
    ],
    [
      'opened by more than steel does',
      3,
      { pulled: 160, net: 78, kept: true },
      'bend 3 was pulled to 160.0° and read as 78.0°: no steel springs back by so much. It was left so. Read it again in its bend run.',
    ],
    [
      'is the figure of another bend',
      2,
      { pulled: 15, net: 13 },
      `bend 2 is read as 13.0° and was planned with ${planned[1]!.toFixed(1)}°: that looks like the figure of another bend. Read it again in its bend run.`,
    ],
    [
      'has a straight that the tube has not',
      2,
      { straight: 9000 },
      'the straight before bend 2 is entered as 9000.0 mm, which this tube has not. Read it again in its bend run.',
    ],
  ])('that %s: a warning that names it', (_, bend, reading, words) => {
    for (const stands of [false, true]) {
      const job = withRun(withReading(bend, reading), { stands });
      expect(impossible(job)).toEqual([`warning: Main hoop: ${words}`]);
      keeps(job);
    }
  });

  it('that turns back on itself leaves the tube where it is drawn, and is no tube of other bends', () => {
    for (const net of [180, 199]) {
      const frame = derived(withRun(withReading(3, { pulled: 200, net }), { stands: true }));
      expect(frame.byId.get('hoop')!.corners).toEqual(plain.corners);
      expect(said(frame, 'made/other-bends')).toEqual([]);
      expect(said(frame, 'made/reading-impossible')).toHaveLength(1);
    }
  });

  it('fitted to a tape’s figures are no pulls; what was read by hand before is', () => {
    const fitted = { pulled: 60, net: 69.6, fitted: true };
    expect(impossible(withRun(withReading(2, fitted)))).toEqual([]);
    expect(impossible(withRun(withReading(2, { ...fitted, read: { net: 75 } })))[0]).toContain('read as 75.0°');
  });

  it('hold their tube: it is not deleted without a word, and a file without it is refused by name', () => {
    const job = withRun(good);
    const refused = removeSeveral(job, 'members', ['hoop']);
    expect(refused).toEqual([{ place: 'bent[0].tube', message: 'its bend run uses it: change or delete that first' }]);
    const file = JSON.parse(serialiseJob(job)) as { members: { id: string }[] };
    const parsed = parseJob(JSON.stringify({ ...file, members: [] }));
    expect(!parsed.ok && parsed.faults).toEqual([{ place: 'bent[0].tube', message: 'no member "hoop"' }]);
  });
});

it('what was measured reads as it was entered', () => {
  expect(readingInWords({ bend: 1, pulled: 92, net: 88.5 }, 'mm')).toBe('pulled to 92.0°, read 88.5°');
  expect(readingInWords({ bend: 4, pulled: 92, net: 88.5, rotation: 3, straight: 310, kept: true }, 'mm')).toBe(
    'pulled to 92.0°, read 88.5°, turned 3.0° from the bend before it, 310.0 mm of straight before it, left so',
  );
  expect(
    readingInWords({ bend: 1, pulled: 92, net: 88.4, fitted: true, read: { net: 88 }, straight: 25.4 }, 'in'),
  ).toBe('88.4° by the tape, read 88.0° by hand before, 1 in of straight before it');
  expect([checkNameInWords('chord'), checkNameInWords('toString')]).toEqual(['End to end', 'toString']);
});
