/** The shop record in both copies: written onto what lies there, or not at all; and what a page that is gone has jotted down. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { KeptShop } from '../../../src/store/storage/persistence.ts';
import { shopPersistence, type ShopPersistence } from '../../../src/store/storage/shopPersistence.ts';
import { fakeDatabase, KeyRange, type FakeDatabase } from './fake-database.ts';

let fake: FakeDatabase;
let inFile: KeptShop | null;
let shop: ShopPersistence;
const file = { readShop: async () => inFile, writeShop: async (kept: KeptShop) => void (inFile = kept) };
const pageNamed = (name: string): ShopPersistence =>
  shopPersistence(fake.connection, file, async () => undefined, name, fake.lastWords);

beforeEach(() => {
  vi.stubGlobal('IDBKeyRange', KeyRange);
  fake = fakeDatabase();
  inFile = null;
  shop = pageNamed('one');
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
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
    expect(await shop.read()).toEqual({ copies: [{ text: 'ab', savedAt: 2 }, inFile], jotted: [], isEven: true });
  });

  it('of which nothing comes leaves what lies there, in both copies', async () => {
    await shop.save(adding('newer', 1));
    expect(await shop.save((found) => (found === undefined ? { text: 'blind', savedAt: 2 } : null))).toBeNull();
    expect(fake.all('shop')).toEqual([{ text: 'newer', savedAt: 1 }]);
    expect(inFile).toEqual({ text: 'newer', savedAt: 1 });
  });

  it('leaves in the second copy what a newer program has written there alone', async () => {
    inFile = { text: 'newer', savedAt: 1 };
    await shop.save((found) => (textOf(found) === 'newer' ? null : { text: 'a', savedAt: 2 }));
    expect(fake.all('shop')).toEqual([{ text: 'a', savedAt: 2 }]);
    expect(inFile).toEqual({ text: 'newer', savedAt: 1 });
  });

  it('is not in the second copy before the database has answered', async () => {
    let answer = (): void => {};
    fake.pause = new Promise((resolve) => (answer = resolve));
    const written = shop.save(adding('a', 1));
    await settled();
    expect(inFile).toBeNull();
    answer();
    await written;
    expect(inFile).toEqual({ text: 'a', savedAt: 1 });
  });

  describe('that the database does not take', () => {
    const refusing = (name: string): ShopPersistence => {
      const run = () => Promise.reject(new DOMException('', name));
      return shopPersistence({ ...fake.connection, run }, file, async () => undefined, 'one', fake.lastWords);
    };

    it('is in the second copy, onto what lies there, and said', async () => {
      inFile = { text: 'a', savedAt: 1 };
      await expect(refusing('QuotaExceededError').save(adding('b', 2))).rejects.toThrow(DOMException);
      expect(inFile).toEqual({ text: 'ab', savedAt: 2 });
    });

    it('leaves there what a newer program has written', async () => {
      inFile = { text: 'newer', savedAt: 1 };
      const unlessNewer = (found: unknown): KeptShop | null =>
        textOf(found) === 'newer' ? null : { text: 'blind', savedAt: 2 };
      await expect(refusing('UnknownError').save(unlessNewer)).rejects.toThrow(DOMException);
      await expect(refusing('VersionError').save(adding('b', 2))).rejects.toThrow(DOMException);
      expect(inFile).toEqual({ text: 'newer', savedAt: 1 });
    });
  });
});

describe('what a page has jotted down', () => {
  const jotting = (own: string) => ({ base: 'a', own });

  it('is there for the next page when it could not be saved, the latest of it', async () => {
    shop.jot(jotting('ab'));
    await settled();
    shop.jot(jotting('abc'));
    await settled();
    expect((await pageNamed('two').read()).jotted).toEqual([jotting('abc')]);
  });

  it('is let go once it is saved, but not what came after', async () => {
    shop.jot(jotting('ab'));
    const saving = shop.save(adding('ab', 1));
    shop.jot(jotting('abc'));
    await saving;
    await settled();
    expect((await pageNamed('two').read()).jotted).toEqual([jotting('abc')]);
    await shop.save(() => ({ text: 'abc', savedAt: 2 }));
    await settled();
    expect(fake.all('jottedShop')).toEqual([]);
  });

  it('is not entered twice, though its page was gone before it could let go of it', async () => {
    shop.jot(jotting('ab'));
    await settled();
    const lying = fake.all('jottedShop')[0];
    await shop.save(adding('ab', 1));
    await settled();
    fake.lay('jottedShop', 'one 1', lying);
    const later = pageNamed('two');
    expect((await later.read()).jotted).toEqual([]);
    await settled();
    expect(fake.all('jottedShop')).toEqual([]);
  });

  it('is entered by the next page with its own first write', async () => {
    shop.jot(jotting('ab'));
    await settled();
    const later = pageNamed('two');
    expect((await later.read()).jotted).toEqual([jotting('ab')]);
    await later.save(adding('abc', 1));
    await settled();
    expect(fake.all('jottedShop')).toEqual([]);
    expect(fake.all('shop')).toEqual([{ text: 'abc', savedAt: 1, entered: ['one 1'] }]);
  });

  it('and has not arrived when it goes is there for the next page, in the place of what had', async () => {
    shop.jot(jotting('ab'));
    await settled();
    fake.pause = new Promise(() => undefined); // a browser drops what a page that is gone had sent
    shop.jot(jotting('abc'));
    shop.pageGoes();
    fake.pause = null;
    const later = pageNamed('two');
    expect((await later.read()).jotted).toEqual([jotting('abc')]);
    await later.save(adding('abc', 1));
    await settled();
    expect(fake.all('jottedShop')).toEqual([]);
    expect(fake.settings.length).toBe(0);
    expect((await pageNamed('three').read()).jotted).toEqual([]);
  });

  it('and has arrived when it goes is there once', async () => {
    shop.jot(jotting('ab'));
    await settled();
    shop.pageGoes();
    expect(fake.settings.length).toBe(0);
  });

  it('and changed on, when it did not go after all, leaves nothing of what it had put down for the next', async () => {
    let open = (): void => {};
    fake.pause = new Promise((resolve) => (open = resolve)); // the database is being opened
    shop.jot(jotting('ab'));
    shop.pageGoes();
    expect(fake.settings.length).toBe(1);
    shop.jot(jotting('abc'));
    open();
    await settled();
    expect(fake.settings.length).toBe(0);
    expect((await pageNamed('two').read()).jotted).toEqual([jotting('abc')]);
  });

  it('and is saved by the time leaves nothing of its last words', async () => {
    fake.pause = new Promise(() => undefined);
    shop.jot(jotting('ab'));
    shop.pageGoes();
    shop.jot(jotting('abc'));
    fake.pause = null;
    await shop.save(adding('abc', 1));
    await settled();
    expect(fake.settings.length).toBe(0);
  });
});
