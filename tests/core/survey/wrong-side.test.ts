import { expect, it } from 'vitest';
import { addDriver, setShoulders } from '../../../src/core/edit/envelopes.ts';
import { turnRound } from '../../../src/core/edit/measurements.ts';
import { pointsOfCar } from '../../../src/core/survey/points-of-car.ts';
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

it('a driver’s right shoulder is on the left of the car, where the driver sits', () => {
  const job = jobOf({
    points: [
      { id: 't', name: 'Helmet top', position: [0, 340, 1000], by: 'survey' },
      { id: 'l', name: 'Shoulder, left', position: [0, 440, 700], by: 'survey' },
      { id: 'r', name: 'Shoulder, right', position: [0, 240, 700], by: 'survey' },
    ],
    measurements: [{ id: '1', kind: 'coordinate', point: 'r', axis: 'y', value: 240 }],
  });
  expect(onWrongSide(job).map(({ point }) => point)).toEqual(['r']);
  const driven = setShoulders(addDriver(job, 'Driver', 't'), 'e1', ['l', 'r']);
  expect(onWrongSide(driven)).toEqual([]);
  expect(pointsOfCar(driven, driven.points)).toEqual([]);
  // What steel stands on is the car's.
  const node = { id: 'n', name: 'n', at: { kind: 'point', point: "r'", offset: [0, 0, 0] } } as const;
  expect(pointsOfCar({ ...driven, nodes: [node] }, driven.points).map(({ id }) => id)).toEqual(['r']);
});
