/** The text of a document as it lies in the database: the same again, whatever is in it, and known for damaged where it is. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createChunking } from '../../../src/store/storage/chunks.ts';
import { openIndexedDb, type FirstCopy } from '../../../src/store/storage/indexedDb.ts';
import { createPacking, unpacked } from '../../../src/store/storage/packed.ts';
import type { Kept } from '../../../src/store/storage/persistence.ts';
import { DEMO } from '../memory.ts';
import { fakeDatabase, KeyRange, type FakeDatabase } from './fake-database.ts';

const packing = createPacking(createChunking('page'));
const kept = (text: string): Kept => ({
  slot: 's',
  name: 'Job',
  text,
  history: null,
  fileName: '',
  station: 'frame',
  savedAt: 1,
});

let fake: FakeDatabase;
let work: FirstCopy;
beforeEach(() => {
  vi.stubGlobal('IDBKeyRange', KeyRange);
  fake = fakeDatabase();
  work = openIndexedDb(fake.connection, packing, fake.lastWords);
});
afterEach(() => {
  vi.unstubAllGlobals();
});

it.each([
  ['the demo', DEMO],
  ['nothing', ''],
  ['letters of all lengths', '⅜ in, Überrollbügel, 管, 🛠 \u0000 \u2028'],
  ['what is long and alike', 'x'.repeat(200_000)],
])('%s is the same again', (_, text) => {
  const { document } = packing.pack({ kept: kept(text) });
  expect(document.kept.text).toBeInstanceOf(Uint8Array);
  expect(unpacked(structuredClone(document), () => undefined)).toEqual({ kept: kept(text) });
});

describe('in a slot', () => {
  const lies = (text: unknown): void =>
    fake.lay('documents', 's', { kept: { ...kept(''), text }, stamp: { tab: 't', count: 1 } });

  it('what an earlier build has written plainly is read, and written over', async () => {
    lies(DEMO);
    const [copy] = await work.copies('s');
    expect(copy?.checked).toMatchObject({ ok: true, value: { kept: { text: DEMO } } });
    expect(await work.save(kept('{}'), 't', 1, 30)).toEqual({ tab: 't', count: 2 });
    expect(fake.all('damaged')).toEqual([]);
  });

  it.each([
    ['cut short', (whole: Uint8Array) => whole.slice(0, whole.length >> 1)],
    ['of other bytes', (whole: Uint8Array) => whole.map((byte) => byte ^ 0xff)],
  ])('one that is %s is no text, and is set aside before it is written over', async (_, spoil) => {
    lies(spoil(packing.pack({ kept: kept(DEMO) }).document.kept.text));
    const [copy] = await work.copies('s');
    expect(copy?.checked).toEqual({ ok: false, why: 'its text is missing' });
    await work.save(kept('{}'), 't', 0, 30);
    expect(fake.all('damaged')).toMatchObject([{ name: 'Job', why: 'its text is missing' }]);
  });
});
