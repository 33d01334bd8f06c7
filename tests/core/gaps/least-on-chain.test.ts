/** The least along a rim, against every rim's strokes gone along in small steps. Source: computed. */
import { expect, it } from 'vitest';
import { chainOf, leafOf } from '../../../src/core/gaps/chain.ts';
import { nearestOfChains } from '../../../src/core/gaps/chains-apart.ts';
import { leastOnChain } from '../../../src/core/gaps/least-on-chain.ts';
import { outsideOf } from '../../../src/core/gaps/outside.ts';
import { dot, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawn } from '../../draws.ts';
import { pairOfTubes } from '../../reference/gap-pairs.ts';
import { frameOf } from '../../reference/jobs.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';

type Chain = ReturnType<typeof chainOf>;

const rimsOf = (seed: number): readonly Chain[] => {
  const { byId } = frameOf(pairOfTubes(seed).job);
  return ['a', 'b'].flatMap((id) => outsideOf(byId.get(id)!).ends.map(chainOf));
};

const direction = (draw: Draw): Vec3 => {
  const [z, turn] = [draw.between(-1, 1), draw.between(0, 2 * Math.PI)];
  const flat = Math.sqrt(1 - z * z);
  return [flat * Math.cos(turn), flat * Math.sin(turn), z];
};

/** Every place of the chain's strokes, so many steps each. */
function along(chain: Chain, steps: number): Vec3[] {
  return Array.from({ length: chain.firsts[1]! }, (_, leaf) => leafOf(chain, leaf).places).flatMap((places) =>
    Array.from({ length: steps * (places.length / 3 - 1) }, (_, k): Vec3 => {
      const [i, share] = [3 * Math.floor(k / steps), (k % steps) / steps];
      return [0, 1, 2].map((axis) => places[i + axis]! + share * (places[i + 3 + axis]! - places[i + axis]!)) as never;
    }),
  );
}

it.each([1, 2, 3, 4, 5, 6].slice(0, drawn(3, 6)))(
  '%i: also where it lies at the edge of where there is anything',
  (seed) => {
    const draw = drawFrom(seed);
    for (const chain of rimsOf(seed)) {
      const places = along(chain, 200);
      const [down, side] = [direction(draw), direction(draw)];
      const sides = places.map((p) => dot(p, side)).toSorted((a, b) => a - b);
      const edge = sides[Math.floor(draw.between(0.2, 0.8) * sides.length)]!;
      const value = (p: Vec3): number => (dot(p, side) > edge ? NaN : dot(p, down));
      const least = Math.min(...places.map(value).filter((each) => !Number.isNaN(each)));
      const found = leastOnChain(chain, { value, floor: (p) => dot(p, down) }, Infinity)!;
      expect(found.value).toBeCloseTo(value(found.at), 12);
      // A golden section of ten steps leaves 0.8 % of a stroke of some millimetre.
      expect(Math.abs(found.value - least)).toBeLessThan(0.02);
    }
  },
);

it.each([1, 2, 3, 4])('%i: two rims are as near as the nearest of their places', (seed) => {
  const [a, b, c] = rimsOf(seed).map((chain) => ({ chain, places: along(chain, 2) }));
  for (const [one, other] of [
    [a!, c!],
    [b!, c!],
  ] as const) {
    const least = Math.min(
      ...one.places.map((p) => Math.min(...other.places.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])))),
    );
    const found = nearestOfChains(one.chain, other.chain, Infinity)!;
    expect(found.distance).toBeLessThanOrEqual(least + 1e-9);
    expect(found.distance).toBeGreaterThan(least - 1);
  }
});
