/** A page that nobody touches draws nothing: a laptop on the bench keeps its battery. */
import type { Page } from '@playwright/test';
import { bay, choose, expect, goTo, start, test } from './journey.ts';

declare global {
  interface Window {
    /** Draw calls so far. */
    drawn: number;
  }
}

const drawn = (page: Page): Promise<number> => page.evaluate(() => window.drawn);

/** Waits until the drawing has come to rest for half a second. */
async function untilStill(page: Page): Promise<number> {
  let before = -1;
  await expect(async () => {
    const now = await drawn(page);
    const same = now === before;
    before = now;
    expect(same).toBe(true);
  }).toPass({ intervals: [500] });
  return before;
}

test('two seconds at rest draw no frame, in the Frame and with a tube chosen in the Shop', async ({ page }) => {
  await page.addInitScript(() => {
    window.drawn = 0;
    const { prototype } = WebGL2RenderingContext;
    for (const name of [
      'drawArrays',
      'drawElements',
      'drawArraysInstanced',
      'drawElementsInstanced',
      'clear',
    ] as const) {
      const draw = prototype[name] as (...given: unknown[]) => void;
      Object.assign(prototype, {
        [name](this: WebGL2RenderingContext, ...given: unknown[]) {
          window.drawn += 1;
          draw.apply(this, given);
        },
      });
    }
  });
  await start(page);
  const first = await untilStill(page);
  expect(first, 'something was drawn at all').toBeGreaterThan(0);
  await page.waitForTimeout(2_000);
  expect(await drawn(page)).toBe(first);

  await choose(page, 'Members in build order', 'Main hoop');
  await goTo(page, 'Shop');
  const second = await untilStill(page);
  expect(second, 'a choice is drawn').toBeGreaterThan(first);
  await page.waitForTimeout(2_000);
  expect(await drawn(page)).toBe(second);

  await bay(page).press('ArrowLeft');
  expect(await untilStill(page), 'a turn is drawn').toBeGreaterThan(second);
});
