/** The first start: a whole cage stands there, three hints lie over it, and nothing is asked of anyone else. */
import { demoText, runFab } from '../command-line.ts';
import { FEW, IN_THE_BAY, SIZES, bay, expect, goTo, stationKey, test, untilThere } from './journey.ts';

test(
  'shows the demo cage, hints beside it, with as many tubes as the command line makes of it',
  IN_THE_BAY,
  async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto('/');
    const hints = (await page.getByRole('complementary', { name: 'Hints' }).boundingBox())!;
    const ground = (await bay(page).boundingBox())!;
    expect(ground.y, 'the hints cover nothing of the bay').toBeGreaterThanOrEqual(hints.y + hints.height - 1);
    await page.getByRole('button', { name: 'Got it' }).click();
    await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(JSON.parse(demoText()).name);
    await expect(bay(page)).toBeVisible();
    await expect(stationKey(page, 'Frame')).toHaveAttribute('aria-current', 'step');

    await goTo(page, 'Shop');
    const tubes = JSON.parse((await runFab(demoText())).files.get('fabrication.json')!).tubes as unknown[];
    expect(tubes.length).toBeGreaterThanOrEqual(24);
    const rows = page.getByRole('grid', { name: 'Tubes in build order' }).getByRole('row');
    await expect(rows).toHaveCount(1 + tubes.length);
  },
);

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('gives hints once: dismissed, they stay away after a reload', async ({ page }) => {
    await page.goto('/');
    const hints = page.getByRole('complementary', { name: 'Hints' });
    await expect(hints.getByRole('listitem')).toHaveCount(3);
    await hints.getByRole('button').click();
    await expect(hints).toBeHidden();
    await page.reload();
    await untilThere(page);
    await expect(hints).toBeHidden();
  });

  test('at each size: what is wrong with the storage is read before the hints', async ({ page }) => {
    await page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('by the test', 'UnknownError');
      };
    });
    await page.goto('/');
    await untilThere(page);
    const strips = page.locator('.notice');
    await expect(strips).toHaveCount(2);
    await expect(page.getByText('Nothing can be saved here now.')).toBeVisible();
    for (const size of SIZES.toReversed()) {
      await page.setViewportSize(size);
      for (const words of await strips.locator('p').all()) {
        const isOnTop = await words.evaluate((line) => {
          const { left, top } = line.getClientRects()[0]!;
          return line.contains(document.elementFromPoint(left + 4, top + 8));
        });
        expect(isOnTop).toBe(true);
      }
    }
    await page.getByRole('button', { name: 'Close this message' }).click();
    await expect(strips).toHaveCount(1);
  });
});
