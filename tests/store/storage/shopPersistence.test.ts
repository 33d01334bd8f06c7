/** The shop record in both copies: written onto what lies there, or not at all. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { KeptShop } from '../../../src/store/storage/persistence.ts';
import { shopPersistence, type ShopPersistence } from '../../../src/store/storage/shopPersistence.ts';
import { fakeDatabase, type FakeDatabase } from './fake-database.ts';

let fake: FakeDatabase;
let inFile: KeptShop | null;
let shop: ShopPersistence;

beforeEach(() => {
  fake = fakeDatabase();
  inFile = null;
  const file = { readShop: async () => inFile, writeShop: async (kept: KeptShop) => void (inFile = kept) };
  shop = shopPersistence(fake.connection, file, async () => undefined);
});

const textOf = (found: unknown): string => (found as KeptShop | undefined)?.text ?? '';
/** Adds a word to what lies there. */
const adding =
  (word: string, savedAt: number) =>
  (found: unknown): KeptShop => ({ text: `${textOf(found)}${word}`, savedAt });

describe('a write', () => {
  it('is of what lies there, in both copies, and answers what it was', async () => {
    await shop.save(adding('a', 1));
    expect(await shop.save(adding('b', 2))).toEqual({ text: 'ab', savedAt: 2 });
    expect(fake.all('shop')).toEqual([{ text: 'ab', savedAt: 2 }]);
    expect(inFile).toEqual({ text: 'ab', savedAt: 2 });
    expect(await shop.read()).toEqual({ copies: [{ text: 'ab', savedAt: 2 }, inFile], isEven: true });
  });

  it('of which nothing comes leaves what lies there', async () => {
    await shop.save(adding('newer', 1));
    expect(await shop.save((found) => (found === undefined ? { text: 'blind', savedAt: 2 } : null))).toBeNull();
    expect(fake.all('shop')).toEqual([{ text: 'newer', savedAt: 1 }]);
  });

  it('that the database does not take is in the second copy, and said', async () => {
    const file = { readShop: async () => inFile, writeShop: async (kept: KeptShop) => void (inFile = kept) };
    const run = () => Promise.reject(new DOMException('', 'QuotaExceededError'));
    const alone = shopPersistence({ ...fake.connection, run }, file, async () => undefined);
    await expect(alone.save(adding('a', 1))).rejects.toThrow(DOMException);
    expect(inFile).toEqual({ text: 'a', savedAt: 1 });
  });
});
