/** A record as its cells say it. */
import type { Plain, PlainObject } from '../job/plain.ts';
import { remembered } from '../remembered.ts';
import { entriesOf, isUnknownTo, pathOf, type Cell, type Group } from './entries.ts';
import { PLACE, type Laid } from './laid-out.ts';
import { SHARED_LISTS } from './lists.ts';
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
 * What the cells of one record say. Where it was taken out on one device, and something was written in it later, or by somebody of whom that device had not
 * heard, it is there: whoever took it out did not know of that.
 */
export const recordIn = remembered((group: Group): Told => {
  const fields = new Map<string, Plain>();
  const found = new Map<string, { readonly key: string; readonly place: number; readonly value: Plain }[]>();
  for (const [rest, { counts }] of group) {
    const [field = '', item] = pathOf(rest);
    if (field === PLACE || counts.value === undefined) continue;
    if (item === undefined) fields.set(field, counts.value);
    else found.set(field, [...(found.get(field) ?? []), { key: item, ...placeAndValue(counts.value) }]);
  }
  const lists = [...found].map(([field, items]) => [field, items.toSorted(byPlace)] as const);
  const within = lists.map(([field, items]) => [field, items.map(({ value }) => value)] as const);
  return {
    ...standing(group),
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

/** The item that stands in an item's cell. */
export const itemIn = (value: Plain): Plain => placeAndValue(value).value;

function standing(group: Group): Pick<Told, 'place' | 'isGone'> {
  const cell = group.get(PLACE);
  if (cell === undefined) return { place: 0, isGone: true };
  const { counts } = cell;
  const [place, isOut] = Array.isArray(counts.value) ? [counts.value[0], true] : [counts.value, false];
  const isOver = SHARED_LISTS.get(cell.path[0]!)?.isOver === true;
  const isWritten = (each: Cell): boolean =>
    each !== cell && entriesOf(each).some((entry) => entry.at > counts.at || isUnknownTo(entry, counts));
  const isBack = isOut && !isOver && [...group.values()].some(isWritten);
  return { place: typeof place === 'number' ? place : 0, isGone: isOut && !isBack };
}
