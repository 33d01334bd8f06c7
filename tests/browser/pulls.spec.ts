/**
 * The log of pulls: two readings tell slack from spring, and the machine's angle follows. Readings are common practice:
 * 28 pulled gave 25.5 net, 65 gave 61. By hand, b = 1.5 / 35.5, a = 2.5 - 25.5 b = 1.4225 degrees; for a net n, n + a + b n.
 */
import type { Locator, Page } from '@playwright/test';
import { choose, enter, expect, goTo, savedText, start, test, tubeRow, undoKey, untilKept } from './journey.ts';

const SPRING = 1.5 / 35.5;
const SLACK = 2.5 - 25.5 * SPRING;

const form = (page: Page): Locator => page.getByRole('form', { name: 'Log a pull' });
const field = (page: Page, name: string): Locator => form(page).getByRole('textbox', { name });
const law = (page: Page): Locator => page.locator('.pull-law');

/** The main hoop's bends as the Shop tells them: net angle and what is pulled, degrees. */
async function bends(page: Page): Promise<{ net: number; pulled: number }[]> {
  const rows = page.getByRole('region', { name: 'Bends' }).getByRole('table').first().getByRole('row');
  const cells = await rows.evaluateAll((all) =>
    all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')),
  );
  return cells
    .filter((row) => /^\d+$/u.test(row[0] ?? ''))
    .map((row) => ({ net: Number.parseFloat(row[3]!), pulled: Number.parseFloat(row[4]!) }));
}

async function logPull(page: Page, pulled: string, net: string): Promise<void> {
  await field(page, 'Pulled').fill(pulled);
  await field(page, 'Net, let go').fill(net);
  await form(page).getByRole('button', { name: 'Log the pull' }).click();
}

async function toHoop(page: Page): Promise<void> {
  await goTo(page, 'Shop');
  await tubeRow(page, 'Main hoop').getByRole('gridcell').nth(1).click();
}

test('two pulls change what the main hoop is pulled to; a reload keeps them, undo takes them back', async ({
  page,
}) => {
  await start(page);
  await toHoop(page);
  const atFirst = await savedText(page);
  await expect(law(page)).toContainText('reads low');
  const before = await bends(page);
  const steep = before.findIndex(({ net }) => Math.round(net) === 76);
  expect(steep).toBeGreaterThanOrEqual(0);

  await logPull(page, '28', '25.5');
  await expect(law(page)).toContainText('One angle cannot tell slack from spring');
  await logPull(page, '65', '61');
  await expect(law(page)).toContainText(
    'From 2 pulls: pull 1.4° plus 4.2 % past the net angle. 90° net: pull to 95.2°.',
  );
  const after = await bends(page);
  for (const { net, pulled } of after) expect(Math.abs(pulled - (net + SLACK + SPRING * net))).toBeLessThan(0.11);
  expect(after[steep]!.pulled).toBeGreaterThan(before[steep]!.pulled + 2);
  await expect(page.getByRole('img', { name: /^What a bend opens by/ })).toBeVisible();

  const work = await savedText(page);
  expect(JSON.parse(work).pulls).toEqual([
    { die: 'die-175', section: 'main', pulled: 28, net: 25.5, on: '' },
    { die: 'die-175', section: 'main', pulled: 65, net: 61, on: '' },
  ]);
  await untilKept(page);
  await page.reload();
  await toHoop(page);
  expect(await savedText(page)).toBe(work);
  expect(await bends(page)).toEqual(after);

  await undoKey(page).click();
  await undoKey(page).click();
  expect(await bends(page)).toEqual(before);
  expect(await savedText(page)).toBe(atFirst);
});

test('a reading that is none is refused beside its field, and nothing is logged', async ({ page }) => {
  await start(page);
  await toHoop(page);
  const atFirst = await savedText(page);
  await form(page).getByRole('button', { name: 'Log the pull' }).click();
  await expect(field(page, 'Pulled')).toHaveAccessibleDescription(/type an angle/);
  await expect(field(page, 'Net, let go')).toHaveAccessibleDescription(/type an angle/);
  for (const [text, reason] of [
    ['400', /full turn/],
    ['201', /beyond 200/],
    ['-5', /more than 0/],
    ['25,5', /use a point: 25.5/],
  ] as const) {
    await logPull(page, '28', text);
    await expect(field(page, 'Net, let go')).toHaveAccessibleDescription(reason);
    await expect(field(page, 'Net, let go')).toBeFocused();
  }
  expect(await savedText(page)).toBe(atFirst);
  await field(page, 'Net, let go').fill('29');
  await expect(form(page)).toContainText('Net is above pulled');
  await form(page).getByRole('button', { name: 'Log the pull' }).click();
  expect(JSON.parse(await savedText(page)).pulls).toHaveLength(1);
  await expect(page.getByText('Pull 1 reads 29.0° net from 28.0° pulled')).toBeVisible();
});

test('a pull is corrected in the list and deleted; pulls that do not agree are named', async ({ page }) => {
  await start(page);
  await toHoop(page);
  await logPull(page, '65', '61');
  await logPull(page, '68', '61');
  await expect(page.getByText('Pulls 1 and 2 do not agree')).toBeVisible();
  const list = page.getByRole('grid', { name: /^Pulls/ });
  const net = list.getByRole('row').nth(2).getByRole('gridcell').nth(2);
  await net.click();
  await page.keyboard.type('63.5');
  await page.keyboard.press('Enter');
  await expect(net).toHaveText('63.5°');
  await expect(page.getByText('do not agree')).toHaveCount(0);
  await page.getByRole('button', { name: 'Delete pull 1' }).click();
  expect(JSON.parse(await savedText(page)).pulls).toMatchObject([{ pulled: 68, net: 63.5 }]);
  await undoKey(page).click();
  await undoKey(page).click();
  await expect(page.getByText('Pulls 1 and 2 do not agree')).toBeVisible();
});

test("a member's batch goes by its own pulls, and the die's radius by them too", async ({ page }) => {
  await start(page);
  await choose(page, 'Members in build order', 'Main hoop');
  await enter(
    page.getByRole('article', { name: /^Member/ }).getByRole('combobox', { name: 'Batch of the tube' }),
    'H-204',
  );
  await toHoop(page);
  await expect(field(page, 'Batch')).toHaveValue('H-204');
  await logPull(page, '28', '25.5');
  await logPull(page, '65', '61');
  await expect(law(page)).toContainText('From 2 pulls of batch H-204');
  const blank = await tubeRow(page, 'Main hoop').getByRole('gridcell').nth(2).innerText();
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: 'Tube & dies' }).click();
  const die = page.getByRole('article', { name: /^Die 1 3\/4/ });
  await die.getByRole('combobox', { name: /^Radius/ }).selectOption({ label: 'as the pulls say' });
  expect(JSON.parse(await savedText(page)).dies[0].radius).toBe('from-pulls');
  await goTo(page, 'Shop');
  await expect(tubeRow(page, 'Main hoop').getByRole('gridcell').nth(2)).not.toHaveText(blank);
});

test('390 x 844: chart, list and form stay within the width, and thumbs find the key', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await start(page);
  await toHoop(page);
  for (const [pulled, net] of [
    ['28', '25.5'],
    ['65', '61'],
    ['95', '90.2'],
  ] as const) {
    await logPull(page, pulled, net);
  }
  const list = page.getByRole('grid', { name: /^Pulls/ });
  for (const thing of [page.getByRole('img', { name: /^What a bend opens by/ }), list, form(page)]) {
    await thing.scrollIntoViewIfNeeded();
    const { x, width } = (await thing.boundingBox())!;
    expect(x).toBeGreaterThanOrEqual(0);
    expect(x + width).toBeLessThanOrEqual(390);
    expect(await thing.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
  }
  const key = (await form(page).getByRole('button', { name: 'Log the pull' }).boundingBox())!;
  expect(Math.min(key.width, key.height)).toBeGreaterThanOrEqual(44);
});
