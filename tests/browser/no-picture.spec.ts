/** The graphics card taken away from the page, or never there: the bay says so in words, and the work goes on. */
import type { Page } from '@playwright/test';
import { FEW, IN_THE_BAY, bay, choose, enter, expect, goTo, start, test, typeItsPlace, undoKey } from './journey.ts';

test.use(FEW);

/** Takes the card away from the bay, or gives it back, as a driver that starts anew does. */
const card = (page: Page, does: 'loseContext' | 'restoreContext'): Promise<void> =>
  page.evaluate((call) => {
    const canvas = document.querySelector<HTMLCanvasElement>('.bay-canvas')!;
    const kept = canvas as unknown as { card?: WEBGL_lose_context };
    kept.card ??= canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!;
    kept.card[call]();
  }, does);

const stopped = (page: Page) => page.getByRole('alert').filter({ hasText: 'The 3D view has stopped' });
const tryAgain = (page: Page) => page.getByRole('button', { name: 'Try again' });

/** An edit, and the way back from it, at the tables alone. */
async function work(page: Page): Promise<void> {
  await goTo(page, 'Survey');
  await choose(page, /^Measured points/, 'Floor at B-pillar, left');
  await typeItsPlace(page);
  const height = page.getByRole('article', { name: /^Point/ }).getByRole('textbox', { name: 'Height' });
  const before = await height.inputValue();
  await enter(height, '3 1/2');
  await expect(height).toHaveValue('3 1/2');
  await undoKey(page).click();
  await expect(height).toHaveValue(before);
}

test(
  'a picture that is lost is said over the bay, and comes back by itself or by a press',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    // The middle of the bay, clear of the ring round it that shows the focus.
    const seen = (): Promise<Buffer> => page.screenshot({ clip: { x: 300, y: 200, width: 400, height: 400 } });
    // At rest: figures of what is found beside the page come into the bay a moment after the first picture.
    let drawn = await seen();
    await expect(async () => {
      const before = drawn;
      await page.waitForTimeout(1500);
      drawn = await seen();
      expect(drawn.equals(before)).toBe(true);
    }).toPass();

    await card(page, 'loseContext');
    await expect(stopped(page)).toContainText('Nothing of the job is lost');
    await work(page);
    await card(page, 'restoreContext');
    await expect(stopped(page)).toHaveCount(0);

    await goTo(page, 'Frame');
    await card(page, 'loseContext');
    await expect(stopped(page)).toBeVisible();
    await tryAgain(page).click();
    await expect(stopped(page)).toHaveCount(0);
    await expect(bay(page)).toBeFocused();
    await page.keyboard.press('Escape');
    await page.mouse.move(1, 1);
    await expect(async () => expect((await seen()).equals(drawn)).toBe(true)).toPass();
  },
);

test('where nothing can be drawn the page says so, works, and draws once it can', IN_THE_BAY, async ({ page }) => {
  await page.addInitScript(() => {
    const own = HTMLCanvasElement.prototype.getContext;
    const without = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      const granted = kind !== 'webgl2' || 'cardIsThere' in window;
      return granted ? (own as (...all: unknown[]) => unknown).call(this, kind, ...rest) : null;
    };
    HTMLCanvasElement.prototype.getContext = without as typeof own;
  });
  await page.goto('/');
  await expect(page.getByRole('note').filter({ hasText: 'No 3D view here' })).toBeVisible();
  await page.getByRole('button', { name: 'Got it' }).click();
  await work(page);
  await tryAgain(page).click();
  await expect(page.getByText('Tried once: it still cannot be drawn.')).toBeVisible();
  await page.evaluate(() => Object.assign(window, { cardIsThere: true }));
  await tryAgain(page).click();
  await expect(bay(page)).toBeVisible();
});
