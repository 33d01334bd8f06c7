/**
 * Weld lengths of random joints, in bends, past the axis, with several cutters, against chords of a curve that is found by search along each line (oracles/march.ts), no equation of
 * the crossing known. Source: computed.
 */
import { describe, expect, it } from 'vitest';
import { weldLength } from '../../src/core/cope/weld-length.ts';
import { drawn, LONG } from '../draws.ts';
import { bothEnds } from './compare.ts';
import { bentJoint, hollowJoint, roughKindOf, seedsOf, straightJoint, type Joint } from './joints.ts';
import { trimByMarch, type End } from './oracles/march.ts';

/** Chords in the unrolled plane, halved where two come out longer than one, or one much longer than the other: a step of the wall, which narrows until it is left out. */
function searched(end: End): number {
  const trim = (degrees: number): number => trimByMarch(end, degrees) ?? NaN;
  const chord = (from: number, a: number, to: number, b: number): number =>
    Math.hypot((end.radius * (to - from) * Math.PI) / 180, b - a);
  const between = (from: number, a: number, to: number, b: number): number => {
    if (Number.isNaN(a) && Number.isNaN(b)) return 0;
    if (to - from < 1e-7) return 0;
    const middle = (from + to) / 2;
    const s = trim(middle);
    const [one, other] = [chord(from, a, middle, s), chord(middle, s, to, b)];
    // Its middle may lie on the chord by chance: a third of the way has to as well.
    const third = trim(from + (to - from) / 3);
    const isEven = Math.abs(one - other) < (one + other) / 2 || one + other < 1e-4;
    const bend = chord(from, a, from + (to - from) / 3, third) + chord(from + (to - from) / 3, third, to, b);
    if (isEven && Math.max(one + other, bend) - chord(from, a, to, b) < 2e-5) return one + other;
    return between(from, a, middle, s) + between(middle, s, to, b);
  };
  let sum = 0;
  let before = trim(0);
  for (let degree = 1.5; degree <= 360; degree += 1.5) {
    const here = trim(degree);
    sum += between(degree - 1.5, before, degree, here);
    before = here;
  }
  return sum;
}

/**
 * The hundredth that is promised, and what chords of the search leave. Where the curve ends, or steps to another place of the run tube, lines only touch. The search stops short of a touch by some thousandths, along which the curve runs nearly along the tube; a step it may
 * find a ten-thousandth of a degree beside ours.
 */
const NEAR_ENOUGH = 0.012;
const AT_AN_END = 0.005;
const AT_A_STEP = 0.05;

function check(joint: Joint): void {
  const { solved, end } = bothEnds(joint);
  const trims = Array.from(solved.outer);
  const beside = trims.map((s, k) => [s, trims[(k + 1) % trims.length]!] as const);
  const ends = beside.filter(([a, b]) => Number.isNaN(a) !== Number.isNaN(b)).length;
  const steps = beside.filter(([a, b]) => Math.abs(a - b) > end.radius / 2).length;
  const within = NEAR_ENOUGH + ends * AT_AN_END + steps * AT_A_STEP;
  expect(Math.abs(weldLength(solved).length - searched(end))).toBeLessThan(within);
}

const range = (from: number, count: number): number[] => Array.from({ length: count }, (_, i) => from + i);

describe('the weld of a coped end, against chords of the searched curve', () => {
  it.each(seedsOf(7001, 12, straightJoint, roughKindOf))('on straight runs, joint %i', (seed) =>
    check(straightJoint(seed)),
  );
  // A line that only touches takes the search thousands of steps. npm test takes one joint in a bend with such lines, and one across a tangent.
  const bent = LONG ? seedsOf(7501, 8, bentJoint, roughKindOf) : [7501, 7506];
  it.each(bent)('on bent runs, joint %i', (seed) => check(bentJoint(seed)));
  it.each(range(37001, drawn(1, 16)))('in hollows, joint %i', (seed) => check(hollowJoint(seed)));
});
