/** Looks through what is kept of the shop, and what was jotted down, for what can be read. */
import type { Fault } from '../../core/job/fault.ts';
import { faultLine } from '../../core/job/fault.ts';
import { isShopOfLaterProgram, parseShop } from '../../core/shop/parse.ts';
import type { Shop } from '../../core/shop/types.ts';
import type { Damaged } from '../storage/persistence.ts';
import { checkJottedShop, checkKeptShop, damagedFrom } from '../storage/records.ts';
import { bySoundness } from '../storage/shopPersistence.ts';

export interface FoundShop {
  /** null where there is none that can be read. */
  readonly shop: Shop | null;
  /** When that was saved; 0 where there is none. */
  readonly savedAt: number;
  /** What pages had made of it, each beside what it was made of. */
  readonly changes: readonly ShopChange[];
  readonly damaged: readonly Damaged[];
  /** One of them is of a later version of the program: then none is this one's to write over, whichever was saved last. */
  readonly isNewer: boolean;
}

export interface ShopChange {
  readonly base: Shop;
  readonly own: Shop;
}

export function findShop(copies: readonly unknown[], jotted: readonly unknown[], now: number): FoundShop {
  const shops = bySoundness(copies).map((found) => ({ found, read: readShop(found) }));
  const changed = jotted.map((found) => ({ found: ownOf(found), read: readChange(found) }));
  const isNewer = [...shops, ...changed].some(({ read }) => read === NEWER);
  const best = isNewer ? undefined : shops.find(({ read }) => typeof read === 'object');
  // What was saved before the best stays unread, sound or not.
  const before = best === undefined ? shops : shops.slice(0, shops.indexOf(best));
  const damaged: Damaged[] = [];
  for (const { found, read } of isNewer ? [] : [...before, ...changed]) {
    if (typeof read !== 'string') continue;
    const aside = { ...damagedFrom(found, read, now), name: 'Shop record' };
    if (!damaged.some(({ text }) => text === aside.text)) damaged.push(aside);
  }
  const { shop, savedAt } = typeof best?.read === 'object' ? best.read : { shop: null, savedAt: 0 };
  const changes = isNewer ? [] : changed.flatMap(({ read }) => (typeof read === 'object' ? [read] : []));
  return { shop, savedAt, changes, damaged, isNewer };
}

/** What can be downloaded of what was jotted down: the record as it was changed. */
const ownOf = (found: unknown): unknown => {
  const checked = checkJottedShop(found);
  return checked.ok ? { text: checked.value.own } : found;
};

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

/** What was jotted down, or why it cannot be read. */
function readChange(found: unknown): ShopChange | string | typeof NEWER {
  const checked = checkJottedShop(found);
  if (!checked.ok) return checked.why;
  const { base, own } = checked.value;
  if (isShopOfLaterProgram(own)) return NEWER;
  const [before, after] = [parseShop(base), parseShop(own)];
  if (!after.ok) return faultWords(after.faults);
  return before.ok ? { base: before.shop, own: after.shop } : faultWords(before.faults);
}

/** The first fault, and how many more there are. */
const faultWords = ([first, ...others]: readonly Fault[]): string =>
  first === undefined ? '' : `${faultLine(first)}${others.length === 0 ? '' : `, and ${others.length} more`}`;
