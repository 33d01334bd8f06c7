/** What is done to a whole member in one step: counted from its other end, a corner put in; all of it by keys, each one step of undo. */
import { choose, enter, expect, rowOf, start, test, undoKey } from './journey.ts';

const MEMBERS = 'Members in build order';

test('a leg is reversed, and a corner put into a straight; no tube moves', async ({ page }) => {
  await start(page);
  // The mirror image's number stands in the row too.
  await expect(rowOf(page, MEMBERS, 'Front leg').locator('.number-tag')).toHaveCount(2);
  await choose(page, MEMBERS, 'Front leg');
  const card = page.getByRole('article', { name: 'Member Front leg' });
  const endA = card.getByRole('combobox', { name: 'End A', exact: true });
  const blank = (await card.locator('.card-sum').first().textContent())!;
  const was = await endA.inputValue();
  await card.getByRole('button', { name: 'Reverse' }).press('Enter');
  await expect(endA).not.toHaveValue(was);
  await expect(card.getByRole('combobox', { name: 'End B', exact: true })).toHaveValue(was);
  await expect(card.locator('.card-sum').first()).toHaveText(blank);
  await expect(undoKey(page)).toContainText('Reverse Front leg');

  await enter(card.getByRole('textbox', { name: 'So far along it from end A' }), '1/2');
  await card.getByRole('combobox', { name: 'Place on it' }).selectOption({ label: 'middle of straight 2' });
  await card.getByRole('button', { name: 'Put a corner in there' }).press('Enter');
  await expect(page.getByRole('article', { name: 'Node Front leg, new corner' })).toBeVisible();
  await page.getByRole('tab', { name: /^Members/ }).click();
  await choose(page, MEMBERS, 'Front leg');
  await expect(card.locator('.card-sum').first()).toHaveText(blank);
  await undoKey(page).click();
  await undoKey(page).click();
  await expect(endA).toHaveValue(was);
});

test('a stay is split at its middle and joined again: the same tubes, with the numbers that they had', async ({
  page,
}) => {
  await start(page);
  const rows = page.getByRole('grid', { name: MEMBERS }).locator('.number-tag');
  const numbers = await rows.allInnerTexts();
  await choose(page, MEMBERS, 'Rear stay');
  const card = page.getByRole('article', { name: 'Member Rear stay' });
  const blank = (await card.locator('.card-sum').first().textContent())!;
  await card.getByRole('button', { name: 'Split it there' }).press('Enter');
  await expect(rowOf(page, MEMBERS, 'Rear stay, part 2')).toBeVisible();
  await expect(card.locator('.card-sum').first()).not.toHaveText(blank);
  await card.getByRole('button', { name: 'Join with Rear stay, part 2 at end B' }).press('Enter');
  await expect(rowOf(page, MEMBERS, 'Rear stay, part 2')).toHaveCount(0);
  await expect(card.locator('.card-sum').first()).toHaveText(blank);
  expect(await rows.allInnerTexts()).toEqual(numbers);
  await expect(undoKey(page)).toContainText('Join Rear stay');
});
