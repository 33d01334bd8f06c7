/** Undo takes every kind of edit back to the first byte, and a reload keeps both the work and the way back. */
import type { Page } from '@playwright/test';
import { fewTubes } from '../few-tubes.ts';
import {
  choose,
  enter,
  expect,
  FEW,
  goTo,
  redoKey,
  savedText,
  start,
  test,
  undoKey,
  untilKept,
  untilThere,
} from './journey.ts';

test.use(FEW);

/** One edit of each kind, by its own way in; each is one step. Answers how many they are. */
async function editALot(page: Page): Promise<number> {
  const edits: (() => Promise<unknown>)[] = [
    async () => enter(page.getByRole('textbox', { name: 'Job' }), 'Changed'),
    async () => {
      await goTo(page, 'Survey');
      await choose(page, 'Measured points, in inches', 'Floor at A-pillar, left');
      const card = page.getByRole('article', { name: /^Point/ });
      await enter(card.getByRole('textbox', { name: 'Along' }), '41 1/4');
    },
    async () => {
      await goTo(page, 'Frame');
      await choose(page, 'Members in build order', 'Rear stay');
      await enter(page.getByRole('article', { name: /^Member/ }).getByRole('textbox', { name: 'Name' }), 'Back stay');
    },
    async () => page.getByRole('combobox', { name: 'Section' }).first().selectOption({ label: '1 1/2 x .095' }),
    async () => page.getByRole('button', { name: 'Take the mirror image away' }).click(),
    async () => page.getByRole('button', { name: 'Later' }).click(),
    async () => {
      await page.getByRole('tab', { name: /^Nodes/ }).click();
      await choose(page, /^Nodes/, 'Stay foot on the tower');
      await enter(page.getByRole('article', { name: /^Node/ }).getByRole('textbox', { name: 'Height' }), '1/4');
    },
    async () => page.getByRole('combobox', { name: 'Placed' }).selectOption({ index: 0 }),
    async () => {
      await goTo(page, 'Checks');
      await page.getByRole('button', { name: 'Add a box' }).click();
      await page.getByRole('button', { name: 'Knees' }).click();
    },
    async () => {
      await page.getByRole('button', { name: 'Menu' }).click();
      await page.getByRole('radio', { name: 'mm' }).check();
      await page.keyboard.press('Escape');
    },
  ];
  let before = await savedText(page);
  for (const edit of edits) {
    await edit();
    const after = await savedText(page);
    expect(after).not.toBe(before);
    before = after;
  }
  return edits.length;
}

test('the way back: through a reload, through every kind of edit, and to a job that another took the place of', async ({
  page,
}) => {
  await start(page);
  await test.step('a reload keeps the work, the station and the way back', async () => {
    const atFirst = await savedText(page);
    await goTo(page, 'Survey');
    await choose(page, 'Measured points, in inches', 'Floor at B-pillar, left');
    const height = page.getByRole('article', { name: /^Point/ }).getByRole('textbox', { name: 'Height' });
    await enter(height, '3');
    await enter(height, '4');
    const work = await savedText(page);
    await undoKey(page).click();
    const oneBack = await savedText(page);
    await untilKept(page);

    await page.reload();
    await untilThere(page);
    await expect(page.getByRole('heading', { name: 'Measured points' })).toBeVisible();
    expect(await savedText(page)).toBe(oneBack);
    await redoKey(page).click();
    expect(await savedText(page)).toBe(work);
    for (let step = 0; step < 2; step++) await undoKey(page).click();
    expect(await savedText(page)).toBe(atFirst);
    await expect(undoKey(page)).toBeDisabled();
  });

  await test.step('every kind of edit is undone to the first byte, and done again to the last', async () => {
    const atFirst = await savedText(page);
    expect(JSON.parse(atFirst)).toMatchObject(JSON.parse(fewTubes()));
    const steps = await editALot(page);
    const atLast = await savedText(page);
    for (let step = 0; step < steps; step += 1) await undoKey(page).click();
    await expect(undoKey(page)).toBeDisabled();
    expect(await savedText(page)).toBe(atFirst);
    for (let step = 0; step < steps; step += 1) await redoKey(page).click();
    await expect(redoKey(page)).toBeDisabled();
    expect(await savedText(page)).toBe(atLast);
    for (let step = 0; step < steps; step += 1) await undoKey(page).click();
    expect(await savedText(page)).toBe(atFirst);
  });

  await test.step('a job that another took the place of stands among the earlier versions, under its own name', async () => {
    await enter(page.getByRole('textbox', { name: 'Job' }), 'Before: one');
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'New job' }).click();
    await enter(page.getByRole('textbox', { name: 'Job' }), 'After');
    await untilKept(page);
    await page.reload();
    await untilThere(page);
    await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('After');
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'Earlier versions' }).click();
    const earlier = page.getByRole('dialog').getByRole('listitem').filter({ hasText: 'Before: one' });
    const download = page.waitForEvent('download');
    await earlier.first().getByRole('button', { name: 'Download' }).click();
    expect((await download).suggestedFilename()).toBe('Before- one.cagewright.json');
    await earlier.first().getByRole('button', { name: 'Open' }).click();
    await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('Before: one');
    await expect(undoKey(page), 'no step leads from one job into another').toBeDisabled();
    expect(JSON.parse(await savedText(page)).members).toEqual(JSON.parse(fewTubes()).members);
  });
});
