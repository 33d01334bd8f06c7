/** A page that nobody touches draws nothing: a laptop on the bench keeps its battery. */
import { countDraws, drawn, untilStill } from './drawn.ts';
import { FEW, IN_THE_BAY, bay, choose, expect, goTo, start, test } from './journey.ts';

test.use(FEW);

test(
  'two seconds at rest draw no frame, in the Frame and with a tube chosen in the Shop',
  IN_THE_BAY,
  async ({ page }) => {
    await countDraws(page);
    await start(page);
    // What is found beside the page comes into the bay, and is drawn, when it comes.
    await goTo(page, 'Checks');
    await expect(page.getByText('The rule book, the inspector and licensed practice decide.').first()).toBeVisible();
    await expect(page.getByText(/not rehearsed at the bender yet/u)).toHaveCount(0);
    await goTo(page, 'Frame');
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
  },
);
