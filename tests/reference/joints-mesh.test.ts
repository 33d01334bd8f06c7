/**
 * Random joints against mesh booleans (manifold-3d, 360 sides). Source: computed. The mesh's flats stand up to
 * `chordalError` off the true surface; how much of that shows in a trim depends on how slantwise the line leaves, so
 * each trim is held between those of runs thinner and thicker by the error, taken from the search (oracles/march.ts).
 */
import type { ManifoldToplevel } from 'manifold-3d';
import { beforeAll, describe, it } from 'vitest';
import { LONG } from '../draws.ts';
import { bothEnds, everyDegrees, expectAgreement } from './compare.ts';
import { bentJoint, roughKindOf, seedsOf, straightJoint, type Joint } from './joints.ts';
import { chordalError, MODELLED, startMesh, trimsByMesh } from './oracles/mesh.ts';

let mesh: ManifoldToplevel;
beforeAll(async () => {
  mesh = await startMesh();
});

const DEGREES = everyDegrees(5);
/** Rounding of the mesh library's own coordinates. */
const ROUNDING = 1e-5;

function check(joint: Joint): void {
  const { solved, end } = bothEnds(joint);
  const theirs = trimsByMesh(mesh, end, DEGREES);
  expectAgreement(solved.outer, theirs, DEGREES, {
    end,
    errorOf: chordalError,
    least: ROUNDING,
    most: 1,
    within: MODELLED / 2,
  });
}

/** In npm test: two tubes, an equal one past the axis, one in a bend. One of each rough kind stands beside exact solids, and beside the search. */
const SAMPLE = new Set([7004, 7030, 8002]);
const sampled = (seeds: readonly number[]): number[] => seeds.filter((seed) => LONG || SAMPLE.has(seed));

describe('trim against a mesh boolean', () => {
  it.each(sampled(seedsOf(7001, 160, straightJoint, roughKindOf)))('to straight runs, joint %i', (seed) =>
    check(straightJoint(seed)),
  );
  it.each(sampled(seedsOf(8001, 10, bentJoint, roughKindOf)))('to bent runs, joint %i', (seed) =>
    check(bentJoint(seed)),
  );
});
