/** Bays and their diagonals, on frames whose diagonals are known without reckoning, and those of the demo. */
import { describe, expect, it } from 'vitest';
import { baysOf } from '../../../src/core/tack/bays.ts';
import { demoText } from '../../command-line.ts';
import { derivedFrom } from '../../exports/jobs.ts';
import { derived } from '../frame.ts';

const SECTION = [{ id: 'main', outerDiameter: 40, wall: 2 }];
const square = [{ fit: 'square' }, { fit: 'square' }];
const tubes = (nodes: Record<string, unknown>, members: Record<string, unknown>[]) =>
  derived({ sections: SECTION, nodes, members: members.map((each) => ({ die: undefined, ...each })) });

/** Two rails along x and bars across them at the given x, all coped; 800 apart, centreline to centreline. */
const ladder = (at: readonly number[]) =>
  tubes(
    {
      a: [0, -400, 0],
      b: [1500, -400, 0],
      c: [0, 400, 0],
      d: [1500, 400, 0],
      ...Object.fromEntries(
        at.flatMap((x, i) => [
          [`l${i}`, [x, -400, 0]],
          [`r${i}`, [x, 400, 0]],
        ]),
      ),
    },
    [
      { id: 'low', path: ['a', 'b'], ends: square },
      { id: 'high', path: ['c', 'd'], ends: square },
      ...at.map((_, i) => ({ id: `bar${i}`, path: [`l${i}`, `r${i}`] })),
    ],
  );

describe('the bays of a ladder', () => {
  it('of two bars is one: 800 by 600, both diagonals 1000, by tape as between centrelines', () => {
    const bays = baysOf(ladder([100, 700]));
    expect(bays).toHaveLength(1);
    const [bay] = bays;
    expect([...bay!.sides].toSorted()).toEqual(['bar0', 'bar1', 'high', 'low']);
    for (const value of [...bay!.tapes, ...bay!.centres]) expect(value).toBeCloseTo(1000, 9);
    expect(bay!.symmetric).toBe(true);
    // Marks stand on the rails, half a tube out of the plane.
    for (const { on, mark, centre } of bay!.corners) {
      expect(['low', 'high']).toContain(on);
      expect(Math.abs(mark[2] - centre[2])).toBeCloseTo(20, 9);
    }
  });
  it('of three bars are two, and not the one round both', () => {
    const bays = baysOf(ladder([100, 700, 1300]));
    expect(
      bays.map(({ sides }) =>
        sides
          .filter((id) => id.startsWith('bar'))
          .toSorted()
          .join(),
      ),
    ).toEqual(expect.arrayContaining(['bar0,bar1', 'bar1,bar2']));
    expect(bays).toHaveLength(2);
  });
  it('out of square has unlike diagonals, and is still a bay', () => {
    const bays = baysOf(
      tubes(
        {
          a: [0, 0, 0],
          b: [600, 0, 0],
          c: [100, 800, 0],
          d: [700, 800, 0],
          e: [-200, 0, 0],
          f: [900, 0, 0],
          g: [-200, 800, 0],
          h: [900, 800, 0],
        },
        [
          { id: 'low', path: ['e', 'f'], ends: square },
          { id: 'high', path: ['g', 'h'], ends: square },
          { id: 'p', path: ['a', 'c'] },
          { id: 'q', path: ['b', 'd'] },
        ],
      ),
    );
    expect(bays).toHaveLength(1);
    const { centres, symmetric } = bays[0]!;
    expect([...centres].toSorted((a, b) => a - b)).toEqual([
      expect.closeTo(Math.hypot(500, 800), 6),
      expect.closeTo(Math.hypot(700, 800), 6),
    ]);
    expect(symmetric).toBe(false);
  });
});

it('three tubes of which one is bent close a bay, the bend its fourth corner; without a bend they do not', () => {
  const nodes = {
    a: [0, 0, 0],
    b: [0, 0, 1000],
    c: [900, 0, 1000],
    d: [900, 0, 0],
    p: [0, 0, 200],
    q: [900, 0, 200],
    top: [0, 0, 1400],
    far: [900, 0, -200],
  };
  const frame = derived({
    nodes,
    members: [
      { id: 'post', path: ['a', 'top'], ends: square },
      { id: 'bent', path: ['b', 'c', 'far'] },
      { id: 'sill', path: ['p', 'q'] },
    ],
  });
  const bays = baysOf(frame);
  expect(bays).toHaveLength(1);
  const [bay] = bays;
  const bend = bay!.corners.findIndex((corner) => corner.bend === 1);
  // The arc of 152.4 is nearest its corner by (√2 − 1) times that, halfway between both legs.
  const inside = 152.4 * (1 - Math.SQRT1_2);
  expect(bay!.corners[bend]!.centre).toEqual([
    expect.closeTo(900 - inside, 6),
    expect.closeTo(0, 9),
    expect.closeTo(1000 - inside, 6),
  ]);
  const diagonals = [Math.hypot(900 - inside, 800 - inside), Math.hypot(900, 800)];
  expect([...bay!.centres].toSorted((a, b) => a - b)).toEqual(
    diagonals.toSorted((a, b) => a - b).map((each) => expect.closeTo(each, 6)),
  );
  expect(
    baysOf(
      tubes({ a: [0, 0, 0], b: [1000, 0, 0], c: [100, 0, 0], d: [800, 0, 0], e: [400, 600, 0] }, [
        { id: 'x', path: ['a', 'b'], ends: square },
        { id: 'y', path: ['c', 'e'] },
        { id: 'z', path: ['d', 'e'] },
      ]),
    ),
  ).toEqual([]);
});

it('the demo has its rear, roof and windscreen, and a bay at either door, in which what crosses is no side', () => {
  const demo = derivedFrom(demoText());
  const bays = baysOf(demo);
  expect(bays.map(({ sides }) => sides.toSorted().join(' ')).toSorted()).toEqual(
    [
      "hoop stay stay' tower-bar",
      "header hoop leg leg'",
      "dash header leg leg'",
      'hoop leg sill',
      "hoop leg' sill'",
    ].toSorted(),
  );
  for (const { sides, tapes, centres, symmetric } of bays) {
    expect(symmetric, sides.join()).toBe(sides.length === 4);
    if (!symmetric) continue;
    expect(tapes[0]).toBeCloseTo(tapes[1], 6);
    expect(centres[0]).toBeCloseTo(centres[1], 6);
  }
  // The doors are mirror images.
  const [left, right] = bays.filter(({ sides }) => sides.length === 3);
  const rising = (tapes: readonly number[]) => tapes.toSorted((a, b) => a - b).map((each) => each.toFixed(6));
  expect(rising(left!.tapes)).toEqual(rising(right!.tapes));
});
