/** Several rows at once: marked by mouse, keyboard and finger, moved, set and deleted in one step each. */
import type { Page } from '@playwright/test';
import { choose, expect, FEW, goTo, rowOf, savedText, start, test, undoKey } from './journey.ts';

const POINTS = /^Measured points/;
const MEMBERS = 'Members in build order';

interface Saved {
  readonly points: readonly { readonly name: string; readonly position: readonly number[] }[];
  readonly members: readonly { readonly name: string; readonly section: string; readonly batch?: string }[];
}
const saved = async (page: Page): Promise<Saved> => JSON.parse(await savedText(page)) as Saved;

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('points: listed below the fold, moved together, deleted together', async ({ page }) => {
    await start(page);
    await test.step('a list that is longer than its box says how many rows are below', async () => {
      await goTo(page, 'Survey');
      const { points } = await saved(page);
      const more = page.getByText(/more rows below/);
      await expect(more).toBeVisible();
      const box = page.locator('.table-scroll').first();
      /** Rows that are hidden by half or more. */
      const below = () =>
        box.evaluate((element) => {
          const { bottom } = element.getBoundingClientRect();
          return [...element.querySelectorAll('tbody tr')].filter((row) => {
            const { top, height } = row.getBoundingClientRect();
            return top + height / 2 >= bottom;
          }).length;
        });
      const said = async () => Number(/\d+/u.exec(await more.innerText())![0]);
      expect(await said()).toBe(await below());
      expect(await said()).toBeLessThan(points.length);
      await box.evaluate((element) => element.scrollTo(0, 500));
      await expect.poll(said).toBe(await below());
      await box.evaluate((element) => element.scrollTo(0, element.scrollHeight));
      await expect(page.getByText(`the end of ${points.length} rows`)).toBeVisible();
    });

    await test.step('points marked by keyboard are moved together, in one step that is taken back as one', async () => {
      await goTo(page, 'Survey');
      const before = await saved(page);
      await choose(page, POINTS, before.points[1]!.name);
      await page.keyboard.press('Shift+ArrowDown');
      await page.keyboard.press('Shift+ArrowDown');
      await expect(page.getByRole('region', { name: 'The 3 marked points' })).toBeVisible();
      await page.keyboard.press('Space');
      await expect(page.getByRole('region', { name: 'The 2 marked points' })).toBeVisible();
      const form = page.getByRole('form', { name: 'Move 2 points' });
      await form.getByRole('textbox', { name: 'Up' }).fill('1/2 + 1/2');
      await form.getByRole('textbox', { name: 'Left' }).fill('-10mm');
      await form.getByRole('textbox', { name: 'Left' }).press('Enter');
      await expect(form.getByRole('textbox', { name: 'Up' })).toHaveValue('');
      const after = await saved(page);
      for (const [index, { position }] of before.points.entries()) {
        const by = index === 1 || index === 2 ? [0, -10, 25.4] : [0, 0, 0];
        position.forEach((part, axis) => expect(after.points[index]!.position[axis]).toBeCloseTo(part + by[axis]!, 9));
      }
      // A second press has nothing to move by.
      await form.getByRole('button', { name: 'Move 2 points' }).click();
      await expect(form.getByRole('alert')).toContainText('type how far');
      await undoKey(page).click();
      expect(await saved(page)).toEqual(before);
      await page.getByRole('button', { name: 'Mark none' }).click();
    });

    await test.step('points that nothing stands on are deleted together', async () => {
      await goTo(page, 'Survey');
      const before = await saved(page);
      await page.getByText('Paste many points', { exact: true }).click();
      await page.getByRole('textbox', { name: /^Rows from a spreadsheet/ }).fill('One\t1\t2\t3\nTwo\t4\t5\t6');
      await page.getByRole('button', { name: 'Add 2 points' }).click();
      await choose(page, POINTS, 'One');
      await page.keyboard.press('Shift+ArrowDown');
      await expect(page.getByRole('region', { name: 'The 2 marked points' })).toBeVisible();
      await page.keyboard.press('Delete');
      await expect(rowOf(page, POINTS, 'One')).toHaveCount(0);
      expect(await saved(page)).toEqual(before);
    });
  });
});

test('members: marked, asked about, and drawn with the arrow keys', async ({ page }) => {
  await start(page);
  await test.step('members marked by mouse and finger take a batch together, and are not deleted unasked while others stand on them', async () => {
    const before = await saved(page);
    const [first, second, third] = before.members.map(({ name }) => name);
    await rowOf(page, MEMBERS, first!)
      .getByRole('gridcell', { name: first!, exact: true })
      .click({ modifiers: ['Control'] });
    await page.getByRole('checkbox', { name: `Mark ${third!}` }).check();
    const card = page.getByRole('region', { name: 'The 2 marked members' });
    const field = card.getByRole('combobox', { name: 'Batch of all marked' });
    await field.fill('H-204');
    await field.press('Enter');
    const { members } = await saved(page);
    expect(members.map(({ batch }) => batch)).toEqual(
      before.members.map(({ batch }, index) => (index === 0 || index === 2 ? 'H-204' : batch)),
    );
    await card.getByRole('button', { name: 'Delete the marked 2 members' }).click();
    await expect(page.getByRole('region', { name: 'Before deleting 2 members' })).toContainText('Stand on');
    await page.getByRole('button', { name: 'Keep 2 members' }).click();
    await card.getByRole('button', { name: 'Mark none' }).click();
    await expect(card).toBeHidden();
    await expect(rowOf(page, MEMBERS, second!)).toBeVisible();
    await page.getByRole('button', { name: 'Mark several' }).click();
    await expect(page.getByRole('checkbox')).toHaveCount(0);
  });

  await test.step('a bar that carries others is asked about once: alone, with them, or kept', async () => {
    const before = await saved(page);
    await choose(page, MEMBERS, 'Main diagonal');
    const row = rowOf(page, MEMBERS, 'Main hoop');
    await choose(page, MEMBERS, 'Main hoop');
    await page.keyboard.press('Delete');
    const ask = page.getByRole('region', { name: 'Before deleting Main hoop' });
    await expect(ask).toBeFocused();
    await expect(ask).toContainText('Stand on Main hoop');
    await page.keyboard.press('Escape');
    await expect(ask).toBeHidden();
    expect(await saved(page)).toEqual(before);

    await page.getByRole('button', { name: 'Delete the member' }).click();
    await ask.getByRole('button', { name: 'Delete Main hoop alone' }).click();
    await expect(row).toHaveCount(0);
    expect((await saved(page)).members).toHaveLength(before.members.length - 1);
    await undoKey(page).click();
    expect(await saved(page)).toEqual(before);

    await choose(page, MEMBERS, 'Main hoop');
    await page.getByRole('button', { name: 'Delete the member' }).click();
    await ask.getByRole('button', { name: 'Delete what stands on it too' }).click();
    await expect(row).toHaveCount(0);
    expect((await saved(page)).members.length).toBeLessThan(before.members.length - 5);
    await undoKey(page).click();
    expect(await saved(page)).toEqual(before);
  });

  await test.step('a member is drawn with the arrow keys: each list goes on showing the node that it holds', async () => {
    await page.getByText('Member by its nodes', { exact: true }).click();
    const from = page.getByRole('combobox', { name: 'From node' });
    await from.focus();
    for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowDown');
    await expect(from).toBeFocused();
    const chosen = await from.inputValue();
    const { nodes } = JSON.parse(await savedText(page)) as { nodes: { id: string }[] };
    expect(nodes.map(({ id }) => id)).toContain(chosen.replace("'", ''));
    const next = page.getByRole('combobox', { name: 'then to' });
    await expect(next).toHaveCount(1);
    await next.selectOption(nodes[7]!.id);
    await expect(next).toHaveCount(2);
    await expect(next.first()).toHaveValue(nodes[7]!.id);
    await expect(from).toHaveValue(chosen);
  });
});
