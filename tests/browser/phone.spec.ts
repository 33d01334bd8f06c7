/** The telephone beside the machine: the tubes to make, one key each, and what a press leads to. */
import type { Locator, Page } from '@playwright/test';
import { expect, goTo, openFile, start, test, undoKey } from './journey.ts';
import { partMade } from './part-made.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const { text, names, cut } = partMade();
const keys = (page: Page, list: 'Next' | 'After that' | 'Done'): Locator =>
  page.locator(`[aria-label="${list}"] .to-make-key`);
const title = (page: Page): Locator => page.locator('.run-title');
const shown = (list: Locator): Promise<string[]> => list.locator('.to-make-name').allInnerTexts();

test('the tubes to make stand in build order, the one that is begun first, and each leads to its run', async ({
  page,
}) => {
  const phone = page.viewportSize()!;
  await page.setViewportSize({ width: 1024, height: 768 }); // where files are opened
  await start(page);
  await openFile(page, 'part-made.cagewright.json', text);
  await page.setViewportSize(phone);
  await goTo(page, 'Shop');
  await page.getByRole('button', { name: 'Tubes to make' }).tap();
  await expect(page.getByRole('heading', { name: 'Tubes to make' })).toBeFocused();

  await test.step('the list', async () => {
    expect(await shown(keys(page, 'Next'))).toEqual([names.begun]);
    await expect(keys(page, 'Next')).toContainText('Go on with');
    await expect(keys(page, 'Next')).toContainText(/1 of \d bends made/u);
    expect(await shown(keys(page, 'After that'))).toEqual(names.open);
    await page.getByText(`Done: ${names.done.length}`).tap();
    expect(await shown(keys(page, 'Done'))).toEqual(names.done);
  });

  await test.step('keys for wet hands: high, and apart', async () => {
    const boxes = await page
      .locator('.to-make-key:visible, .run-back:visible, summary:visible')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON() as DOMRect));
    expect(boxes.length).toBeGreaterThan(4);
    for (const { height } of boxes) expect(height).toBeGreaterThanOrEqual(56);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(sideways).toBeLessThanOrEqual(390);
  });

  await test.step('the one that is begun is gone on with where it stood', async () => {
    await keys(page, 'Next').tap();
    await expect(title(page)).toHaveText(/^Bend \d: clamp$/u);
    await page.getByRole('button', { name: 'Tubes', exact: true }).tap();
    await expect(keys(page, 'Next')).toBeFocused();
  });

  await test.step('a straight one is cut on its own page, and is then done', async () => {
    const straight = keys(page, 'After that').filter({ hasText: cut });
    await straight.tap();
    await expect(title(page)).toHaveText('Straight: cut it');
    await page.getByRole('button', { name: 'Cut to length' }).tap();
    await expect(title(page)).toHaveText('Straight, and cut');
    await page.getByRole('button', { name: 'On to the next' }).tap();
    await expect(page.getByText(`Done: ${names.done.length + 1}`)).toBeVisible();
    expect(await shown(keys(page, 'After that'))).toEqual(names.open.filter((name) => name !== cut));
    await undoKey(page).tap();
    expect(await shown(keys(page, 'After that'))).toEqual(names.open);
  });

  await test.step('the list is there again after a reload; Shop leads back', async () => {
    await page.reload();
    await expect(page.getByRole('heading', { name: 'Tubes to make' })).toBeVisible();
    await page.getByRole('button', { name: 'Shop', exact: true }).tap();
    await expect(page.getByRole('button', { name: 'Tubes to make' })).toBeFocused();
  });
});

test('the dialog of the phone opens by its key, says how pairing is begun where the server pairs nothing, and keeps the focus', async ({
  page,
  troubles,
}) => {
  await start(page);
  await page.keyboard.press('p');
  const dialog = page.getByRole('dialog', { name: 'Phone at the bender' });
  await expect(dialog).toContainText('npm start -- --network');
  await dialog.getByRole('button', { name: 'Ask the server again' }).tap();
  await expect(dialog).toContainText('This page cannot begin it');
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  // The browser itself writes down that the server has no such page.
  troubles.splice(0, troubles.length, ...troubles.filter((each) => !/status of 404/u.test(each)));
});
