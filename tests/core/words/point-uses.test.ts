/** What a person is told before a point is deleted, beside what deleting it does. */
import { expect, it } from 'vitest';
import { addDriver } from '../../../src/core/edit/envelopes.ts';
import { removePoint } from '../../../src/core/edit/points.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { usesOfPoint } from '../../../src/core/survey/point-uses.ts';
import { pointUsesInWords } from '../../../src/core/words/point-uses.ts';
import { jobOf } from '../../reference/jobs.ts';

const job = jobOf({
  points: [
    { id: 'p', name: 'Sill, left', by: 'survey', position: [0, 600, 0] },
    { id: 'q', name: 'Sill, right', by: 'survey', position: [0, -600, 0] },
  ],
  measurements: [
    { id: 'a', kind: 'distance', from: 'p', to: 'q', value: 1200 },
    { id: 'b', kind: 'coordinate', point: "p'", axis: 'z', value: 3 },
    { id: 'c', kind: 'coordinate', point: 'q', axis: 'z', value: 3 },
  ],
  holds: [{ point: 'q', and: 'p', axis: 'y', value: 0 }],
});
const said = (of: Job) => pointUsesInWords(usesOfPoint(of, 'p'));

it('says what goes with a point, and that is what goes', () => {
  expect(said(job)).toBe('2 readings and 1 coordinate that is held go with it.');
  const gone = removePoint(job, 'p') as Job;
  expect([job.measurements.length - gone.measurements.length, job.holds.length - gone.holds.length]).toEqual([2, 1]);
  expect(said(gone)).toBe('');
  expect(said({ ...job, holds: [], measurements: job.measurements.slice(1) })).toBe('1 reading goes with it.');
});

it('says what keeps it, and that keeps it', () => {
  const seated: Job = {
    ...job,
    measurements: [],
    holds: [],
    bent: [{ tube: 'hoop', order: [], done: [], bends: [], checks: [], seat: [{ at: 'A', point: "p'" }] }],
  };
  expect(said(seated)).toBe('1 tube that stands by it keeps it: change or take that out first.');
  expect(removePoint(seated, 'p')).toHaveLength(1);
  const driven = addDriver({ ...job, measurements: [], holds: [] }, 'Driver', "p'");
  expect(said(driven)).toBe('1 driver keeps it: change or take that out first.');
  expect(removePoint(driven, 'p')).toHaveLength(1);
});
