/** The build order as a list: moved by keys, dragged by mouse, and marked where a bar has no slack. */
import { expect, FEW, start, test, undoKey } from './journey.ts';

test.use(FEW);

test('a bar is moved by its keys and by dragging its number, each one step; Escape drops a drag', async ({ page }) => {
  await start(page);
  await page.getByText('Build order', { exact: true }).click();
  const rows = page.locator('.build-order > li');
  await expect(rows.nth(1)).toBeVisible();
  const names = async () => (await rows.allInnerTexts()).map((text) => text.replaceAll('\n', ' '));
  const before = await names();
  expect(before.length).toBeGreaterThan(2);

  await rows
    .last()
    .getByRole('button', { name: /earlier$/ })
    .click();
  await expect.poll(names).not.toEqual(before);
  await expect(undoKey(page)).toContainText('earlier');
  await undoKey(page).click();
  await expect.poll(names).toEqual(before);

  const grip = rows.last().locator('.build-order-grip');
  await grip.scrollIntoViewIfNeeded();
  const [from, to] = [(await grip.boundingBox())!, (await rows.nth(before.length - 2).boundingBox())!];
  await page.mouse.move(from.x + 10, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + 10, to.y + to.height / 2, { steps: 4 });
  await expect.poll(names).not.toEqual(before);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await expect.poll(names).toEqual(before);
});
