/** The quote of the demo: what has no rate is named, a rate that is typed counts, one below zero is refused, and what a line took is kept beside it. */
import type { Page } from '@playwright/test';
import { enter, expect, goTo, openFile, savedText, SIZES, start, test, undoKey } from './journey.ts';

const PHONE = SIZES.at(-1)!;

async function openQuote(page: Page): Promise<void> {
  await goTo(page, 'Stock');
  await page.getByRole('tab', { name: 'Quote' }).click();
}

const line = (page: Page, name: string) => page.getByRole('listitem').filter({ hasText: name });

test('the quote goes by the rates of the job, and says what has none', async ({ page }) => {
  await start(page);
  await openQuote(page);
  const missing = page.getByText(/^▲?\s*Not in this total/u);
  await expect(missing).toContainText('Padding');
  await expect(line(page, 'Padding')).toContainText('no price yet');
  await page.getByText('Rates of this job').click();
  const padding = page.getByRole('group', { name: 'Prices' }).getByLabel(/^Padding/u);
  await enter(padding, '-2');
  await expect(page.getByRole('alert')).toContainText('has to be from 0');
  await enter(padding, '2.5');
  await expect(line(page, 'Padding')).toContainText('× 2.50 a ft');
  await expect(missing).toHaveCount(0);
  await undoKey(page).click();
  await expect(missing).toContainText('Padding');
});

test('what a line really took is noted beside it', async ({ page }) => {
  await start(page);
  await openQuote(page);
  await page.getByLabel('Note what each line really took').check();
  const bending = page.getByRole('group', { name: 'What Bending took' });
  await enter(bending.getByLabel('Hours'), '3.25');
  await page.getByLabel('Note what each line really took').uncheck();
  await expect(line(page, 'Bending').first()).toContainText('took 3.25 h');
  await expect(page.getByText(/noted so far 3\.25 h/u)).toBeVisible();
});

test('each entry of a line is changed by itself, and one of a line that is no more is taken out', async ({ page }) => {
  await start(page);
  const took = [
    { line: 'bending', hours: 2, on: '2026-03-02', remark: 'hoop' },
    { line: 'bending', hours: 1, on: '2026-03-05', remark: 'braces' },
    { line: 'stick k1', paid: 82 },
  ];
  await openFile(page, 'noted.json', JSON.stringify({ ...JSON.parse(await savedText(page)), quote: { took } }));
  await openQuote(page);
  await page.getByLabel('Note what each line really took').check();
  const rows = page.getByRole('group', { name: /^What Bending(?:, entry \d,)? took$/u });
  await expect(rows).toHaveCount(3);
  await enter(rows.nth(1).getByLabel('Hours'), '1.5');
  await enter(rows.nth(2).getByLabel('Paid'), '7');
  await enter(rows.nth(2).getByLabel(/^Remark/u), 'a die');
  await expect(rows).toHaveCount(4);
  await page.getByRole('button', { name: /^Take out stick k1/u }).click();
  await expect(page.getByText('a line that is no more')).toHaveCount(0);
  const kept = JSON.parse(await savedText(page)) as { quote: { took: readonly object[] } };
  expect(kept.quote.took).toEqual([
    took[0],
    { ...took[1], hours: 1.5 },
    { line: 'bending', paid: 7, on: expect.stringMatching(/^\d{4}-\d\d-\d\d$/u), remark: 'a die' },
  ]);
});

test('nothing of it is wider than a telephone', async ({ page }) => {
  await page.setViewportSize(PHONE);
  await start(page);
  await openQuote(page);
  await page.getByLabel('Note what each line really took').check();
  await page.getByText('Rates of this job').click();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
});
