/** The door for shop records: text -> shop, or all that is wrong with it, each fault naming its place. Nothing throws. */
import { isOfLater, onePerPlace, shapeOf, type FileFormat } from '../job/door.ts';
import { capped, type Fault } from '../job/fault.ts';
import { obstaclePart } from '../job/kinds/obstacle.ts';
import { listFaults, type RecordList } from '../job/validate.ts';
import { SHOP_LISTS, shopKindOf } from './kinds.ts';
import { migrateShop, PRESENT_SHOP_VERSION } from './migrations.ts';
import { shopSchema } from './schema.ts';
import type { Shop } from './types.ts';

export type ParsedShop =
  | { readonly ok: true; readonly shop: Shop }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The shop in a file's text. Faults as of a job's: in the order in which they are found, one a place, at most 50 and a count. */
export function parseShop(text: string): ParsedShop {
  const { read: shop, faults } = shapeOf(text, SHOP_FILE);
  const all = shop === null ? faults : [...faults, ...listFaults(listsOf(shop), shop)];
  if (shop !== null && all.length === 0) return { ok: true, shop };
  return { ok: false, faults: capped(onePerPlace(all)) };
}

/** Whether the text is a shop record of a later version of the program. */
export const isShopOfLaterProgram = (text: string): boolean => isOfLater(text, SHOP_FILE);

const SHOP_FILE: FileFormat<Shop> = {
  format: 'cagewright/shop',
  word: 'shop record',
  strangers: {
    'cagewright/job': 'a job file: open it as a job',
    'cagewright/fabrication': 'a fabrication file, which is made from a job and never read back',
  },
  present: PRESENT_SHOP_VERSION,
  migrate: migrateShop,
  shape: shopSchema,
  finished: (shaped) => withNames(shaped as Shop),
};

/** Names filled in from ids: the one default that another field gives. */
const withNames = (shop: Shop): Shop => ({
  ...shop,
  sections: shop.sections.map((section) => ({ ...section, name: section.name ?? section.id })),
  dies: shop.dies.map((die) => ({ ...die, name: die.name ?? die.id })),
});

const listsOf = (shop: Shop): readonly RecordList[] => [
  ...(shop.bender === undefined ? [] : [{ place: 'bender.room', kind: obstaclePart, records: shop.bender.room }]),
  ...SHOP_LISTS.map((list): RecordList => ({ place: list, kind: shopKindOf(list), records: shop[list] })),
];
