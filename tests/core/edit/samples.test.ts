/** Edits of sample bends: what they change, and that the rest, or all, stays the very same. */
import { expect, it } from 'vitest';
import { addSample, changeSample, removeSample, withoutRail } from '../../../src/core/edit/samples.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import type { Sample } from '../../../src/core/job/kinds/sample.ts';
import { deepFreeze } from '../../laws/jobs.ts';

const sample = (name: string): Sample => ({
  name,
  radius: 150,
  outerDiameter: 45,
  angle: 90,
  air: 10,
  gaps: [{ leg: 'roof', along: 100, gap: 12 }],
});
const none = deepFreeze(emptyJob('mm'));
const two = deepFreeze(addSample(addSample(none, { ...sample('left'), rail: 30 }), sample('right')));

it('a sample is added, changed and taken out; the block goes with the last', () => {
  expect(two.survey?.samples?.map(({ name }) => name)).toEqual(['left', 'right']);
  const changed = changeSample(two, 1, { angle: 88 });
  expect(changed.survey!.samples).toEqual([two.survey!.samples![0], { ...sample('right'), angle: 88 }]);
  expect(changed.survey!.samples![0]).toBe(two.survey!.samples![0]);
  expect(withoutRail(two, 0).survey!.samples).toEqual([sample('left'), sample('right')]);
  expect(removeSample(removeSample(two, 0), 0)).toEqual(none);
});

it('what changes nothing gives the same job back', () => {
  expect(changeSample(two, 1, { angle: 90, gaps: [{ leg: 'roof', along: 100, gap: 12 }] })).toBe(two);
  expect(changeSample(two, 2, { angle: 88 })).toBe(two);
  expect(changeSample(none, 0, { angle: 88 })).toBe(none);
  expect(withoutRail(two, 1)).toBe(two);
  expect(removeSample(two, 2)).toBe(two);
  expect(removeSample(none, 0)).toBe(none);
});
