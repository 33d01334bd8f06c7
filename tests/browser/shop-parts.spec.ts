/** The parts of the Shop: what each is for stands above the fold, the last one is kept, keys go from one to the next. */
import type { Page } from '@playwright/test';
import { chooseTube, expect, goTo, showPart, start, test, undoKey } from './journey.ts';

/** How many rows of marks and bends, their heads among them, are in sight at once. */
const ABOVE_THE_FOLD = [
  { width: 1440, height: 900, rows: 3 },
  { width: 390, height: 844, rows: 2 },
];

async function expectAboveTheFold(page: Page, rows: number): Promise<void> {
  await chooseTube(page, 'Main hoop', 'Marks');
  const first = page.getByRole('region', { name: 'Marks on the tape' }).getByRole('table').getByRole('row');
  for (let row = 0; row < rows; row += 1) await expect(first.nth(row)).toBeInViewport({ ratio: 1 });
  // How they are taken is picked once a shop, and stands below them.
  const [last, picks] = await Promise.all([
    first.last().boundingBox(),
    page.getByRole('heading', { name: 'How marks are taken' }).boundingBox(),
  ]);
  expect(picks!.y).toBeGreaterThanOrEqual(last!.y + last!.height);
  await showPart(page, 'Ends');
  await expect(page.getByRole('heading', { name: /Cut to its foot/iu }).first()).toBeInViewport({ ratio: 1 });
  await showPart(page, 'Bending');
  const bends = page.getByRole('region', { name: 'Bends' }).getByRole('table').first().getByRole('row');
  for (let row = 0; row < rows; row += 1) await expect(bends.nth(row)).toBeInViewport({ ratio: 1 });
}

test('the parts of the Shop: above the fold, by keys, found again, and what is half typed in them', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Shop');
  await test.step('what folds has a heading to come to it by', async () => {
    await chooseTube(page, 'Main hoop', 'Marks');
    await expect(page.getByRole('heading', { name: 'What a slip does', level: 3 })).toBeVisible();
    await showPart(page, 'Bending');
    await expect(page.getByRole('heading', { name: 'Rehearsal', level: 3 })).toBeVisible();
  });

  await test.step('a pull that is half typed is still there after a look at another part of the Shop', async () => {
    await chooseTube(page, 'Main hoop', 'Pulls');
    const form = page.getByRole('form', { name: 'Log a pull' });
    await form.getByRole('textbox', { name: 'Pulled' }).fill('92.5');
    await form.getByRole('textbox', { name: 'Batch' }).fill('H-204');
    await showPart(page, 'Bending');
    await showPart(page, 'Pulls');
    await expect(form.getByRole('textbox', { name: 'Pulled' })).toHaveValue('92.5');
    await expect(form.getByRole('textbox', { name: 'Batch' })).toHaveValue('H-204');
    await form.getByRole('textbox', { name: 'Finished, let go' }).fill('90');
    await form.getByRole('button', { name: 'Log the pull' }).click();
    await expect(page.getByRole('grid', { name: /^Pulls/ })).toContainText('92.5');
    await expect(form.getByRole('textbox', { name: 'Pulled' })).toHaveValue('');
    await undoKey(page).click();
  });

  await test.step('the part looked at last is there for the next tube and after a reload; arrow keys go through the parts', async () => {
    await chooseTube(page, 'Main hoop', 'Marks');
    const marks = page.getByRole('region', { name: 'Marks on the tape' });
    await expect(marks).toBeVisible();
    await page.getByRole('button', { name: 'Next tube: 2, Rear stay (left)' }).click();
    await expect(page.getByRole('article', { name: 'Tube 2, Rear stay (left)' })).toBeVisible();
    await expect(page.getByText('A straight tube has no bends to mark.')).toBeVisible();
    await page.getByRole('button', { name: 'Tube before: 1, Main hoop' }).click();
    await expect(marks).toBeVisible();
    await expect(page.getByRole('button', { name: 'Tube before' })).toBeDisabled();

    await page.reload();
    await goTo(page, 'Shop');
    await expect(page.getByRole('tab', { name: 'Marks' })).toHaveAttribute('aria-selected', 'true');
    await expect(marks).toBeVisible();
    await page.getByRole('tab', { name: 'Marks' }).press('ArrowRight');
    await expect(page.getByRole('tab', { name: 'Bending' })).toBeFocused();
    await expect(page.getByRole('region', { name: 'Bends' })).toBeVisible();
    // From the last to the first and back.
    await page.getByRole('tab', { name: 'Bending' }).press('ArrowRight');
    await page.getByRole('tab', { name: 'Pulls' }).press('ArrowRight');
    await page.getByRole('tab', { name: 'Files' }).press('ArrowRight');
    await expect(page.getByRole('tab', { name: 'Tubes' })).toBeFocused();
    await expect(page.getByRole('tabpanel', { name: 'Tubes' }).getByRole('grid')).toBeVisible();
    await page.getByRole('tab', { name: 'Tubes' }).press('ArrowLeft');
    await expect(page.getByRole('tab', { name: 'Files' })).toBeFocused();
    await expect(page.getByRole('tabpanel', { name: 'Files' })).toBeVisible();
  });

  await test.step('marks, the first end and the bends of the main hoop begin above the fold, on a telephone too', async () => {
    await goTo(page, 'Shop');
    for (const { rows, ...size } of ABOVE_THE_FOLD) {
      await page.setViewportSize(size);
      await expectAboveTheFold(page, rows);
    }
  });
});
