import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applied, changeOf, fits, turnedRound, type Change } from '../../src/core/job/change.ts';
import { deepFreeze } from './jobs.ts';
import { drawn } from '../draws.ts';

/** Plain data of few different pieces, so that two of them have much in common, and some items stand twice. */
const { plain } = fc.letrec<{ plain: unknown; record: object }>((tie) => ({
  plain: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom(0, 1, 'a', null),
    fc.array(fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f'), { maxLength: 9 }),
    fc.array(tie('record'), { maxLength: 6 }),
    tie('record'),
  ),
  record: fc.dictionary(fc.constantFrom('id', 'at', 'list', '__proto__'), tie('plain'), { maxKeys: 4 }),
}));

/** A list with what was done to it: items put in, taken out, changed, moved. */
const edited = fc
  .tuple(
    fc.array(plain, { maxLength: 8 }),
    fc.array(fc.tuple(fc.nat(3), fc.nat(8), fc.nat(8), plain), { maxLength: 4 }),
  )
  .map(([list, doings]) => [
    list,
    doings.reduce((now, [kind, at, to, item]) => {
      if (kind === 0) return now.toSpliced(at, 0, item);
      if (kind === 1) return now.toSpliced(at, 1);
      if (kind === 2) return now.map((each, nth) => (nth === at ? item : each));
      return now.toSpliced(at, 1).toSpliced(to, 0, ...now.slice(at, at + 1));
    }, list),
  ]);
const pair = fc.oneof(fc.tuple(plain, plain), edited).map(([a, b]) => deepFreeze([a, b] as const));
const runs = { seed: 71, numRuns: drawn(300, 1000) };
const between = (a: unknown, b: unknown): readonly Change[] => {
  const change = changeOf('it', a, b);
  return change === null ? [] : [deepFreeze(change)];
};
const after = (value: unknown, changes: readonly Change[]): unknown =>
  changes.reduce((now, change) => applied(now, change), value);

describe('a change of any plain data', () => {
  it('applied gives the second, turned round the first, and fits where it was made', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const there = between(a, b);
        expect(after(a, there)).toEqual(b);
        expect(after(b, there.map(turnedRound))).toEqual(a);
        expect(there.map(turnedRound).map(turnedRound)).toEqual(there);
        expect(there.every((change) => fits(a, change) && fits(b, turnedRound(change)))).toBe(true);
        expect(between(a, structuredClone(a))).toEqual([]);
      }),
      runs,
    );
  });

  it('survives JSON', () => {
    fc.assert(
      fc.property(pair, ([a, b]) => {
        const there = between(a, b);
        expect(JSON.parse(JSON.stringify(there))).toEqual(there);
      }),
      runs,
    );
  });

  it('does not fit a list in which something else stands where it was made', () => {
    const list = [
      { a: 1, b: 1 },
      { a: 2, b: 2 },
      { a: 3, b: 3 },
      { a: 4, b: 4 },
    ];
    for (const next of [list.slice(0, 2), list.with(1, { a: 2, b: 9 }), [...list, { a: 5, b: 5 }], list.toReversed()]) {
      const change = changeOf('it', list, next)!;
      expect(fits(list, change)).toBe(true);
      expect(fits(next, change)).toBe(false);
      expect(fits([], change)).toBe(false);
    }
  });
});
