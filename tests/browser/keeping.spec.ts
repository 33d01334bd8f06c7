/** What the browser's own store holds: work kept by earlier layouts of it is found, and it does not grow without end. */
import type { Page } from '@playwright/test';
import { deflateSync, strToU8 } from 'fflate';
import { demoText } from '../command-line.ts';
import { shopFile } from '../core/shop/sample.ts';
import { FEW, enter, expect, start, test, untilKept, untilThere } from './journey.ts';
import { bare, recordsIn } from './stores.ts';

const MOST = 30;
const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });

/** Lays so many documents into a store of version 1, one second apart, each with a dated version. */
async function layByHand(page: Page, count: number): Promise<void> {
  // A page of the same origin, without the program.
  const body = '<link rel="icon" href="data:,">';
  await page.route('**/empty.html', (route) => route.fulfill({ contentType: 'text/html', body }));
  await page.goto('/empty.html');
  await page.evaluate(
    async ([text, documents]) => {
      const opening = indexedDB.open('cagewright', 1);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore('documents').createIndex('savedAt', 'kept.savedAt');
        opening.result.createObjectStore('versions', { keyPath: 'savedAt' });
      };
      await new Promise((resolve) => (opening.onsuccess = resolve));
      const transaction = opening.result.transaction(['documents', 'versions'], 'readwrite');
      for (let number = 0; number < documents; number += 1) {
        const [name, savedAt] = [`Job ${number}`, 1_700_000_000_000 + 1000 * number];
        const job = JSON.stringify({ ...JSON.parse(text), name });
        const kept = { slot: `s${number}`, name, text: job, history: null, fileName: '', station: 'frame', savedAt };
        transaction.objectStore('documents').put({ kept, stamp: { tab: 't', count: 1 } }, kept.slot);
        transaction.objectStore('versions').put({ name, text: job, savedAt });
      }
      await new Promise((resolve) => (transaction.oncomplete = resolve));
      opening.result.close();
    },
    [demoText(), count] as const,
  );
}

const keptNames = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    const opening = indexedDB.open('cagewright');
    await new Promise((resolve) => (opening.onsuccess = resolve));
    const asked = opening.result.transaction('documents').objectStore('documents').getAll();
    await new Promise((resolve) => (asked.onsuccess = resolve));
    opening.result.close();
    return asked.result.map(({ kept }: { kept: { name: string } }) => kept.name);
  });

test.use({ ...FEW, reuseContext: false });

test('the newest thirty jobs are held, the one in hand among them', async ({ page }) => {
  await layByHand(page, MOST + 4);
  await start(page);
  await expect(jobName(page), 'what was saved last').toHaveValue('Job 33');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await enter(jobName(page), 'In hand');
  await untilKept(page);
  await page.reload();
  await untilThere(page);
  await expect(jobName(page)).toHaveValue('In hand');
  const names = await keptNames(page);
  expect(names).toHaveLength(MOST);
  expect(names).toEqual(expect.arrayContaining(['In hand', 'Job 33', 'Job 5']));
  expect(names, 'the oldest are let go').not.toContain('Job 4');

  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  const rows = page.getByRole('dialog').getByRole('listitem');
  await expect(rows.filter({ hasText: 'Job 33' }).first()).toBeVisible();
  await expect(rows.filter({ hasText: 'Job 5' }).first()).toBeVisible();
});

/** As the builds of layout 3 left the database, and those of layout 4, of which the last deflated the text already. */
async function layInLayout(beside: Page, version: 3 | 4, isDeflated: boolean): Promise<void> {
  const text = JSON.stringify({ ...JSON.parse(demoText()), name: 'Kept of old' });
  const bytes = isDeflated ? [...deflateSync(strToU8(text))] : null;
  await beside.evaluate(
    async ([layout, plain, deflated, record]) => {
      const opening = indexedDB.open('cagewright', layout);
      opening.onupgradeneeded = () => {
        const made = opening.result;
        made.createObjectStore('documents').createIndex('savedAt', 'kept.savedAt');
        made.createObjectStore('versions', { keyPath: 'savedAt' }).createIndex('slot', 'slot');
        made.createObjectStore('damaged', { autoIncrement: true });
        made.createObjectStore('jotted');
        if (layout === 4) for (const name of ['chunks', 'shop']) made.createObjectStore(name);
      };
      await new Promise((resolve) => (opening.onsuccess = resolve));
      const transaction = opening.result.transaction([...opening.result.objectStoreNames], 'readwrite');
      const kept = { slot: 's', name: 'Kept of old', history: null, fileName: '', station: 'frame', savedAt: 1e12 };
      const itsText = deflated === null ? plain : new Uint8Array(deflated);
      transaction
        .objectStore('documents')
        .put({ kept: { ...kept, text: itsText }, stamp: { tab: 't', count: 1 } }, 's');
      if (layout === 4) transaction.objectStore('shop').put({ text: record, savedAt: 1e12 }, 'record');
      await new Promise((resolve) => (transaction.oncomplete = resolve));
      opening.result.close();
    },
    [version, text, bytes, JSON.stringify(shopFile())] as const,
  );
}

for (const [layout, isDeflated] of [
  [3, false],
  [4, false],
  [4, true],
] as const) {
  test(`layout ${layout}${isDeflated ? ' with deflated texts' : ''} is taken over whole`, async ({ page, context }) => {
    const beside = await bare(context);
    await layInLayout(beside, layout, isDeflated);
    await start(page);
    await expect(jobName(page)).toHaveValue('Kept of old');
    await enter(jobName(page), 'Gone on with');
    await untilKept(page);
    expect(await keptNames(page)).toEqual(['Gone on with']);
    expect(await recordsIn(beside, 'damaged')).toEqual([]);
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'Shop record', exact: true }).click();
    const dies = page.getByRole('dialog', { name: 'Shop record' });
    if (layout === 4) await expect(dies).toContainText('6 in CLR');
    // A build of before is kept out, in words, and sets nothing aside.
    const opened = await beside.evaluate(async (before) => {
      const opening = indexedDB.open('cagewright', before);
      return new Promise<string>((resolve) => {
        opening.onsuccess = () => resolve('opened');
        opening.addEventListener('error', () => resolve(opening.error!.name));
      });
    }, layout);
    expect(opened).toBe('VersionError');
  });
}
