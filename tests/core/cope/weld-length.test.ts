/**
 * Weld lengths against closed forms: a circle, ellipses by the arithmetic-geometric mean (Abramowitz and Stegun 17.6), the two half ellipses that equal tubes meet in, and against the trade's
 * formula of a straight cope, summed here in fine chords.
 */
import { describe, expect, it } from 'vitest';
import { weldLength } from '../../../src/core/cope/weld-length.ts';
import type { TubeEnd } from '../../../src/core/solve/types.ts';
import { derived, tube } from '../frame.ts';

const R = 44.45 / 2;

/** Round an ellipse, by the mean of Gauss: pi 2 (1 - sum 2^(n-1) c_n^2) / M, of half axes 1 and k'. */
function roundEllipse(one: number, other: number): number {
  const long = Math.max(one, other);
  let [a, b] = [1, Math.min(one, other) / long];
  let c2 = 1 - b * b;
  let sum = c2 / 2;
  for (let n = 1; c2 > 1e-32 && n < 12; n++) {
    const c = (a - b) / 2;
    [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
    c2 = c * c;
    sum += 2 ** (n - 1) * c2;
  }
  return (2 * Math.PI * long * (1 - sum)) / a;
}

/** Chords of a curve round a tube, at so many steps; and what they would come to at no step, where it is smooth. */
function round(trim: (phi: number) => number, radius: number, steps: number): number {
  let sum = 0;
  for (let k = 0; k < steps; k++) {
    const [from, to] = [(2 * Math.PI * k) / steps, (2 * Math.PI * (k + 1)) / steps];
    const [a, b] = [trim(from), trim(to)];
    if (!Number.isNaN(a) && !Number.isNaN(b)) sum += Math.hypot(radius * (to - from), b - a);
  }
  return sum;
}
const extrapolated = (trim: (phi: number) => number, radius: number): number =>
  (4 * round(trim, radius, 1 << 15) - round(trim, radius, 1 << 14)) / 3;

const sum = (...ends: readonly TubeEnd[]): number => ends.reduce((all, end) => all + weldLength(end).length, 0);

const single = (end: object, to: readonly number[] = [0, 0, 600]): TubeEnd =>
  tube(
    derived({
      nodes: { foot: [0, 0, 0], top: to },
      members: [{ id: 'leg', path: ['foot', 'top'], ends: [end, { fit: 'square' }] }],
    }),
    'leg',
  ).ends[0];

/** The branch's end on a straight run along x, from the joint on at that angle, its axis passing by e. */
function coped(included: number, passes: number, run: number, branch: number): TubeEnd {
  const a = (included * Math.PI) / 180;
  const frame = derived({
    sections: [
      { id: 'run', outerDiameter: 2 * run, wall: 2 },
      { id: 'branch', outerDiameter: 2 * branch, wall: 2 },
    ],
    nodes: {
      back: [-500, 0, 0],
      fore: [500, 0, 0],
      joint: [0, passes, 0],
      end: [600 * Math.cos(a), passes, 600 * Math.sin(a)],
    },
    members: [
      { id: 'run', section: 'run', path: ['back', 'fore'], ends: [{ fit: 'square' }, { fit: 'square' }] },
      {
        id: 'branch',
        section: 'branch',
        path: ['joint', 'end'],
        ends: [{ fit: 'cope', against: ['run'] }, { fit: 'square' }],
      },
    ],
  });
  return tube(frame, 'branch').ends[0];
}

describe('the ellipse that this file reckons with', () => {
  it('is the one of the tables: half axes 2 and 1, and the lemniscate’s', () => {
    expect(roundEllipse(2, 1)).toBeCloseTo(9.688448220547675, 12);
    expect(roundEllipse(1, Math.SQRT2) / (4 * Math.SQRT2)).toBeCloseTo(1.3506438810476755, 12);
  });
});

describe('the weld at an end', () => {
  it('is the round of the tube where it is cut square', () => {
    expect(weldLength(single({ fit: 'square' }))).toEqual({ length: expect.closeTo(Math.PI * 2 * R, 6), open: 0 });
    expect(sum(single({ fit: 'plate', normal: [0, 0, 1] }))).toBeCloseTo(Math.PI * 2 * R, 6);
  });

  it.each([5, 30, 45, 60, 80])('is the round of an ellipse on a plate that leans %i degrees', (lean) => {
    const a = (lean * Math.PI) / 180;
    const end = single({ fit: 'plate', normal: [Math.sin(a), 0, Math.cos(a)] });
    expect(sum(end)).toBeCloseTo(roundEllipse(R, R / Math.cos(a)), 5);
  });

  it('is an ellipse at a mitre, the same for both tubes', () => {
    const frame = derived({
      nodes: { a: [0, 0, 0], corner: [600, 0, 0], b: [600, 0, 500] },
      members: [
        { id: 'one', path: ['a', 'corner'], ends: [{ fit: 'square' }, { fit: 'mitre', with: 'two' }] },
        { id: 'two', path: ['corner', 'b'], ends: [{ fit: 'mitre', with: 'one' }, { fit: 'square' }] },
      ],
    });
    const expected = roundEllipse(R, R * Math.SQRT2);
    expect(sum(tube(frame, 'one').ends[1])).toBeCloseTo(expected, 5);
    expect(sum(tube(frame, 'two').ends[0])).toBeCloseTo(expected, 5);
  });

  it.each([90, 75, 60, 45, 30])('is half of each of two ellipses where equal tubes meet at %i degrees', (included) => {
    const half = (included * Math.PI) / 360;
    const expected = (roundEllipse(R, R / Math.sin(half)) + roundEllipse(R, R / Math.cos(half))) / 2;
    expect(weldLength(coped(included, 0, R, R))).toEqual({ length: expect.closeTo(expected, 5), open: 0 });
  });

  it.each([
    [90, 0, 22.225, 19.05],
    [60, 0, 22.225, 19.05],
    [40, 3, 22.225, 19.05],
    [90, -8, 25, 16],
    [22, 1.5, 30, 12],
  ])('is the trade’s formula summed up: %i degrees, passing by %d, %d on %d', (included, passes, run, branch) => {
    const a = (included * Math.PI) / 180;
    const trim = (phi: number): number =>
      (branch * Math.cos(phi) * Math.cos(a) + Math.sqrt(run ** 2 - (branch * Math.sin(phi) + passes) ** 2)) /
      Math.sin(a);
    expect(sum(coped(included, passes, run, branch))).toBeCloseTo(extrapolated(trim, branch), 5);
  });

  it('leaves out what reaches nothing, and says how much of the turn that is', () => {
    // Equal tubes whose axes pass by 30 mm: a line meets the run where |r sin phi + 30| <= r, on both sides of phi = -90 degrees.
    const { length, open } = weldLength(coped(90, 30, R, R));
    const wide = Math.asin((R - 30) / R) + Math.PI / 2;
    expect(open).toBeCloseTo(2 * Math.PI - 2 * wide, 7);
    // The curve runs along the tube at its ends; in u, with phi = its end - wide u^2, it is smooth.
    const place = (u: number) => {
      const phi = wide * (1 - u * u) - Math.PI / 2;
      return [R * phi, Math.sqrt(Math.max(0, R ** 2 - (R * Math.sin(phi) + 30) ** 2))] as const;
    };
    const half = (steps: number): number =>
      Array.from({ length: steps }, (_, k) => {
        const [from, to] = [place(k / steps), place((k + 1) / steps)];
        return Math.hypot(to[0] - from[0], to[1] - from[1]);
      }).reduce((all, each) => all + each, 0);
    expect(length).toBeCloseTo((2 * (4 * half(1 << 13) - half(1 << 12))) / 3, 3);
  });
});
