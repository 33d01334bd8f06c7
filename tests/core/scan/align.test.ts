/** Scans laid by pairs, against a motion that is known and a fit found by another way: the polar factor of the product of both, by Newton's iteration. */
import { describe, expect, it } from 'vitest';
import { distance, type Vec3 } from '../../../src/core/geometry/vector.ts';
import type { ScanUnit, ScanUp } from '../../../src/core/job/kinds/scan.ts';
import { align, residualsOf, sizeHint, type GivenPair } from '../../../src/core/scan/align.ts';
import { inCar, inFile, laidDown, MM_PER, placingOf, quarterTurned, upright } from '../../../src/core/scan/place.ts';
import { guessed } from '../../../src/core/scan/guess.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';
import { ball, dataOf } from './shapes.ts';

const UNITS: readonly ScanUnit[] = ['mm', 'cm', 'm', 'in', 'ft'];
const UPS: readonly ScanUp[] = ['x', 'y', 'z', '-x', '-y', '-z'];

const placeIn = (draw: Draw, size: number): Vec3 => [
  draw.between(-size, size),
  draw.between(-size, size),
  draw.between(-size, size),
];

/** Of the normal distribution, from two of the row (Box and Muller 1958). */
const noise = (draw: Draw, deviation: number): number =>
  deviation * Math.sqrt(-2 * Math.log(1 - draw.between(0, 1))) * Math.cos(2 * Math.PI * draw.between(0, 1));

function knownMotion(draw: Draw) {
  const unit = draw.oneOf(UNITS);
  const quarter = draw.chance(0.2);
  const angle = (): number => (quarter ? 90 * Math.floor(draw.between(-2, 3)) : draw.between(-180, 180));
  return {
    unit,
    up: draw.oneOf(UPS),
    placement: { rotation: [angle(), angle(), angle()] as const, shift: placeIn(draw, 3000) },
  };
}

const pairsOf = (draw: Draw, count: number, how: ReturnType<typeof knownMotion>, deviation: number): GivenPair[] =>
  Array.from({ length: count }, () => {
    const at = placeIn(draw, 2000 / MM_PER[how.unit]);
    const goal = inCar(placingOf(how), at).map((part) => part + noise(draw, deviation)) as unknown as Vec3;
    return { at, goal };
  });

type Rows = number[][];

const cofactor = (m: Rows, i: number, k: number): number => {
  const [a, b] = [(i + 1) % 3, (i + 2) % 3];
  const [c, d] = [(k + 1) % 3, (k + 2) % 3];
  return m[a]![c]! * m[b]![d]! - m[a]![d]! * m[b]![c]!;
};

const determinant = (m: Rows): number => m[0]!.reduce((sum, each, k) => sum + each * cofactor(m, 0, k), 0);

const inverseTransposed = (m: Rows): Rows => m.map((row, i) => row.map((_, k) => cofactor(m, i, k) / determinant(m)));

/** Higham, Computing the Polar Decomposition, 1986: the turn nearest to the sum of the products, where no mirror image is nearer. */
function turnOf(
  places: readonly Vec3[],
  goals: readonly Vec3[],
): { turn: Rows; middles: readonly [number[], number[]] } {
  const middle = (all: readonly Vec3[]) =>
    [0, 1, 2].map((k) => all.reduce((sum, each) => sum + each[k]!, 0) / all.length);
  const [from, to] = [middle(places), middle(goals)];
  let turn: Rows = [0, 1, 2].map((i) =>
    [0, 1, 2].map((k) => places.reduce((sum, place, n) => sum + (goals[n]![i]! - to[i]!) * (place[k]! - from[k]!), 0)),
  );
  for (let step = 0; step < 60; step++) {
    const other = inverseTransposed(turn);
    turn = turn.map((row, i) => row.map((each, k) => (each + other[i]![k]!) / 2));
  }
  return { turn, middles: [from, to] };
}

describe('aligning', () => {
  it('finds a known motion again, in every unit and with every axis up', () => {
    const draw = drawFrom(5);
    for (let i = 0; i < drawn(200, 5000); i++) {
      const how = knownMotion(draw);
      const pairs = pairsOf(draw, 3 + (i % 6), how, 0);
      const laid = align(how, pairs);
      if (!laid.ok) continue; // three drawn places in a line
      const [was, is] = [placingOf(how), placingOf({ ...how, placement: laid.placement })];
      for (let k = 0; k < 5; k++) {
        const at = placeIn(draw, 2000 / MM_PER[how.unit]);
        expect(distance(inCar(is, at), inCar(was, at))).toBeLessThan(1e-6);
        expect(distance(inFile(is, inCar(is, at)), at)).toBeLessThan(1e-9 * 4000);
      }
    }
  });

  it('of places with noise is the fit that another way finds, and leaves less than the true motion does', () => {
    const draw = drawFrom(6);
    const many = drawn(150, 3000);
    let turns = 0;
    for (let i = 0; i < many; i++) {
      const how = knownMotion(draw);
      const pairs = pairsOf(draw, 4 + (i % 8), how, 4);
      const laid = align(how, pairs);
      expect(laid.ok).toBe(true);
      if (!laid.ok) continue;
      const places = pairs.map(({ at }) => upright(how, at));
      const { turn, middles } = turnOf(
        places,
        pairs.map(({ goal }) => goal),
      );
      const placing = placingOf({ ...how, placement: laid.placement });
      // Of places that lie nearly in one plane a mirror image can come nearer than any turn: there that way finds it.
      const isTurn = determinant(turn) > 0;
      turns += isTurn ? 1 : 0;
      for (const [n, place] of isTurn ? places.entries() : []) {
        const wanted = turn.map(
          (row, k) => middles[1][k]! + row.reduce((sum, each, m) => sum + each * (place[m]! - middles[0][m]!), 0),
        );
        expect(distance(inCar(placing, pairs[n]!.at), wanted as unknown as Vec3)).toBeLessThan(1e-6);
      }
      const [best, truth] = [residualsOf({ ...how, placement: laid.placement }, pairs), residualsOf(how, pairs)];
      expect(best.rms).toBeLessThanOrEqual(truth.rms + 1e-9);
    }
    expect(turns).toBeGreaterThan(0.98 * many);
  });

  it('wants three pairs, and not in a line', () => {
    const how = { unit: 'm', up: 'z' } as const;
    const along = (t: number): GivenPair => ({ at: [t, 2 * t, 0], goal: [1000 * t, 0, 2000 * t] });
    expect(align(how, [along(0), along(1)])).toEqual({ ok: false, why: 'few' });
    expect(align(how, [along(0), along(1), along(2), along(3)])).toEqual({ ok: false, why: 'in-line' });
    const beside: GivenPair = { at: [0, 0, 1], goal: [0, 1000, 0] };
    expect(align(how, [along(0), along(1), beside]).ok).toBe(true);
  });

  it('names the pair that was picked wrong, and what is left without it', () => {
    const draw = drawFrom(9);
    const how = knownMotion(draw);
    const pairs = pairsOf(draw, 7, how, 1);
    const wrong = pairs.with(4, {
      ...pairs[4]!,
      goal: [pairs[4]!.goal[0] + 80, ...pairs[4]!.goal.slice(1)] as unknown as Vec3,
    });
    const laid = align(how, wrong);
    if (!laid.ok) throw new Error(laid.why);
    const { worst, rms, withoutWorst, distances } = residualsOf({ ...how, placement: laid.placement }, wrong);
    expect(worst).toBe(4);
    expect(distances).toHaveLength(7);
    expect(rms).toBeGreaterThan(10);
    expect(withoutWorst).toBeLessThan(3);
  });
});

describe('a scan of another size than the tape says', () => {
  const places: readonly Vec3[] = [
    [0, 0, 0],
    [1000, 0, 0],
    [0, 700, 0],
    [0, 0, 1300],
  ];
  const pairs = (stretch: number): GivenPair[] =>
    places.map((place) => ({ at: [place[1] * stretch, place[2] * stretch, place[0] * stretch], goal: place }));

  it('is told by the unit that would fit', () => {
    expect(sizeHint({ unit: 'in', up: 'z' }, pairs(1))).toEqual({
      ratio: expect.closeTo(25.4, 9) as number,
      unit: 'mm',
    });
    expect(sizeHint({ unit: 'mm', up: 'y' }, pairs(0.001))).toEqual({
      ratio: expect.closeTo(0.001, 9) as number,
      unit: 'm',
    });
    expect(sizeHint({ unit: 'mm', up: 'z' }, pairs(1.01))).toBeNull();
    expect(sizeHint({ unit: 'mm', up: 'z' }, pairs(1.2))).toEqual({
      ratio: expect.closeTo(1.2, 9) as number,
      unit: null,
    });
    expect(sizeHint({ unit: 'mm', up: 'z' }, pairs(1).slice(1, 2))).toBeNull();
  });
});

describe('put down and turned', () => {
  const data = dataOf(ball(1.5, [10, 2, -7], 24, 12));

  it('stands on the floor with its middle over the datum, whichever way was up', () => {
    for (const up of UPS) {
      const how = { unit: 'm', up } as const;
      const placing = placingOf({ ...how, placement: laidDown(data, how) });
      const all = Array.from({ length: data.positions.length / 3 }, (_, i) =>
        inCar(placing, [...data.positions.subarray(3 * i, 3 * i + 3)] as unknown as Vec3),
      );
      expect(Math.min(...all.map(([, , z]) => z))).toBeCloseTo(0, 6);
      for (const axis of [0, 1] as const) {
        expect(Math.max(...all.map((place) => place[axis])) + Math.min(...all.map((place) => place[axis]))).toBeCloseTo(
          0,
          6,
        );
      }
    }
  });

  it('four quarters are a whole turn, and one brings what points right to the front', () => {
    const first = { rotation: [10, 20, 30] as const, shift: [1, -2, 3] as Vec3 };
    const how = { unit: 'mm', up: 'z' } as const;
    const right = inCar(placingOf({ ...how, placement: first }), [5, 6, 7]);
    const once = quarterTurned(first);
    const [x, y, z] = inCar(placingOf({ ...how, placement: once }), [5, 6, 7]);
    expect([x, y, z]).toEqual([-right[1], right[0], right[2]].map((part) => expect.closeTo(part, 9) as number));
    const round = [1, 2, 3].reduce((at) => quarterTurned(at), once);
    expect(distance(inCar(placingOf({ ...how, placement: round }), [5, 6, 7]), right)).toBeLessThan(1e-9);
  });

  it('unit and axis are guessed from its size', () => {
    const box = (x: number, y: number, z: number) =>
      ({ kind: 'points', positions: Float64Array.of(0, 0, 0, x, y, z), triangles: new Uint32Array() }) as const;
    expect(guessed('car.ply', box(4.2, 1.8, 1.3))).toEqual({ unit: 'm', up: 'z' });
    expect(guessed('car.ply', box(4200, 1300, 1800))).toEqual({ unit: 'mm', up: 'y' });
    expect(guessed('car.stl', box(165, 70, 51))).toEqual({ unit: 'in', up: 'z' });
    expect(guessed('car.glb', box(1.8, 4.2, 1.3))).toEqual({ unit: 'm', up: 'y' });
  });
});
