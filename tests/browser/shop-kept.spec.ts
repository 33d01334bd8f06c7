/** How the browser keeps the shop record: for all tabs, twice, and set aside where it is damaged. */
import type { Page } from '@playwright/test';
import { shopFile } from '../core/shop/sample.ts';
import { FEW, expect, start, test, untilThere } from './journey.ts';
import { bare, dropDatabase, hold, lay, letGo, recordsIn, secondCopies } from './stores.ts';
import { fail, prepare } from './wreck.ts';

test.use({ ...FEW, reuseContext: false });

const record = (page: Page) => page.getByRole('dialog', { name: 'Shop record' });
const dies = (page: Page) => record(page).getByRole('table', { name: 'Dies of the shop' });

async function openRecord(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Shop record', exact: true }).click();
}

async function openShopFile(page: Page, file: object): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await record(page).getByRole('button', { name: 'Open a file' }).click();
  const buffer = Buffer.from(JSON.stringify(file));
  await (await chooser).setFiles({ name: 'shop.json', mimeType: 'application/json', buffer });
}

/** Until both copies are there. */
async function untilKeptTwice(beside: Page): Promise<void> {
  await expect.poll(async () => (await recordsIn(beside, 'shop')).length).toBe(1);
  const names = async () => Object.keys(await secondCopies(beside)).filter((name) => name.startsWith('shop'));
  await expect.poll(async () => (await names()).length).toBeGreaterThan(0);
}

test('what one tab changes is in the other', async ({ page, context }) => {
  await start(page);
  const second = await context.newPage();
  await start(second);
  await openRecord(second);
  await expect(record(second)).toContainText('None yet.');
  await openRecord(page);
  await openShopFile(page, shopFile());
  await expect(dies(second)).toContainText('6 in CLR');
  await record(second).getByRole('button', { name: 'Take out die 6 in CLR' }).click();
  await expect(dies(page)).not.toContainText('6 in CLR');
});

test('either copy brings it back, and one that is damaged is set aside', async ({ page, context }) => {
  const beside = await bare(context);
  await start(page);
  await openRecord(page);
  await openShopFile(page, shopFile());
  await untilKeptTwice(beside);
  await page.goto('about:blank');
  await dropDatabase(beside);

  await page.goto('/');
  await untilThere(page);
  await openRecord(page);
  await expect(dies(page)).toContainText('6 in CLR');
  await untilKeptTwice(beside);
  await page.goto('about:blank');
  await lay(beside, 'shop', { text: '{ "format": "cagewright/shop", ', savedAt: 9e12 }, 'record');

  await page.goto('/');
  await untilThere(page);
  await expect(page.getByText('The shop record kept in this browser could not be read.')).toContainText(
    'Its other copy is used.',
  );
  await expect(page.getByRole('button', { name: /^Download what is left of Shop record/u })).toBeVisible();
  await openRecord(page);
  await expect(dies(page)).toContainText('6 in CLR');
});

for (const going of ['closed', 'left'] as const) {
  test(`a change is not lost with a page that is ${going} at once`, async ({ page, context }) => {
    const beside = await bare(context);
    await start(page);
    await openRecord(page);
    await openShopFile(page, shopFile());
    await untilKeptTwice(beside);
    const takeOut = record(page).getByRole('button', { name: 'Take out die 6 in CLR' });
    // Within one task of the page, so that no answer of the database is heard between the two.
    await takeOut.evaluate((button) => (button as HTMLElement).click());
    if (going === 'closed') await page.close();
    else await page.goto('about:blank');

    const next = going === 'closed' ? await context.newPage() : page;
    await start(next);
    await openRecord(next);
    await expect(dies(next)).toContainText('4 1/2 in CLR');
    await expect(dies(next)).not.toContainText('6 in CLR');
    await expect.poll(() => recordsIn(beside, 'jottedShop')).toEqual([]);
    expect(JSON.stringify(await recordsIn(beside, 'shop'))).not.toContain('6 in CLR');
  });
}

test('a change made before the record could be read is said not to be saved, where the person is', async ({
  page,
  context,
}) => {
  const beside = await bare(context);
  expect(await hold(beside, 2)).toBe(true);
  await page.goto('/');
  await openRecord(page);
  await openShopFile(page, shopFile());
  await page.keyboard.press('Escape');
  await expect(page.locator('.notices')).toContainText('The shop record is not saved.');
  await letGo(beside);
  await expect(page.locator('.notices')).not.toContainText('The shop record is not saved.');
  await expect.poll(async () => JSON.stringify(await recordsIn(beside, 'shop'))).toContain('6 in CLR');
});

test('a page whose record is not saved asks before it goes', async ({ page }) => {
  await prepare(page);
  await start(page);
  await openRecord(page);
  await fail(page, 'UnknownError');
  await openShopFile(page, shopFile());
  await expect(record(page)).toContainText('Not saved in this browser now.');
  await page.keyboard.press('Escape');
  const strip = page.locator('.notices');
  await expect(strip).toContainText('The shop record is not saved.');
  const download = page.waitForEvent('download');
  await strip.getByRole('button', { name: 'Save the shop record' }).click();
  expect((await download).suggestedFilename()).toBe('shop-record.json');
  const asked = page.waitForEvent('dialog');
  await page.close({ runBeforeUnload: true });
  const dialog = await asked;
  expect(dialog.type()).toBe('beforeunload');
  await dialog.dismiss();
});
