/**
 * The ids of a shop record that two have changed at once, before they are put together. Ids count up from 1, so that two tabs give one
 * id to two things: then the one record's own goes on under another id, and with it the pulls and sticks that name it.
 */
import type { Section } from '../job/kinds/section.ts';
import { isCalledAlike, isSameDie, isSameSection } from './counterparts.ts';
import { freeId } from './free-id.ts';
import type { ShopDie } from './kinds/die.ts';
import { shopKindOf } from './kinds.ts';
import type { Shop } from './types.ts';

/** A record, and what it was made of. */
export interface Versions {
  readonly base: Shop;
  readonly own: Shop;
}

/**
 * `base` and `own` with such ids that what has one id in them and in `theirs` is one thing: of the same sizes, or come of the same
 * record of `base`, which it goes on with a size or a name of its own. What another thing has the id of goes by the id that `theirs` has
 * for it, if it is there, else by one that is free in all three.
 */
export function renamedApart(base: Shop, own: Shop, theirs: Shop): Versions {
  const dies = renaming('dies', isSameDie, [base.dies, own.dies, theirs.dies]);
  const sections = renaming('sections', isSameSection, [base.sections, own.sections, theirs.sections]);
  if (dies === null && sections === null) return { base, own };
  return {
    base: withIds(base, dies?.base, sections?.base),
    own: withIds(own, dies?.own, sections?.own),
  };
}

type Ids = ReadonlyMap<string, string>;

/** New ids by old ones for the records of `base` and of `own`; null where all may stay. */
function renaming<R extends ShopDie | Section>(
  list: 'dies' | 'sections',
  isSame: (a: R, b: R) => boolean,
  [before, mine, others]: readonly [readonly R[], readonly R[], readonly R[]],
): { readonly base: Ids; readonly own: Ids } | null {
  const isOf = (was: R | undefined, now: R): boolean =>
    was !== undefined && (isSame(was, now) || isCalledAlike(was, now));
  const ids = { base: new Map<string, string>(), own: new Map<string, string>() };
  const taken = new Set([...before, ...mine, ...others].map(({ id }) => id));
  const news = others.filter(({ id }) => withId(before, id) === undefined && withId(mine, id) === undefined);
  for (const record of mine) {
    const [was, other] = [withId(before, record.id), withId(others, record.id)];
    if (other === undefined || isSame(record, other)) continue;
    const isOfBase = isOf(was, record);
    const there = news.findIndex((one) => isSame(record, one));
    // Measured again, unless what it was is there under another id: a name stands for less than sizes do.
    if (isOfBase && isOf(was, other) && (there < 0 || isSame(was!, other))) continue;
    const id = news.splice(there, there < 0 ? 0 : 1)[0]?.id ?? freeId(taken, record.id, shopKindOf(list).letter ?? '');
    taken.add(id);
    ids.own.set(record.id, id);
    if (isOfBase) ids.base.set(record.id, id);
  }
  return ids.own.size === 0 ? null : ids;
}

const withId = <R extends { readonly id: string }>(records: readonly R[], id: string): R | undefined =>
  records.find((one) => one.id === id);

function withIds(shop: Shop, dies: Ids = new Map(), sections: Ids = new Map()): Shop {
  const under = <R extends { readonly id: string }>(ids: Ids, record: R): R => ({
    ...record,
    id: ids.get(record.id) ?? record.id,
  });
  const section = (id: string): string => sections.get(id) ?? id;
  return {
    ...shop,
    dies: shop.dies.map((die) => under(dies, die)),
    sections: shop.sections.map((each) => under(sections, each)),
    pulls: shop.pulls.map((pull) => ({ ...pull, die: dies.get(pull.die) ?? pull.die, section: section(pull.section) })),
    sticks: shop.sticks.map((stick) => ({ ...stick, section: section(stick.section) })),
  };
}
