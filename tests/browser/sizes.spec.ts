/** A laptop, a tablet and a telephone: nothing runs off sideways, and what one comes for is there. */
import type { Locator, Page } from '@playwright/test';
import {
  choose,
  chooseTube,
  expect,
  goTo,
  IN_THE_BAY,
  SHOP_PARTS,
  showPart,
  SIZES,
  start,
  stationKey,
  test,
} from './journey.ts';
import type { StationName } from './journey.ts';
import { LONG } from '../draws.ts';

/** What each station is for, first. */
const MAIN: Readonly<Record<StationName, (page: Page) => readonly Locator[]>> = {
  Survey: (page) => [page.getByRole('grid', { name: /^Measured points/ })],
  Frame: (page) => [page.getByRole('tablist'), page.getByRole('grid', { name: 'Members in build order' })],
  Checks: (page) => [
    page.getByText('The rule book, the inspector and licensed practice decide.').first(),
    page.getByRole('button', { name: /Warning/ }).first(),
  ],
  Shop: (page) => [
    page.getByRole('grid', { name: /^Tubes/ }),
    page.getByRole('article', { name: /^Tube/ }),
    page.getByRole('tab', { name: 'Files' }),
  ],
  Stock: (page) => [
    page.getByRole('heading', { name: /^Stick 1:/u }),
    page.getByRole('button', { name: 'Stick 1 is sawn' }),
    page.getByRole('tab', { name: 'Sticks' }),
    page.getByRole('tab', { name: 'Quote' }),
  ],
};

/** How far the page itself reaches beyond the window, and whose right edge does. */
const overflow = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const over = (element: Element): boolean => element.scrollWidth > element.clientWidth + 1;
    const roots = [document.documentElement, document.body, ...document.querySelectorAll('main, header, nav')];
    return roots.filter(over).map((element) => `${element.tagName} ${element.scrollWidth} > ${element.clientWidth}`);
  });

const nameOf = ({ width, height }: { width: number; height: number }) => `${width} x ${height}`;

test("at each size: no sideways scroll, every station's main things in reach", IN_THE_BAY, async ({ page }) => {
  await start(page);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const station of Object.keys(MAIN) as StationName[]) {
      await test.step(`${nameOf(size)}, ${station}`, async () => {
        await goTo(page, station);
        await expect(stationKey(page, station)).toBeInViewport({ ratio: 1 });
        for (const thing of MAIN[station](page)) {
          await thing.scrollIntoViewIfNeeded();
          await expect(thing).toBeInViewport();
          const { x, width: wide } = (await thing.boundingBox())!;
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x + Math.min(wide, size.width)).toBeLessThanOrEqual(size.width + 1);
        }
        expect(await overflow(page)).toEqual([]);
      });
    }
  }
  // The narrowest is still there: a thumb, and one line for where a node is.
  await expectThumbsToFit(page);
  await expectOneLineOfPlace(page);
});

/** What of the Shop's panel reaches beyond it, or has words that are cut off; what scrolls by itself may be wider than it shows. */
const cutOff = (page: Page): Promise<string[]> =>
  page.locator('.station').evaluate((station) => {
    const { left, right } = station.getBoundingClientRect();
    const wrong = (element: Element): boolean => {
      if (element.closest('.scroll-box, .spoken-only, svg') !== null || !element.checkVisibility()) return false;
      const box = element.getBoundingClientRect();
      if (box.left < left - 1 || box.right > right + 1) return true;
      return getComputedStyle(element).overflowX !== 'visible' && element.scrollWidth > element.clientWidth + 1;
    };
    return [...station.querySelectorAll('*')]
      .filter(wrong)
      .map((element) => `${element.tagName}.${element.className}: ${element.textContent.slice(0, 40)}`);
  });

/** Words over words, and words beyond the edge, by the boxes that the browser sets them in: of these ink fills the middle. */
function crowded(drawing: Element): string[] {
  const edge = drawing.getBoundingClientRect();
  const boxes = [...drawing.querySelectorAll('text')].map((words) => {
    const { left, right, top, height } = words.getBoundingClientRect();
    return { text: words.textContent, left, right, top: top + 0.2 * height, bottom: top + 0.8 * height };
  });
  const out = boxes.filter(({ left, right }) => left < edge.left - 1 || right > edge.right + 1);
  const over = boxes.flatMap((one, i) =>
    boxes
      .slice(i + 1)
      .filter(
        (other) => one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom,
      )
      .map((other) => `${one.text} over ${other.text}`),
  );
  return [...out.map(({ text }) => `${text} beyond the edge`), ...over];
}

test('at each size: the Shop and the tables of the Frame', async ({ page }) => {
  await start(page);
  await test.step('at each size: every tab of the Shop is in reach, and no part of it runs off sideways or is cut off', async () => {
    await goTo(page, 'Shop');
    for (const size of SIZES) {
      await page.setViewportSize(size);
      for (const name of ['Main hoop', 'Main diagonal']) {
        await chooseTube(page, name);
        for (const part of SHOP_PARTS) {
          await showPart(page, part);
          const where = `${nameOf(size)}, ${name}, ${part}`;
          const tabs = page.getByRole('tablist', { name: 'Parts of the Shop' }).getByRole('tab');
          await expect(tabs).toHaveText(SHOP_PARTS.map((tab) => new RegExp(tab, 'u')));
          const edges = await tabs.evaluateAll((all) => all.map((tab) => tab.getBoundingClientRect().toJSON()));
          for (const { left, right } of edges) {
            expect(left, where).toBeGreaterThanOrEqual(0);
            expect(right, where).toBeLessThanOrEqual(size.width);
          }
          expect(await overflow(page), where).toEqual([]);
          expect(await cutOff(page), where).toEqual([]);
        }
      }
    }
  });

  await test.step("1024 x 768: a hoop's blank and both its ends lie on the bench together, their captions whole", async () => {
    await page.setViewportSize({ width: 1024, height: 768 });
    await goTo(page, 'Shop');
    await chooseTube(page, 'Main hoop');
    for (const drawing of [/^The blank of/, /^End A unrolled/, /^End B unrolled/]) {
      await expect(page.getByRole('img', { name: drawing })).toBeInViewport({ ratio: 1 });
    }
    const captions = page.locator('figcaption');
    await expect(captions).toHaveCount(3);
    for (const caption of [captions.first(), captions.nth(1), captions.last()]) {
      await expect(caption).toBeInViewport({ ratio: 1 });
      expect(await caption.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
    }
  });

  await test.step('at each size: the letters of the blank and of its ends stand within their drawings and not over one another', async () => {
    await goTo(page, 'Shop');
    // At widths between them tests/drawing/blank sets the letters.
    for (const size of LONG ? SIZES : [SIZES[0]!, SIZES.at(-1)!]) {
      await page.setViewportSize(size);
      for (const tube of ['Main hoop', 'Main diagonal', 'Front leg (left)']) {
        await chooseTube(page, tube, 'Ends');
        const drawings = page.getByRole('img', { name: /^The blank of|unrolled/ });
        await expect(drawings).toHaveCount(3);
        for (const drawing of await drawings.all()) {
          expect(await drawing.evaluate(crowded), `${nameOf(size)}, ${tube}`).toEqual([]);
        }
      }
    }
  });

  await test.step('at each size: every column of the tables of members and nodes is in sight', async () => {
    await goTo(page, 'Frame');
    for (const [tab, fewest] of [
      ['Members', 1],
      ['Nodes', 2],
    ] as const) {
      await page.getByRole('tab', { name: tab }).click();
      for (const size of SIZES) {
        await page.setViewportSize(size);
        const tables = page.getByRole('grid', { name: new RegExp(`^${tab}`, 'u') });
        await expect.poll(() => tables.count()).toBeGreaterThanOrEqual(fewest);
        for (const table of await tables.all()) {
          const { right, cells } = await table.evaluate((element) => ({
            right: element.closest('.scroll-box, .table-scroll')!.getBoundingClientRect().right,
            cells: [...element.querySelectorAll('th, td')].map((cell) => cell.getBoundingClientRect().right),
          }));
          expect(Math.max(...cells), `${tab}, ${nameOf(size)}`).toBeLessThanOrEqual(right);
        }
      }
    }
  });
});

/** Where the selected node is stands in one line along the bay's edge. */
async function expectOneLineOfPlace(page: Page): Promise<void> {
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /Nodes/ }).click();
  const readout = page.locator('.bay-readout');
  for (const [table, node] of [
    [/^Nodes on a tube/, 'Stay at the hoop'],
    [/^Nodes on a point/, 'Tower strut foot'],
  ] as const) {
    await choose(page, table, node);
    const { height } = (await readout.boundingBox())!;
    expect(height, node).toBeLessThanOrEqual(32);
    expect(await readout.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
  }
}

/** What a thumb presses is at least 44 pixels each way. */
async function expectThumbsToFit(page: Page): Promise<void> {
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
  await page.getByText('Member by its nodes', { exact: true }).click();
  await measure(page.getByRole('button', { name: 'Add the member' }));
  await goTo(page, 'Checks');
  await measure(page.getByRole('button', { name: /Warning|Add a box/ }));
  await goTo(page, 'Shop');
  await measure(page.getByRole('tab'));
  await measure(page.getByRole('button', { name: /^(Tube before|Next tube|Bend this tube)/ }));
  await showPart(page, 'Files');
  await measure(page.getByRole('button', { name: /\.(csv|json)$/ }));
  expect(small).toEqual([]);
}
