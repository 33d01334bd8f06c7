/**
 * The finding that a tube meets its run again, past its cope, against a walk along its lines in small steps (oracles/again.ts). Source:
 * computed. None may be missed that stands 0.2 mm deep, none may be found where nothing does.
 */
import { describe, expect, it } from 'vitest';
import { meetsAgain, type MeetsAgain } from '../../src/core/checks/meets-again.ts';
import { drawn } from '../draws.ts';
import { bothEnds, everyDegrees } from './compare.ts';
import { tubeOf } from './jobs.ts';
import { bentJoint, BRANCH, hollowJoint, straightJoint, type Joint } from './joints.ts';
import { depthAgain } from './oracles/again.ts';
import { distanceToCentreline, type Cutter } from './oracles/centreline.ts';
import { trimByMarch, type End } from './oracles/march.ts';
import { difference, inner, outer, size, square } from './oracles/space.ts';

const range = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

interface Depths {
  readonly found: MeetsAgain | undefined;
  readonly walked: number;
  readonly cutter: Cutter;
}

/** Depths found and walked to, a cutter each. */
function depths(joint: Joint, end: End): Depths[] {
  const again = meetsAgain(tubeOf(joint.job, 'branch'));
  return end.cutters.map((cutter, i) => ({
    found: again.find(({ runTube }) => runTube === `run${i}`),
    walked: depthAgain(end, joint.bore, cutter, BRANCH, everyDegrees(6)),
    cutter,
  }));
}

/** The place lies on a face of the wall, past its trim, and so deep in the cutter. */
function expectThere(end: End, bore: number, cutter: Cutter, { depth, at }: MeetsAgain, tip: number): void {
  expect(Math.abs(cutter.radius - distanceToCentreline(cutter, at) - depth)).toBeLessThan(1e-6);
  const off = difference(at, end.node);
  const s = inner(off, end.direction);
  const around = square(off, end.direction);
  const rho = size(around);
  const isOutside = Math.abs(rho - end.radius) < 1e-6;
  if (!isOutside) expect(Math.abs(rho - bore)).toBeLessThan(1e-6);
  const degrees =
    (Math.atan2(inner(around, outer(end.direction, end.reference)), inner(around, end.reference)) * 180) / Math.PI;
  const lines = isOutside ? end : { ...end, radius: bore, outside: end.radius };
  expect(s).toBeGreaterThan((trimByMarch(lines, degrees) ?? tip) - 1e-3);
  expect(s).toBeLessThan(BRANCH + 1e-6);
}

describe('a straight tube that meets its run again', () => {
  let met = 0;
  it.each([
    ...range(51001, drawn(8, 400)).map((seed) => [seed, hollowJoint] as const),
    ...range(52001, drawn(3, 120)).map((seed) => [seed, bentJoint] as const),
    ...range(53001, drawn(2, 40)).map((seed) => [seed, straightJoint] as const),
  ] as const)('is found, and how deep, joint %i', (seed, make) => {
    const joint = make(seed);
    const { end, solved } = bothEnds(joint);
    for (const { found, walked, cutter } of depths(joint, end)) {
      if (walked > 0.2) met += 1;
      // The walk stops at every sixth degree and half millimetre: what is found lies at or beyond all that it comes to.
      expect(found?.depth ?? 0).toBeGreaterThan(walked - 0.02);
      if (found !== undefined) expectThere(end, joint.bore, cutter, found, solved.tip ?? 0);
    }
  });
  it('happens to many of these', () => expect(met).toBeGreaterThan(drawn(0, 3)));
});
