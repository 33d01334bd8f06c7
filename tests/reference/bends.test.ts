/** The bend table against values worked out with two independent methods ("computed") and the trade's own. */
import { describe, expect, it } from 'vitest';
import { tubeThrough } from './jobs.ts';
import { developed } from './oracles/centreline.ts';
import { drawFrom } from './oracles/seeded.ts';
import type { Triple } from './oracles/space.ts';

const DEGREE = Math.PI / 180;
const inDegrees = (angle: number): number => angle / DEGREE;

/** Two legs of 1 m that turn by `degrees`. */
const turning = (degrees: number): Triple[] => [
  [-1000, 0, 0],
  [0, 0, 0],
  [1000 * Math.cos(degrees * DEGREE), 1000 * Math.sin(degrees * DEGREE), 0],
];

describe('one bend', () => {
  it.each([
    [114.3, 1.99491],
    [135, 2.35619],
    [152.4, 2.65988],
  ])('takes R pi/180 of tube a degree: CLR %f (computed)', (radius, perDegree) => {
    for (const degrees of [5, 37, 64, 90, 118]) {
      const bend = tubeThrough(turning(degrees), radius).bends[0]!;
      expect(inDegrees(bend.angle)).toBeCloseTo(degrees, 9);
      expect(bend.arc / degrees).toBeCloseTo(perDegree, 5);
      expect(bend.end - bend.start).toBeCloseTo(bend.arc, 9);
    }
  });

  it.each([
    [135, 57.942],
    [100, 42.92],
    [152.4, 0.4292 * 152.4],
  ])('gains 0.42920 R against the sharp corner at 90 degrees: R %f (computed)', (radius, gain) => {
    const tube = tubeThrough(turning(90), radius);
    expect(tube.sharpCornerLength - tube.developedLength).toBeCloseTo(gain, 2);
    expect(tube.sharpCornerLength).toBeCloseTo(2000, 9);
  });
});

describe('XYZ to bends', () => {
  it('answers the three-bend case (computed)', () => {
    const tube = tubeThrough(
      [
        [0, 0, 0],
        [300, 0, 0],
        [300, 400, 0],
        [300, 400, 500],
        [700, 600, 500],
      ],
      135,
    );
    expect(tube.bends.map((bend) => inDegrees(bend.angle))).toEqual(
      [90, 90, 90].map((value) => expect.closeTo(value, 9)),
    );
    expect(tube.bends.map((bend) => inDegrees(bend.rotation))).toEqual(
      [0, 90, 116.5651].map((value) => expect.closeTo(value, 4)),
    );
    expect(tube.straights).toEqual([165, 130, 230, 312.2136].map((value) => expect.closeTo(value, 4)));
    expect(tube.developedLength).toBeCloseTo(1473.3861, 4);
  });

  it('answers the S-bend of a published question (input from a public mathematics forum; answer computed)', () => {
    const inches: Triple[] = [
      [38.5202, -14.0264, 0],
      [45.3142, -14.0264, 0],
      [45.3142, -17.5214, 0.9654],
      [48.6822, -17.5214, 0.9654],
    ];
    const radius = 1.5 * 25.4;
    const tube = tubeThrough(
      inches.map(([x, y, z]): Triple => [x * 25.4, y * 25.4, z * 25.4]),
      radius,
      12,
      1,
    );
    expect(tube.bends.map((bend) => inDegrees(bend.angle))).toEqual([90, 90].map((value) => expect.closeTo(value, 9)));
    expect(Math.abs(inDegrees(tube.bends[1]!.rotation))).toBeCloseTo(180, 9);
    expect(tube.bends[1]!.rotation).toBeGreaterThan(0);
    const legs = [6.794, 3.62588, 3.368];
    const setBacks = [1.5, 3, 1.5];
    expect(tube.straights.map((straight, i) => straight / 25.4 + setBacks[i]!)).toEqual(
      legs.map((leg) => expect.closeTo(leg, 5)),
    );
  });

  it('turns right-hand along the feed: bending left, then up, is +90 (right-hand rule of the contract)', () => {
    const up = tubeThrough(
      [
        [0, 0, 0],
        [500, 0, 0],
        [500, 500, 0],
        [500, 500, 500],
      ],
      100,
    );
    const down = tubeThrough(
      [
        [0, 0, 0],
        [500, 0, 0],
        [500, 500, 0],
        [500, 500, -500],
      ],
      100,
    );
    // Fed along +y the tube's first bend lies towards -x, the second towards +z: from -x to +z is right-hand about +y.
    expect(inDegrees(up.bends[1]!.rotation)).toBeCloseTo(90, 9);
    expect(inDegrees(down.bends[1]!.rotation)).toBeCloseTo(-90, 9);
  });

  it('has no bend where three corners stand in line', () => {
    const tube = tubeThrough(
      [
        [0, 0, 0],
        [400, 0, 0],
        [900, 0, 0],
      ],
      135,
    );
    expect(tube.bends).toEqual([]);
    expect(tube.developedLength).toBeCloseTo(900, 9);
  });

  it('agrees in developed length with squares dropped from the bend centres, random tubes (computed)', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const draw = drawFrom(seed);
      const corners: Triple[] = Array.from({ length: 3 + (seed % 4) }, (_, i) => [
        500 * i + draw.between(-100, 100),
        draw.between(-300, 300),
        draw.between(-300, 300),
      ]);
      const radius = draw.between(20, 60);
      expect(tubeThrough(corners, radius, 20, 1).developedLength, `seed ${seed}`).toBeCloseTo(
        developed(corners, radius),
        7,
      );
    }
  });
});
