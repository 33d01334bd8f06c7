/** Looks through what is kept of the shop for what can be read. */
import type { Fault } from '../../core/job/fault.ts';
import { faultLine } from '../../core/job/fault.ts';
import { isShopOfLaterProgram, parseShop } from '../../core/shop/parse.ts';
import type { Shop } from '../../core/shop/types.ts';
import type { Damaged } from '../persistence.ts';
import { checkKeptShop, damagedFrom } from '../records.ts';
import { bySoundness } from './persistence.ts';

export interface FoundShop {
  /** null where there is none that can be read. */
  readonly shop: Shop | null;
  readonly damaged: readonly Damaged[];
  /** One of a later version of the program: it is not this one's to write over. */
  readonly isNewer: boolean;
}

export function findShop(copies: readonly unknown[], now: number): FoundShop {
  const damaged: Damaged[] = [];
  for (const found of bySoundness(copies)) {
    const checked = checkKeptShop(found);
    if (checked.ok && isShopOfLaterProgram(checked.value.text)) return { shop: null, damaged, isNewer: true };
    const parsed = checked.ok ? parseShop(checked.value.text) : null;
    if (parsed?.ok) return { shop: parsed.shop, damaged, isNewer: false };
    const why = checked.ok ? faultWords(parsed?.faults ?? []) : checked.why;
    const aside = { ...damagedFrom(found, why, now), name: 'Shop record' };
    if (!damaged.some(({ text }) => text === aside.text)) damaged.push(aside);
  }
  return { shop: null, damaged, isNewer: false };
}

/** The first fault, and how many more there are. */
const faultWords = ([first, ...others]: readonly Fault[]): string =>
  first === undefined ? '' : `${faultLine(first)}${others.length === 0 ? '' : `, and ${others.length} more`}`;
