/** Counts what the page draws, for journeys that want it to draw nothing. */
import { expect, type Page } from '@playwright/test';

declare global {
  interface Window {
    /** Draw calls so far. */
    drawn: number;
  }
}

/** From the next load of the page on. */
export async function countDraws(page: Page): Promise<void> {
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
}

export const drawn = (page: Page): Promise<number> => page.evaluate(() => window.drawn);

/** Waits until the drawing has come to rest for half a second; answers how much was drawn till then. */
export async function untilStill(page: Page): Promise<number> {
  let before = -1;
  await expect(async () => {
    const now = await drawn(page);
    const same = now === before;
    before = now;
    expect(same).toBe(true);
  }).toPass({ intervals: [500] });
  return before;
}
