/** Two changes of one record: each is in what comes of them, and the result is one that a file may hold. */
import { describe, expect, it } from 'vitest';
import { MOST_PULLS } from '../../../src/core/job/limits.ts';
import type { RuleSheet } from '../../../src/core/job/kinds/rule-sheet.ts';
import { keepSheet } from '../../../src/core/shop/keep-sheet.ts';
import { mergeShops } from '../../../src/core/shop/merge.ts';
import { parseShop } from '../../../src/core/shop/parse.ts';
import { serialiseShop } from '../../../src/core/shop/serialise.ts';
import { EMPTY_SHOP, type Shop } from '../../../src/core/shop/types.ts';
import { shopFile } from './sample.ts';

const base = (() => {
  const parsed = parseShop(JSON.stringify(shopFile()));
  if (!parsed.ok) throw new Error('the sample must open');
  return parsed.shop;
})();

type Change = (shop: Shop) => Shop;

const withSaw: Change = (shop) => ({ ...shop, saws: [...shop.saws, { diameter: 30 }] });
const withPull: Change = (shop) => ({
  ...shop,
  pulls: [...shop.pulls, { die: 'd2', section: 's2', pulled: 47, net: 45, on: '2026-05-02' }],
});
const namedDie =
  (id: string, name: string): Change =>
  (shop) => ({ ...shop, dies: shop.dies.map((die) => (die.id === id ? { ...die, name } : die)) });
const inInches: Change = (shop) => ({ ...shop, marking: { from: 'A', mark: 'start', fine: false } });
const withoutBender: Change = ({ bender: _bender, ...shop }) => shop;
/** With all that names it. */
const withoutDie: Change = (shop) => ({
  ...shop,
  dies: shop.dies.filter(({ id }) => id !== 'd2'),
  pulls: shop.pulls.filter(({ die }) => die !== 'd2'),
});

describe('sticks on the rack', () => {
  const of = (...counts: readonly number[]): Shop => ({
    ...base,
    sticks: counts.map((count, i) => ({ section: 'main', length: 6000 + i, count })),
  });
  const counts = (shop: Shop) => shop.sticks.map(({ length, count }) => [length, count]);

  it('are counted: what each has taken is gone, and what each has put there is there', () => {
    expect(counts(mergeShops(of(5), of(4), of(4)))).toEqual([[6000, 3]]);
    expect(counts(mergeShops(of(5), of(3), of(4)))).toEqual([[6000, 2]]);
    // One has put two left-overs of one length there, the other one more of them.
    expect(counts(mergeShops(of(5), of(4, 2), of(4, 1)))).toEqual([
      [6000, 3],
      [6001, 3],
    ]);
    expect(counts(mergeShops(of(1), of(), of()))).toEqual([]);
    expect(counts(mergeShops(of(1), of(), { ...of(1), torchGap: 12 }))).toEqual([]);
  });
});

describe('two changes at once', () => {
  it.each<[string, Change, Change]>([
    ['of two lists', withSaw, withPull],
    ['of one list', (shop) => ({ ...shop, saws: [...shop.saws, { diameter: 25 }] }), withSaw],
    ['of two records', namedDie('d1', 'One'), namedDie('d2', 'Two')],
    ['of what is no list', inInches, withoutBender],
    ['of the log, and of its head', withPull, inInches],
    ['one of which takes out', withoutDie, withSaw],
  ])('%s are both in it, whichever comes first', (_, one, other) => {
    const both = other(one(base));
    for (const merged of [mergeShops(base, one(base), other(base)), mergeShops(base, other(base), one(base))]) {
      expect({ ...merged, saws: merged.saws.toSorted(bySize) }).toEqual({ ...both, saws: both.saws.toSorted(bySize) });
      expect(parseShop(serialiseShop(merged))).toEqual({ ok: true, shop: merged });
    }
  });

  it('of one record stand as the own one has it', () => {
    const merged = mergeShops(base, namedDie('d1', 'Own')(base), namedDie('d1', 'Theirs')(base));
    expect(merged.dies.map(({ name }) => name)).toEqual(['Own', base.dies[1]!.name]);
  });

  it('of two fields of one record are both in it', () => {
    const measured: Change = (shop) => ({
      ...shop,
      dies: shop.dies.map((die) => (die.id === 'd1' ? { ...die, centrelineRadius: 151.2 } : die)),
    });
    const lifted: Change = (shop) => ({ ...shop, bender: { ...shop.bender!, planeHeight: 900 } });
    const emptied: Change = (shop) => ({ ...shop, bender: { ...shop.bender!, room: [] } });
    const wide: Change = (shop) => ({ ...shop, scatter: { ...shop.scatter!, angle: 1 } });
    const long: Change = (shop) => ({ ...shop, scatter: { ...shop.scatter!, mark: 2 } });
    for (const [one, other] of [
      [namedDie('d1', 'Own'), measured],
      [lifted, emptied],
      [wide, long],
    ] as const) {
      expect(mergeShops(base, one(base), other(base))).toEqual(other(one(base)));
      expect(mergeShops(base, other(base), one(base))).toEqual(other(one(base)));
    }
  });

  it('of rule sheets: two of one book and edition are one sheet with the articles of both, two books are two', () => {
    const [hill] = base.rules as [RuleSheet];
    const typed =
      (article: string): Change =>
      (shop) =>
        keepSheet(shop, { ...hill, checks: [...hill.checks, { ...hill.checks[0]!, article }] });
    const merged = mergeShops(base, typed('9.1')(base), typed('9.2')(base));
    expect(merged.rules.map(({ checks }) => checks.map(({ article }) => article).toSorted())).toEqual([
      ['8.2', '9.1', '9.2'],
    ]);
    const other: Change = (shop) => keepSheet(shop, { ...hill, edition: '2027' });
    expect(
      mergeShops(base, other(base), typed('9.1')(base))
        .rules.map(({ sheet }) => sheet)
        .toSorted(),
    ).toEqual(['valley-hill-climb-2026', 'valley-hill-climb-2027']);
  });

  it('of a place keep one place, not a part of each', () => {
    const box = {
      name: 'bench',
      kind: 'box',
      centre: [0, 0, 0],
      size: [10, 10, 10],
      rotation: [0, 0, 0],
    } as const;
    const [first, second] = [
      { ...base, reach: { ...box, centre: [1, 0, 0] } },
      { ...base, reach: { ...box, centre: [0, 0, 2] } },
    ];
    expect(mergeShops({ ...base, reach: box } as Shop, first as Shop, second as Shop)).toMatchObject({
      reach: { centre: [1, 0, 0] },
    });
  });

  it('that are the same change are there once', () => {
    expect(mergeShops(base, withPull(base), withPull(base))).toEqual(withPull(base));
    // Two bends that came out alike, logged one after the other, are two.
    expect(mergeShops(base, withPull(withPull(base)), withPull(base)).pulls).toHaveLength(base.pulls.length + 2);
  });

  it('answer the very same record where nothing is to be added', () => {
    const theirs = withSaw(base);
    expect(mergeShops(base, { ...base }, theirs)).toBe(theirs);
    expect(mergeShops(base, withSaw(base), theirs)).toBe(theirs);
  });

  it('take nothing out that the other still needs', () => {
    const merged = mergeShops(base, withoutDie(base), withPull(base));
    expect(merged.dies.map(({ id }) => id)).toContain('d2');
    expect(merged.pulls).toHaveLength(base.pulls.length + 1);
    expect(parseShop(serialiseShop(merged)).ok).toBe(true);
  });

  it('take nothing out then, and keep what both have changed beside it', () => {
    const merged = mergeShops(base, withoutDie(base), namedDie('d1', 'Theirs')(withPull(base)));
    expect(merged.dies.map(({ name }) => name).toSorted()).toEqual(['4 1/2 in CLR', 'Theirs']);
  });

  it('that began from nothing have all of both', () => {
    expect(mergeShops(EMPTY_SHOP, withSaw(EMPTY_SHOP), base)).toEqual(withSaw(base));
  });

  it('of more pulls than a log holds let go of the oldest', () => {
    const [pull] = base.pulls as [Shop['pulls'][0]];
    const full = {
      ...base,
      pulls: Array.from({ length: MOST_PULLS }, (_, nth) => ({ ...pull, pulled: 20 + nth / 100 })),
    };
    const merged = mergeShops(full, withLast(full), withSaw(full));
    expect(merged.pulls).toHaveLength(MOST_PULLS);
    expect(merged.pulls.at(-1)).toEqual(withPull(base).pulls.at(-1));
    expect(merged.saws).toEqual(withSaw(base).saws);
  });
});

describe('two new records that were given the same id', () => {
  const die = (id: string, centrelineRadius: number): Shop['dies'][0] => ({
    ...base.dies[0]!,
    id,
    name: `${centrelineRadius} CLR`,
    centrelineRadius,
  });
  const section = (id: string, wall: number): Shop['sections'][0] => ({ ...base.sections[0]!, id, name: id, wall });
  /** A die, or a section, with a pull and a stick of its own. */
  const put =
    (radius: number, wall: number, pulled: number, id = '9'): Change =>
    (shop) => ({
      ...shop,
      dies: [...shop.dies, die(`d${id}`, radius)],
      sections: [...shop.sections, section(`s${id}`, wall)],
      pulls: [...shop.pulls, { die: `d${id}`, section: `s${id}`, pulled, net: 45, on: '2026-05-02' }],
      sticks: [...shop.sticks, { section: `s${id}`, length: 6000, count: pulled }],
    });
  /** Each pull by the radius and the wall that it is logged for, each stick by its wall. */
  const read = ({ dies, sections, pulls, sticks }: Shop) => {
    const wallOf = (id: string) => sections.find((each) => each.id === id)!.wall;
    return {
      pulls: pulls
        .filter(({ on }) => on === '2026-05-02')
        .map((pull) => [pull.pulled, dies.find(({ id }) => id === pull.die)!.centrelineRadius, wallOf(pull.section)]),
      sticks: sticks.filter(({ length }) => length === 6000).map((stick) => [stick.count, wallOf(stick.section)]),
    };
  };
  const [own, theirs] = [put(100, 2, 47), put(200, 3, 50)];

  it('are both in it, each with what names it', () => {
    const merged = mergeShops(base, own(base), theirs(base));
    expect(merged.dies).toHaveLength(base.dies.length + 2);
    expect(merged.sections).toHaveLength(base.sections.length + 2);
    expect(merged.dies.find(({ id }) => id === 'd9')!.centrelineRadius, 'theirs keeps its id').toBe(200);
    expect(read(merged)).toEqual({
      pulls: [
        [50, 200, 3],
        [47, 100, 2],
      ],
      sticks: [
        [50, 3],
        [47, 2],
      ],
    });
  });

  it('are one where they are of one size', () => {
    const merged = mergeShops(base, put(100, 2, 47)(base), put(100, 2, 50)(base));
    expect(merged.dies.map(({ id }) => id)).toEqual([...base.dies.map(({ id }) => id), 'd9']);
    expect(read(merged).pulls).toEqual([
      [50, 100, 2],
      [47, 100, 2],
    ]);
  });

  it('stay what they are when the one goes on with the id that it had here', () => {
    const merged = mergeShops(base, own(base), theirs(base));
    const later = (shop: Shop): Shop => ({
      ...shop,
      pulls: [...shop.pulls, { die: 'd9', section: 's9', pulled: 48, net: 45, on: '2026-05-02' }],
    });
    const after = mergeShops(own(base), later(own(base)), merged);
    expect(after.dies).toEqual(merged.dies);
    expect(read(after).pulls).toEqual([...read(merged).pulls, [48, 100, 2]]);
  });

  it('are both in it where one took the place of another under its id', () => {
    const other: Change = (shop) => ({ ...withoutDie(shop), dies: [...withoutDie(shop).dies, die('d2', 300)] });
    for (const merged of [
      mergeShops(base, other(base), withPull(base)),
      mergeShops(base, withPull(base), other(base)),
    ]) {
      const logged = merged.pulls.find(({ on }) => on === '2026-05-02')!;
      expect(merged.dies.find(({ id }) => id === logged.die)!.centrelineRadius).toBe(114.3);
      expect(merged.dies.map(({ centrelineRadius }) => centrelineRadius)).toContain(300);
    }
    const radii = ({ dies }: Shop) => dies.map(({ centrelineRadius }) => centrelineRadius);
    expect(radii(mergeShops(base, withSaw(base), other(base))), 'which nobody misses').toEqual(radii(other(base)));
  });
});

const withLast = (shop: Shop): Shop => ({ ...shop, pulls: withPull(shop).pulls.slice(-MOST_PULLS) });

const bySize = (a: { readonly diameter: number }, b: { readonly diameter: number }): number => a.diameter - b.diameter;
