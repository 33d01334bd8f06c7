/** Points, nodes and members come, are renamed and go; what others lean on stays, and says who leans on it. */
import type { Locator, Page } from '@playwright/test';
import { choose, enter, expect, FEW, goTo, rowOf, savedText, start, test } from './journey.ts';

test.use(FEW);

const POINTS = /^Measured points/;
const MEMBERS = 'Members in build order';

/** As a hand does it: where the button is when the press begins, whatever moves meanwhile. */
async function pressAndLetGo(page: Page, button: Locator): Promise<void> {
  await button.scrollIntoViewIfNeeded();
  const { x, y, width, height } = (await button.boundingBox())!;
  await page.mouse.move(x + width / 2, y + height - 4);
  await page.mouse.down();
  await page.waitForTimeout(100);
  await page.mouse.up();
}

test('points come and go', async ({ page }) => {
  await start(page);
  await test.step('a point is added, renamed and deleted; one that a node hangs on is not', async () => {
    const atFirst = await savedText(page);
    await goTo(page, 'Survey');
    await page.getByText('Add a point', { exact: true }).click();
    await enter(page.getByRole('textbox', { name: 'What was measured' }), 'Pedal box');
    await enter(page.getByRole('textbox', { name: 'Along' }), `3'`);
    await enter(page.getByRole('textbox', { name: 'Offset, + left' }), '-21 1/2');
    // Straight from the last field to the button: leaving the field must not move the button from under the press.
    await page.getByRole('textbox', { name: 'Height' }).click();
    await page.keyboard.type('100mm');
    await expect(page.getByRole('textbox', { name: 'Height' })).toHaveAccessibleDescription(/100\.0 mm/);
    await pressAndLetGo(page, page.getByRole('button', { name: 'Add the point' }));
    const card = page.getByRole('article', { name: 'Point Pedal box' });
    await expect(card).toBeVisible();
    const added = JSON.parse(await savedText(page)).points.at(-1) as { name: string; position: number[] };
    expect(added.name).toBe('Pedal box');
    [914.4, -546.1, 100].forEach((mm, axis) => expect(added.position[axis]).toBeCloseTo(mm, 9));

    await enter(card.getByRole('textbox', { name: 'Point' }), 'Pedals');
    await expect(rowOf(page, POINTS, 'Pedals')).toBeVisible();
    await page.getByRole('button', { name: 'Delete the point' }).click();
    await expect(rowOf(page, POINTS, 'Pedals')).toHaveCount(0);
    expect(await savedText(page)).toBe(atFirst);

    await choose(page, POINTS, 'Floor at B-pillar, left');
    await page.getByRole('button', { name: 'Delete the point' }).click();
    await expect(page.getByRole('alert')).toContainText('Hoop foot');
    expect(await savedText(page)).toBe(atFirst);
  });

  await test.step('Enter in the last field adds the point; a text that cannot be read adds none', async () => {
    const atFirst = await savedText(page);
    await goTo(page, 'Survey');
    const form = page.getByRole('form', { name: 'Add a point' });
    const height = form.getByRole('textbox', { name: 'Height' });
    await enter(form.getByRole('textbox', { name: 'What was measured' }), 'Pedal box');
    await expect(form.getByRole('textbox', { name: 'Along' }), 'asked for next').toBeFocused();
    await form.getByRole('textbox', { name: 'Along' }).fill('0');
    await form.getByRole('textbox', { name: 'Offset, + left' }).fill('0');
    await height.fill('1,5');
    await form.getByRole('button', { name: 'Add the point' }).click();
    await expect(form.getByRole('alert')).toContainText('use a point: 1.5');
    await expect(height).toBeFocused();
    expect(await savedText(page)).toBe(atFirst);
    await enter(height, '1 + 1');
    await expect(page.getByRole('article', { name: 'Point Pedal box' })).toBeVisible();
    const added = JSON.parse(await savedText(page)).points as { name: string; position: number[] }[];
    expect(added).toHaveLength(JSON.parse(atFirst).points.length + 1);
    expect(added.at(-1)!.position[2]).toBeCloseTo(50.8, 9);

    // What was measured is in the job: a second press has nothing to add.
    await form.getByRole('button', { name: 'Add the point' }).click();
    await expect(form.getByRole('textbox', { name: 'Along' })).toBeFocused();
    await expect(form.getByRole('alert').first()).toContainText('type a length');
    expect(JSON.parse(await savedText(page)).points).toHaveLength(added.length);
  });
});

test('nodes and members come and go', async ({ page }) => {
  await start(page);
  await test.step('a node is added, renamed and deleted; one that members run through is not', async () => {
    const atFirst = await savedText(page);
    await page.getByRole('tab', { name: /^Nodes/ }).click();
    await page.getByText('Add a node', { exact: true }).click();
    await page.getByRole('button', { name: 'at fixed figures', exact: true }).click();
    const card = page.getByRole('article', { name: /^Node/ });
    await expect(card).toContainText('None yet.');
    await enter(card.getByRole('textbox', { name: 'Name' }), 'Spare');
    await expect(rowOf(page, /^Nodes/, 'Spare')).toBeVisible();
    await page.getByRole('button', { name: 'Delete the node' }).click();
    await expect(rowOf(page, /^Nodes/, 'Spare')).toHaveCount(0);
    expect(await savedText(page)).toBe(atFirst);

    await choose(page, /^Nodes/, 'Hoop foot');
    await page.getByRole('button', { name: 'Delete the node' }).click();
    await expect(page.getByRole('alert')).toContainText('Main hoop');
    expect(await savedText(page)).toBe(atFirst);
  });

  await test.step('a member is drawn, renamed and deleted; one that nodes stand on is not', async () => {
    const atFirst = await savedText(page);
    await page.getByRole('tab', { name: 'Members' }).click();
    await page.getByText('Member by its nodes', { exact: true }).click();
    await page.getByRole('combobox', { name: 'From node' }).selectOption({ label: 'Stay foot on the tower' });
    await page.getByRole('combobox', { name: 'then to' }).selectOption({ label: 'Diagonal above the right foot' });
    await page.getByRole('button', { name: 'Add the member' }).click();
    const card = page.getByRole('article', { name: /^Member/ });
    await enter(card.getByRole('textbox', { name: 'Name' }), 'Long one');
    await expect(rowOf(page, MEMBERS, 'Long one')).toHaveAttribute('aria-selected', 'true');
    expect(JSON.parse(await savedText(page)).members.at(-1)).toMatchObject({
      name: 'Long one',
      path: ['stay-foot', 'diagonal-foot'],
    });
    await page.getByRole('button', { name: 'Delete the member' }).click();
    await expect(rowOf(page, MEMBERS, 'Long one')).toHaveCount(0);
    // All but the numbers, which are now written down: that of the tube that went is not given again.
    const { numbers, lastNumber, ...left } = JSON.parse(await savedText(page));
    expect(left).toEqual(JSON.parse(atFirst));
    expect(Object.values<number>(numbers).toSorted((a, b) => a - b)).toEqual(
      Array.from({ length: lastNumber - 1 }, (_, index) => index + 1),
    );
    const withNumbers = await savedText(page);

    await choose(page, MEMBERS, 'Main hoop');
    await page.getByRole('button', { name: 'Delete the member' }).click();
    await expect(page.getByRole('region', { name: 'Before deleting Main hoop' })).toContainText('Stay at the hoop');
    await page.getByRole('button', { name: 'Keep Main hoop' }).click();
    expect(await savedText(page)).toBe(withNumbers);
  });
});
