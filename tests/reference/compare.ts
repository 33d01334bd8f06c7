/** Sets the program's trims beside an oracle's, line by line. */
import { expect } from 'vitest';
import type { TubeEnd } from '../../src/core/solve/types.ts';
import { tubeOf } from './jobs.ts';
import type { Joint } from './joints.ts';
import type { Cutter } from './oracles/centreline.ts';
import { trimByMarch, type End } from './oracles/march.ts';
import { inner, type Triple } from './oracles/space.ts';

export const EVERY_DEGREE: readonly number[] = Array.from({ length: 360 }, (_, phi) => phi);
export const everyDegrees = (step: number): readonly number[] => EVERY_DEGREE.filter((phi) => phi % step === 0);

/** The coped end as the program has it, and as the oracles are to see it; they agree on where it stands and phi = 0. */
export function bothEnds(joint: Joint): { solved: TubeEnd; end: End } {
  const solved = tubeOf(joint.job, 'branch').ends[joint.which];
  expectNear(solved.position, joint.end.node, 1e-9);
  expectNear(solved.direction, joint.end.direction, 1e-12);
  if (joint.reference) expectNear(solved.reference, joint.reference, 1e-9);
  expect(Math.hypot(...solved.reference)).toBeCloseTo(1, 12);
  expect(inner(solved.reference, joint.end.direction)).toBeCloseTo(0, 12);
  return { solved, end: { ...joint.end, reference: solved.reference } };
}

function expectNear(ours: Triple, theirs: Triple, within: number): void {
  expect(Math.max(...ours.map((value, axis) => Math.abs(value - theirs[axis]!)))).toBeLessThan(within);
}

/** Trims of one line for runs thinner and thicker by an oracle's own error: what it can tell lies between them. */
export interface Bracket {
  readonly low: number;
  readonly high: number;
}

/** 'missed': out of reach for the thicker too. 'grazed': for the thinner one it is, so the oracle may say either. */
export function bracketOf(end: End, phi: number, errorOf: (cutter: Cutter) => number): Bracket | 'missed' | 'grazed' {
  const grown = (way: number): End => ({
    ...end,
    cutters: end.cutters.map((cutter) => ({ ...cutter, radius: cutter.radius + way * errorOf(cutter) })),
  });
  const [thin, thick] = [trimByMarch(grown(-1), phi), trimByMarch(grown(1), phi)];
  if (thick === null) return 'missed';
  if (thin === null) return 'grazed';
  return { low: Math.min(thin, thick), high: Math.max(thin, thick) };
}

/** Sets trims beside an oracle's, to `least` mm or what the oracle's error leaves open; more than that is not compared. */
export function expectAgreement(
  ours: Float64Array,
  theirs: readonly (number | null)[],
  degrees: readonly number[],
  ask: Ask,
): void {
  expect(ours).toHaveLength(360);
  let [reached, compared] = [0, 0];
  degrees.forEach((phi, i) => {
    const bracket = bracketOf(ask.end, phi, ask.errorOf);
    if (bracket === 'missed') {
      expect([ours[phi], theirs[i]], `phi ${phi}`).toEqual([NaN, null]);
      return;
    }
    reached += 1;
    if (bracket === 'grazed' || bracket.high - bracket.low > ask.most || Math.abs(bracket.high) > ask.within) return;
    compared += 1;
    expect(theirs[i], `phi ${phi}`).not.toBeNull();
    expect(Math.abs(ours[phi]! - theirs[i]!), `phi ${phi}`).toBeLessThanOrEqual(
      Math.max(ask.least, bracket.high - bracket.low),
    );
  });
  expect(compared).toBeGreaterThanOrEqual(0.9 * reached);
}

interface Ask {
  readonly end: End;
  /** How far the oracle's surface may stand from the true one. */
  readonly errorOf: (cutter: Cutter) => number;
  readonly least: number;
  readonly most: number;
  /** Crossings farther from the node than this are beyond what the oracle models. */
  readonly within: number;
}
