import fc from 'fast-check';
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import {
  bendSlips,
  endSpreads,
  endToLeaveLong,
  SLIP_ANGLE,
  SLIP_MARK,
  spreadsAt,
  type Spread,
  type Tolerances,
} from '../../../src/core/marks/slips.ts';
import { placeAt } from '../../../src/core/geometry/path.ts';
import { symmetricEigen, type Triple } from '../../../src/core/numerics/symmetric-eigen.ts';
import { rollOut, type RollStart } from '../../../src/core/solve/roll-out.ts';
import type { SolvedTube } from '../../../src/core/solve/types.ts';
import { derivedOrSkipped, fixed, plainFrame } from '../../laws/frames.ts';
import { derived, tube } from '../frame.ts';
import { across, endFrames, type EndFrame } from '../run/bent.ts';
import { drawn } from '../../draws.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';

const bar = (...places: readonly Triple[]): SolvedTube => {
  const nodes = Object.fromEntries(places.map((place, i) => [`n${i}`, place]));
  return tube(derived({ nodes, members: [{ id: 'bar', path: Object.keys(nodes) }] }), 'bar');
};

/** CLR 152.4, so that the second tangent is 1000 from the end. */
const METRE_LEG = bar([0, 0, 0], [0, 0, 500], [1152.4, 0, 500]);
const BENT = bar([0, 0, 0], [0, 0, 700], [600, 200, 900], [1300, -300, 800], [1500, -900, 300]);

/** Two bends on either side of its middle, so that what moves there moves in all directions, whichever end is held. */
const WOVEN = bar([0, 0, 0], [0, 0, 700], [600, 200, 900], [1300, -300, 800], [1500, -900, 300], [2100, -700, -100]);

/** What went wrong at one bend. */
interface Error {
  readonly angle: number;
  readonly rotation: number;
  readonly mark: number;
}
const NONE: Error = { angle: 0, rotation: 0, mark: 0 };

/** The tube as bent with these errors: marks from end A, the developed length kept. End A is where it was drawn. */
function bentWrong({ corners, bends, developedLength, ends }: SolvedTube, errors: readonly Error[]): RollStart {
  let here = 0;
  const rolled = bends.map(({ start, angle, rotation, radius }, i) => {
    const wrong = errors[i]!;
    const straight = start + wrong.mark - here;
    here = start + wrong.mark + radius * (angle + wrong.angle);
    return { straight, rotation: rotation + wrong.rotation, angle: angle + wrong.angle, radius };
  });
  const from = { position: corners[0]!, direction: ends[0].direction, normal: bends[0]!.normal };
  return rollOut(from, rolled, developedLength - here).at(-1)!;
}

/** Where the steel that is `at` from end A on the blank comes to lie, in the same tube. */
function steelAt({ corners, bends, ends }: SolvedTube, errors: readonly Error[], at: number): Triple {
  let here = 0;
  const rolled = [];
  for (const [i, { start, angle, rotation, radius }] of bends.entries()) {
    const wrong = errors[i]!;
    const begins = start + wrong.mark;
    if (at <= begins) break;
    const turns = Math.min(angle + wrong.angle, (at - begins) / radius);
    rolled.push({ straight: begins - here, rotation: rotation + wrong.rotation, angle: turns, radius });
    here = begins + radius * turns;
  }
  const from = { position: corners[0]!, direction: ends[0].direction, normal: bends[0]!.normal };
  return rollOut(from, rolled, at - here).at(-1)!.position;
}

/** What is moved by an error of `size` in one bend alone, by differences to either side, per unit. */
function difference(tube: SolvedTube, bend: number, kind: keyof Error): readonly number[] {
  const size = kind === 'mark' ? 1e-2 : 1e-4;
  const at = (by: number) =>
    bentWrong(
      tube,
      tube.bends.map((_, i) => (i === bend ? { ...NONE, [kind]: by } : NONE)),
    ).position;
  const [more, fewer] = [at(size), at(-size)];
  return more.map((value, axis) => (value - fewer[axis]!) / (2 * size));
}

describe('what a slip does to end B', () => {
  it('1 degree at the bend moves the end of a 1 m leg by 17.5 mm (common practice), square to the leg', () => {
    const [slips] = bendSlips(METRE_LEG, 2);
    expect(slips!.angle.distance).toBeCloseTo(17.5, 1);
    expect(slips!.angle.distance).toBeCloseTo((1000 * Math.PI) / 180, 9);
    // The tube rises, then turns forward: bent further, its end comes down.
    expect(slips!.angle.move[2]).toBeCloseTo(-17.4533, 4);
    expect(Math.abs(slips!.angle.move[0])).toBeLessThan(1e-9);
    expect(slips!.rotation).toBeNull();
  });
  it('2 mm of mark before a right angle: 2 up the first leg, 2 back along the second, 2.83 mm in all', () => {
    const [{ mark }] = bendSlips(METRE_LEG, 2) as [ReturnType<typeof bendSlips>[number]];
    [-2, 0, 2].forEach((each, axis) => expect(mark.move[axis]).toBeCloseTo(each, 12));
    expect(mark.distance).toBeCloseTo(2.828, 3);
  });
  it('1 degree of rotation swings a leg square to the axis by its full reach', () => {
    const zed = bar([0, 0, 0], [0, 0, 500], [800, 0, 500], [800, 1000, 500]);
    const [, second] = bendSlips(zed, 2);
    // About the straight along x, 1000 mm off it: up, since y turns to z right-hand about x.
    expect(second!.rotation!.distance).toBeCloseTo((1000 * Math.PI) / 180, 9);
    expect(second!.rotation!.move[2]).toBeCloseTo(17.4533, 4);
  });
  it('is what differences of the tube rolled out wrongly give, to a millionth', () => {
    let compared = 0;
    fc.assert(
      fc.property(plainFrame, (job) => {
        for (const bent of derivedOrSkipped(job).tubes) {
          bendSlips(bent, 2).forEach((slips, i) => {
            const kinds = ['angle', 'rotation', 'mark'] as const;
            for (const kind of kinds) {
              const slip = slips[kind];
              if (slip === null) continue;
              const unit = kind === 'mark' ? SLIP_MARK.mm : SLIP_ANGLE;
              const expected = difference(bent, i, kind);
              const off = Math.hypot(...expected.map((each, axis) => each - slip.move[axis]! / unit));
              expect(off).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.hypot(...expected)));
              expect(slip.distance).toBeCloseTo(Math.hypot(...slip.move), 12);
              compared += 1;
            }
          });
        }
      }),
      fixed(drawn(20, 150)),
    );
    expect(compared).toBeGreaterThan(drawn(65, 500));
  });
});

const TOLERANCES: Tolerances = { angle: 0.004, rotation: 0.008, mark: 0.8 };

describe('the total for a shop', () => {
  it('the 95 % ellipsoid is that of 10 000 tubes bent with seeded errors, at either end', () => {
    const samples = sampleEnds(BENT, TOLERANCES, 10_000);
    const there = endFrames(BENT);
    const spreads = endSpreads(BENT, TOLERANCES);
    (['A', 'B'] as const).forEach((end, i) => {
      const spread = spreads[i]!;
      const home = across(there[end === 'A' ? 'B' : 'A'], there[end]);
      const moves = samples[end].map((place) => less(place, home));
      const axes = basisOf(there[end === 'A' ? 'B' : 'A']);
      const cloud = symmetricEigen(covarianceOf(moves));
      spread.axes.forEach(({ length, direction }, k) => {
        const theirs = Math.sqrt(jstat.chisquare.inv(0.95, 3) * cloud[k]!.value);
        expect(Math.abs(length / theirs - 1), `axis ${k} of end ${end}`).toBeLessThan(0.05);
        // Along the direction that is given, seen from the end that is held, the cloud is as wide as is given.
        const seen = axes.map((axis) => inner(axis, direction)) as unknown as Triple;
        const wide = Math.sqrt(mean(moves.map((move) => inner(move, seen) ** 2)));
        expect(Math.abs((wide * Math.sqrt(jstat.chisquare.inv(0.95, 3))) / length - 1)).toBeLessThan(0.05);
      });
      const inside = moves.filter((move) => isInside(spread, axes, move)).length / moves.length;
      // Standard error sqrt(.95 x .05 / 10 000) = 0.22 %: four of them.
      expect(Math.abs(inside - 0.95)).toBeLessThan(0.009);
      const own = axes.map((axis) => inner(axis, there[end].direction)) as unknown as Triple;
      const near = moves.filter((move) => Math.abs(inner(move, own)) <= spread.along).length / moves.length;
      expect(Math.abs(near - 0.95)).toBeLessThan(0.009);
    });
  });
  it('one bend, its angle alone: a line square to the leg, 1.96 or 2.80 deviations long', () => {
    const [, b] = endSpreads(METRE_LEG, { angle: Math.PI / 180, rotation: 0, mark: 0 });
    // 17.4533 mm a degree; the ellipsoid's factor is the root of 7.815, wider than one direction's 1.96 alone.
    expect(b.axes[0].length).toBeCloseTo(17.4533 * Math.sqrt(7.815), 2);
    expect(b.axes[0].direction).toEqual([0, 0, 1]);
    expect(b.axes[1].length + b.axes[2].length).toBeLessThan(1e-6);
    expect(b.along).toBeLessThan(1e-9);
  });
  it('leaves long the end that moves most along its own axis, and by that', () => {
    // Angle alone: end B slides along nothing; end A's leg lies 152.4 mm beside the second tangent, and slides by 2.66 a degree.
    const spreads = endSpreads(METRE_LEG, { angle: Math.PI / 180, rotation: 0, mark: 0 });
    expect(endToLeaveLong(spreads)).toEqual({ end: 'A', by: expect.closeTo((1.96 * 152.4 * Math.PI) / 180, 9) });
    // Marks alone: both slide by the error of the mark, and the end bent last is left long.
    const marks = endToLeaveLong(endSpreads(METRE_LEG, { angle: 0, rotation: 0, mark: 1 }));
    expect(marks).toEqual({ end: 'B', by: expect.closeTo(1.96, 9) });
    expect(endToLeaveLong(endSpreads(bar([0, 0, 0], [900, 0, 0]), TOLERANCES))).toBeNull();
    expect(bendSlips(bar([0, 0, 0], [900, 0, 0]), 2)).toEqual([]);
  });
});

describe('at a node on the tube', () => {
  const { bends, path } = WOVEN;
  /** The middle of the second straight between bends, and of the third bend. */
  const PLACES = [(bends[1]!.end + bends[2]!.start) / 2, (bends[2]!.start + bends[2]!.end) / 2];

  it('the 95 % ellipsoid is that of 10 000 tubes bent with seeded errors, whichever end is held', () => {
    const random = seededNormal(20260511);
    const { A, B } = endFrames(WOVEN);
    const seen = PLACES.map(() => ({ A: [] as Triple[], B: [] as Triple[] }));
    for (let n = 0; n < 10_000; n++) {
      const errors = drawnErrors(WOVEN, TOLERANCES, random);
      const wrongB = endBOf(bentWrong(WOVEN, errors));
      PLACES.forEach((at, i) => {
        const position = steelAt(WOVEN, errors, at);
        seen[i]!.A.push(across(A, { ...A, position }));
        seen[i]!.B.push(across(wrongB, { ...wrongB, position }));
      });
    }
    spreadsAt(WOVEN, TOLERANCES, PLACES).forEach(({ heldA, heldB }, i) => {
      for (const [held, frame, cloud] of [
        [heldA, A, seen[i]!.A],
        [heldB, B, seen[i]!.B],
      ] as const) {
        const place = { ...A, position: placeAt(path, PLACES[i]!).point };
        const moves = cloud.map((each) => less(each, across(frame, place)));
        const axes = basisOf(frame);
        const own = symmetricEigen(covarianceOf(moves));
        held.axes.forEach(({ length }, k) => {
          const theirs = Math.sqrt(jstat.chisquare.inv(0.95, 3) * own[k]!.value);
          expect(length).toBeGreaterThan(0.01);
          expect(Math.abs(length / theirs - 1), `axis ${k} of place ${i}`).toBeLessThan(0.05);
        });
        const inside = moves.filter((move) => isInside(held, axes, move)).length / moves.length;
        expect(Math.abs(inside - 0.95)).toBeLessThan(0.009);
      }
    });
  });

  it('is what differences of the tube rolled out wrongly add up to, all along the tube', () => {
    const { A } = endFrames(WOVEN);
    const count = 41;
    // Off the tangents, where the straights' motion passes into the bend's.
    const places = Array.from({ length: count }, (_, i) => (path.length * (i + 0.37)) / count);
    spreadsAt(WOVEN, TOLERANCES, places).forEach(({ heldA, heldB }, n) => {
      const sums = { A: 0, B: 0 };
      for (const [i] of bends.entries()) {
        for (const kind of ['angle', 'rotation', 'mark'] as const) {
          if (kind === 'rotation' && i === 0) continue;
          const size = kind === 'mark' ? 1e-2 : 1e-5;
          const at = (by: number) => {
            const errors = bends.map((_, k) => (k === i ? { ...NONE, [kind]: by } : NONE));
            const position = steelAt(WOVEN, errors, places[n]!);
            const held = endBOf(bentWrong(WOVEN, errors));
            return { A: across(A, { ...A, position }), B: across(held, { ...held, position }) };
          };
          const [more, fewer] = [at(size), at(-size)];
          for (const end of ['A', 'B'] as const) {
            const move = less(more[end], fewer[end]).map((each) => (each / (2 * size)) * TOLERANCES[kind]);
            sums[end] += inner(move, move);
          }
        }
      }
      const trace = ({ covariance }: Spread) => covariance[0][0] + covariance[1][1] + covariance[2][2];
      expect(Math.abs(trace(heldA) - sums.A)).toBeLessThanOrEqual(1e-5 * Math.max(1e-3, sums.A));
      expect(Math.abs(trace(heldB) - sums.B)).toBeLessThanOrEqual(1e-5 * Math.max(1e-3, sums.B));
    });
  });

  it('moves by nothing before the first bend with end A held, nor after the last with end B held', () => {
    const [before, after] = spreadsAt(WOVEN, TOLERANCES, [bends[0]!.start - 1, bends[3]!.end + 1]);
    expect(before!.heldA.axes[0].length).toBe(0);
    expect(after!.heldB.axes[0].length).toBeLessThan(1e-9);
    expect(before!.heldB.axes[0].length).toBeGreaterThan(1);
    expect(after!.heldA.axes[0].length).toBeGreaterThan(1);
  });
});

/** Where each end comes to lie as seen from the other, in tubes bent with normal errors. */
function sampleEnds(bent: SolvedTube, tolerances: Tolerances, count: number): { A: Triple[]; B: Triple[] } {
  const random = seededNormal(20260313);
  const { A } = endFrames(bent);
  const places: { A: Triple[]; B: Triple[] } = { A: [], B: [] };
  for (let i = 0; i < count; i++) {
    const B = endBOf(bentWrong(bent, drawnErrors(bent, tolerances, random)));
    places.A.push(across(B, A));
    places.B.push(across(A, B));
  }
  return places;
}

const drawnErrors = (bent: SolvedTube, tolerances: Tolerances, random: () => number): readonly Error[] =>
  bent.bends.map((_, k) => ({
    angle: tolerances.angle * random(),
    rotation: k === 0 ? 0 : tolerances.rotation * random(),
    mark: tolerances.mark * random(),
  }));

const endBOf = ({ position, direction, normal }: RollStart): EndFrame => ({
  position,
  direction: [-direction[0], -direction[1], -direction[2]],
  normal,
});

function isInside({ axes }: Spread, basis: readonly Triple[], move: Triple): boolean {
  const world = [0, 1, 2].map((k) => basis.reduce((sum, axis, i) => sum + axis[k]! * move[i]!, 0));
  return axes.reduce((sum, { length, direction }) => sum + (inner(direction, world) / length) ** 2, 0) <= 1;
}

const inner = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, each, i) => sum + each * b[i]!, 0);
const less = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;

/** The axes that `across` sees along. */
const basisOf = ({ direction: [x, y, z], normal: [u, v, w], normal, direction }: EndFrame): readonly Triple[] => [
  direction,
  normal,
  [v * z - w * y, w * x - u * z, u * y - v * x],
];

function covarianceOf(moves: readonly Triple[]): readonly [Triple, Triple, Triple] {
  const row = (i: number): Triple =>
    [0, 1, 2].map((k) => {
      const [a, b] = [mean(moves.map((move) => move[i]!)), mean(moves.map((move) => move[k]!))];
      return mean(moves.map((move) => (move[i]! - a) * (move[k]! - b)));
    }) as unknown as Triple;
  return [row(0), row(1), row(2)];
}

/** Standard normal by Box and Muller. */
function seededNormal(seed: number): () => number {
  const uniform = uniformFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}
