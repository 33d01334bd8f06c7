/** The kinds of record of a shop, a row for each list, in the order in which a file holds them. */
import type { Kind, Listed, Named, Nameless } from '../job/kinds/kind.ts';
import { pullKind } from '../job/kinds/pull.ts';
import { ruleSheetKind } from '../job/kinds/rule-sheet.ts';
import { sectionKind } from '../job/kinds/section.ts';
import { shopDieKind } from './kinds/die.ts';
import { instrumentKind } from './kinds/instrument.ts';
import { notcherKind } from '../job/kinds/notcher.ts';
import { sawKind } from '../job/kinds/saw.ts';
import { stickKind } from './kinds/stick.ts';
import type { Shop, ShopList } from './types.ts';

const KINDS: { readonly [L in ShopList]: Kind<Shop[L][number]> } = {
  sections: sectionKind,
  dies: shopDieKind,
  pulls: pullKind,
  notchers: notcherKind,
  saws: sawKind,
  sticks: stickKind,
  instruments: instrumentKind,
  rules: ruleSheetKind,
};

/** The names of the lists, in the order in which a file holds them. */
export const SHOP_LISTS = Object.keys(KINDS) as readonly ShopList[];

type AnyRecord = Shop[ShopList][number];

/** A row, for what treats all kinds alike. */
export const shopKindOf = (list: ShopList): Listed<AnyRecord> & Partial<Named<AnyRecord> & Nameless> => KINDS[list];
