/**
 * Trim ordinates every 22.5 degrees, worked out beforehand with two independent methods ("computed"), counted from the
 * side away from the acute angle. Profiles come at whole degrees from phi = 0, so each row is checked on a straight
 * branch, where phi = 0 is the acute side, and on one that bends away farther on, whose bend turns phi = 0 by 22.5.
 */
import { describe, expect, it } from 'vitest';
import type { TubeEnd } from '../../src/core/solve/types.ts';
import { copedTo, dieOf, fixed, jobOf, member, SQUARE, tubeOf, tubing } from './jobs.ts';
import { along, around, sum, times, type Triple } from './oracles/space.ts';

const DEGREE = Math.PI / 180;
const mirrored = (half: readonly number[]): number[] => [...half, ...half.slice(1, -1).toReversed()];

interface Row {
  readonly run: number;
  readonly branch: number;
  readonly included: number;
  /** In the table's own sense: the root is of R^2 - (e + r sin phi)^2 with phi from the side away from the acute angle. */
  readonly e: number;
  readonly s: readonly number[];
}

const quarter = (values: readonly number[]): number[] => [...mirrored(values), ...mirrored(values)].slice(0, 16);

const TABLE: readonly Row[] = [
  { run: 22.5, branch: 22.5, included: 90, e: 0, s: quarter([22.5, 20.787, 15.91, 8.61, 0]) },
  { run: 22.225, branch: 19.05, included: 90, e: 0, s: quarter([22.225, 20.995, 17.678, 13.572, 11.448]) },
  {
    run: 22.225,
    branch: 19.05,
    included: 60,
    e: 0,
    s: mirrored([14.665, 14.082, 12.635, 11.462, 13.219, 19.88, 28.19, 34.405, 36.662]),
  },
  {
    run: 22.225,
    branch: 19.05,
    included: 45,
    e: 0,
    s: mirrored([12.381, 12.092, 11.53, 11.903, 16.189, 26.484, 38.47, 47.292, 50.481]),
  },
  {
    run: 22.225,
    branch: 19.05,
    included: 60,
    e: 3,
    s: [
      14.43, 12.586, 9.454, 5.424, 3.214, 13.842, 25.008, 32.908, 36.427, 35.342, 30.414, 23.558, 17.752, 15.14, 14.86,
      15.019,
    ],
  },
];

/** Run along z through the origin; the branch leaves in the xz plane, its acute side up. */
function copedEnd(row: Row, turnedBy: number | null): TubeEnd {
  const [sin, cos] = [Math.sin(row.included * DEGREE), Math.cos(row.included * DEGREE)];
  const direction: Triple = [sin, 0, cos];
  const acute: Triple = [-cos, 0, sin];
  // The table's e + r sin phi is r sin phi - e once phi is turned by 180: the program's e has the opposite sign.
  const node = times(-row.e, around(direction, acute, 90));
  const corner = along(node, direction, 700);
  const path = turnedBy === null ? ['foot', 'corner'] : ['foot', 'corner', 'far'];
  const away = around(direction, acute, turnedBy ?? 0);
  const job = jobOf({
    sections: [tubing('run', 2 * row.run, 2), tubing('branch', 2 * row.branch, 2)],
    dies: [dieOf('die', 2 * row.branch, 150)],
    nodes: [
      fixed('low', [0, 0, -500]),
      fixed('high', [0, 0, 500]),
      fixed('foot', node),
      fixed('corner', corner),
      fixed('far', sum(corner, times(600, away))),
    ],
    members: [
      member('run', ['low', 'high'], 'run'),
      member('branch', path, 'branch', {
        ends: [copedTo('run'), SQUARE],
        ...(turnedBy === null ? {} : { die: 'die' }),
      }),
    ],
  });
  return tubeOf(job, 'branch').ends[0];
}

const rowName = (row: Row): string => `R${row.run} r${row.branch}, ${row.included} degrees, e ${row.e}`;

describe('cope against a straight run', () => {
  it.each(TABLE.map((row) => ({ title: rowName(row), row })))(
    '$title: table, straight branch (computed)',
    ({ row }) => {
      const end = copedEnd(row, null);
      for (let i = 0; i < 16; i += 2)
        expect(end.outer[(180 + 22.5 * i) % 360], `ordinate ${i}`).toBeCloseTo(row.s[i]!, 3);
      const cut = end.cuts[0]!;
      expect(cut.includedAngle / DEGREE).toBeCloseTo(row.included, 9);
      expect(cut.offSquare / DEGREE).toBeCloseTo(90 - row.included, 9);
      expect(cut.axisOffset).toBeCloseTo(-row.e, 9);
      expect(cut.sawDiameter).toBeCloseTo(2 * row.run, 9);
    },
  );

  it.each(TABLE.map((row) => ({ title: rowName(row), row })))(
    '$title: table, phi = 0 turned by a bend farther on (computed)',
    ({ row }) => {
      // phi counts from the inside of the bend, which stands 22.5 past the acute side.
      const end = copedEnd(row, 22.5);
      for (let i = 1; i < 16; i += 2)
        expect(end.outer[(180 + 22.5 * i - 22.5) % 360], `ordinate ${i}`).toBeCloseTo(row.s[i]!, 3);
      const clocking = end.cuts[0]!.clocking / DEGREE;
      expect(row.included === 90 ? (clocking + 180) % 180 : clocking).toBeCloseTo(
        row.included === 90 ? 157.5 : -22.5,
        9,
      );
    },
  );

  it.each([30, 45, 60, 90])(
    'equal tubes at %i degrees keep the two lines on which they only touch (computed)',
    (included) => {
      const { outer } = copedEnd({ run: 22.225, branch: 22.225, included, e: 0, s: [] }, null);
      expect(outer[90]).toBeCloseTo(0, 6);
      expect(outer[270]).toBeCloseTo(0, 6);
      expect(outer.some((s) => Number.isNaN(s))).toBe(false);
    },
  );

  it('saw depth passes right through: ODa/sin + ODb/tan (common practice)', () => {
    expect(copedEnd(TABLE[2]!, null).cuts[0]!.sawDepth).toBeCloseTo(38.1 / Math.sqrt(0.75) + 44.45 / Math.sqrt(3), 9);
    expect(copedEnd(TABLE[0]!, null).cuts[0]!.sawDepth).toBeCloseTo(45, 9);
  });
});

describe('plane cut', () => {
  it('of a 45 degree mitre on OD 45 (computed)', () => {
    const job = jobOf({
      sections: [tubing('s', 45, 2.5)],
      nodes: [fixed('a', [0, 0, 0]), fixed('b', [800, 0, 0])],
      members: [
        member('t', ['a', 'b'], 's', {
          ends: [
            { fit: 'plate', normal: [Math.cos(22.5 * DEGREE), 0, -Math.sin(22.5 * DEGREE)], allowance: 0 },
            SQUARE,
          ],
        }),
      ],
    });
    const end = tubeOf(job, 't').ends[0];
    // A straight tube without a cut has phi = 0 at its upper side, where this plane leans into the tube.
    expect(end.reference).toEqual([0, 0, 1].map((value) => expect.closeTo(value, 12)));
    [9.32, 6.59, 0, -6.59, -9.32, -6.59, 0, 6.59].forEach((s, i) =>
      expect(end.outer[45 * i], `ordinate ${i}`).toBeCloseTo(s, 3),
    );
    expect([end.tip, end.throat]).toEqual([expect.closeTo(-9.32, 3), expect.closeTo(9.32, 3)]);
  });
});
