/** Shop -> the text of its file, by the same writer as a job's. */
import { joinedOrder } from '../job/joined-order.ts';
import { benderPart } from '../job/kinds/bender.ts';
import { markingPart } from '../job/kinds/marking.ts';
import { ratesPart } from '../job/kinds/rates.ts';
import { sawingPart } from '../job/kinds/stock.ts';
import { textWriter } from '../job/text.ts';
import { scatterPart } from '../job/kinds/scatter.ts';
import { SHOP_LISTS, shopKindOf } from './kinds.ts';
import type { Shop } from './types.ts';

const HEAD = [
  'format',
  'version',
  'bender',
  'marking',
  'torchGap',
  'torchRoom',
  'footTrim',
  'scatter',
  'benchSaw',
  'rates',
  'sawing',
  ...SHOP_LISTS,
];
const PARTS = [...benderPart.keys, ...markingPart.keys, ...scatterPart.keys, ...ratesPart.keys, ...sawingPart.keys];
/** Every key that the schema knows. */
export const SHOP_KEY_ORDER = joinedOrder([
  HEAD,
  ...[...SHOP_LISTS.flatMap((list) => shopKindOf(list).keys), ...PARTS].map((line) => line.split(' ')),
]);

/** The file's text. parseShop gives an equal shop back. */
export const serialiseShop: (shop: Shop) => string = textWriter(SHOP_KEY_ORDER);
