/**
 * Random joints against exact solids (Open CASCADE). Source: computed. The kernel takes two points for one within
 * 1e-7 mm, which along a grazing line is up to 1e-3 mm of trim; on all others 1e-6 mm is asked.
 */
import type { OpenCascadeInstance } from 'replicad-opencascadejs';
import { beforeAll, describe, it } from 'vitest';
import { LONG } from '../draws.ts';
import { bothEnds, everyDegrees, expectAgreement } from './compare.ts';
import { bentJoint, roughKindOf, seedsOf, straightJoint, type Joint } from './joints.ts';
import { MODELLED, startKernel, trimsByKernel } from './oracles/kernel.ts';

let kernel: OpenCascadeInstance;
beforeAll(async () => {
  kernel = await startKernel();
});

const DEGREES = everyDegrees(LONG ? 5 : 15);

function check(joint: Joint): void {
  const { solved, end } = bothEnds(joint);
  const theirs = trimsByKernel(kernel, end, DEGREES);
  expectAgreement(solved.outer, theirs, DEGREES, {
    end,
    errorOf: () => 1e-7,
    least: 1e-6,
    most: 1e-3,
    within: MODELLED / 2,
  });
}

describe('trim against exact solids', () => {
  it.each(seedsOf(7001, 16, straightJoint, roughKindOf))('to straight runs, joint %i', (seed) =>
    check(straightJoint(seed)),
  );
  it.each(seedsOf(8001, 20, bentJoint, roughKindOf))('to bent runs, joint %i', (seed) => check(bentJoint(seed)));
});
