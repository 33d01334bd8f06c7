/** Looks through what is kept of the shop for what can be read. */
import type { Fault } from '../../core/job/fault.ts';
import { faultLine } from '../../core/job/fault.ts';
import { isShopOfLaterProgram, parseShop } from '../../core/shop/parse.ts';
import type { Shop } from '../../core/shop/types.ts';
import type { Damaged } from '../storage/persistence.ts';
import { checkKeptShop, damagedFrom } from '../storage/records.ts';
import { bySoundness } from '../storage/shopPersistence.ts';

export interface FoundShop {
  /** null where there is none that can be read. */
  readonly shop: Shop | null;
  /** When that was saved; 0 where there is none. */
  readonly savedAt: number;
  readonly damaged: readonly Damaged[];
  /** One of a later version of the program: it is not this one's to write over. */
  readonly isNewer: boolean;
}

export function findShop(copies: readonly unknown[], now: number): FoundShop {
  const damaged: Damaged[] = [];
  for (const found of bySoundness(copies)) {
    const read = readShop(found);
    if (read === NEWER) return { shop: null, savedAt: 0, damaged, isNewer: true };
    if (typeof read !== 'string') return { ...read, damaged, isNewer: false };
    const aside = { ...damagedFrom(found, read, now), name: 'Shop record' };
    if (!damaged.some(({ text }) => text === aside.text)) damaged.push(aside);
  }
  return { shop: null, savedAt: 0, damaged, isNewer: false };
}

const NEWER = Symbol('newer');

/** What the copy holds, or why it cannot be read. */
function readShop(found: unknown): (Pick<FoundShop, 'savedAt'> & { readonly shop: Shop }) | string | typeof NEWER {
  const checked = checkKeptShop(found);
  if (!checked.ok) return checked.why;
  const { text, savedAt } = checked.value;
  if (isShopOfLaterProgram(text)) return NEWER;
  const parsed = parseShop(text);
  return parsed.ok ? { shop: parsed.shop, savedAt } : faultWords(parsed.faults);
}

/** The first fault, and how many more there are. */
const faultWords = ([first, ...others]: readonly Fault[]): string =>
  first === undefined ? '' : `${faultLine(first)}${others.length === 0 ? '' : `, and ${others.length} more`}`;
