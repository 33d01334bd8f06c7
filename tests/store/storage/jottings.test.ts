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
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
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
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
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
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
    work.jot(kept('a', 'mine', 2), 't', 0);
    expect(await work.save(kept('a', 'mine', 2), 't', 0, MOST)).toBeNull();
    await settled();
    expect(namesIn('jotted')).toEqual(['mine']);
  });

  it('has nothing but the latest wait for a database that lets one wait, and sends it in one go', async () => {
    let go = (): void => {};
    fake.pause = new Promise((resolve) => (go = resolve));
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
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
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
    expect(await work.slots()).toEqual(['a']);
    expect(namesIn('documents')).toEqual(['last']);
    expect(fake.all('jotted')).toEqual([]);
  });

  it('goes back to nothing older, and keeps apart what another tab has written over since', async () => {
    layStored('a', 'saved', 3, 'gone', 2);
    lay(jotted('a', 'older', 2, 'gone', 1), 4);
    layStored('b', 'theirs', 3, 'other', 2);
    lay(jotted('b', 'mine', 2, 'gone', 1), 5, { tab: 'gone', slot: 'b' });
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
    await work.slots();
    expect(namesIn('documents').toSorted()).toEqual(['mine', 'saved', 'theirs']);
  });

  it('sets a spoilt one aside, with its text, and enters the others', async () => {
    lay({ kept: { ...kept('a', 'spoilt', 1), savedAt: 'today' }, tab: 'gone', seen: 0 }, 1);
    lay(jotted('b', 'sound', 2), 2, { tab: 'gone', slot: 'b' });
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
    expect(await work.slots()).toEqual(['b']);
    expect(await work.damaged()).toMatchObject([{ name: 'spoilt', text: '{"name":"spoilt"}' }]);
    expect(fake.all('jotted')).toEqual([]);
  });

  it('invents nothing of one that its tab has saved in the meantime', async () => {
    lay(undefined, 1);
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
    expect(await work.slots()).toEqual([]);
    expect(await work.damaged()).toEqual([]);
  });

  it('opens it from memory while the disk is too full to enter it, and enters it as soon as there is room', async () => {
    layStored('a', 'before', 1, 'gone', 1);
    lay(jotted('a', 'last', 2, 'gone', 1), 4);
    lay(jotted('new', 'never saved', 2), 5, { tab: 'gone', slot: 'new' });
    fake.full = true;
    const work = openIndexedDb(fake.connection, createPacking(createChunking('page')), fake.lastWords);
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

describe('a page that goes', () => {
  const openPage = (page: string) =>
    openIndexedDb(fake.connection, createPacking(createChunking(page)), fake.lastWords);
  /** As a browser drops what a page that is gone had sent. */
  const dropped = new Promise<void>(() => undefined);
  const history = { version: 1, past: Array.from({ length: 45 }, (_, nth) => ({ nth })), future: [] };

  it('leaves what had not arrived to the next page, with all its steps', async () => {
    layStored('a', 'before', 1, 't', 1);
    const going = openPage('one');
    fake.pause = dropped;
    going.jot({ ...kept('a', 'last', 2), history }, 't', 1);
    going.jot(kept('b', 'other', 2), 't', 0);
    going.pageGoes();
    fake.pause = null;
    const next = openPage('two');
    expect((await next.slots()).toSorted()).toEqual(['a', 'b']);
    const [copy] = await next.copies('a');
    expect(copy?.checked).toMatchObject({ ok: true, value: { kept: { name: 'last', history } } });
    expect(fake.settings.length).toBe(0);
  });

  it('leaves nothing of what had arrived', async () => {
    const going = openPage('one');
    going.jot(kept('a', 'last', 2), 't', 0);
    await settled();
    going.pageGoes();
    expect(fake.settings.length).toBe(0);
  });

  it('and does not, lets go of it when it arrives or is saved', async () => {
    let go = (): void => {};
    fake.pause = new Promise((resolve) => (go = resolve));
    const staying = openPage('one');
    staying.jot(kept('a', 'last', 2), 't', 0);
    staying.pageGoes();
    expect(fake.settings.length).toBe(1);
    fake.pause = null;
    await staying.save(kept('a', 'last', 2), 't', 0, MOST);
    expect(fake.settings.length).toBe(0);
    go();
    await settled();
    expect(namesIn('documents')).toEqual(['last']);
  });

  it('what is spoilt of it is set aside', async () => {
    fake.settings.setItem('last t a', 'no words');
    const next = openPage('two');
    expect(await next.slots()).toEqual([]);
    expect(await next.damaged()).toMatchObject([{ why: 'there is nothing in it' }]);
    expect(fake.settings.length).toBe(0);
  });

  it('stays where it is while the disk is too full to enter it, and is shown', async () => {
    const going = openPage('one');
    fake.pause = dropped;
    going.jot(kept('a', 'last', 2), 't', 0);
    going.pageGoes();
    fake.pause = null;
    fake.full = true;
    const next = openPage('two');
    expect(await next.slots()).toEqual(['a']);
    expect((await next.copies('a')).map(({ checked }) => checked.ok && checked.value.kept.name)).toEqual(['last']);
    expect(fake.settings.length).toBe(1);
  });
});
