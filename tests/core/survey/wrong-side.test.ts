import { expect, it } from 'vitest';
import { turnRound } from '../../../src/core/edit/measurements.ts';
import { onWrongSide } from '../../../src/core/survey/wrong-side.ts';
import { jobOf } from '../../reference/jobs.ts';

it('a point that is called right and measured on the left is found, and right once its offset is turned round', () => {
  const job = jobOf({
    points: [
      { id: 'r', name: 'Hoop foot, right', position: [0, -600, 0], by: 'survey' },
      { id: 'l', name: 'Hoop foot, left', position: [0, 600, 0], by: 'survey' },
      { id: 'm', name: 'Middle, right', position: [0, 10, 0], by: 'survey' },
      { id: 't', name: 'Typed, right', position: [0, 500, 0] },
    ],
    measurements: [
      { id: '1', kind: 'coordinate', point: 'r', axis: 'y', value: 597 },
      { id: '2', kind: 'coordinate', point: 'l', axis: 'y', value: 600 },
      { id: '3', kind: 'coordinate', point: 'm', axis: 'y', value: 10 },
    ],
  });
  const found = onWrongSide(job);
  expect(found.map(({ point, by }) => [point, by])).toEqual([['r', 597]]);
  const turned = turnRound(job, new Set(found[0]!.offsets.map(({ id }) => id)));
  expect(onWrongSide(turned)).toEqual([]);
  expect(turned.measurements.map(({ value }) => value)).toEqual([-597, 600, 10]);
});
