/** Nodes placed by what is measured in the shop, and a bar made level. */
import type { Locator, Page } from '@playwright/test';
import { choose, expect, goTo, start, test } from './journey.ts';

async function nodeCard(page: Page, name: string): Promise<Locator> {
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /^Nodes/ }).click();
  await choose(page, /^Nodes/, name);
  return page.getByRole('article', { name: `Node ${name}` });
}

const field = (within: Locator, label: string | RegExp): Locator => within.getByLabel(label, { exact: true });
const chosen = (select: Locator): Promise<string> =>
  select.evaluate((each: HTMLSelectElement) => each.selectedOptions[0]!.text);
/** The place in the head of the card: along, offset, height as they are read. */
const place = (card: Locator): Promise<string> => card.locator('.place').innerText();

const WAYS = [
  'at fixed figures',
  'on a point',
  'off the trim by a gap',
  'on a tube',
  'on a tube at a height',
  'along a line',
  'in line with others',
];

test('a bar made level, and a node placed every way', async ({ page }) => {
  await start(page);
  await test.step('a straight member is made level: its end on a tube takes the height of the other, keeps it, and a second time says so', async () => {
    await choose(page, 'Members in build order', 'Sill bar');
    const member = page.getByRole('article', { name: 'Member Sill bar' });
    const level = member.getByRole('button', { name: 'Level', exact: true });
    await level.focus();
    await page.keyboard.press('Enter');
    await expect(member).toContainText(/Level: end [AB] goes with the height of end [AB]/u);
    await level.click();
    await expect(member.getByRole('alert')).toContainText('level already');
    await choose(page, 'Members in build order', 'Main hoop');
    const hoop = page.getByRole('article', { name: 'Member Main hoop' });
    await hoop.getByRole('button', { name: 'Level', exact: true }).click();
    await expect(hoop.getByRole('alert')).toContainText('corners');

    const card = await nodeCard(page, 'Sill bar at the front leg');
    expect(await chosen(field(card, 'Placed'))).toBe('on a tube at a height');
    expect(await chosen(field(card, 'Height as'))).toBe('node Sill bar at the hoop');
    const height = (text: string) => /Height[\s\S]*?(\d[\d /]*)/u.exec(text)![1]!.trim();
    const front = height(await place(card));
    expect(height(await place(await nodeCard(page, 'Sill bar at the hoop')))).toBe(front);
    await page.keyboard.press('Control+z');
    expect(await chosen(field(await nodeCard(page, 'Sill bar at the front leg'), 'Placed'))).toBe('on a tube');
  });

  await test.step('two that end at one joint change places, and nothing else does', async () => {
    const card = await nodeCard(page, 'Stay at the hoop');
    const joint = card.getByRole('list').filter({ hasText: 'runs through' }).getByRole('listitem');
    await expect(joint).toContainText([
      'Main hoop, runs through',
      'Rear stay (left), end A coped to Main hoop',
      'Main diagonal, end B coped to Main hoop and Rear stay (left)',
    ]);
    await card.getByRole('button', { name: 'Fit Main diagonal before Rear stay (left)' }).click();
    await expect(joint).toContainText(['Main hoop', 'Main diagonal, end B coped to Main hoop', 'and Main diagonal']);
    await card.getByRole('button', { name: 'Draw the joint apart' }).click();
    await card.getByRole('button', { name: 'Draw the joint together' }).click();
    await page.keyboard.press('Control+z');
    await expect(joint).toContainText(['Main hoop', 'Rear stay (left)', 'Main diagonal']);
  });

  await test.step('a node is placed another way by its shop name, stays where it is, and shows what is measured', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    const card = await nodeCard(page, 'Tower strut foot');
    const placed = field(card, 'Placed');
    const before = await place(card);
    for (const way of WAYS) {
      // With the keyboard alone: the list takes the letters of a choice.
      await placed.focus();
      await placed.selectOption({ label: way });
      await expect(placed).toHaveValue(/./);
      expect(await chosen(placed)).toBe(way);
      expect(await place(card)).toBe(before);
      await expect(card.locator('figure.way figcaption')).not.toBeEmpty();
      // All that the place is given by can be reached and is named, and nothing is wider than the screen.
      const inputs = card.locator('input, select');
      for (const input of await inputs.all()) {
        await input.focus();
        await expect(input).toBeFocused();
        expect((await input.boundingBox())!.x + (await input.boundingBox())!.width).toBeLessThanOrEqual(390);
      }
      const names = await inputs.evaluateAll((all) =>
        all.map((each) => (each as HTMLInputElement).labels?.[0]?.textContent),
      );
      expect(names.every((name) => name !== undefined && name !== null && name.length > 1)).toBe(true);
      expect(new Set(names).size).toBe(names.length);
    }
    // Where no line through two nodes crosses a tube there it says so, and the node stays as it was.
    await placed.selectOption({ label: 'where a line crosses a tube' });
    await expect(card.getByRole('alert')).toContainText('no line through two other nodes');
    expect(await chosen(placed)).toBe('in line with others');
    // In line with a node: its height, and one inch more.
    await field(card, 'Height as').selectOption({ label: 'node Dash bar, middle' });
    const more = field(card, /^Height plus/);
    await more.fill('1');
    await more.press('Enter');
    expect(await place(card)).toContain('20 1/2');
  });
});
