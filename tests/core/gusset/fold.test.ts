/** The bent gusset: its fold and its faces against the tubes, its flat sheet against what it is bent to. */
import { describe, expect, it } from 'vitest';
import { inCar } from '../../../src/core/gusset/corner.ts';
import { areaWithin, endOf, startOf } from '../../../src/core/gusset/edges.ts';
import { offFold, type Folded } from '../../../src/core/gusset/fold.ts';
import type { MadeGusset } from '../../../src/core/gusset/gussets.ts';
import { cross, distance, length, normalize, scale, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { drawn } from '../../draws.ts';
import { bendJob, jointJob, madeOf, R, whyNot } from './gusset-jobs.ts';

const BENT = { kind: 'bent', thickness: 3, width: 38, radius: 4 } as const;

const toLine = (at: Vec3, from: Vec3, way: Vec3): number => length(cross(subtract(at, from), way)) / length(way);

function foldOf({ sheet }: MadeGusset): Folded {
  if (sheet.shape.kind !== 'bent') throw new Error('flat');
  return sheet.shape.fold;
}

/** Both ends of the middle of the sheet at each station, in the car. */
const endsOf = (made: MadeGusset): readonly (readonly [Vec3, Vec3])[] => {
  const fold = foldOf(made);
  const at = (u: number, p: number, z: number): Vec3 => inCar(made.corner, offFold(fold, [u, p]), z);
  return fold.stations.map(({ ends: [a, b], p, z }) => [at(a, p, z), at(b, p, z)] as const);
};

describe('by hand', () => {
  // Right angle, equal tubes of 44.45. The faces' middles lie (38 - 3) / 2 = 17.5 over and under the axes, where the tubes are
  // sqrt(22.225^2 - 17.5^2) wide either side: the corners.
  const made = madeOf(jointJob({ gusset: BENT }));
  const fold = foldOf(made);
  const half = Math.sqrt(R ** 2 - 17.5 ** 2);

  it('the faces meet the tubes where a plane at their height does', () => {
    for (const face of fold.faces) {
      expect(face.corner[0]).toBeCloseTo(half, 9);
      expect(face.corner[1]).toBeCloseTo(half, 9);
    }
  });

  it('the fold is as wide as typed, and its strip lies in the free edge', () => {
    const [z, p] = [fold.stations.map((each) => each.z), fold.stations.map((each) => each.p)];
    expect(Math.max(...z)).toBeCloseTo(17.5, 9);
    expect(Math.min(...z)).toBeCloseTo(-17.5, 9);
    // Half the thickness in from the outside; the faces begin a radius and a thickness in.
    expect(Math.min(...p)).toBeCloseTo(1.5, 9);
    expect([p[0], p.at(-1)]).toEqual([expect.closeTo(7, 9), expect.closeTo(7, 9)]);
  });

  // Flat: strip 38 - 2 x (4 + 3) = 24; each right angle pi/2 x (4 + k 3), k = (0.65 + 0.5 log10(4/3)) / 2 = 0.3562 by DIN 6935;
  // each face from the fold to its corner: the corner lies 100 / sqrt 2 from the free edge, less 7.
  it('the flat sheet is strip, two right angles and two faces high', () => {
    const k = (0.65 + 0.5 * Math.log10(4 / 3)) / 2;
    const high = 12 + (Math.PI / 2) * (4 + 3 * k) + 100 / Math.SQRT2 - 7;
    const ys = made.sheet.edges.map((edge) => startOf(edge)[1]);
    expect(Math.max(...ys)).toBeCloseTo(high, 9);
    expect(Math.min(...ys)).toBeCloseTo(-high, 9);
    expect(made.sheet.bends.map(({ turns }) => turns)).toEqual([90, 90]);
  });

  it('a typed K moves the faces out by pi/2 of its share of the thickness', () => {
    const high = ({ sheet }: MadeGusset): number => Math.max(...sheet.edges.map((edge) => startOf(edge)[1]));
    const [a, b] = [0.3, 0.5].map((kFactor) => high(madeOf(jointJob({ gusset: { ...BENT, kFactor } }))));
    expect(b! - a!).toBeCloseTo((Math.PI / 2) * 0.2 * 3, 9);
  });

  it('without a strip it is one half round', () => {
    const { sheet } = madeOf(jointJob({ gusset: { ...BENT, width: 14 } }));
    expect(sheet.bends.map(({ turns, middle }) => [turns, middle[0][1]])).toEqual([[180, 0]]);
  });
});

it('random corners: the fold ends on the tubes all along, laid flat it keeps its lengths, upper and lower half are alike', () => {
  const draw = drawFrom(43);
  for (let i = 0; i < drawn(15, 400); i++) {
    const angle = draw.between(0.6, 2.4);
    const turn = draw.between(0, 6.28);
    const way: Vec3 = [Math.cos(angle), Math.sin(angle) * Math.cos(turn), Math.sin(angle) * Math.sin(turn)];
    const diameter = draw.between(38, 50);
    const legs = [draw.between(80, 160), draw.between(80, 160)] as const;
    const gusset = { ...BENT, width: draw.between(15, 37), radius: draw.between(2, 4) };
    const made = madeOf(jointJob({ to: scale(way, 700), diameter, legs, gusset }));
    const fold = foldOf(made);
    for (const [one, two] of endsOf(made)) {
      expect(Math.abs(toLine(one, [0, 0, 0], [1, 0, 0]) - R)).toBeLessThan(1e-9);
      expect(Math.abs(toLine(two, [0, 0, 0], way) - diameter / 2)).toBeLessThan(1e-9);
    }
    // From leg to leg as bent and as laid flat.
    const flat = fold.stations.map(({ ends: [a, b] }) => b - a);
    endsOf(made).forEach(([one, two], k) => expect(distance(one, two)).toBeCloseTo(flat[k]!, 8));
    const { edges } = made.sheet;
    edges.forEach((edge, k) => {
      const [end, next] = [endOf(edge), startOf(edges[(k + 1) % edges.length]!)];
      expect(Math.hypot(end[0] - next[0], end[1] - next[1])).toBeLessThan(1e-9);
    });
    const key = ([x, y]: readonly [number, number]): string => `${x.toFixed(6)} ${Math.abs(y).toFixed(6)}`;
    const places = edges.map(startOf);
    const [above, below] = [places.filter(([, y]) => y > 1e-9), places.filter(([, y]) => y < -1e-9)];
    expect(new Set(above.map(key))).toEqual(new Set(below.map(key)));
    // Area: two triangles on the faces and between them the strips of the fold, trapezoid by trapezoid.
    const triangle =
      (fold.stations[0]!.ends[1] - fold.stations[0]!.ends[0]) * (heightOf(made) - fold.stations.at(-1)!.flat);
    const strips = fold.stations.slice(1).reduce((sum, { flat: y }, k) => {
      const before = fold.stations[k]!;
      return sum + ((flat[k]! + flat[k + 1]!) / 2) * (y - before.flat);
    }, 0);
    expect(areaWithin(edges)).toBeCloseTo(triangle + strips, 6);
  }
});

const heightOf = ({ sheet }: MadeGusset): number => Math.max(...sheet.edges.map((edge) => startOf(edge)[1]));

it('its chords leave the curve on the tube by no more than 0.02 mm', () => {
  const made = madeOf(jointJob({ gusset: { ...BENT, width: 44.4 } }));
  const ends = endsOf(made).map(([one]) => one);
  for (const [i, place] of ends.slice(1).entries()) {
    const half = scale([place[0] + ends[i]![0], place[1] + ends[i]![1], place[2] + ends[i]![2]], 0.5);
    expect(R - toLine(half, [0, 0, 0], [1, 0, 0])).toBeLessThan(0.02);
  }
});

it('across a bend the faces keep the arc, and it stands where the straights end', () => {
  const made = madeOf(bendJob({ gusset: BENT, legs: [220, 200] }));
  const arcs = made.sheet.edges.filter((edge) => edge.kind === 'arc');
  expect(arcs).toHaveLength(2);
  for (const arc of arcs) {
    expect(arc.radius).toBeCloseTo(152.4 - Math.sqrt(R ** 2 - 17.5 ** 2), 9);
    expect(arc.to - arc.from).toBeCloseTo(Math.PI / 2, 9);
  }
  expect(made.sheet.area).toBeGreaterThan(0);
  expect(normalize(made.corner.normal)).toEqual([0, -1, 0].map((part) => expect.closeTo(part, 12)));
});

describe('what cannot be bent says why', () => {
  it.each([
    [
      'wider than the thinner tube',
      jointJob({ diameter: 30, gusset: BENT }),
      { why: 'wide', bar: 'branch', width: 38, widest: 30 },
    ],
    ['no face left', jointJob({ legs: [8, 8], gusset: BENT }), { why: 'no-face', depth: 7 }],
    ['a leg that ends in the bend', bendJob({ legs: [140, 220], gusset: BENT }), { why: 'leg-in-bend', least: null }],
    [
      'a leg past the run',
      jointJob({ runHalf: 130, legs: [130, 90], gusset: BENT }),
      { why: 'leg-long', bar: 'run', longest: null },
    ],
  ] as const)('%s', (_, frame, why) => {
    expect(whyNot(frame)).toMatchObject(why);
  });
});
