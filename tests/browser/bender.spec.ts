/** The bender's set-up in Frame: what is typed stands in the job, what cannot be is refused beside its field, all of it is undone. */
import type { Locator, Page } from '@playwright/test';
import { FEW, enter, expect, goTo, savedText, start, test, undoKey } from './journey.ts';

test.use(FEW);

const die = (page: Page): Locator => page.getByRole('article', { name: /^Die/ }).first();
const field = (page: Page, name: string): Locator => die(page).getByRole('textbox', { name });

test('a bender is set up anew, with a bench and a wall; undo takes all of it back', async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /Tube/ }).click();
  const atFirst = await savedText(page);
  await die(page).getByText('Bender set-up').click();
  await die(page).getByRole('button', { name: 'Take this set-up away' }).click();
  await die(page).getByRole('button', { name: 'Set up the bender' }).click();

  await die(page).getByRole('combobox', { name: 'Seen from above, it bends' }).selectOption({ label: 'to the right' });
  await die(page)
    .getByRole('combobox', { name: 'Rotation is read with' })
    .selectOption({ label: 'a degree wheel on the tube' });
  await enter(field(page, 'Bend plane over the floor'), '34 1/2');
  await enter(field(page, 'Wheel reads to'), '0.5');
  await die(page).getByRole('button', { name: 'Add a wall' }).click();
  await die(page).getByRole('combobox', { name: 'It faces' }).selectOption({ label: 'to the right' });
  await enter(die(page).getByRole('group', { name: 'A spot on it' }).getByRole('textbox', { name: 'Left' }), '60');
  await expect(die(page).getByRole('img', { name: /bent to the right.*round it: Wall 1/ })).toBeVisible();

  const bender = () => savedText(page).then((text) => JSON.parse(text).dies[0].bender);
  expect(await bender()).toEqual({
    turns: 'right',
    bendLies: 'beyond',
    planeHeight: 876.3,
    rotationBy: 'wheel',
    levelStep: 0.1,
    wheelStep: 0.5,
    pullStep: 0.5,
    room: [{ name: 'Wall 1', kind: 'plane', point: [2438.4, 1524, 0], normal: [0, -1, 0] }],
  });
  const wrong: readonly (readonly [string, string, string])[] = [
    ['Bend plane over the floor', '-3', 'below zero'],
    ['Wheel reads to', '0', 'from 0.01 to 45'],
    ['Level reads to', '', 'type a number'],
    ['Bend plane over the floor', '34,5', 'use a point: 34.5'],
  ];
  for (const [name, text, reason] of wrong) {
    await enter(field(page, name), text);
    await expect(die(page).getByRole('alert')).toContainText(reason);
    await field(page, name).press('Escape');
  }
  for (let step = 0; step < 9; step++) await undoKey(page).click();
  expect(await savedText(page)).toBe(atFirst);
});

test('the stick that tube is bought in stands in its row, and may be left out', async ({ page }) => {
  await start(page);
  await goTo(page, 'Frame');
  await page.getByRole('tab', { name: /Tube/ }).click();
  const cell = page
    .getByRole('grid', { name: 'Sections of tube' })
    .getByRole('row')
    .nth(1)
    .getByRole('gridcell')
    .nth(4);
  await cell.dblclick();
  const open = page.getByRole('textbox', { name: 'Stick' });
  await enter(open, "24'");
  await expect(cell).toContainText('288');
  expect(JSON.parse(await savedText(page)).sections[0].stick).toBeCloseTo(7315.2, 9);
  await cell.dblclick();
  await enter(open, '');
  await expect(cell).toContainText('–');
  expect(JSON.parse(await savedText(page)).sections[0]).not.toHaveProperty('stick');
});
