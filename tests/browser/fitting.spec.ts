/** The fitting of the cage, beside the build order: the one figure, and what a typed room makes of it. */
import { enter, expect, goTo, start, test, undoKey } from './journey.ts';

test('how far the cage is lowered, by which joint, follows the room that is typed', async ({ page }) => {
  await start(page);
  await page.getByText('Fitting', { exact: true }).click();
  const figure = page.getByText(/^Lower the cage by/);
  await expect(figure).toContainText(/by 1.27\/32.in/);
  const air = page.getByRole('table', { name: /^Air above the joints/ });
  await expect(air.getByRole('row').nth(1)).toContainText('Header at the front leg, mirrored');
  await expect(air).toContainText('not measured');
  await enter(page.getByRole('textbox', { name: /^Room the torch wants/ }), '1/4');
  await expect(figure).toHaveCount(0);
  await expect(page.getByText(/^Nothing has to be lowered/)).toBeVisible();
  await undoKey(page).click();
  await expect(figure).toBeVisible();

  await test.step('a way across the door that is too narrow is warned of in the Checks, and typed away again', async () => {
    const way = page.getByRole('textbox', { name: /^Longest straight way across the door/ });
    await enter(way, '40');
    const goes = page.getByRole('table', { name: /^What bent tubes go through/ });
    await expect(goes.getByRole('row', { name: /^Main hoop/ })).toContainText(/41.*by.*1/);
    await goTo(page, 'Checks');
    const warning = page.getByRole('listitem').filter({ hasText: 'Main hoop, laid flat, wants an opening' });
    await expect(warning).toContainText('across the door is 40 in');
    await undoKey(page).click();
    await expect(warning).toHaveCount(0);
  });
});
