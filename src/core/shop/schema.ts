/**
 * The shape of a shop record's file, version 1, and the defaults of what may be left out. Keys it does not know are kept, as in
 * a job. docs/shop.schema.json is made from this schema.
 */
import * as v from 'valibot';
import { benderPart } from '../job/kinds/bender.ts';
import { markingPart } from '../job/kinds/marking.ts';
import { footTrim } from '../job/kinds/foot-trim.ts';
import { torchRoom } from '../job/kinds/fitting.ts';
import { benchSawAngle } from '../job/kinds/tools.ts';
import { ratesPart } from '../job/kinds/rates.ts';
import { sawingPart } from '../job/kinds/stock.ts';
import { torchGap } from '../job/kinds/torch-gap.ts';
import { scatterPart } from '../job/kinds/scatter.ts';
import { SHOP_LISTS, shopKindOf } from './kinds.ts';

export const shopSchema = v.looseObject({
  format: v.literal('cagewright/shop'),
  version: v.literal(1),
  bender: v.exactOptional(benderPart.shape),
  marking: v.exactOptional(markingPart.shape),
  torchGap: v.exactOptional(torchGap),
  torchRoom: v.exactOptional(torchRoom),
  footTrim: v.exactOptional(footTrim),
  scatter: v.exactOptional(scatterPart.shape),
  benchSaw: v.exactOptional(benchSawAngle),
  rates: v.exactOptional(ratesPart.shape),
  sawing: v.exactOptional(sawingPart.shape),
  ...Object.fromEntries(SHOP_LISTS.map((list) => [list, v.optional(v.array(shopKindOf(list).shape), [])])),
});
