/** The part of a path on which a coordinate only rises or only falls. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { slopeAt } from '../../../src/core/geometry/plane-places.ts';
import { derivedOrSkipped, fixed, isSound, plainFrame } from '../../laws/frames.ts';
import { drawn } from '../../draws.ts';

it('comes to no coordinate twice, and is as long as that lasts', () => {
  let turned = 0;
  fc.assert(
    fc.property(
      plainFrame,
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      fc.constantFrom(0, 1, 2),
      (job, share, axis) => {
        const tube = derivedOrSkipped(job).tubes.find((each) => each.bends.length > 0 && isSound(each));
        if (tube === undefined) return;
        const { path } = tube;
        const at = share * path.length;
        const coordinate = (along: number): number => placeAt(path, along).point[axis];
        const slope = slopeAt(path, axis, at);
        if (slope === null) return;
        expect(slope.from).toBeLessThanOrEqual(at);
        expect(slope.to).toBeGreaterThanOrEqual(at);
        expect(coordinate(slope.from)).toBeCloseTo(slope.atFrom, 9);
        expect(coordinate(slope.to)).toBeCloseTo(slope.atTo, 9);
        // Sampled: always the same way, and just past either end no more.
        const sense = Math.sign(slope.atTo - slope.atFrom);
        const samples = Array.from({ length: 41 }, (_, i) =>
          coordinate(slope.from + ((slope.to - slope.from) * i) / 40),
        );
        samples.slice(1).forEach((each, i) => expect(sense * (each - samples[i]!)).toBeGreaterThan(-1e-9));
        const past = [
          ...(slope.from > 0.5 ? [coordinate(slope.from) - coordinate(slope.from - 0.5)] : []),
          ...(slope.to < path.length - 0.5 ? [coordinate(slope.to + 0.5) - coordinate(slope.to)] : []),
        ];
        for (const change of past) expect(sense * change).toBeLessThan(1e-9);
        turned += past.length;
      },
    ),
    fixed(drawn(60, 1000)),
  );
  expect(turned).toBeGreaterThan(10);
});
