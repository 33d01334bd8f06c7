/** A record as its cells say it. */
import type { Plain, PlainObject } from '../job/plain.ts';
import { remembered } from '../remembered.ts';
import { pathOf, type Cell, type Group } from './entries.ts';
import { PLACE, type Laid } from './laid-out.ts';
import type { Order } from './places.ts';

export interface Told extends Laid {
  readonly place: number;
  /** It was taken out, and nothing was written in it since. */
  readonly isGone: boolean;
  /** Of the lists within it. */
  readonly orders: ReadonlyMap<string, Order>;
  readonly record: PlainObject;
}

/**
 * What the cells of one record say. Where it was taken out on one device, and something was written in it later, knowing of that or not, it is there: the later
 * counts, and whoever took it out did not know what was to come.
 */
export const recordIn = remembered((group: Group): Told => {
  const fields = new Map<string, Plain>();
  const found = new Map<string, { readonly key: string; readonly place: number; readonly value: Plain }[]>();
  let latest = 0;
  for (const [rest, { counts }] of group) {
    const [field = '', item] = pathOf(rest);
    if (field === PLACE || counts.value === undefined) continue;
    latest = Math.max(latest, counts.at);
    if (item === undefined) fields.set(field, counts.value);
    else found.set(field, [...(found.get(field) ?? []), { key: item, ...placeAndValue(counts.value) }]);
  }
  const lists = [...found].map(([field, items]) => [field, items.toSorted(byPlace)] as const);
  const within = lists.map(([field, items]) => [field, items.map(({ value }) => value)] as const);
  return {
    ...standing(group.get(PLACE), latest),
    fields,
    items: new Map(lists.map(([field, items]) => [field, new Map(items.map(({ key, value }) => [key, value]))])),
    orders: new Map(
      lists.map(([field, items]) => [
        field,
        { keys: items.map(({ key }) => key), places: items.map(({ place }) => place) },
      ]),
    ),
    record: Object.fromEntries([...fields, ...within]),
  };
});

interface Placed {
  readonly key: string;
  readonly place: number;
}

/** In a list: by place, and those in one place in an order that is the same on all devices. */
export const byPlace = (a: Placed, b: Placed): number => a.place - b.place || (a.key < b.key ? -1 : 1);

/** An item's cell holds its place, then the item. What came from outside may hold anything: it stands first, and the door for files judges it. */
function placeAndValue(value: Plain): { readonly place: number; readonly value: Plain } {
  const [place, item] = Array.isArray(value) ? (value as readonly Plain[]) : [];
  return typeof place === 'number' && item !== undefined ? { place, value: item } : { place: 0, value };
}

function standing(cell: Cell | undefined, latest: number): Pick<Told, 'place' | 'isGone'> {
  if (cell === undefined) return { place: 0, isGone: true };
  const { value, at } = cell.counts;
  const [place, isOut] = Array.isArray(value) ? [value[0], true] : [value, false];
  return { place: typeof place === 'number' ? place : 0, isGone: isOut && latest <= at };
}
