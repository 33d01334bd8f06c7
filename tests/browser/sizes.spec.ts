/** A laptop, a tablet and a telephone: nothing runs off sideways, and what one comes for is there. */
import type { Locator, Page } from '@playwright/test';
import { expect, goTo, start, stationKey, test } from './journey.ts';
import type { StationName } from './journey.ts';

/** What each station is for, first. */
const MAIN: Readonly<Record<StationName, (page: Page) => readonly Locator[]>> = {
  Survey: (page) => [page.getByRole('grid', { name: /^Measured points/ })],
  Frame: (page) => [page.getByRole('tablist'), page.getByRole('grid', { name: 'Members in build order' })],
  Checks: (page) => [
    page.getByText('Rule book, inspector and licensed practice decide.').first(),
    page.getByRole('button', { name: /Warning/ }).first(),
  ],
  Shop: (page) => [
    page.getByRole('grid', { name: /^Tubes/ }),
    page.getByRole('article', { name: /^Tube/ }),
    page.getByRole('button', { name: 'tubes.csv' }),
  ],
};

/** How far the page itself reaches beyond the window, and whose right edge does. */
const overflow = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const over = (element: Element): boolean => element.scrollWidth > element.clientWidth + 1;
    const roots = [document.documentElement, document.body, ...document.querySelectorAll('main, header, nav')];
    return roots.filter(over).map((element) => `${element.tagName} ${element.scrollWidth} > ${element.clientWidth}`);
  });

for (const [width, height] of [
  [1440, 900],
  [1024, 768],
  [390, 844],
] as const) {
  test(`${width} x ${height}: no sideways scroll, every station's main things in reach`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await start(page);
    for (const station of Object.keys(MAIN) as StationName[]) {
      await goTo(page, station);
      await expect(stationKey(page, station)).toBeInViewport({ ratio: 1 });
      for (const thing of MAIN[station](page)) {
        await thing.scrollIntoViewIfNeeded();
        await expect(thing).toBeInViewport();
        const { x, width: wide } = (await thing.boundingBox())!;
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x + Math.min(wide, width)).toBeLessThanOrEqual(width + 1);
      }
      expect(await overflow(page), station).toEqual([]);
    }
  });
}

test('390 x 844: what a thumb presses is at least 44 pixels each way', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await start(page);
  const small: string[] = [];
  const measure = async (keys: Locator): Promise<void> => {
    const shown = await keys.filter({ visible: true }).all();
    expect(shown.length).toBeGreaterThan(0);
    for (const key of shown) {
      const { width, height } = (await key.boundingBox())!;
      if (Math.min(width, height) < 44) small.push(`${await key.innerText()}: ${width} x ${height}`);
    }
  };
  await measure(page.getByRole('navigation', { name: 'Stations' }).getByRole('button'));
  await measure(page.getByRole('banner').getByRole('button'));
  await measure(page.getByRole('group', { name: 'Views' }).getByRole('button'));
  await goTo(page, 'Survey');
  await page.getByText('Add a point', { exact: true }).click();
  await measure(page.getByRole('button', { name: 'Add the point' }));
  await goTo(page, 'Frame');
  await measure(page.getByRole('tab'));
  await page.getByText('Draw a member', { exact: true }).click();
  await measure(page.getByRole('button', { name: 'Draw it' }));
  await goTo(page, 'Checks');
  await measure(page.getByRole('button', { name: /Warning|Add a box/ }));
  await goTo(page, 'Shop');
  await measure(page.getByRole('button', { name: /\.(csv|json)$/ }));
  expect(small).toEqual([]);
});
