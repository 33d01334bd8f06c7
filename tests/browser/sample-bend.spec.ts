/** Scrap held into the corner of roof and pillar: gaps in, the bend out, kept; and the car's axes laid by its points, said beforehand, and taken back. */
import { enter, expect, FEW, goTo, start, test, undoKey, untilKept, untilThere } from './journey.ts';

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('a sample bend tells the bend once its gaps are read, and is there again', async ({ page }) => {
    await start(page);
    await goTo(page, 'Survey');
    await page.locator('summary', { hasText: 'Sample bends' }).click();
    await page.getByRole('button', { name: 'Add a sample bend' }).click();
    const card = page.getByRole('region', { name: 'Sample bend 1' });
    await expect(card.getByText(/^Read at least one gap/u)).toBeVisible();
    for (const [name, gap] of [
      ['Roof 1', '1/2'],
      ['Roof 2', '1/2'],
      ['Pillar 1', '1/2'],
      ['Pillar 2', '1/2'],
    ] as const) {
      await enter(card.getByRole('textbox', { name: `${name}, gap` }), gap);
    }
    // One gap all along both legs: the scrap is the bend.
    await expect(card.getByText(/^Bend 60\.0°/u)).toBeVisible();
    await enter(card.getByRole('textbox', { name: 'Roof 2, gap' }), '1');
    await expect(card.getByText(/^Bend 57\.1°/u)).toBeVisible();
    await untilKept(page);
    await page.reload();
    await untilThere(page);
    await page.locator('summary', { hasText: 'Sample bends' }).click();
    await expect(card.getByText(/^Bend 57\.1°/u)).toBeVisible();
  });
});

test('the car’s axes are laid by its points, said beforehand, and taken back', async ({ page }) => {
  await start(page);
  await goTo(page, 'Survey');
  await page.locator('summary', { hasText: 'Where the car’s axes are' }).click();
  await expect(page.getByText(/^Laid so: the car stands/u)).toBeVisible();
  await page.getByRole('button', { name: 'Lay the axes so' }).click();
  await expect(page.getByText(/^The car stands/u)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Lay the axes so' })).toBeDisabled();
  await page.getByRole('button', { name: 'Take the lines on the floor' }).click();
  await expect(page.getByText(/^The lines on the floor are taken as the car’s own/u)).toBeVisible();
  await undoKey(page).click();
  await undoKey(page).click();
  await expect(undoKey(page)).toBeDisabled();
});
