/** Two changes of one record: each is in what comes of them, and the result is one that a file may hold. */
import { describe, expect, it } from 'vitest';
import { MOST_PULLS } from '../../../src/core/job/limits.ts';
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

const withLast = (shop: Shop): Shop => ({ ...shop, pulls: withPull(shop).pulls.slice(-MOST_PULLS) });

const bySize = (a: { readonly diameter: number }, b: { readonly diameter: number }): number => a.diameter - b.diameter;
