/** Where a foot stands and where the tube stands on it, against the cut's own rim laid onto the plate, and sampled ellipses. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { footCorners } from '../../../src/core/feet/corners.ts';
import { distanceFrom, reachOf, type Outline } from '../../../src/core/feet/outline.ts';
import { inCar, onFoot, plateAxes, standsOf, type Stand } from '../../../src/core/feet/stand.ts';
import { add, mirrored, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawn } from '../../draws.ts';
import { derivedLeg, rimOf, type Leg } from './feet-jobs.ts';

const BOX = { kind: 'box', size: [150, 100], thickness: 3, height: 60 };

const standing = (leg: Leg): readonly Stand[] => derivedLeg(leg).tubes.flatMap(standsOf);

const close = (a: Vec3, b: Vec3, digits = 9): void => a.forEach((each, i) => expect(each).toBeCloseTo(b[i]!, digits));

const lean = fc.double({ min: -0.6, max: 0.6, noNaN: true });

/** Places of an ellipse, so many round it. */
const roundOf = ({ centre, half, lean: [x, y] }: Outline, count: number): (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    const [p, q] = [half[0] * Math.cos(turn), half[1] * Math.sin(turn)];
    return [centre[0] + p * x - q * y, centre[1] + p * y + q * x];
  });

describe('the outline of a tube on its foot', () => {
  it('is the rim of the cut, laid onto the upper face', () => {
    const draws = fc.record({ nx: lean, ny: lean, tx: lean, ty: lean, mirror: fc.boolean() });
    fc.assert(
      fc.property(draws, ({ nx, ny, tx, ty, mirror }) => {
        const top: Vec3 = [800 * tx, 610 + 800 * ty, 880];
        for (const stand of standing({ foot: BOX, normal: [nx, ny, 1], top, mirror })) {
          const rim = rimOf(stand.tube, 1).map((place) => onFoot(stand, place));
          for (const [a, c, up] of rim) {
            expect(up).toBeCloseTo(63, 8);
            expect(distanceFrom(stand.outline!, [a, c])).toBeCloseTo(0, 7);
          }
          const [middle, opposite] = [rim[0]!, rim[180]!];
          expect((middle[0] + opposite[0]) / 2).toBeCloseTo(stand.outline!.centre[0], 8);
          expect((middle[1] + opposite[1]) / 2).toBeCloseTo(stand.outline!.centre[1], 8);
          const reach = reachOf(stand.outline!);
          for (const axis of [0, 1] as const) {
            const found = rim.map((place) => place[axis]);
            // A degree past the extreme an ellipse has come back by 1 - cos(1/2 degree) of it.
            expect(Math.abs(Math.min(...found) - reach[axis][0])).toBeLessThan(0.005);
            expect(Math.abs(Math.max(...found) - reach[axis][1])).toBeLessThan(0.005);
          }
        }
      }),
      { numRuns: drawn(20, 300), seed: 11 },
    );
  });

  it('is a circle under an upright tube, and none where the foot is upside down or along the tube', () => {
    const upright = { foot: BOX, top: [0, 610, 900] as const };
    expect(standing(upright)[0]!.outline).toEqual({ centre: [0, 0], half: [22.225, 22.225], lean: [1, 0] });
    expect(standing({ ...upright, normal: [0, 0, -1] })[0]!.outline).toBeNull();
    expect(standing({ ...upright, normal: [1, 0, 0] })[0]!.outline).toBeNull();
  });

  it('is as far from a place as the nearest of many places on it', () => {
    const draws = fc.record({
      a: fc.double({ min: 0, max: 60, noNaN: true }),
      b: fc.double({ min: 5, max: 30, noNaN: true }),
      turn: fc.double({ min: 0, max: 6.3, noNaN: true }),
      at: fc.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -90, max: 90, noNaN: true })),
    });
    fc.assert(
      fc.property(draws, ({ a, b, turn, at }) => {
        const outline: Outline = { centre: [7, -4], half: [a + b, b], lean: [Math.cos(turn), Math.sin(turn)] };
        const places = roundOf(outline, 20_000);
        const found = Math.min(...places.map(([x, y]) => Math.hypot(x - at[0], y - at[1])));
        // Half a step along the ellipse, at most.
        const step = (Math.PI * (a + b)) / 20_000;
        const near = Math.abs(distanceFrom(outline, at));
        expect(near).toBeLessThanOrEqual(found + 1e-9);
        expect(found - near).toBeLessThan(step);
      }),
      { numRuns: drawn(40, 500), seed: 12 },
    );
    expect(distanceFrom({ centre: [0, 0], half: [40, 20], lean: [0, 1] }, [0, 0])).toBeCloseTo(-20, 12);
    expect(distanceFrom({ centre: [0, 0], half: [40, 20], lean: [0, 1] }, [0, 55])).toBeCloseTo(15, 12);
    expect(distanceFrom({ centre: [0, 0], half: [20, 20], lean: [1, 0] }, [0, 0])).toBeCloseTo(-20, 12);
  });
});

describe('a foot in the car', () => {
  it('lies along the car, level or leaning; on a bulkhead its along is up', () => {
    close(plateAxes([0, 0, 5], false).along, [1, 0, 0]);
    close(plateAxes([0, 0, 5], false).across, [0, 1, 0]);
    close(plateAxes([-2, 0, 0], false).along, [0, 0, 1]);
    close(plateAxes([-2, 0, 0], false).across, [0, 1, 0]);
    // 30 degrees up at the front: along climbs by 30 degrees.
    const along = plateAxes([-0.5, 0, Math.sqrt(0.75)], false).along;
    close(along, [Math.sqrt(0.75), 0, 0.5]);
  });

  it('of a twin is the mirror image, with the same places on it', () => {
    const [own, twin] = standing({ foot: BOX, normal: [0.1, -0.2, 1], mirror: true });
    expect(twin!.mirrored).toBe(true);
    close(twin!.place, mirrored(own!.place));
    for (const at of [
      [10, 20, 30],
      [-40, 5, 63],
    ] as const)
      close(inCar(twin!, at), mirrored(inCar(own!, at)));
    expect(twin!.outline!.centre[0]).toBeCloseTo(own!.outline!.centre[0], 9);
    expect(twin!.outline!.centre[1]).toBeCloseTo(own!.outline!.centre[1], 9);
    footCorners(twin!).forEach((corner, i) => close(corner, mirrored(footCorners(own!)[i]!)));
  });

  it('moves with the car', () => {
    const leg: Leg = { foot: BOX, normal: [0.1, -0.2, 1], top: [120, 500, 900], floor: [0, 610, 80] };
    const by: Vec3 = [1234.5, -77.25, 310.125];
    const [here] = standing(leg);
    const [there] = standing({ ...leg, top: add(leg.top!, by), floor: add(leg.floor!, by) });
    footCorners(there!).forEach((corner, i) => close(corner, add(footCorners(here!)[i]!, by)));
    expect(there!.outline!.centre[0]).toBeCloseTo(here!.outline!.centre[0], 9);
  });
});
