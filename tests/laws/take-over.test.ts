/** Two copies of one job that were edited apart, and one taken over into the other. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepNumbers } from '../../src/core/edit/numbers.ts';
import { LISTS } from '../../src/core/job/kinds.ts';
import { numbersOf } from '../../src/core/job/numbers.ts';
import { parseJob } from '../../src/core/job/parse.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { alignedTo } from '../../src/core/take-over/aligned.ts';
import { differencesOf } from '../../src/core/take-over/differences.ts';
import { isSameJob } from '../../src/core/take-over/same-job.ts';
import { takeOver } from '../../src/core/take-over/take-over.ts';
import { demoText } from '../command-line.ts';
import { drawn } from '../draws.ts';
import { sampleFile } from '../core/job/sample.ts';
import { deepFreeze } from './jobs.ts';
import { RANDOM_EDITS } from './random-edits.ts';
import { addReading } from '../../src/core/edit/measurements.ts';

const read = (text: string): Job => {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error('it is a job');
  return deepFreeze(parsed.job);
};
const STARTS = [read(JSON.stringify(sampleFile())), read(demoText())];

/** With readings among them, of points that are there and of new ones: what two people do at one car. */
const edits = [
  ...RANDOM_EDITS,
  ...Array.from(
    { length: 12 },
    (_, i) =>
      (job: Job, a: number, b: number): Job =>
        job.points.length === 0
          ? job
          : addReading(job, {
              way: i % 2 === 0 ? 'distance' : 'height',
              from: { ref: job.points[a % job.points.length]!.id },
              to: i % 3 === 0 ? { name: `New ${b % 5}` } : { ref: job.points[(a + 1) % job.points.length]!.id },
              value: 100 + b,
            }),
  ),
];
const edit = fc.tuple(fc.constantFrom(...edits), fc.nat(1000), fc.nat(1000));
const editsApart = fc.array(edit, { minLength: 1, maxLength: 10 });

function edited(job: Job, list: readonly (readonly [(typeof edits)[number], number, number])[]): Job {
  return list.reduce((done, [run, a, b]) => {
    const answer = run(done, a, b);
    if (Array.isArray(answer)) return done;
    const next = parseJob(serialiseJob(keepNumbers(done, answer as Job)));
    return next.ok ? deepFreeze(next.job) : done;
  }, job);
}

const apart = fc.tuple(fc.constantFrom(...STARTS), editsApart, editsApart).map(([start, a, b]) => ({
  here: edited(start, a),
  there: edited(start, b),
}));

/** Drawn once, since to draw them takes longer than to hold the laws against them. */
let pairs: readonly { readonly here: Job; readonly there: Job }[] | null = null;
const law = (check: (here: Job, there: Job) => void): void => {
  pairs ??= fc.sample(apart, { seed: 51, numRuns: drawn(8, 250) });
  for (const { here, there } of pairs) check(here, there);
};

const offered = (here: Job, there: Job): Set<string> =>
  new Set(
    differencesOf(here, alignedTo(here, there))
      .filter((one) => one.offered)
      .map(({ id }) => id),
  );

/** As often as each is there. */
const counted = (records: readonly object[]): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const record of records) {
    const text = JSON.stringify(record, Object.keys(record).toSorted());
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  return counts;
};

const jobOf = (answer: ReturnType<typeof takeOver>): Job => {
  expect(Array.isArray(answer), JSON.stringify(answer).slice(0, 300)).toBe(false);
  return answer as Job;
};

const throughTheDoor = (job: Job): void => {
  const again = parseJob(serialiseJob(job));
  expect(again.ok ? [] : again.faults).toEqual([]);
  expect(again.ok && again.job).toEqual(job);
};

describe('two copies of a job that were edited apart', () => {
  it('are seen to be states of one job', () => law((here, there) => expect(isSameJob(here, there)).toBe(true)));

  it('with nothing taken over stay the very same job', () =>
    law((here, there) => expect(takeOver(here, there, new Set())).toBe(here)));

  it('with what is offered taken over have every reading and every pull of both, and a file holds them', () =>
    law((here, there) => {
      const theirs = alignedTo(here, there);
      const merged = jobOf(takeOver(here, there, offered(here, there)));
      throughTheDoor(merged);
      const ids = new Set(merged.measurements.map(({ id }) => id));
      for (const { id } of [...here.measurements, ...theirs.measurements]) expect(ids).toContain(id);
      for (const reading of here.measurements) expect(merged.measurements).toContain(reading);
      const pulls = counted(merged.pulls);
      for (const side of [here.pulls, theirs.pulls]) {
        for (const [pull, times] of counted(side)) expect(pulls.get(pull) ?? 0).toBeGreaterThanOrEqual(times);
      }
      for (const list of LISTS) {
        if (list === 'bent' || list === 'made') continue;
        for (const record of here[list]) expect(merged[list]).toContain(record);
      }
    }));

  it('with all taken over and all taken out that is only here come out as the other, but for order and numbers', () =>
    law((here, there) => {
      const theirs = alignedTo(here, there);
      const all = differencesOf(here, theirs);
      const merged = jobOf(takeOver(here, there, new Set(all.map(({ id }) => id))));
      expect(differencesOf(merged, theirs)).toEqual([]);
      throughTheDoor(merged);
      // What came under another id is the same things: there the one is as much another state of the other.
      expect(isSameJob(there, merged)).toBe(true);
    }));

  it('leave no two tubes one number, and every tube its own', () =>
    law((here, there) => {
      const merged = jobOf(takeOver(here, there, offered(here, there)));
      const [were, are] = [numbersOf(here), numbersOf(merged)];
      expect(new Set(are.values()).size).toBe(are.size);
      for (const [tube, number] of were) if (are.has(tube)) expect(are.get(tube)).toBe(number);
    }));

  it('taken over there and back again differ no more', () =>
    law((here, there) => {
      const all = differencesOf(here, alignedTo(here, there)).map(({ id }) => id);
      const first = jobOf(takeOver(here, there, new Set(all)));
      expect(differencesOf(there, alignedTo(there, first))).toEqual([]);
    }));
});
