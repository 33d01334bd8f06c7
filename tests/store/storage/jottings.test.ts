/** What is jotted down without waiting for an answer: how it lies there, how it is let go, how the next page enters it. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { createChunking } from '../../../src/store/storage/chunks.ts';
import { openIndexedDb } from '../../../src/store/storage/indexedDb.ts';
import { createPacking } from '../../../src/store/storage/packed.ts';
import type { Jotted, Kept, Stored } from '../../../src/store/storage/persistence.ts';
import { fakeDatabase, KeyRange, type FakeDatabase } from './fake-database.ts';

let fake: FakeDatabase;
beforeEach(() => {
  vi.stubGlobal('IDBKeyRange', KeyRange);
  fake = fakeDatabase();
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const kept = (slot: string, name: string, savedAt: number): Kept => ({
  slot,
  name,
  text: `{"name":"${name}"}`,
  history: null,
  fileName: '',
  station: 'frame',
  savedAt,
});
const jotted = (slot: string, name: string, savedAt: number, tab = 'gone', seen = 0): Jotted => ({
  kept: kept(slot, name, savedAt),
  tab,
  seen,
});
const lay = (one: unknown, nth: number, { tab, slot } = { tab: 'gone', slot: 'a' }) =>
  fake.lay('jotted', [tab, slot, nth], one);
const layStored = (slot: string, name: string, savedAt: number, tab: string, count: number): void =>
  fake.lay('documents', slot, { kept: kept(slot, name, savedAt), stamp: { tab, count } } satisfies Stored);

const namesIn = (store: string): string[] => fake.all(store).map((one) => (one as { kept: Kept }).kept.name);
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const MOST = 30;

describe('a tab that jots', () => {
  it('has the latest of each slot lie there', async () => {
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    for (const [slot, name] of [
      ['a', 'a 1'],
      ['b', 'b 1'],
      ['a', 'a 2'],
    ] as const)
      work.jot(kept(slot, name, 1), 't', 0);
    await settled();
    expect(namesIn('jotted')).toEqual(['a 2', 'b 1']);
  });

  it('lets go of what is saved, but of nothing that came after', async () => {
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    work.jot(kept('a', 'a 1', 1), 't', 0);
    const saving = work.save(kept('a', 'a 1', 1), 't', 0, MOST);
    work.jot(kept('a', 'a 2', 2), 't', 0);
    await saving;
    await settled();
    expect(namesIn('jotted')).toEqual(['a 2']);
    await work.save(kept('a', 'a 2', 2), 't', 1, MOST);
    await settled();
    expect(namesIn('jotted')).toEqual([]);
  });

  it('keeps what was refused: it is not saved', async () => {
    layStored('a', 'theirs', 1, 'other', 5);
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    work.jot(kept('a', 'mine', 2), 't', 0);
    expect(await work.save(kept('a', 'mine', 2), 't', 0, MOST)).toBeNull();
    await settled();
    expect(namesIn('jotted')).toEqual(['mine']);
  });

  it('has nothing but the latest wait for a database that lets one wait, and sends it in one go', async () => {
    let go = (): void => {};
    fake.pause = new Promise((resolve) => (go = resolve));
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    for (let nth = 1; nth <= 1000; nth += 1) work.jot(kept('a', `a ${nth}`, nth), 't', 0);
    go();
    await settled();
    expect(namesIn('jotted')).toEqual(['a 1000']);
    expect(fake.begun).toBe(1);
    fake.pause = null;
    work.jot(kept('a', 'on', 2000), 't', 0);
    await settled();
    expect(namesIn('jotted')).toEqual(['on']);
  });
});

describe('the next page', () => {
  it('enters what was jotted and never saved, and lets go of it', async () => {
    layStored('a', 'before', 1, 'gone', 1);
    lay(jotted('a', 'last', 2, 'gone', 1), 4);
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    expect(await work.slots()).toEqual(['a']);
    expect(namesIn('documents')).toEqual(['last']);
    expect(fake.all('jotted')).toEqual([]);
  });

  it('goes back to nothing older, and keeps apart what another tab has written over since', async () => {
    layStored('a', 'saved', 3, 'gone', 2);
    lay(jotted('a', 'older', 2, 'gone', 1), 4);
    layStored('b', 'theirs', 3, 'other', 2);
    lay(jotted('b', 'mine', 2, 'gone', 1), 5, { tab: 'gone', slot: 'b' });
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    await work.slots();
    expect(namesIn('documents').toSorted()).toEqual(['mine', 'saved', 'theirs']);
  });

  it('sets a spoilt one aside, with its text, and enters the others', async () => {
    lay({ kept: { ...kept('a', 'spoilt', 1), savedAt: 'today' }, tab: 'gone', seen: 0 }, 1);
    lay(jotted('b', 'sound', 2), 2, { tab: 'gone', slot: 'b' });
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    expect(await work.slots()).toEqual(['b']);
    expect(await work.damaged()).toMatchObject([{ name: 'spoilt', text: '{"name":"spoilt"}' }]);
    expect(fake.all('jotted')).toEqual([]);
  });

  it('invents nothing of one that its tab has saved in the meantime', async () => {
    lay(undefined, 1);
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    expect(await work.slots()).toEqual([]);
    expect(await work.damaged()).toEqual([]);
  });

  it('opens it from memory while the disk is too full to enter it, and enters it as soon as there is room', async () => {
    layStored('a', 'before', 1, 'gone', 1);
    lay(jotted('a', 'last', 2, 'gone', 1), 4);
    lay(jotted('new', 'never saved', 2), 5, { tab: 'gone', slot: 'new' });
    fake.full = true;
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')));
    expect((await work.slots()).toSorted()).toEqual(['a', 'new']);
    const copiesOf = async (slot: string) =>
      (await work.copies(slot)).map(
        ({ checked }) => checked.ok && [checked.value.kept.name, checked.value.stamp.count],
      );
    expect(await copiesOf('a')).toEqual([
      ['last', 2],
      ['before', 1],
    ]);
    expect(await copiesOf('new')).toEqual([['never saved', 1]]);
    fake.full = false;
    await work.slots();
    expect(namesIn('documents').toSorted()).toEqual(['last', 'never saved']);
    expect(fake.all('jotted')).toEqual([]);
    expect(await copiesOf('a')).toEqual([['last', 2]]);
  });
});
