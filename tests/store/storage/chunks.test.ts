/** A history kept in chunks: it comes back whole from either copy, and one more edit writes no more than its own. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { movePoint } from '../../../src/core/edit/points.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { commitEdit, newHistory, redo, undo, type History } from '../../../src/core/session/history.ts';
import { keptHistory, resumeHistory, type KeptHistory } from '../../../src/core/session/kept.ts';
import { createChunking } from '../../../src/store/storage/chunks.ts';
import { openIndexedDb, type FirstCopy } from '../../../src/store/storage/indexedDb.ts';
import { createPacking } from '../../../src/store/storage/packed.ts';
import type { Kept, Stored } from '../../../src/store/storage/persistence.ts';
import { randomName } from '../../../src/store/storage/random-name.ts';
import { drawFrom } from '../../reference/oracles/seeded.ts';
import { fakeDatabase, KeyRange, type FakeDatabase } from './fake-database.ts';
import { folder, secondIn, type Folder } from './folder.ts';
import { DEMO } from '../memory.ts';

const MOST = 30;
const packing = createPacking(createChunking('page'));
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

const demo = (() => {
  const parsed = parseJob(DEMO);
  if (!parsed.ok) throw new Error('the demo must open');
  return parsed.job;
})();
const edited = (history: History, nth: number): History => {
  const { id } = history.job.points[nth % history.job.points.length]!;
  return commitEdit(history, `Edit ${nth}`, movePoint(history.job, id, [nth, 500.25, 300]));
};
const after = (edits: number): History =>
  Array.from({ length: edits }).reduce<History>((history, _, nth) => edited(history, nth), newHistory(demo));

const keptOf = (history: History, savedAt: number, slot = 's', most = 2000): Kept => ({
  slot,
  name: 'Demo',
  text: serialiseJob(history.job),
  history: keptHistory(history, most),
  fileName: '',
  station: 'frame',
  savedAt,
});
const save = (kept: Kept) => work.save(kept, 't', 0, MOST);
const inFirst = async (slot = 's'): Promise<KeptHistory> => {
  const [copy] = await work.copies(slot);
  if (copy?.checked.ok !== true) throw new Error('nothing sound lies there');
  return copy.checked.value.kept.history as KeptHistory;
};
const labels = ({ past, future }: KeptHistory): string[] => [...past, ...future].map(({ label }) => label);
const inFiles = (history: History, count: number): Stored => ({
  kept: keptOf(history, count),
  stamp: { tab: 't', count },
});

describe('whatever is done, undone and done otherwise', () => {
  it.each([1, 2, 3])('comes back whole from both copies, seed %i', async (seed) => {
    const draw = drawFrom(seed);
    const files = folder();
    const second = secondIn(files);
    let history = newHistory(demo);
    for (let nth = 1; nth <= 40; nth += 1) {
      const way = draw.chance(0.6) ? 'on' : draw.chance(0.7) ? 'back' : 'forth';
      for (let times = Math.floor(draw.between(1, way === 'on' ? 15 : 25)); times > 0; times -= 1)
        history = way === 'on' ? edited(history, nth * 100 + times) : way === 'back' ? undo(history) : redo(history);
      // Beyond fifty each way the oldest are let go, as they are beyond two thousand.
      const kept = keptOf(history, nth, 's', 50);
      await save(kept);
      expect(await inFirst()).toEqual(kept.history);
      await second.write({ kept, stamp: { tab: 't', count: nth } }, MOST);
      expect((await second.read('s'))?.kept.history).toEqual(kept.history);
    }
    const named = (fake.all('documents')[0] as { kept: { history: { chunks: unknown[] } } }).kept.history.chunks;
    expect(fake.all('chunks').length, 'none lies there that the document does not name').toBe(named.length);
  });
});

describe('one edit after 300 others', () => {
  it.each([300, 319])('or %i writes less than 20 kB to the database in all, jotted down and saved', async (edits) => {
    const before = after(edits);
    await save(keptOf(before, 1));
    const history = edited(before, edits);
    fake.written = 0;
    work.jot(keptOf(history, 2), 't', 1);
    await vi.waitFor(() => expect(fake.written).toBeGreaterThan(0));
    const jotted = fake.written;
    await save(keptOf(history, 2));
    expect(fake.written - jotted).toBeGreaterThan(0);
    expect(fake.written).toBeLessThan(20_000);
    const [copy] = await work.copies('s');
    expect(copy?.checked).toMatchObject({ ok: true, value: { kept: { text: serialiseJob(history.job) } } });
    expect((await inFirst()).past).toHaveLength(edits + 1);
  });

  it('writes less than 20 kB of history to the files', async () => {
    const files = folder();
    const second = secondIn(files);
    const before = after(300);
    await second.write(inFiles(before, 1), MOST);
    const history = edited(before, 300);
    files.written = 0;
    await second.write(inFiles(history, 2), MOST);
    // In the files the job's own text stands plainly.
    expect(files.written - JSON.stringify(serialiseJob(history.job)).length).toBeLessThan(20_000);
    expect(((await second.read('s'))!.kept.history as KeptHistory).past).toHaveLength(301);
  });
});

describe('chunks that are gone or torn', () => {
  it('cost the way back beyond them, and no step nearer', async () => {
    const history = after(90);
    await save(keptOf(history, 1));
    const lies = fake.all('documents')[0] as { kept: { history: { chunks: [string, number][] } } };
    const [name] = lies.kept.history.chunks[1]!;
    await fake.connection.run((database) => database.delete('chunks', ['s', name]));
    const found = await inFirst();
    const { history: resumed, loss } = resumeHistory(serialiseJob(history.job), history.job, found);
    expect(loss).toBe('damaged');
    expect(resumed.past.map(({ label }) => label)).toEqual(
      history.past.slice(-resumed.past.length).map(({ label }) => label),
    );
    expect(resumed.past.length).toBeGreaterThan(40);
    expect(resumed.past.length).toBeLessThan(90);
  });

  it('in a file are passed over, and written again with what comes next', async () => {
    const files = folder();
    const second = secondIn(files);
    const history = after(90);
    await second.write(inFiles(history, 1), MOST);
    const [name, whole] = chunkFile(files);
    for (const length of [whole.length - 1, whole.length >> 1, 1, 0]) {
      files.texts.set(name, whole.slice(0, length));
      const torn = (await second.read('s'))!.kept.history as KeptHistory;
      expect(torn.past, `cut at ${length}`).toHaveLength(90);
      expect(torn.past).toContain(null);
    }
    files.texts.set(name, whole.slice(0, whole.length >> 1));
    const next = edited(history, 90);
    await second.write(inFiles(next, 2), MOST);
    expect((await second.read('s'))!.kept.history).toEqual(keptHistory(next, 2000));
  });

  it('are let go from a file once a hundred lie there that no document names', async () => {
    const files = folder();
    const second = secondIn(files);
    let most = 0;
    for (let count = 1; count <= 30; count += 1) {
      const history = after(90); // with steps of its own each time
      await second.write(inFiles(history, count), MOST);
      most = Math.max(most, chunkFile(files)[1].split('\n').length - 1);
      if (count === 30) expect((await second.read('s'))!.kept.history).toEqual(keptHistory(history, 2000));
    }
    expect(most).toBeGreaterThan(100);
    expect(most).toBeLessThan(112);
  });

  const chunkFile = (files: Folder): readonly [string, string] =>
    [...files.texts].find(([name]) => name.endsWith('.chunks'))!;
});

describe('what is jotted down', () => {
  it('brings what was not saved yet, and finds the rest in its slot', async () => {
    const first = after(50);
    await save(keptOf(first, 1));
    const history = Array.from({ length: 50 }).reduce<History>((one, _, nth) => edited(one, 50 + nth), first);
    work.jot(keptOf(history, 2), 't', 1);
    await vi.waitFor(() => expect(fake.all('jotted')).toHaveLength(1));
    work = openIndexedDb(fake.connection, packing, fake.lastWords);
    expect(await work.slots()).toEqual(['s']);
    expect(await inFirst()).toEqual(keptHistory(history, 2000));
  });

  it('is whole in a slot of its own where another tab has written since', async () => {
    const first = after(50);
    await save(keptOf(first, 1));
    work.jot(keptOf(edited(first, 50), 2), 't', 1);
    await vi.waitFor(() => expect(fake.all('jotted')).toHaveLength(1));
    await work.save(keptOf(edited(first, 51), 3), 'other', 1, MOST);
    work = openIndexedDb(fake.connection, packing, fake.lastWords);
    await work.slots();
    expect(labels(await inFirst('s t'))).toEqual(labels(keptHistory(edited(first, 50), 2000)));
    expect(labels(await inFirst('s'))).toEqual(labels(keptHistory(edited(first, 51), 2000)));
  });
});

it('goes with its document', async () => {
  for (let nth = 0; nth <= MOST; nth += 1) await work.save(keptOf(after(45), nth, `s${nth}`), 't', 0, MOST);
  const keys = await fake.connection.run((database) => database.getAllKeys('chunks'));
  const slots = new Set(keys.map(([slot]) => slot));
  expect(slots.size).toBe(MOST);
  expect(slots.has('s0')).toBe(false);
  const [copy] = await work.copies('s5');
  await copy!.setAside({ savedAt: 1, name: 'Demo', text: '', why: 'it is damaged' });
  const left = await fake.connection.run((database) => database.getAllKeys('chunks'));
  expect(left.some(([slot]) => slot === 's5')).toBe(false);
});

it('is cut for a page by the name of that page alone: the same steps of another page are other chunks', () => {
  const kept = keptOf(after(45), 1);
  const names = (page: string): string[] => [...createChunking(page).cut({ kept }).chunks.keys()];
  expect(names('a')).toHaveLength(2);
  expect(new Set([...names('a'), ...names('b')]).size).toBe(4);
});

it('and that name is made too where the page is served without TLS, and the browser names nothing at random', () => {
  vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) });
  expect(randomName()).not.toBe(randomName());
});
