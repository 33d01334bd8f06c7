/**
 * The shop record in the second copy: two files, written in turn, each sealed. A write that was cut short leaves the one before.
 * It stands in the folder of the documents, under names that no document has.
 */
import type { KeptShop } from './persistence.ts';
import { checkKeptShop } from './records.ts';
import { sealed, unsealed } from './seal.ts';
import type { Files } from './secondCopy.ts';

export interface ShopFile {
  /** The one saved last of those that are whole; null where there is none. */
  readShop(): Promise<KeptShop | null>;
  /** Two writes at once are for the caller to prevent. */
  writeShop(kept: KeptShop): Promise<void>;
}

const NAMES = ['shop-1', 'shop-2'] as const;

export function createShopFile(files: Files): ShopFile {
  async function latest(): Promise<{ readonly kept: KeptShop; readonly name: string } | null> {
    const both = await Promise.all(NAMES.map(async (name) => ({ name, kept: await keptIn(await files.read(name)) })));
    const whole = both.flatMap(({ name, kept }) => (kept === null ? [] : [{ name, kept }]));
    return whole.toSorted((a, b) => b.kept.savedAt - a.kept.savedAt)[0] ?? null;
  }

  return {
    readShop: async () => (await latest())?.kept ?? null,
    async writeShop(kept) {
      const before = await latest();
      await files.write(before?.name === NAMES[0] ? NAMES[1] : NAMES[0], await sealed(JSON.stringify(kept)));
    },
  };
}

async function keptIn(text: string | null): Promise<KeptShop | null> {
  const rest = await unsealed(text);
  const checked = rest === null ? null : checkKeptShop(JSON.parse(rest));
  return checked?.ok ? checked.value : null;
}
