/** Where a driver's box is, by its faces, worked out by hand; and what else goes by its points. */
import { expect, it } from 'vitest';
import { setEye, setShoulders } from '../../../src/core/edit/envelopes.ts';
import { removePoint } from '../../../src/core/edit/points.ts';
import type { Envelope } from '../../../src/core/job/kinds/envelope.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { envelopeBox, placeAmong, sameBox } from '../../../src/core/solve/envelope-box.ts';
import { jobOf } from '../../reference/jobs.ts';

const points = [
  { id: 'top', name: 'Top', position: [200, 340, 1010] },
  { id: 'eye', name: 'Eye', position: [330, 340, 900] },
] as const;
const driver: Envelope = {
  id: 'd',
  name: 'Driver',
  kind: 'driver',
  helmetTop: 'top',
  helmet: [350, 260, 270],
  motion: { forward: 60, back: 10, side: 30, up: 20 },
  gap: 50,
};

const faces = (envelope: Envelope) => {
  const { centre, half } = envelopeBox(points, envelope);
  return centre.map((at, axis) => [at - half[axis]!, at + half[axis]!]);
};

it('reaches from the helmet’s faces as far as the head goes', () => {
  expect(faces({ ...driver, motion: { forward: 0, back: 0, side: 0, up: 0 } })).toEqual([
    [25, 375],
    [210, 470],
    [740, 1010],
  ]);
  expect(faces(driver)).toEqual([
    [15, 435],
    [180, 500],
    [740, 1030],
  ]);
});

it('on the other side of the car is the mirror image', () => {
  expect(faces({ ...driver, helmetTop: "top'" })[1]).toEqual([-500, -180]);
  expect(placeAmong(points, "eye'")).toEqual([330, -340, 900]);
  expect(placeAmong(points, 'gone')).toBeNull();
});

it('is another in value when the point has moved, and the same where another has', () => {
  const moved = (id: string) =>
    points.map((point) => (point.id === id ? { ...point, position: [201, 340, 1010] as const } : point));
  const box = envelopeBox(points, driver);
  expect(sameBox(envelopeBox(moved('eye'), driver), box)).toBe(true);
  expect(sameBox(envelopeBox(moved('top'), driver), box)).toBe(false);
});

it('a file may leave helmet, motion and gap out; what is left out is the usual helmet, which stays where it is', () => {
  const file = JSON.stringify({
    format: 'cagewright/job',
    version: 1,
    name: 'A',
    lengthUnit: 'mm',
    points,
    envelopes: [{ id: 'd', kind: 'driver', helmetTop: 'top', motion: { forward: 60 } }],
  });
  const read = parseJob(file);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  expect(read.job.envelopes).toEqual([
    { ...driver, name: 'd', motion: { forward: 60, back: 0, side: 0, up: 0 }, gap: 0 },
  ]);
  expect(parseJob(serialiseJob(read.job))).toEqual(read);
});

it('keeps its points from being deleted, and both shoulders are two points', () => {
  const job = jobOf({ points, envelopes: [driver] });
  expect(removePoint(job, 'top')).toEqual([
    { place: 'envelopes[0].helmetTop', message: '"Driver" uses it: change or delete that first' },
  ]);
  expect(removePoint(setEye(job, 'd', "eye'"), 'eye')).toHaveLength(1);
  expect(removePoint(job, 'eye')).toMatchObject({ points: [{ id: 'top' }] });
  const both = setShoulders(job, 'd', ['eye', "eye'"]);
  expect(parseJob(serialiseJob(both)).ok).toBe(true);
  const one = parseJob(serialiseJob(setShoulders(job, 'd', ['eye', 'eye'])));
  expect(one.ok ? [] : one.faults.map(({ place, message }) => [place, message])).toEqual([
    ['envelopes[0].shoulders[1]', 'is the first shoulder too'],
  ]);
});
