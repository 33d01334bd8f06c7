/** Two tabs on one job: the one that falls behind says so, saves nothing over the other, and loses nothing, even in a crash. */
import { FEW, expect, savedText, start, test, troublesOf, untilKept, untilThere, enter } from './journey.ts';
import type { Page } from '@playwright/test';

const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });
const warning = (page: Page) => page.getByText('This job was changed in another tab.');

test.use({ ...FEW, reuseContext: false });

test('an edit in one tab is shown in the other, which chooses', async ({ page, context, baseURL }) => {
  await start(page);
  await enter(jobName(page), 'From the first');
  await untilKept(page);
  const second = await context.newPage();
  const troubles = troublesOf(second, baseURL!);
  await start(second);
  await expect(jobName(second)).toHaveValue('From the first');
  await enter(jobName(second), 'From the second');
  await untilKept(second);
  await expect(warning(page)).toBeVisible();
  await expect(warning(second)).toBeHidden();

  // Behind, an edit stays in this tab and overwrites nothing.
  await enter(jobName(page), 'First again');
  await second.reload();
  await untilThere(second);
  await expect(jobName(second)).toHaveValue('From the second');

  await page.getByRole('button', { name: 'Keep this one as a copy' }).click();
  await expect(warning(page)).toBeHidden();
  await expect(jobName(page)).toHaveValue('First again (copy)');
  await untilKept(page);
  const copy = await savedText(page);
  await page.reload();
  await untilThere(page);
  expect(await savedText(page)).toBe(copy);
  await second.reload();
  await untilThere(second);
  await expect(jobName(second)).toHaveValue('From the second');
  expect(troubles).toEqual([]);
});

test('what a tab that is behind does is kept apart, and found again when that tab is gone', async ({
  page,
  context,
}) => {
  await start(page);
  await enter(jobName(page), 'From the first');
  await untilKept(page);
  const second = await context.newPage();
  await start(second);
  await enter(jobName(second), 'From the second');
  await untilKept(second);
  await expect(warning(page)).toBeVisible();
  await enter(jobName(page), 'First again');
  await page.getByText('Kept apart in this browser').waitFor();
  await page.close();
  await second.getByRole('button', { name: 'Menu' }).click();
  await second.getByRole('button', { name: 'Earlier versions' }).click();
  await expect(second.getByRole('dialog').getByRole('listitem').filter({ hasText: 'First again' })).toBeVisible();
});

test("the other tab's work can be taken, and one's own stays among the earlier versions", async ({ page, context }) => {
  await start(page);
  await enter(jobName(page), 'From the first');
  await untilKept(page);
  const second = await context.newPage();
  await start(second);
  await enter(jobName(second), 'From the second');
  await untilKept(second);
  await expect(warning(page)).toBeVisible();
  await enter(jobName(page), 'First again');
  await page.getByRole('button', { name: "Take the other tab's work" }).click();
  await expect(jobName(page)).toHaveValue('From the second');
  await expect(warning(page)).toBeHidden();

  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  await expect(page.getByRole('dialog').getByRole('listitem').filter({ hasText: 'First again' })).toBeVisible();
});
