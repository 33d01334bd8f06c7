/** Which article stands over which: held against what a tube or a figure may be, by trying them all. */
import { describe, expect, it } from 'vitest';
import type { RuleCheck } from '../../../src/core/job/kinds/rule-check.ts';
import { asksNoLess, strictest } from '../../../src/core/rules/strictest.ts';
import type { Verdict } from '../../../src/core/rules/types.ts';
import { drawn } from '../../draws.ts';
import { drawFrom, type Draw } from '../../reference/oracles/seeded.ts';

const article = (fields: object): RuleCheck => ({
  article: '',
  text: '',
  mark: 'own',
  roles: [],
  kind: 'tilt',
  of: 'axis',
  ...fields,
});

const verdict = (sheet: string, check: RuleCheck, fields: Partial<Verdict> = {}): Verdict => ({
  sheet,
  index: 0,
  check,
  verdict: 'met',
  value: 30,
  limit: 30,
  bound: 'least',
  margin: 0,
  quantity: 'angle',
  count: 1,
  concerns: [],
  envelope: null,
  bend: null,
  at: null,
  to: null,
  because: { id: 'measured' },
  ...fields,
});

const shown = (verdicts: readonly Verdict[]) =>
  strictest(verdicts).map(({ first, more }) => [first.sheet, more.map(({ sheet }) => sheet)]);

describe('the strictest of alike articles', () => {
  it('stands first, the others under it, whatever their order and however the role is written', () => {
    const [a, b, c] = [25, 35, 30].map((least, i) =>
      verdict('abc'[i]!, article({ least, roles: [['rear-stay', 'Rear Stay', 'rear_stay'][i]!] })),
    ) as [Verdict, Verdict, Verdict];
    expect(shown([a, b, c])).toEqual([['b', ['a', 'c']]]);
    expect(shown([c, a, b])).toEqual([['b', ['c', 'a']]]);
  });

  it('goes by what is asked where no figure is given: one piece, no bend; and by the reach of padding', () => {
    const stands = (strict: object, lax: object): void => {
      expect(asksNoLess(article(strict), article(lax))).toBe(true);
      expect(asksNoLess(article(lax), article(strict))).toBe(false);
    };
    stands({ kind: 'one-piece', of: 'pieces' }, { kind: 'one-piece', of: 'pieces', most: 2 });
    stands({ kind: 'straight', of: 'bends' }, { kind: 'straight', of: 'bends', most: 5 });
    const padding = { kind: 'head-room', of: 'padding' };
    stands({ ...padding, most: 100 }, { ...padding, most: 50 });
    stands({ ...padding, least: 100 }, { ...padding, most: 50 });
  });

  it('of two that ask the same the earlier one does; two of one sheet both stand', () => {
    const same = article({ least: 30 });
    expect(shown([verdict('b', same), verdict('a', { ...same })])).toEqual([['b', ['a']]]);
    expect(shown([verdict('a', same), verdict('a', { ...same })])).toHaveLength(2);
  });

  it('other bars, another end, another way of counting and limits that neither holds stand apart', () => {
    const others = [
      { roles: ['front-leg'] },
      { only: 'bent' },
      { end: 'upper' },
      { from: 'level' },
      { least: undefined, most: 40 },
    ];
    for (const other of others)
      expect(
        shown([verdict('a', article({ least: 30 })), verdict('b', article({ least: 30, ...other }))]),
      ).toHaveLength(2);
  });

  it('one that does not bind the car, has no figure or is for a person hides nothing', () => {
    for (const because of [{ id: 'other-mass', mass: 900 }, { id: 'no-mass' }, { id: 'no-figure' }] as const) {
      const strict = verdict('a', article({ least: 60 }), { because, verdict: 'not-checked' });
      expect(shown([strict, verdict('b', article({ least: 30 }))])).toHaveLength(2);
    }
    const ask = article({ kind: 'ask', of: 'answer' });
    expect(shown([verdict('a', ask), verdict('b', ask)])).toHaveLength(2);
  });
});

describe('an article asks no less than another', () => {
  const maybe = (draw: Draw, most: number): number | undefined =>
    draw.chance(0.5) ? Math.floor(draw.between(0, most)) : undefined;

  it('of windows: just where every figure within it is within the other', () => {
    const figures = Array.from({ length: 45 }, (_, i) => i / 2 - 1);
    const isWithin = ({ least, most, strictly }: RuleCheck, x: number): boolean =>
      strictly ? (least ?? -1e9) < x && x < (most ?? 1e9) : (least ?? -1e9) <= x && x <= (most ?? 1e9);
    let count = 0;
    for (let seed = 0; seed < drawn(400, 4000); seed++) {
      const draw = drawFrom(seed);
      const [one, other] = [0, 1].map(() => {
        const [least, over] = [maybe(draw, 10), maybe(draw, 8)];
        return article({
          least,
          most: over === undefined ? undefined : (least ?? 0) + over + 1,
          ...(draw.chance(0.3) && { strictly: true }),
        });
      }) as [RuleCheck, RuleCheck];
      const is = figures.every((x) => !isWithin(one, x) || isWithin(other, x));
      count += Number(is);
      expect(asksNoLess(one, other), `seed ${seed}`).toBe(is);
    }
    expect(count).toBeGreaterThan(40);
  });

  it('of tubes: no tube that is within it is beyond the other', () => {
    const isWithin = (check: RuleCheck, across: number, wall: number): boolean => {
      const spare = check.allowance ?? 0;
      const holds = (least: { outerDiameter?: number; wall?: number }): boolean =>
        across >= (least.outerDiameter ?? 0) && wall >= (least.wall ?? 0) - spare;
      return holds(check) && ((check.sizes ?? []).length === 0 || check.sizes!.some(holds));
    };
    let count = 0;
    for (let seed = 0; seed < drawn(400, 4000); seed++) {
      const draw = drawFrom(seed);
      const [one, other] = [0, 1].map(() =>
        article({
          kind: 'section',
          of: 'size',
          outerDiameter: maybe(draw, 6),
          wall: maybe(draw, 6),
          allowance: draw.chance(0.3) ? 0.5 : undefined,
          sizes: Array.from({ length: Math.floor(draw.between(0, 3)) }, () => ({
            outerDiameter: Math.floor(draw.between(1, 7)),
            wall: Math.floor(draw.between(1, 7)),
          })),
        }),
      ) as [RuleCheck, RuleCheck];
      let is = true;
      for (let across = 0; across <= 8; across += 0.5)
        for (let wall = 0; wall <= 8; wall += 0.5)
          if (isWithin(one, across, wall) && !isWithin(other, across, wall)) is = false;
      count += Number(is);
      expect(asksNoLess(one, other), `seed ${seed}`).toBe(is);
    }
    expect(count).toBeGreaterThan(40);
  });
});
