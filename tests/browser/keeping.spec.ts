/** What the browser's own store holds: work kept by the first layout of it is found, and it does not grow without end. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { enter, expect, start, test, untilKept, untilThere } from './journey.ts';

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

test.use({ reuseContext: false });

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
