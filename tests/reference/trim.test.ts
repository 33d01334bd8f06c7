/**
 * Random places and stretches beside coped tubes, in their bars, past their ends and in the hollows of their copes, against outsides that are
 * sampled from the numbers of the fabrication file (oracles/stretch.ts). Source: computed.
 */
import { describe, expect, it } from 'vitest';
import { outsideOf } from '../../src/core/gaps/outside.ts';
import { gapToStretch, stretchBetween } from '../../src/core/gaps/stretch-gap.ts';
import { drawn, LONG } from '../draws.ts';
import { copedSolid, isSound, pairOfTubes } from './gap-pairs.ts';
import { frameOf } from './jobs.ts';
import { placeAlong } from './oracles/centreline.ts';
import type { CopedSolid } from './oracles/coped.ts';
import { drawFrom, type Draw } from './oracles/seeded.ts';
import { along, anySquare, around, difference, size, unit, type Triple } from './oracles/space.ts';
import { leastToStretch, offStretch } from './oracles/stretch.ts';

/** More often at the cut end than along the tube; in the bar, on the cut-away side of it, or beside it. */
function placeAt(draw: Draw, { coped, length }: CopedSolid): Triple {
  const end = coped.ends[0];
  const near = draw.chance(0.6);
  const { at, direction } = near
    ? { at: along(end.node, end.direction, draw.between(-60, 60)), direction: end.direction }
    : placeAlong(coped.corners, coped.bendRadius, draw.between(0, length));
  const off = draw.chance(0.4) ? draw.between(0, coped.radius) : draw.between(coped.radius, 150);
  return along(at, around(direction, anySquare(direction), draw.between(0, 360)), off);
}

/** Null where a cut runs through a bend, which nobody makes, or leaves a strip: inside the bar, a strip's sides are taken for nothing. */
function tubeOf(seed: number) {
  const { job, runs } = pairOfTubes(seed);
  const tube = frameOf(job).byId.get('a')!;
  return isSound(tube) && !tube.ends[0].passedBy
    ? { tube, solid: copedSolid(tube, runs, runs.get('a')!.bendRadius) }
    : null;
}

const seeds = (from: number, few: number, many: number): number[] =>
  Array.from({ length: drawn(few, many) }, (_, i) => from + i);

function check(solid: CopedSolid, outside: Parameters<typeof gapToStretch>[0], from: Triple, to: Triple, draw: Draw) {
  const ours = gapToStretch(outside, stretchBetween(from, to), Infinity)!;
  const theirs = leastToStretch(solid, from, to, draw);
  // What is found by samples is never nearer than the truth, but for what the wall stands between two degrees.
  expect(ours.distance).toBeLessThan(theirs + 0.05);
  // What is deeper than the samples found is a place of the stretch inside the tube all the same.
  if (ours.distance < 0) expect(solid.depth(ours.onStretch)).toBeCloseTo(ours.distance, 2);
  else expect(ours.distance).toBeGreaterThan(theirs - 0.1);
  expect(offStretch(ours.onStretch, from, to)).toBeLessThan(1e-6);
  expect(size(difference(ours.onTube, ours.onStretch))).toBeCloseTo(Math.abs(ours.distance), 5);
}

describe('a measured place', () => {
  it.each(seeds(1, 8, 200))('%i, against samples', (seed) => {
    const one = tubeOf(seed);
    if (one === null) return;
    const draw = drawFrom(seed + 2 ** 18);
    for (let k = 0; k < 4; k++) {
      const at = placeAt(draw, one.solid);
      check(one.solid, outsideOf(one.tube), at, at, draw);
    }
  });
});

/** Its deepest place is where it ends: the search for it once went on past that. */
const ENDS_INSIDE = LONG ? [] : [1397];

describe('a stretch', () => {
  it.each([...seeds(1001, 8, 400), ...ENDS_INSIDE])('%i, against samples', (seed) => {
    const one = tubeOf(seed);
    if (one === null) return;
    const draw = drawFrom(seed + 2 ** 18);
    for (let k = 0; k < 3; k++) {
      const at = placeAt(draw, one.solid);
      const way = unit([draw.between(-1, 1), draw.between(-1, 1), draw.between(-1, 1)]);
      const from = along(at, way, -draw.between(0, 300));
      check(one.solid, outsideOf(one.tube), from, along(at, way, draw.between(1, 300)), draw);
    }
  });
});
