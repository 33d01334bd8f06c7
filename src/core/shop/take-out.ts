/** Records taken out of the shop's lists, by their place in the list. A place where there is none takes nothing out. */
import type { Shop, ShopList } from './types.ts';

/** With a die or a section goes what names it: its pulls, and a section's sticks. */
export function takenOut(shop: Shop, list: ShopList, index: number): Shop {
  const record = shop[list][index];
  if (record === undefined) return shop;
  const rest: Shop = { ...shop, [list]: (shop[list] as readonly unknown[]).toSpliced(index, 1) };
  if (!('id' in record)) return rest;
  const isKept = (other: { readonly section: string; readonly die?: string }): boolean =>
    list === 'dies' ? other.die !== record.id : other.section !== record.id;
  return { ...rest, pulls: rest.pulls.filter(isKept), sticks: rest.sticks.filter(isKept) };
}
