/** A die of the shop: as in a job, but for the machine. The shop has one bender, and each of its dies is used in that. */
import * as v from 'valibot';
import { fault } from '../../job/fault.ts';
import { dieEntries, dieKind, type Die } from '../../job/kinds/die.ts';
import type { Kind } from '../../job/kinds/kind.ts';

export type ShopDie = Omit<Die, 'bender'>;

export const shopDieKind: Kind<ShopDie> = {
  ...dieKind,
  shape: v.looseObject(dieEntries),
  /** A machine of its own would be kept as a key that nobody knows, and never used. */
  beyondShape: (die, at) =>
    'bender' in die ? [fault(`${at}.bender`, 'a shop has one bender: it stands beside the lists')] : [],
};
