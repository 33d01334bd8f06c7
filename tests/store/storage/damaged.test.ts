/** What is found in the store is checked before it is trusted; what is bad is set aside with words, and the next good one opens. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { Job } from '../../../src/core/job/types.ts';
import { checkStored, checkVersion, damagedFrom } from '../../../src/store/storage/records.ts';
import { DELAY } from '../../../src/store/storage/writer.ts';
import { CORRUPT_DOCUMENTS, CORRUPT_VERSIONS } from './corrupt.ts';
import { documentOf, editorOf, keepingOf, openBrowser, type Browser, undoOf } from '../memory.ts';

let browser: Browser;
beforeEach(() => {
  vi.useFakeTimers();
  browser = openBrowser();
});
afterEach(() => {
  vi.useRealTimers();
});

const renamed =
  (name: string) =>
  (job: Job): Job => ({ ...job, name });
const names = () => [...browser.documents.values()].map(({ kept }) => kept.name);

/** A browser in which a good job lies; answers what its tab remembers. */
async function goodJob() {
  const tab = await browser.openTab();
  tab.opening.newJob(); // a small one, for speed
  documentOf(tab).edit('Rename', renamed('Good'));
  await vi.advanceTimersByTimeAsync(DELAY);
  return tab;
}

it.each(CORRUPT_DOCUMENTS)(
  'a document %s is set aside with words, and the good one opens and is saved',
  async (_, record) => {
    await goodJob();
    browser.documents.set('spoilt', record as never);
    const tab = await browser.openTab();
    const { job } = documentOf(tab);
    const { notice } = editorOf(tab);
    expect(job.name).toBe('Good');
    expect(notice?.message).toMatch(/could not be read/);
    expect(notice?.damaged).toHaveLength(1);
    expect(notice?.damaged[0]!.why).toMatch(/\w/);
    expect(browser.documents.has('spoilt')).toBe(false);
    documentOf(tab).edit('Rename', renamed('Good, on'));
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(keepingOf(tab).saved).toBe('saved');
    expect(names()).toEqual(['Good, on']);
    expect((await keepingOf(tab).earlierVersions())!.filter(({ why }) => why !== undefined)).toHaveLength(1);
  },
);

it('where no good one is left the demo opens, in a slot of its own', async () => {
  browser.documents.set('spoilt', 'nonsense' as never);
  const tab = await browser.openTab({ slot: 'spoilt', station: 'frame' });
  expect(documentOf(tab).job.members.length).toBeGreaterThan(0);
  expect(editorOf(tab).notice?.message).toMatch(/demo/);
  documentOf(tab).edit('Rename', renamed('New'));
  await vi.advanceTimersByTimeAsync(DELAY);
  expect(names()).toEqual(['New']);
  expect(keepingOf(tab).slot).not.toBe('spoilt');
});

it.each([
  ['alone', false],
  ['with an older one of it in the second copy', true],
])('a job of a later version of the program stays in its place, and the next one opens: %s', async (_, isInSecond) => {
  await goodJob();
  const { kept, stamp } = [...browser.documents.values()][0]!;
  const later = {
    kept: { ...kept, slot: 'later', text: kept.text.replace('"version": 1', '"version": 99') },
    stamp: { ...stamp, count: 9 },
  };
  browser.documents.set('later', later);
  const older = { ...later, kept: { ...kept, slot: 'later' } };
  const { copies: ofFirst } = browser.persistence;
  let moved = 0;
  const second = {
    found: older,
    checked: { ok: true, value: older },
    setAside: async () => void (moved += 1),
  } as const;
  browser.persistence.copies = async (slot) => [
    ...(await ofFirst(slot)),
    ...(slot === 'later' && isInSecond ? [second] : []),
  ];
  const tab = await browser.openTab({ slot: 'later', station: 'frame' });
  expect(documentOf(tab).job.name).toBe('Good');
  expect(keepingOf(tab).slot).not.toBe('later');
  expect(editorOf(tab).notice?.message).toMatch(/newer Cagewright.*untouched/u);
  expect(editorOf(tab).notice?.damaged).toEqual([]);
  expect(browser.documents.get('later')).toBe(later);
  expect([browser.damaged, moved]).toEqual([[], 0]);
});

it('what cannot be moved, the disk being full, stays and is named, and the good one opens', async () => {
  await goodJob();
  browser.documents.set('spoilt', 'nonsense' as never);
  browser.refusal = 'QuotaExceededError';
  const tab = await browser.openTab({ slot: 'spoilt', station: 'frame' });
  expect(documentOf(tab).job.name).toBe('Good');
  expect(editorOf(tab).notice?.damaged).toHaveLength(1);
  expect(browser.documents.get('spoilt')).toBe('nonsense');
});

it('a record that is spoilt under the page does not stop it from saving', async () => {
  const tab = await goodJob();
  const [slot, { kept }] = [...browser.documents][0]!;
  browser.documents.set(slot, { kept, stamp: 'gone' as never });
  documentOf(tab).edit('Rename', renamed('Good, on'));
  await vi.advanceTimersByTimeAsync(DELAY);
  expect(keepingOf(tab).saved).toBe('saved');
  expect(names()).toEqual(['Good, on']);
  expect(browser.damaged).toHaveLength(1);
});

it('a station or file name that is none is put right: no work is in it', async () => {
  await goodJob();
  const [slot, { kept, stamp }] = [...browser.documents][0]!;
  browser.documents.set(slot, { kept: { ...kept, station: 'till' as never, fileName: 7 as never }, stamp });
  const tab = await browser.openTab();
  expect(editorOf(tab)).toMatchObject({ station: 'frame', notice: null });
  expect(documentOf(tab).fileName).toBe('');
  expect(documentOf(tab).job.name).toBe('Good');
});

it('the history of the same job comes from the other copy when it is damaged in the first', async () => {
  await goodJob();
  const [slot, { kept, stamp }] = [...browser.documents][0]!;
  const { copies } = browser.persistence;
  const setAside = async (): Promise<void> => undefined;
  const second = { found: null, checked: { ok: true, value: { kept, stamp } }, setAside } as const;
  browser.documents.set(slot, { kept: { ...kept, history: { past: 'torn', future: [] } }, stamp });
  browser.persistence.copies = async (asked) => [...(await copies(asked)), second];
  const tab = await browser.openTab();
  expect(undoOf(tab)).toBe('Rename');
  expect(editorOf(tab).notice).toBeNull();
});

it.each(CORRUPT_VERSIONS)('a version %s is found out', (_, record) => {
  const checked = checkVersion(record);
  expect(checked.ok).toBe(false);
  expect(!checked.ok && checked.why).toMatch(/\w/);
});

it('a version of the first layout, which knew no slots, is a good one', () => {
  expect(checkVersion({ savedAt: 5, name: 'x', text: '{}' }).ok).toBe(true);
});

it('what is set aside keeps its own date, where it has one', () => {
  const kept = { name: 'x', text: 'cut off', savedAt: 77 };
  expect(damagedFrom({ kept }, 'why', 5).savedAt).toBe(77);
  expect(damagedFrom({ kept: { ...kept, savedAt: 'today' } }, 'why', 5).savedAt).toBe(5);
  expect(damagedFrom({ kept: { ...kept, savedAt: 1e300 } }, 'why', 5).savedAt).toBe(5);
});

it('what a database can hold and a file cannot is kept in some form', () => {
  const ring: Record<string, unknown> = { big: 1n };
  ring['self'] = ring;
  const damaged = damagedFrom(ring, checkStored(ring, 's').ok ? '' : 'why', 5);
  expect(damaged).toMatchObject({ savedAt: 5, name: 'No name', why: 'why' });
  expect(typeof damaged.text).toBe('string');
});
