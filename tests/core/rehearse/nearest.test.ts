import { describe, expect, it } from 'vitest';
import { distanceBetween, distanceTo, nearestShare, other, segment } from '../../../src/core/rehearse/nearest.ts';
import type { Solid } from '../../../src/core/rehearse/types.ts';
import { seeded } from './draws.ts';
import { away } from './sampling.ts';
import { add, apart, less, rotated, scaled, unit, type Triple } from './turning.ts';

const draw = seeded(7);
const between = (low: number, high: number): number => low + (high - low) * draw();
const anywhere = (size: number): Triple => [between(-size, size), between(-size, size), between(-size, size)];
const lay = (into: Float64Array, from: Triple, to: Triple) => into.set([...from, ...to]);
const on = (from: Triple, to: Triple, share: number): Triple => add(from, scaled(less(to, from), share));

function drawnSolid(k: number): Solid {
  const base = { id: { part: 'room', kind: 'box', name: 'it' }, turning: false } as const;
  if (k === 0) return { ...base, shape: { kind: 'plane', point: anywhere(100), normal: unit(anywhere(1)) } };
  if (k === 1) {
    const shape = {
      kind: 'cylinder',
      centre: anywhere(100),
      radius: between(5, 90),
      halfHeight: between(1, 90),
    } as const;
    return { ...base, shape };
  }
  const [axis, turn] = [unit(anywhere(1)), between(0, 6)];
  const axes = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((v) => rotated(v, axis, turn)) as unknown as readonly [Triple, Triple, Triple];
  const half: Triple = [between(1, 120), between(1, 120), between(1, 20)];
  return { ...base, shape: { kind: 'box', centre: anywhere(100), half, axes } };
}

/** Least of a convex function on [0, 1], by cutting the interval in thirds. */
function leastInThirds(f: (share: number) => number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 90; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(a) <= f(b)) high = b;
    else low = a;
  }
  return Math.min(f(0), f(1), f(low));
}

describe('distanceTo', () => {
  it.each(['plane', 'cylinder', 'box'])('a %s: the least that thirds find, from below, and where it says', (kind) => {
    const k = ['plane', 'cylinder', 'box'].indexOf(kind);
    for (let i = 0; i < 3000; i++) {
      const solid = drawnSolid(k);
      const [from, to] = [anywhere(300), anywhere(300)];
      lay(segment, from, to);
      const found = distanceTo(solid);
      const least = leastInThirds((share) => away(on(from, to, share), solid));
      expect(found).toBeLessThanOrEqual(least + 1e-9);
      expect(found).toBeGreaterThan(least - 2e-7);
      expect(away(on(from, to, nearestShare), solid)).toBeCloseTo(least, 5);
    }
  });
});

describe('distanceBetween', () => {
  it('two segments: the least that thirds within thirds find', () => {
    for (let i = 0; i < 200; i++) {
      const [a, b, c, d] = [anywhere(100), anywhere(100), anywhere(100), anywhere(100)] as const;
      lay(segment, a, b);
      lay(other, c, d);
      const toOther = (p: Triple) => leastInThirds((share) => apart(p, on(c, d, share)));
      const least = leastInThirds((share) => toOther(on(a, b, share)));
      expect(distanceBetween()).toBeCloseTo(least, 6);
      expect(toOther(on(a, b, nearestShare))).toBeCloseTo(least, 6);
    }
  });

  it('parallel ones, one that is a point, and two that cross', () => {
    lay(segment, [0, 0, 0], [100, 0, 0]);
    lay(other, [130, 40, 0], [230, 40, 0]);
    expect(distanceBetween()).toBe(50);
    lay(other, [50, 7, 0], [50, 7, 0]);
    expect(distanceBetween()).toBe(7);
    lay(other, [30, -5, 0], [30, 5, 0]);
    expect(distanceBetween()).toBe(0);
  });
});
