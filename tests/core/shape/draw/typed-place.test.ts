/** The place that typed numbers lead to has those numbers, measured from the place alone. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../../src/core/geometry/vector.ts';
import { typedPlace, type TypedNumbers } from '../../../../src/core/shape/draw/typed-place.ts';

const FROM: Vec3 = [100, -200, 300];
const typed = (from: Vec3, toward: Vec3 | null, numbers: Partial<TypedNumbers>) =>
  typedPlace(from, toward, { length: null, slope: null, height: null, ...numbers });

/** As a tape, an angle finder and a compass laid on the leg would say. */
function measured(from: Vec3, to: Vec3 | string) {
  if (typeof to === 'string') throw new Error(to);
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  return {
    length: Math.hypot(x, y, z),
    slope: (Math.atan2(z, Math.hypot(x, y)) * 180) / Math.PI,
    heading: Math.atan2(y, x),
    z: to[2],
  };
}

const toward = fc.tuple(...([0, 1, 2] as const).map(() => fc.integer({ min: -900, max: 900 }))) as fc.Arbitrary<
  [number, number, number]
>;

describe('typed numbers', () => {
  it('are those of the leg, whose heading stays', () => {
    fc.assert(
      fc.property(
        toward,
        fc.integer({ min: 20, max: 2000 }),
        fc.integer({ min: -89, max: 89 }),
        (way, length, slope) => {
          const aim: Vec3 = [FROM[0] + way[0], FROM[1] + way[1], FROM[2] + way[2]];
          fc.pre(Math.hypot(way[0], way[1]) > 1);
          const before = measured(FROM, aim);
          const heading = before.heading;
          const by = (numbers: Partial<TypedNumbers>) => measured(FROM, typed(FROM, aim, numbers));
          const ofLength = by({ length });
          expect(ofLength.length).toBeCloseTo(length, 9);
          expect(ofLength.slope).toBeCloseTo(before.slope, 6);
          const ofBoth = by({ length, slope });
          expect(ofBoth.length).toBeCloseTo(length, 9);
          expect(ofBoth.slope).toBeCloseTo(slope, 9);
          expect(by({ slope }).length).toBeCloseTo(before.length, 9);
          const height = FROM[2] + length / 2;
          const ofHeight = by({ height });
          expect(ofHeight.z).toBe(height);
          expect(Math.cos(ofHeight.slope * (Math.PI / 180)) * ofHeight.length).toBeCloseTo(
            Math.hypot(way[0], way[1]),
            8,
          );
          expect(by({ length, height })).toMatchObject({ z: height });
          expect(by({ length, height }).length).toBeCloseTo(length, 9);
          for (const each of [ofLength, ofBoth, ofHeight, by({ length, height })])
            expect(each.heading).toBeCloseTo(heading, 9);
          if (slope > 0) {
            const ofSlope = by({ slope, height });
            expect([ofSlope.z, Number(ofSlope.slope.toFixed(6))]).toEqual([height, slope]);
          }
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });

  it('plumb and level are so to the last digit', () => {
    expect(typed(FROM, [400, 200, 900], { length: 250, slope: 90 })).toEqual([100, -200, 550]);
    expect(typed(FROM, [400, 200, 900], { length: 500, slope: 0 })).toEqual([400, 200, 300]);
    expect(typed(FROM, [100, -200, 900], { length: 250 })).toEqual([100, -200, 550]);
  });

  it('that lead nowhere say why', () => {
    const aim: Vec3 = [400, 200, 900];
    expect(typed(FROM, null, { length: 10 })).toBe('no-direction');
    expect(typed(FROM, FROM, { length: 10 })).toBe('no-direction');
    expect(typed(FROM, aim, { length: 0 })).toBe('no-length');
    expect(typed(FROM, aim, { length: -3 })).toBe('no-length');
    expect(typed(FROM, aim, { slope: 91 })).toBe('too-steep');
    expect(typed(FROM, aim, { length: 10, height: 311 })).toBe('too-short');
    expect(typed(FROM, aim, { slope: -10, height: 311 })).toBe('never-there');
    expect(typed(FROM, aim, { slope: 0, height: 311 })).toBe('never-there');
    expect(typed(FROM, aim, { slope: 0, height: FROM[2] })).toBe('level-there');
    expect(typed(FROM, aim, { slope: 20, height: FROM[2] })).toBe('begins-there');
    expect(typed(FROM, aim, { length: 5, slope: 5, height: 5 })).toBe('too-many');
  });
});
