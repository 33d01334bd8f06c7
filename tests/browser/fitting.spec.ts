/** The fitting of the cage, beside the build order: the one figure, and what a typed room makes of it. */
import { enter, expect, start, test, undoKey } from './journey.ts';

test('how far the cage is lowered, by which joint, follows the room that is typed', async ({ page }) => {
  await start(page);
  await page.getByText('Fitting', { exact: true }).click();
  const figure = page.getByText(/^Lower the cage by/);
  await expect(figure).toContainText(/by 1.7\/8.in/);
  const air = page.getByRole('table', { name: /^Air above the joints/ });
  await expect(air.getByRole('row').nth(1)).toContainText('Header at the front leg, mirrored');
  await expect(air).toContainText('not measured');
  await enter(page.getByRole('textbox', { name: /^Room the torch wants/ }), '1/4');
  await expect(figure).toHaveCount(0);
  await expect(page.getByText(/^Nothing has to be lowered/)).toBeVisible();
  await undoKey(page).click();
  await expect(figure).toBeVisible();
});
