/** Numbers of tubes: given once, and given anew only on purpose, with what is waste then. */
import type { Page } from '@playwright/test';
import { choose, enter, expect, rowOf, start, test, undoKey } from './journey.ts';

const MEMBERS = 'Members in build order';
const numberOf = (page: Page, name: string) => rowOf(page, MEMBERS, name).getByRole('gridcell').first();

test('a tube keeps its number when the build order changes; another is given on purpose, and says what is waste', async ({
  page,
}) => {
  await start(page);
  const [hoop, diagonal] = [numberOf(page, 'Main hoop'), numberOf(page, 'Main diagonal')];
  const before = [await hoop.innerText(), await diagonal.innerText()];
  await choose(page, MEMBERS, 'Main diagonal');
  await page.getByRole('button', { name: 'Earlier' }).click();
  await expect(undoKey(page)).toContainText('earlier');
  expect([await hoop.innerText(), await diagonal.innerText()]).toEqual(before);

  await page.getByText('Numbers', { exact: true }).click();
  const field = page.getByRole('textbox', { name: 'Number of Main diagonal' });
  await enter(field, before[0]!);
  await expect(page.getByRole('alert').filter({ hasText: 'is the number of' })).toBeVisible();
  await enter(field, '77');
  await expect(diagonal).toHaveText('77');
  await expect(page.getByText(/^Waste now/)).toContainText(`${before[1]} is now 77 (Main diagonal)`);
  await page.getByRole('button', { name: 'Number all by build order' }).click();
  await expect(diagonal).not.toHaveText('77');
  await expect(page.getByText(/^Waste now/)).toContainText('77 is now');
  await undoKey(page).click();
  await expect(diagonal).toHaveText('77');
});
