/** A scan is laid anew whenever its pairs change. */
import { describe, expect, it } from 'vitest';
import { movePoint } from '../../../src/core/edit/points.ts';
import { distance, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { Scan } from '../../../src/core/job/kinds/scan.ts';
import { inCar, placingOf } from '../../../src/core/scan/place.ts';
import { laidByPairs, liesOffPairs, pairsInCar, withoutPair, withPair } from '../../../src/core/shape/scans.ts';
import { sizeHintInWords, whyNotLaid } from '../../../src/core/words/scan.ts';
import { jobOf } from '../../reference/jobs.ts';

const POINTS: readonly (readonly [string, Vec3])[] = [
  ['a', [1000, 500, 0]],
  ['b', [-1000, 500, 100]],
  ['c', [0, 200, 900]],
];

const SCAN: Scan = {
  id: 'scan1',
  name: 'Shell',
  kind: 'triangles',
  accuracy: 3,
  file: 'shell.stl',
  data: 'x',
  unit: 'm',
  up: 'y',
  placement: { rotation: [0, 0, 0], shift: [0, 0, 0] },
  pairs: [],
  count: 12,
  shown: true,
};

const JOB = jobOf({ scans: [SCAN], points: POINTS.map(([id, position]) => ({ id, name: id, position })) });

/** Where a place of the car lies in the file: in metres, y up, 0.5 m off. */
const inShell = ([x, y, z]: Vec3): Vec3 => [x / 1000 + 0.5, z / 1000, -y / 1000];

describe('pairs', () => {
  it('lay the scan from the third on, and leave it where it is before', () => {
    const one = withPair(JOB, 'scan1', { at: inShell(POINTS[0]![1]), point: 'a' });
    const two = withPair(one, 'scan1', { at: inShell(POINTS[1]![1]), point: 'b' });
    expect(two.scans[0]!.placement).toBe(SCAN.placement);
    expect(two.scans[0]!.pairs).toHaveLength(2);
    const three = withPair(two, 'scan1', { at: inShell(POINTS[2]![1]), point: 'c' });
    const placing = placingOf(three.scans[0]!);
    for (const place of [...POINTS.map(([, position]) => position), [123, 456, 789] as const]) {
      expect(distance(inCar(placing, inShell(place)), place)).toBeLessThan(1e-9 * 1000);
    }
    expect(liesOffPairs(three, three.scans[0]!)).toBe(false);
    expect(liesOffPairs(two, two.scans[0]!)).toBe(false);
    const less = withoutPair(three, 'scan1', 'b');
    expect(less.scans[0]!.placement).toBe(three.scans[0]!.placement);
  });

  it('of a mirrored point are of its image', () => {
    const mirrored = withPair(JOB, 'scan1', { at: [0, 0, 0], point: "a'" });
    expect(pairsInCar(mirrored, mirrored.scans[0]!)).toEqual([{ at: [0, 0, 0], goal: [1000, -500, 0] }]);
  });

  it('of a point that comes of measurements are of where these put it', () => {
    const read = (axis: 'x' | 'y' | 'z', value: number) =>
      ({ id: axis, kind: 'coordinate', point: 'c', axis, value }) as const;
    const job = {
      ...JOB,
      points: JOB.points.map((point) => (point.id === 'c' ? { ...point, by: 'survey' } : point)),
      measurements: [read('x', 12), read('y', 210), read('z', 880)],
    };
    const [pair] = pairsInCar(job, { ...SCAN, pairs: [{ at: [0, 0, 0], point: 'c' }] });
    expect(distance(pair!.goal, [12, 210, 880])).toBeLessThan(1e-6);
  });

  it('lay it elsewhere once their points are measured again, until it is laid by them', () => {
    const laid = POINTS.reduce(
      (job, [point, position]) => withPair(job, 'scan1', { at: inShell(position), point }),
      JOB,
    );
    const again = movePoint(laid, 'b', [-1000, 503, 100]);
    expect(again.scans).toBe(laid.scans);
    expect(liesOffPairs(again, again.scans[0]!)).toBe(true);
    const anew = laidByPairs(again, 'scan1');
    expect(liesOffPairs(anew, anew.scans[0]!)).toBe(false);
    expect(laidByPairs(anew, 'scan1')).toBe(anew);
  });

  it('are none of a scan that is not there', () => {
    expect(laidByPairs(JOB, 'nowhere')).toBe(JOB);
  });
});

describe('in words', () => {
  it('what a scan still wants, and that its unit is wrong', () => {
    expect(whyNotLaid({ ok: false, why: 'few' }, 0)).toBe(
      'It lies where it was put down: 3 pairs lay it, not in a line and far apart.',
    );
    expect(whyNotLaid({ ok: false, why: 'few' }, 2)).toBe(
      'Two pairs so far: 1 more pair lays it, not in a line and far apart.',
    );
    expect(sizeHintInWords({ ratio: 25.4, unit: 'mm' }, 'in')).toBe(
      'The scan measures 25.4 times what was measured on the car. Its unit is millimetres, not inches.',
    );
    expect(sizeHintInWords({ ratio: 0.001, unit: 'm' }, 'mm')).toContain('1/1000 of what was measured');
    expect(sizeHintInWords({ ratio: 1.2, unit: null }, 'mm')).toContain('A pair is picked wrong');
  });
});
