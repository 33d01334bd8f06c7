import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { eliminationOf } from '../../../src/core/numerics/elimination.ts';
import { normalTail, tailQuantile } from '../../../src/core/numerics/normal-tail.ts';
import { semidefinite } from '../../../src/core/numerics/semidefinite.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';

type Rows = readonly (readonly number[])[];

/** A'A of a random A with so many rows: of that rank, where it has fewer rows than columns. */
function gram(seed: number, rows: number, size: number): Rows {
  const draw = drawFrom(seed);
  const a = Array.from({ length: rows }, () => Array.from({ length: size }, () => draw.between(-1, 1)));
  return Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (__, k) => a.reduce((sum, row) => sum + row[i]! * row[k]!, 0)),
  );
}

const flat = (rows: Rows): Float64Array => Float64Array.from(rows.flat());
const times = (rows: Rows, x: ArrayLike<number>): readonly number[] =>
  rows.map((row) => row.reduce((sum, part, k) => sum + part * x[k]!, 0));

describe('a symmetric matrix without negative eigenvalues', () => {
  it('of full rank is solved and turned over as a general library does', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const rows = gram(seed, 12, 7);
      const taken = semidefinite(flat(rows), 7);
      expect([taken.rank, taken.open]).toEqual([7, []]);
      const theirs = jstat.inv(rows).flat();
      taken.inverse().forEach((part, i) => expect(part).toBeCloseTo(theirs[i]!, 8));
      const x = taken.solve(Float64Array.from([1, 2, 3, 4, 5, 6, 7]));
      times(rows, x).forEach((part, i) => expect(part).toBeCloseTo(i + 1, 9));
    }
  });

  it('of lower rank leaves directions open that it takes to nothing, square to each other and of length 1', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const rows = gram(seed, 4, 7);
      const { rank, open, solve, inverse } = semidefinite(flat(rows), 7);
      expect([rank, open.length]).toEqual([4, 3]);
      for (const [i, way] of open.entries()) {
        times(rows, way).forEach((part) => expect(part).toBeCloseTo(0, 10));
        open.forEach((other, k) => expect(times([[...way]], other)[0]).toBeCloseTo(i === k ? 1 : 0, 10));
      }
      const right = times(rows, [1, -2, 3, -4, 5, -6, 7]);
      const x = solve(Float64Array.from(right));
      times(rows, x).forEach((part, i) => expect(part).toBeCloseTo(right[i]!, 8));
      open.forEach((way) => expect(times([[...way]], x)[0]).toBeCloseTo(0, 10));
      const turned = inverse();
      const back = rows.map((row) =>
        rows.map((_, c) => row.reduce((sum, part, k) => sum + part * turned[k * 7 + c]!, 0)),
      );
      times(back, right).forEach((part, i) => expect(part).toBeCloseTo(right[i]!, 8));
    }
  });

  it('known to be empty in most places is solved and turned over as a general library does, where two unknowns hang together', () => {
    let empty = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const draw = drawFrom(seed);
      // Ten points of three unknowns; each hangs on itself, and a chain and a few more ties hang them together.
      const size = 30;
      const blocks = Array.from({ length: 10 }, (_, block) => [0, 1, 2].map((k) => 3 * ((7 * block) % 10) + k));
      const links = [...blocks.keys()].flatMap((block) => [
        [block],
        [block, (block + 1) % 10],
        ...(block < 3 ? [[block, Math.floor(draw.between(0, 10))]] : []),
      ]);
      const rows = Array.from({ length: size }, () => Array.from({ length: size }, () => 0));
      for (const link of links) {
        const at = [...new Set(link)].flatMap((block) => blocks[block]!);
        for (let reading = 0; reading < 7; reading++) {
          const slopes = at.map(() => draw.between(-1, 1));
          at.forEach((i, a) => at.forEach((k, b) => (rows[i]![k]! += slopes[a]! * slopes[b]!)));
        }
      }
      const elimination = eliminationOf(blocks, links);
      expect(elimination.order.toSorted((a, b) => a - b)).toEqual(rows.map((_, i) => i));
      const taken = semidefinite(flat(rows), size, elimination);
      expect(taken.rank).toBe(size);
      const right = rows.map(() => draw.between(-1, 1));
      times(rows, taken.solve(Float64Array.from(right))).forEach((part, i) => expect(part).toBeCloseTo(right[i]!, 8));
      const theirs = jstat.inv(rows).flat();
      const ours = taken.inverse();
      for (const link of links) {
        for (const i of link.flatMap((block) => blocks[block]!)) {
          for (const k of link.flatMap((block) => blocks[block]!))
            expect(ours[i * size + k]! / theirs[i * size + k]!).toBeCloseTo(1, 6);
        }
      }
      empty += ours.filter((value) => Number.isNaN(value)).length;
    }
    expect(empty).toBeGreaterThan(20 * 100);
  });

  it('with an entry where none was to be is refused', () => {
    const apart = eliminationOf([[0], [1]], []);
    expect(() => semidefinite(Float64Array.from([2, 1, 1, 2]), 2, apart)).toThrow(RangeError);
    // What is no number stands where it may: nothing is known then, and nothing is refused.
    expect(semidefinite(Float64Array.from([2, NaN, NaN, 2]), 2, eliminationOf([[0], [1]], [[0, 1]])).rank).toBe(1);
  });

  it('known to be empty in most places and singular leaves the same open', () => {
    const chain = eliminationOf(
      [[0], [1], [2]],
      [
        [0, 1],
        [1, 2],
      ],
    );
    // Two differences of three heights: only that all go up together is open.
    const { rank, open } = semidefinite(Float64Array.from([1, -1, 0, -1, 2, -1, 0, -1, 1]), 3, chain);
    expect(rank).toBe(2);
    for (const part of open[0]!) expect(Math.abs(part)).toBeCloseTo(Math.sqrt(1 / 3), 12);
  });

  it('of nothing leaves all open', () => {
    expect(semidefinite(new Float64Array(9), 3).open).toHaveLength(3);
    expect(semidefinite(new Float64Array(0), 0).rank).toBe(0);
  });
});

describe('the far tail of the normal distribution', () => {
  // 3.2905 and 3.8906 are in every printed table.
  it.each([
    [0.0005, 3.2905],
    [0.00005, 3.8906],
    [0.02, 2.0537],
  ])('%s lies beyond %s', (chance, z) => {
    expect(tailQuantile(chance)).toBeCloseTo(z, 4);
  });

  it('is that of a general statistics library', () => {
    for (const chance of [1e-3, 1e-4, 1e-5, 1e-6]) {
      expect(tailQuantile(chance)).toBeCloseTo(-jstat.normal.inv(chance, 0, 1), 5);
      expect(normalTail(tailQuantile(chance)) / chance).toBeCloseTo(1, 10);
    }
  });
});
