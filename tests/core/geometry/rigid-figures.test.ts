/** A motion by measured figures: against a search that knows nothing of it but what is asked, turned by Euler's angles, begun in several places. */
import { describe, expect, it } from 'vitest';
import { fitToFigures, type PlaceFigure } from '../../../src/core/geometry/rigid-figures.ts';
import { moved, rigidFit, type RigidMotion } from '../../../src/core/geometry/rigid-motion.ts';
import { drawn } from '../../draws.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';

type Triple = readonly [number, number, number];

const HOOP: readonly Triple[] = [
  [0, 610, 0],
  [10, 590, 700],
  [15, 430, 1120],
  [15, -430, 1120],
  [10, -590, 700],
  [0, -610, 0],
];

interface Case {
  readonly places: readonly Triple[];
  readonly goals: readonly Triple[];
  /** End A, end B, and a place between them. */
  readonly spots: readonly Triple[];
}

/** A hoop some millimetres off its drawing, and lying elsewhere. */
function hoop(next: () => number): Case {
  const off = (by: number) => (next() * 2 - 1) * by;
  const goals = HOOP.map((p): Triple => [p[0] + off(40), p[1] + off(40), p[2] + off(40)]);
  const turn = euler([off(3), off(1.4), off(3), off(300), off(300), off(300)]);
  const places = goals.map((p): Triple => turn([p[0] + off(6), p[1] + off(6), p[2] + off(6)]));
  const middle = places[2]!.map((v, k) => (v + places[3]![k]!) / 2) as unknown as Triple;
  return { places, goals, spots: [places[0]!, places[5]!, middle] };
}

/** Turns about x, then y, then z, and a shift. */
function euler([a, b, c, x, y, z]: readonly number[]): (p: Triple) => Triple {
  const [ca, sa, cb, sb, cc, sc] = [a!, b!, c!].flatMap((angle) => [Math.cos(angle), Math.sin(angle)]);
  return ([px, py, pz]) => {
    const [y1, z1] = [ca! * py - sa! * pz, sa! * py + ca! * pz];
    const [x2, z2] = [cb! * px + sb! * z1, -sb! * px + cb! * z1];
    return [cc! * x2 - sc! * y1 + x!, sc! * x2 + cc! * y1 + y!, z2 + z!];
  };
}

const squaresOf = (move: (p: Triple) => Triple, { places, goals }: Case, figures: readonly PlaceFigure[]) => ({
  figures: figures.reduce((sum, { place, axis, value }) => sum + (move(place)[axis] - value) ** 2, 0),
  goals: places.reduce((sum, p, i) => sum + move(p).reduce((s, v, k) => s + (v - goals[i]![k]!) ** 2, 0), 0),
});

/** The least that Powell's way of one line after another finds, from the start and from some turned off it. */
function search(cost: (at: readonly number[]) => number, start: readonly number[], starts: number, next: () => number) {
  let least = Infinity;
  for (let begin = 0; begin < starts; begin++) {
    let at = start.map((v, i) => (begin === 0 ? v : v + (next() * 2 - 1) * (i < 3 ? 0.3 : 100)));
    let here = cost(at);
    const own: readonly (readonly number[])[] = at.map((_, i) => at.map((__, k) => (i === k ? (i < 3 ? 1e-3 : 1) : 0)));
    let ways = own;
    for (let round = 0; round < 400; round++) {
      const [from, before] = [at, here];
      for (const way of ways) {
        let step = 1;
        for (let tries = 0; tries < 60 && Math.abs(step) > 1e-9; tries++) {
          const there = at.map((v, i) => v + step * way[i]!);
          const value = cost(there);
          if (value < here) [at, here, step] = [there, value, step * 2];
          else step *= -0.4;
        }
      }
      const run = at.map((v, i) => v - from[i]!);
      if (Math.hypot(...run) > 0) ways = [...ways.slice(1), run];
      if (round % 12 === 11) ways = own;
      if (before - here < 1e-12 * here && round % 12 === 0) break;
    }
    least = Math.min(least, here);
  }
  return least;
}

const STIFF = 1e5;

/**
 * What its springs come to is no more than what the search finds: whose figures, of a finite stiffness, give way by what the goals pull on them.
 * 15 mm off six places pull 180, and so gain 180² / (4 STIFF) = 0.08 each.
 */
function holdsAgainstSearch(one: Case, figures: readonly PlaceFigure[], next: () => number): RigidMotion {
  const motion = fitToFigures(one.places, one.goals, figures);
  const mine = squaresOf((p) => moved(motion, p), one, figures);
  const start = anglesOf(rigidFit(one.places, one.goals));
  const costOf = (at: readonly number[]) => {
    const found = squaresOf(euler(at), one, figures);
    return STIFF * found.figures + found.goals;
  };
  const least = search(costOf, start, drawn(2, 3), next);
  expect(STIFF * mine.figures + mine.goals).toBeLessThan(least + 1);
  return motion;
}

/** Euler's angles and shift of a motion. */
function anglesOf(motion: RigidMotion): readonly number[] {
  const [x, y, z] = motion.rows;
  const shift = moved(motion, [0, 0, 0]);
  return [Math.atan2(z[1], z[2]), Math.asin(-z[0]), Math.atan2(y[0], x[0]), ...shift];
}

const missOf = (motion: RigidMotion, { place, axis, value }: PlaceFigure) => moved(motion, place)[axis] - value;
const AXES = [0, 1, 2] as const;

/** What that place has at the best fit and some millimetres more, as tapes are. */
const figureAt = ({ places, goals }: Case, place: Triple, axis: 0 | 1 | 2, more: number): PlaceFigure => ({
  place,
  axis,
  value: moved(rigidFit(places, goals), place)[axis] + more,
});

describe('a motion by figures', () => {
  it('meets up to six that can be met to a millionth of a millimetre, and lies best with what is left free', () => {
    let tried = 0;
    for (let seed = 1; seed <= drawn(5, 200); seed++) {
      const next = uniformFrom(seed);
      const one = hoop(next);
      // Sets of which any values can be met: A's place, the line to B's, the lean.
      const sets: readonly (readonly [number, readonly (0 | 1 | 2)[]])[][] = [
        [[0, [2]]],
        [[2, [0]]],
        [[0, [0, 1, 2]]],
        [
          [0, [0, 2]],
          [1, [0, 2]],
        ],
        [
          [0, [0, 1, 2]],
          [1, [0, 2]],
          [2, [0]],
        ],
      ];
      const figures = sets[seed % sets.length]!.flatMap(([spot, axes]) =>
        axes.map((axis) => figureAt(one, one.spots[spot]!, axis, (next() * 2 - 1) * 15)),
      );
      // The search is what is slow: every set is met, a few are held against it.
      const motion =
        seed <= drawn(1, 200) ? holdsAgainstSearch(one, figures, next) : fitToFigures(one.places, one.goals, figures);
      for (const figure of figures) expect(Math.abs(missOf(motion, figure))).toBeLessThan(1e-6);
      tried += figures.length;
    }
    expect(tried).toBeGreaterThan(5);
  });

  it.each([8, 1000])('comes to the least squares of figures that cannot all be met, off by up to %d mm', (by) => {
    for (let seed = 1; seed <= drawn(15, 400); seed++) {
      const next = uniformFrom(1000 + seed);
      const one = hoop(next);
      const figures = one.spots.flatMap((spot) => AXES.map((axis) => figureAt(one, spot, axis, (next() * 2 - 1) * by)));
      const motion = fitToFigures(one.places, one.goals, figures);
      const mine = squaresOf((p) => moved(motion, p), one, figures).figures;
      // Nine figures of three places are a fit of their own.
      const values = one.spots.map((_, i) => figures.slice(3 * i, 3 * i + 3).map(({ value }) => value) as never);
      const best = squaresOf((p) => moved(rigidFit(one.spots, values), p), one, figures).figures;
      expect(mine).toBeGreaterThan(0.01);
      expect(Math.sqrt(mine)).toBeCloseTo(Math.sqrt(best), 6);
    }
  });

  it('lays two ends that are measured 4 apart too far 2 out at each, and turns about their line as the rest lies best', () => {
    for (let seed = 1; seed <= drawn(1, 100); seed++) {
      const next = uniformFrom(2000 + seed);
      const one = hoop(next);
      const [a, b] = one.spots as [Triple, Triple];
      const fit = rigidFit(one.places, one.goals);
      const [from, to] = [moved(fit, a), moved(fit, b)];
      const far = Math.hypot(...from.map((v, k) => to[k]! - v));
      const figures = AXES.flatMap((axis) => [
        { place: a, axis, value: from[axis] },
        { place: b, axis, value: from[axis] + ((to[axis] - from[axis]) * (far + 4)) / far },
      ]);
      const motion = holdsAgainstSearch(one, figures, next);
      for (const spot of [a, b]) {
        const misses = figures.filter(({ place }) => place === spot).map((figure) => missOf(motion, figure));
        expect(Math.hypot(...misses)).toBeCloseTo(2, 6);
      }
    }
  });

  it('leans a hoop that is measured less high than it is, and stands one upright that is measured higher', () => {
    const spots: readonly Triple[] = [
      [0, 610, 0],
      [0, -610, 0],
    ];
    const flat = HOOP.map((p): Triple => [0, p[1], p[2]]);
    const one: Case = { places: flat, goals: flat, spots };
    const top: Triple = [0, 0, 1120];
    const feet: readonly PlaceFigure[] = spots.map((place) => ({ place, axis: 2, value: 0 }));
    const low = [...feet, { place: top, axis: 2, value: 1119 } as const];
    const leaning = fitToFigures(flat, flat, low);
    for (const figure of low) expect(Math.abs(missOf(leaning, figure))).toBeLessThan(1e-6);
    const high = [...feet, { place: top, axis: 2, value: 1123 } as const];
    const upright = fitToFigures(flat, flat, high);
    // 3 too high: a at each foot and 3 - a at the top, 2 a² + (3 - a)² is least where a = 1.
    expect(high.map((figure) => Math.round(1e5 * missOf(upright, figure)) / 1e5)).toEqual([1, 1, -2]);
    expect(moved(upright, top)[0] - moved(upright, spots[0]!)[0]).toBeCloseTo(0, 3);
    expect(squaresOf((p) => moved(upright, p), one, high).figures).toBeCloseTo(6, 9);
  });

  it('is the best fit where nothing is measured, and of a straight tube leaves the turn about itself alone', () => {
    const one = hoop(uniformFrom(7));
    const plain = rigidFit(one.places, one.goals);
    const none = fitToFigures(one.places, one.goals, []);
    one.places.forEach((p) => moved(none, p).forEach((v, k) => expect(v).toBeCloseTo(moved(plain, p)[k]!, 7)));
    const straight: readonly Triple[] = [
      [0, 0, 0],
      [900, 0, 0],
    ];
    const goals: readonly Triple[] = [
      [0, 0, 0],
      [880, 60, 20],
    ];
    const figures: readonly PlaceFigure[] = [{ place: [900, 0, 0], axis: 2, value: 50 }];
    const motion = fitToFigures(straight, goals, figures);
    expect(Math.abs(missOf(motion, figures[0]!))).toBeLessThan(1e-6);
    expect(motion.rows[1][1]).toBeGreaterThan(0.99);
  });
});
