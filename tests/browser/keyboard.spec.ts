/** With the keyboard alone: everything is reached, seen to be reached, and left again. */
import type { Page } from '@playwright/test';
import {
  bay,
  choose,
  chooseTube,
  expect,
  FEW,
  goTo,
  IN_THE_BAY,
  rowOf,
  savedText,
  SHOP_PARTS,
  showPart,
  start,
  stationKey,
  test,
} from './journey.ts';
import type { ShopPart, StationName } from './journey.ts';

interface Stop {
  readonly name: string;
  readonly isSeen: boolean;
}

/** What has the focus, marked so that it is known again; null when it has left the page's own things. */
const stop = (page: Page): Promise<Stop | null> =>
  page.evaluate(() => {
    const element = document.activeElement as HTMLElement | null;
    if (element === null || element === document.body) return null;
    const { dataset: page } = document.documentElement;
    element.dataset['stop'] ??= page['stops'] = String(Number(page['stops'] ?? 0) + 1);
    // The ring may be drawn by what holds the focused thing, for one level.
    const ringed = [element, element.parentElement!].some((shown) => {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(shown);
      return (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || boxShadow !== 'none';
    });
    const { width, height } = element.getBoundingClientRect();
    const words = element.getAttribute('aria-label') ?? element.textContent?.slice(0, 40);
    return {
      name: `${element.dataset['stop']} ${element.tagName} ${words}`,
      isSeen: ringed && width > 0 && height > 0,
    };
  });

/** Every stop that Tab makes in one round: from where the focus leaves the page to where it leaves it again. */
async function walk(page: Page): Promise<Stop[]> {
  const stops: Stop[] = [];
  for (let rounds = 0, presses = 0; presses < 600; presses += 1) {
    await page.keyboard.press('Tab');
    const here = await stop(page);
    if (here === null && (rounds += 1) === 2) return stops;
    // A field for a day is several stops within one: day, month, year and the calendar's button.
    const isSame = here?.isSeen === true && here.name === stops.at(-1)?.name;
    if (here !== null && rounds === 1 && !isSame) stops.push(here);
  }
  throw new Error(`the focus never leaves: ${stops.at(-1)?.name}`);
}

function expectSeenOnce(stops: readonly Stop[], where: string): void {
  expect(
    stops.filter(({ isSeen }) => !isSeen),
    where,
  ).toEqual([]);
  expect(new Set(stops.map(({ name }) => name)).size, `${where}: no stop twice`).toBe(stops.length);
}

/** Something in each part of the Shop that takes the focus, with the main hoop chosen. */
const REACHED: Readonly<Record<ShopPart, string>> = {
  Tubes: ' TD ', // a cell of the list
  Ends: 'Bend this tube', // nothing of its own
  Marks: 'What a slip does',
  Bending: 'Rehearse on the bender',
  Pulls: 'Log the pull',
  Files: 'Take all as one zip',
};

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('every station with the keyboard: entered, gone through, left again', IN_THE_BAY, async ({ page }) => {
    await start(page);
    await test.step('keys lead to the stations, and the bay takes its own', async () => {
      for (const [index, station] of (['Survey', 'Frame', 'Checks', 'Shop'] as const).entries()) {
        await page.keyboard.press(`Alt+${index + 1}`);
        await expect(stationKey(page, station)).toHaveAttribute('aria-current', 'step');
      }
      await bay(page).focus();
      await page.keyboard.press('?');
      const dialog = page.getByRole('dialog', { name: 'Keys' });
      await expect(dialog).toBeVisible();
      await page.keyboard.press('Escape');
      await expect(dialog).toBeHidden();
      await expect(bay(page), 'the focus is back where it was').toBeFocused();
    });

    await test.step('Tab goes through every station and out again, with the focus in sight at every stop', async () => {
      for (const station of ['Survey', 'Frame', 'Checks', 'Shop'] satisfies StationName[]) {
        await goTo(page, station);
        const stops = await walk(page);
        const names = stops.map(({ name }) => name).join('\n');
        for (const reached of [
          'Save',
          'Frame. Arrow keys',
          'Fit the whole frame',
          'Survey',
          'Frame',
          'Checks',
          'Shop',
        ]) {
          expect(names, station).toContain(reached);
        }
        expectSeenOnce(stops, station);
      }
    });
  });
});

async function expectNames(page: Page, where: string): Promise<void> {
  for (const role of ['button', 'textbox', 'combobox', 'radio', 'checkbox', 'tab', 'grid', 'row'] as const) {
    await expect(page.getByRole(role, { name: /^$/ }), `${where}: a ${role} without a name`).toHaveCount(0);
  }
}

/** Presses Tab until this has the focus. */
async function tabTo(page: Page, is: () => Promise<boolean>): Promise<void> {
  for (let presses = 0; presses < 150; presses += 1) {
    if (await is()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('not reached by Tab');
}

test('every part and control with the keyboard: reached, named, and nothing deleted on the way', async ({ page }) => {
  test.slow(); // hundreds of presses of Tab, each looked at
  await start(page);
  await test.step('a station is entered, a row chosen and a number changed without a mouse', async () => {
    const key = stationKey(page, 'Survey');
    await tabTo(page, () => key.evaluate((element) => element === document.activeElement));
    await page.keyboard.press('Enter');
    await expect(key).toHaveAttribute('aria-current', 'step');

    const grid = page.getByRole('grid', { name: /^Measured points/ });
    await tabTo(page, () => grid.evaluate((element) => element.contains(document.activeElement)));
    await page.keyboard.press('ArrowDown');
    const row = rowOf(page, /^Measured points/, 'Floor at B-pillar, right');
    await expect(row).toHaveAttribute('aria-selected', 'true');
    // Its place comes of readings: no cell of it is typed before that is.
    const typed = page.getByRole('button', { name: 'Type its place' });
    await tabTo(page, () => typed.evaluate((element) => element === document.activeElement));
    await page.keyboard.press('Enter');
    await expect(typed).toHaveCount(0);
    await tabTo(page, () => grid.evaluate((element) => element.contains(document.activeElement)));
    // The way out of the table led over the row's last cell, which is where it is entered again: beside the height.
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Enter');
    await page.keyboard.type('2 1/2');
    await page.keyboard.press('Enter');
    await expect(row).toContainText('2 1/2 in');
    expect(JSON.parse(await savedText(page)).points[1].position[2]).toBeCloseTo(63.5, 9);
    await page.keyboard.press('Control+z');
    await expect(row).not.toContainText('2 1/2 in');
  });

  await test.step('Tab goes through every part of the Shop and out again, by the tab of that part alone', async () => {
    await goTo(page, 'Shop');
    for (const part of SHOP_PARTS) {
      await showPart(page, part);
      const stops = await walk(page);
      expectSeenOnce(stops, part);
      const tabs = stops.filter(({ name }) => SHOP_PARTS.some((each) => name.endsWith(` BUTTON ${each}`)));
      expect(tabs.map(({ name }) => name.split(' ').at(-1))).toEqual([part]);
      const names = stops.map(({ name }) => name).join('\n');
      for (const reached of ['Next tube', 'Bend this tube', REACHED[part]]) expect(names, part).toContain(reached);
    }
  });

  await test.step('Tab passes by whatever deletes; Delete in the row and Alt + Delete in a card do it', async () => {
    const passedBy = async (where: string): Promise<void> => {
      const names = (await walk(page)).map(({ name }) => name);
      expect(names.length, where).toBeGreaterThan(20);
      expect(
        names.filter((name) => /delete|take .* out/iu.test(name)),
        where,
      ).toEqual([]);
    };
    await goTo(page, 'Survey');
    await page.getByText('Body lines', { exact: true }).click();
    await choose(page, /^Measured points/, 'Floor at B-pillar, left');
    await passedBy('a point and the body lines');
    await goTo(page, 'Frame');
    await choose(page, /^Members/, 'Main hoop');
    await expect(page.getByRole('region', { name: 'Bend 1' }), 'fetched').toBeVisible();
    await passedBy('a member');
    await page.getByRole('tab', { name: 'Tube & dies' }).click();
    await expect(page.getByRole('heading', { name: 'Feet' }), 'fetched').toBeVisible();
    await passedBy('tube and dies');

    // A line of the body: from its field to its Delete, which Enter then presses.
    await goTo(page, 'Survey');
    await page.getByText('Body lines', { exact: true }).click();
    const lines = JSON.parse(await savedText(page)).bodyLines as { name: string }[];
    await page.getByRole('textbox', { name: 'Body line' }).nth(1).focus();
    await page.keyboard.press('Alt+Delete');
    const button = page.getByRole('button', { name: `Delete body line ${lines[1]!.name}` });
    await expect(button).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(button).toHaveCount(0);
    const left = JSON.parse(await savedText(page)).bodyLines as { name: string }[];
    expect(left.map(({ name }) => name)).toEqual(lines.toSpliced(1, 1).map(({ name }) => name));
    await page.keyboard.press('Control+z');

    // A row: what others stand on is refused, in words, and stays.
    await choose(page, /^Measured points/, 'Floor at B-pillar, left');
    await page.keyboard.press('Delete');
    await expect(page.getByRole('alert')).toContainText('uses it');
    await expect(rowOf(page, /^Measured points/, 'Floor at B-pillar, left')).toBeVisible();

    // In a field the key is the text's.
    const name = page
      .getByRole('article', { name: 'Point Floor at B-pillar, left' })
      .getByRole('textbox', { name: 'Point' });
    await name.focus();
    await page.keyboard.press('Delete');
    await page.keyboard.press('Escape');
    expect(JSON.parse(await savedText(page)).points[0].name).toBe('Floor at B-pillar, left');
  });

  await test.step('every control has a name to be called by', async () => {
    for (const station of ['Survey', 'Frame', 'Checks', 'Shop'] satisfies StationName[]) {
      await goTo(page, station);
      if (station === 'Survey') await choose(page, /^Measured points/, 'Floor at B-pillar, left');
      if (station === 'Frame') await choose(page, /^Members/, 'Main hoop');
      await page.getByRole('button', { name: 'Menu' }).click();
      await expectNames(page, station);
      await page.keyboard.press('Escape');
    }
    for (const part of SHOP_PARTS) {
      await chooseTube(page, 'Main hoop', part);
      await expectNames(page, part);
    }
  });
});
