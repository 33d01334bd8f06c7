import { expect, it } from 'vitest';
import { confirmPoint, movePoint } from '../../../src/core/edit/points.ts';
import { movePoints } from '../../../src/core/edit/several.ts';
import { emptyJob } from '../../../src/core/job/empty-job.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';

const guess = { id: 'tower', name: 'Tower', position: [-800, 480, 520], guessed: true } as const;
const job: Job = deepFreeze({ ...emptyJob('mm'), points: [guess] });

it('a guess is none any more once its own place is said or it is confirmed; moved along with others it stays one', () => {
  const { guessed: _, ...said } = guess;
  expect(movePoint(job, 'tower', [-810, 480, 520]).points).toEqual([{ ...said, position: [-810, 480, 520] }]);
  expect(movePoint(job, 'tower', [-800, 480, 520])).toBe(job);
  expect(confirmPoint(job, 'tower').points).toEqual([said]);
  expect(confirmPoint(confirmPoint(job, 'tower'), 'tower').points).toEqual([said]);
  expect(movePoints(job, new Set(['tower']), [10, 0, 0]).points).toEqual([{ ...guess, position: [-790, 480, 520] }]);
});
