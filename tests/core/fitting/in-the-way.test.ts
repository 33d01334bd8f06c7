/** Lines of the car that a cage is lowered past, beside places of them and of the way that lie close together. */
import { expect, it } from 'vitest';
import { inTheWay } from '../../../src/core/fitting/in-the-way.ts';
import { measuredPlaces } from '../../../src/core/fitting/measured.ts';
import { stretchBetween } from '../../../src/core/gaps/stretch-gap.ts';
import { distanceToPath } from '../../../src/core/geometry/path.ts';
import { addScaled, interpolate, Z_AXIS, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { drawn } from '../../draws.ts';
import { derived, tube } from '../frame.ts';
import { seeded } from '../rehearse/draws.ts';

const RADIUS = 44.45 / 2;
const ends = [{ fit: 'square' }, { fit: 'square' }];

const bent = (corners: readonly Vec3[]) =>
  derived({
    nodes: Object.fromEntries(corners.map((at, i) => [`n${i}`, at])),
    members: [{ id: 'tube', path: corners.map((_, i) => `n${i}`), ends }],
  });

const deepIn = (frame: ReturnType<typeof bent>, from: Vec3, to: Vec3, by: number): number =>
  inTheWay(
    { ...frame, job: { ...frame.job, envelopes: [] } },
    [{ trim: { kind: 'bodyLine', id: 'l' }, wanted: null, trimOver: 0, stretches: [stretchBetween(from, to)] }],
    by,
  )[0]?.deep ?? 0;

it('a line that the tube has passed wholly is named all the same, across it, beside it and where it ends', () => {
  const bar = bent([
    [-500, 0, 0],
    [500, 0, 0],
  ]);
  expect(deepIn(bar, [0, -300, -30], [0, 300, -30], 100)).toBeCloseTo(RADIUS, 6);
  expect(deepIn(bar, [-100, 10, -30], [100, 10, -30], 100)).toBeCloseTo(RADIUS - 10, 6);
  expect(deepIn(bar, [0, 15, -30], [0, 300, -30], 100)).toBeCloseTo(RADIUS - 15, 6);
  expect(deepIn(bar, [-100, 23, -30], [100, 23, -30], 100)).toBe(0);
  expect(deepIn(bar, [-100, 0, -30], [100, 0, -30], 7)).toBe(0);
  expect(deepIn(bar, [-100, 0, -30], [100, 0, -30], 10)).toBeCloseTo(RADIUS - 20, 6);
  // It lies in the tube as it is: no matter of lowering.
  expect(deepIn(bar, [-100, 0, -10], [100, 0, -10], 10)).toBe(0);
});

it('is as deep as looking at all of the way has it, for bent tubes and lines as they come', () => {
  const random = seeded(3);
  const between = (low: number, high: number) => low + (high - low) * random();
  let met = 0;
  for (let i = 0; i < drawn(40, 400); i++) {
    const frame = bent([
      [-900, between(-200, 200), between(-200, 200)],
      [between(-100, 100), between(-50, 50), between(-50, 50)],
      [between(400, 900), between(300, 900), between(-300, 300)],
    ]);
    const { path } = tube(frame, 'tube');
    const near = (): Vec3 => [between(-250, 250), between(-150, 250), between(-160, 0)];
    const [from, to, by] = [near(), near(), between(5, 200)];
    const look = (v: number, d: number): number =>
      RADIUS - distanceToPath(path, addScaled(interpolate(from, to, v), Z_AXIS, d));
    const [places, steps] = [80, 80];
    let [before, deepest] = [-Infinity, 0];
    for (let k = 0; k <= places; k++) {
      before = Math.max(before, look(k / places, 0));
      for (let n = 0; n <= steps; n++) deepest = Math.max(deepest, look(k / places, (by * n) / steps));
    }
    const deep = deepIn(frame, from, to, by);
    if (before > -5) continue; // it lies in the tube as it is, or may between two places
    if (deepest > 0) met += 1;
    const coarse = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) / places / 2 + by / steps / 2;
    expect(deep, `${i}`).toBeGreaterThan(deepest - 1e-6);
    expect(deep, `${i}`).toBeLessThanOrEqual(Math.max(0, deepest + coarse));
  }
  expect(met).toBeGreaterThan(drawn(8, 80));
});

it('a box is in the way, and nobody who is to sit there later is', () => {
  const frame = derived({
    points: [{ id: 'top', position: [0, 0, -30] }],
    nodes: { a: [-500, 0, 0], b: [500, 0, 0] },
    members: [{ id: 'tube', path: ['a', 'b'], ends }],
    envelopes: [
      { id: 'seat', kind: 'box', centre: [0, 0, -130], size: [350, 260, 200] },
      { id: 'driver', kind: 'driver', helmetTop: 'top' },
    ],
  });
  expect(inTheWay(frame, measuredPlaces(frame), 60).map(({ of }) => of)).toEqual([{ kind: 'envelope', id: 'seat' }]);
  const of = (envelopes: Job['envelopes'], bodyLines: Job['bodyLines'] = []) =>
    inTheWay(
      { ...frame, job: { ...frame.job, envelopes } },
      measuredPlaces({ ...frame, job: { ...frame.job, envelopes, bodyLines } }),
      60,
    ).map((each) => each.of.id);
  // The same point is the car's where no driver is measured by it, and where a body line goes through it.
  expect(of([])).toEqual(['top']);
  expect(of(frame.job.envelopes.slice(1), [{ id: 'line', name: 'Line', points: ['top', "top'"] }])).toContain('top');
});
