import { expect, it } from 'vitest';
import { parseShop } from '../../../src/core/shop/parse.ts';
import { serialiseShop } from '../../../src/core/shop/serialise.ts';
import { SHOP_LISTS } from '../../../src/core/shop/kinds.ts';
import { takenOut } from '../../../src/core/shop/take-out.ts';
import type { Shop } from '../../../src/core/shop/types.ts';
import { shopFile } from './sample.ts';

const shop = shopFile() as unknown as Shop;
const counts = ({ sections, dies, pulls, sticks }: Shop) => [sections.length, dies.length, pulls.length, sticks.length];

it('a die goes with its pulls, a section with its pulls and its sticks', () => {
  expect(counts(shop)).toEqual([2, 2, 2, 1]);
  expect(counts(takenOut(shop, 'dies', 0))).toEqual([2, 1, 1, 1]);
  expect(counts(takenOut(shop, 'sections', 0))).toEqual([1, 2, 1, 0]);
  expect(counts(takenOut(shop, 'sections', 1))).toEqual([1, 2, 1, 1]);
  expect(takenOut(shop, 'dies', 0).pulls).toEqual([shop.pulls[1]]);
});

it.each(SHOP_LISTS)('what is left of %s can be read', (list) => {
  const left = takenOut(shop, list, 0);
  expect(left[list]).toEqual(shop[list].slice(1));
  expect(parseShop(serialiseShop(left)).ok).toBe(true);
  expect(takenOut(shop, list, 9)).toBe(shop);
});

it('of two pulls alike takes the one that stands at that place, and leaves what is named by others', () => {
  const twice = { ...shop, pulls: [shop.pulls[0]!, shop.pulls[1]!, shop.pulls[0]!] };
  expect(takenOut(twice, 'pulls', 2)).toEqual(shop);
  expect(takenOut(twice, 'pulls', 1).pulls).toEqual([shop.pulls[0], shop.pulls[0]]);
});
