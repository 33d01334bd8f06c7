/** Which points are a pair and how unlike the two are: cars made with a known asymmetry, told apart again. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../src/core/job/kinds/point.ts';
import { pairsOfPoints } from '../../../src/core/survey/point-pairs.ts';
import { meanDifference, unpaired } from '../../../src/core/survey/unpaired.ts';
import { aloneInWords, asymmetryInWords } from '../../../src/core/words/sides.ts';
import { drawn } from '../../draws.ts';
import { fixed } from '../../laws/frames.ts';

type Triple = readonly [number, number, number];
const point = (name: string, position: Triple): Point => ({ id: name, name, position });
const names = (points: readonly Point[]) =>
  pairsOfPoints(points).pairs.map(({ left, right }) => [left.name, right.name]);
const why = (points: readonly Point[]) => unpaired(points).map((each) => [each.point.name, each.why]);

/** Left points on a grid, 150 mm apart at least; what the right one is off by, at most 14 mm along each axis; how both are called. */
const CALLED: readonly ((i: number) => readonly [string, string])[] = [
  (i) => [`Corner ${i}, left`, `Corner ${i}, right`],
  (i) => [`LH corner ${i}`, `rh Corner ${i}`],
  (i) => [`corner-${i}-l`, `corner-${i}-r`],
  (i) => [`point ${2 * i}`, `point ${2 * i + 1}`],
];
const side = fc.double({ min: -14, max: 14, noNaN: true });
const car = fc.array(
  fc.record({ by: fc.tuple(side, side, side), called: fc.nat(CALLED.length - 1), rank: fc.double({ noNaN: true }) }),
  { minLength: 1, maxLength: 20 },
);

describe('pairs of measured points', () => {
  it('are found in any car, whatever the order, with what the right one was made to differ by', () => {
    fc.assert(
      fc.property(car, (corners) => {
        const made = corners.map(({ by: [forward, outward, up], called }, i) => {
          const [x, y, z] = [(i % 5) * 400, 300 + Math.floor(i / 5) * 150, 700 - i * 20];
          const [left, right] = CALLED[called]!(i);
          return { left: point(left, [x, y, z]), right: point(right, [x + forward, -(y + outward), z + up]) };
        });
        const points = made
          .flatMap(({ left, right }, i) => (corners[i]!.rank > 0 ? [left, right] : [right, left]))
          .toSorted((a, b) => (a.position[2] % 7) - (b.position[2] % 7));
        const { pairs, of } = pairsOfPoints(points);
        const mean = meanDifference(points);
        expect(unpaired(points)).toEqual([]);
        expect(pairs).toHaveLength(made.length);
        for (const [i, { left, right }] of made.entries()) {
          const pair = of.get(left.id)!;
          expect(pair.right).toBe(right);
          expect(of.get(right.id)).toBe(pair);
          corners[i]!.by.forEach((by, axis) => expect(pair.differs[axis]).toBeCloseTo(by, 9));
        }
        pairs.slice(1).forEach(({ off }, i) => expect(off).toBeLessThanOrEqual(pairs[i]!.off));
        const sum = corners.reduce((total, { by }) => total + by[1], 0);
        expect(mean![1] * corners.length).toBeCloseTo(sum, 6);
      }),
      fixed(drawn(60, 1000)),
    );
  });

  it('go by names before places, and never against names', () => {
    const left = point('Sill, left', [0, 600, 100]);
    const right = point('Sill, right', [20, -600, 100]);
    const near = point('hole', [0, -601, 100]);
    expect(names([left, right, near])).toEqual([['Sill, left', 'Sill, right']]);
    expect(names([left, near])).toEqual([['Sill, left', 'hole']]);
    expect(names([left, point('Floor, right', [0, -600, 100])])).toEqual([]);
    expect(names([left, point('Sill, left', [0, -600, 100])])).toEqual([]);
    // The side is where it lies: a car may have been measured with left and right mixed up throughout.
    expect(names([point('A r', [0, 500, 0]), point('A l', [0, -500, 0])])).toEqual([['A r', 'A l']]);
  });

  it('of several that are near only those that are each the nearest to the other', () => {
    const points = [point('a', [0, 600, 0]), point('b', [10, 600, 0]), point('c', [2, -600, 0])];
    expect(names(points)).toEqual([['a', 'c']]);
    expect(why(points)).toEqual([['b', 'none-near']]);
  });

  it('has none where there is none, and says why', () => {
    const points = [
      point('Tunnel', [500, 3, 200]),
      point('Exact', [100, 0, 0]),
      point('Roof, left', [0, 500, 1100]),
      point('Roof, right', [0, -545, 1100]),
      point('Tower, left', [-900, 480, 500]),
      point('Tower, right', [-900, 481, 500]),
      point('Column', [800, 340, 570]),
    ];
    const alone = unpaired(points);
    expect([pairsOfPoints(points).pairs, meanDifference(points)]).toEqual([[], null]);
    expect(alone.map((each) => [each.point.name, each.why])).toEqual([
      ['Tunnel', 'centre'],
      ['Exact', 'centre'],
      ['Roof, left', 'too-far'],
      ['Roof, right', 'too-far'],
      ['Tower, left', 'same-side'],
      ['Tower, right', 'same-side'],
      ['Column', 'none-near'],
    ]);
    expect(aloneInWords(alone[2]!, 'mm')).toContain('Roof, right lies 45.0 mm from its mirror image');
    expect(asymmetryInWords(points, 'mm')).toBeNull();
    expect(unpaired([])).toEqual([]);
  });

  it('sum up in one sentence, in the unit of the job', () => {
    const pair = (name: string, y: number, [forward, outward, up]: Triple) => [
      point(`${name} left`, [0, y, 0]),
      point(`${name} right`, [forward, -y - outward, up]),
    ];
    const wider = [...pair('a', 500, [0, 3, -1]), ...pair('b', 700, [0.2, 1, -2])];
    expect(asymmetryInWords(wider, 'mm')).toBe(
      'On average of 2 pairs the right side is 2.0 mm wider and 1.5 mm lower.',
    );
    expect(asymmetryInWords(wider, 'in')).toContain('0.079 in wider');
    expect(asymmetryInWords(pair('a', 500, [0, 0, 0]), 'mm')).toBe(
      'By the one pair the right side is the mirror image of the left, to 0.5 mm.',
    );
  });
});
