/** Numbers as a fabricator types them: fractions of an inch are taken, a comma is refused and nothing changes. */
import type { Page } from '@playwright/test';
import {
  FEW,
  IN_THE_BAY,
  choose,
  enter,
  expect,
  goTo,
  rowOf,
  savedText,
  spoken,
  start,
  test,
  tubeRow,
  undoKey,
  untilKept,
  untilThere,
} from './journey.ts';

test.use(FEW);

const POINTS = 'Measured points, in inches';
const FLOOR = 'Floor at B-pillar, left';
const field = (page: Page) =>
  page.getByRole('article', { name: `Point ${FLOOR}` }).getByRole('textbox', { name: 'Height' });
const heightInFile = async (page: Page): Promise<number> =>
  JSON.parse(await savedText(page)).points.find((point: { name: string }) => point.name === FLOOR).position[2];

/** What is said of the main hoop, which stands on that point. */
async function hoopInWords(page: Page): Promise<string> {
  await goTo(page, 'Frame');
  await choose(page, 'Members in build order', 'Main hoop');
  await expect(spoken(page)).toContainText('Main hoop');
  return spoken(page).innerText();
}

test(
  '11 1/2 is 292.1 mm, in the table, in the file and in every tube that depends on it',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    const before = await hoopInWords(page);
    await goTo(page, 'Shop');
    const lineOfHoop = () => tubeRow(page, 'Main hoop').innerText();
    const lineBefore = await lineOfHoop();

    await goTo(page, 'Survey');
    await choose(page, POINTS, FLOOR);
    await field(page).fill('11 1/2');
    await expect(field(page)).toHaveAccessibleDescription(/11 1\/2 in.*292\.1 mm/);
    await field(page).press('Enter');
    await expect(field(page)).toHaveValue('11 1/2');
    await expect(rowOf(page, POINTS, FLOOR)).toContainText('11 1/2 in');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);

    const after = await hoopInWords(page);
    expect(after).not.toBe(before);
    await goTo(page, 'Shop');
    expect(await lineOfHoop()).not.toBe(lineBefore);
  },
);

test('rounded values, commas, sums, corrections and cells: each leaves the value that is meant', async ({ page }) => {
  await start(page);
  await goTo(page, 'Survey');
  await choose(page, POINTS, FLOOR);

  await test.step('a value shown rounded becomes what is shown when that is typed, and stays when the field is only gone through', async () => {
    // 291.9 mm is shown as 11 1/2 in, which is 292.1 mm.
    await enter(field(page), '291.9mm');
    await expect(field(page)).toHaveValue('11 1/2');
    const steps = await savedText(page);
    await field(page).focus();
    await field(page).press('Enter');
    await field(page).press('End');
    await page.keyboard.type('7');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Tab');
    expect(await savedText(page)).toBe(steps);
    expect(await heightInFile(page)).toBe(291.9);

    await field(page).press('ControlOrMeta+A');
    await page.keyboard.type('11 1/2');
    await page.keyboard.press('Enter');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);
    await undoKey(page).click();
    expect(await heightInFile(page)).toBe(291.9);
    await enter(field(page), '11 1/2');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);
  });

  await test.step('a decimal comma is refused beside the field, and the last good value stays', async () => {
    await enter(field(page), '11 1/2');
    await enter(field(page), '11,5');
    const refusal = page.getByRole('article', { name: `Point ${FLOOR}` }).getByRole('alert');
    await expect(refusal).toContainText('“11,5” not taken');
    await expect(refusal, 'how to write it instead').toContainText('11.5');
    await expect(field(page)).toHaveAttribute('aria-invalid', 'true');
    await expect(rowOf(page, POINTS, FLOOR)).toContainText('11 1/2 in');
    await field(page).press('Escape');
    await expect(refusal).toBeHidden();
    await expect(field(page)).toHaveValue('11 1/2');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);
  });

  await test.step('a sum is worked out, and the field says how it was read', async () => {
    await field(page).fill('47 1/2 / 4');
    // 11 7/8 in = 301.625 mm.
    await expect(field(page)).toHaveAccessibleDescription('47 1/2 ÷ 4 = 11 7/8 in · 301.6 mm');
    await field(page).press('Enter');
    await expect(field(page)).toHaveValue('11 7/8');
    expect(await heightInFile(page)).toBeCloseTo(301.625, 9);
    await enter(field(page), '100 / 4/2');
    await expect(page.getByRole('article', { name: `Point ${FLOOR}` }).getByRole('alert')).toContainText('two slashes');
    expect(await heightInFile(page)).toBeCloseTo(301.625, 9);
  });
  await field(page).press('Escape');

  await test.step('after a refused text Enter takes the correction, and the value that stands there', async () => {
    const card = page.getByRole('article', { name: `Point ${FLOOR}` });
    await field(page).focus();
    await page.keyboard.type('11,5');
    await page.keyboard.press('Enter');
    await expect(field(page)).toHaveAttribute('aria-invalid', 'true');
    await page.keyboard.type('11.5');
    await page.keyboard.press('Enter');
    await expect(field(page)).toHaveValue('11 1/2');
    await expect(field(page)).not.toHaveAttribute('aria-invalid');

    await page.keyboard.type('12,5');
    await page.keyboard.press('Tab');
    await expect(card.getByRole('alert'), 'left, and refused').toContainText('12,5');
    await field(page).focus();
    await page.keyboard.press('Enter');
    await expect(card.getByRole('alert'), 'the last good value is taken').toHaveCount(0);
    await expect(field(page)).not.toHaveAttribute('aria-invalid');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);
  });

  await test.step('a number is edited in the table itself, and a comma is refused there too', async () => {
    const cell = rowOf(page, POINTS, FLOOR).getByRole('gridcell').nth(3);
    await cell.dblclick();
    await page.keyboard.type('11 1/2');
    await page.keyboard.press('Enter');
    await expect(cell).toContainText('11 1/2 in');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);

    await cell.dblclick();
    await page.keyboard.type('11,5');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('alert').filter({ hasText: '11,5', visible: true }).first()).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(cell).toContainText('11 1/2 in');
    expect(await heightInFile(page)).toBeCloseTo(292.1, 9);
  });
});

test('saving enters the text that a field still holds, and a text that cannot be read changes nothing', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Survey');
  await choose(page, POINTS, FLOOR);
  await field(page).fill('11 1/2');
  expect(await heightInFile(page), 'saved with the focus in the field').toBeCloseTo(292.1, 9);
  await expect(field(page)).toBeFocused();
  await expect(rowOf(page, POINTS, FLOOR)).toContainText('11 1/2 in');

  await enter(field(page), '11,5');
  expect(await heightInFile(page), 'refused, so the last good value').toBeCloseTo(292.1, 9);
  await expect(page.getByRole('article', { name: `Point ${FLOOR}` }).getByRole('alert')).toContainText('11,5');

  const cell = rowOf(page, POINTS, FLOOR).getByRole('gridcell').nth(3);
  await cell.dblclick();
  await page.keyboard.type('15');
  expect(await heightInFile(page), "a table's open cell").toBeCloseTo(381, 9);
  await expect(cell).toBeFocused();
});

test('text that no Enter followed is entered as the page goes, loaded again or closed', async ({ page, context }) => {
  await start(page);
  await goTo(page, 'Survey');
  await choose(page, POINTS, FLOOR);
  await field(page).fill('11 1/2');
  await page.reload();
  await untilThere(page);
  await goTo(page, 'Survey');
  await expect(heightShown(page)).toContainText('11 1/2 in');
  await choose(page, POINTS, FLOOR);
  await field(page).fill('12 1/2');
  await page.close();
  const again = await context.newPage();
  await start(again);
  await goTo(again, 'Survey');
  await expect(heightShown(again)).toContainText('12 1/2 in');
});

const heightShown = (page: Page) => rowOf(page, POINTS, FLOOR).getByRole('gridcell').nth(3);

test('a nudged number is the job: undo takes the field back too; it is saved, entered after a rest, and there after a reload', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Survey');
  await choose(page, POINTS, FLOOR);
  /** The height is 2 1/16 in; Shift and arrow up once: ten sixteenths. */
  const nudge = async (): Promise<void> => {
    await expect(field(page)).toHaveValue('2 1/16');
    await field(page).press('Shift+ArrowUp');
    await expect(field(page)).toHaveValue('2 11/16');
    await expect(heightShown(page)).toContainText('2 11/16 in');
  };

  await test.step('undo in the middle of a nudge takes the field back, and what is nudged next is entered', async () => {
    await nudge();
    await page.keyboard.press('ControlOrMeta+z');
    await expect(heightShown(page)).toContainText('2 1/16 in');
    await expect(field(page)).toHaveValue('2 1/16');
    await field(page).press('ArrowUp');
    await expect(heightShown(page)).toContainText('2 1/8 in');
    await field(page).press('Enter');
    await expect(field(page)).toHaveValue('2 1/8');
    expect(await heightInFile(page)).toBeCloseTo(2.125 * 25.4, 9);
    await undoKey(page).click();
  });

  await test.step('it is what is saved', async () => {
    await nudge();
    expect(await heightInFile(page)).toBeCloseTo(2.6875 * 25.4, 9);
    await expect(field(page)).toBeFocused();
    await field(page).press('ArrowUp');
    await expect(heightShown(page)).toContainText('2 3/4 in');
    expect(await heightInFile(page)).toBeCloseTo(2.75 * 25.4, 9);
    await undoKey(page).click();
    await expect(field(page)).toHaveValue('2 11/16');
    await undoKey(page).click();
  });

  await test.step('it is entered after a rest, and a reload brings it back', async () => {
    await nudge();
    await expect(undoKey(page)).toBeEnabled();
    await untilKept(page);
    await page.reload();
    await untilThere(page);
    await expect(heightShown(page)).toContainText('2 11/16 in');
  });
});

test('the stations are a key away while a field holds text, and undo stays its own until it is entered', async ({
  page,
}) => {
  await start(page);
  await goTo(page, 'Survey');
  await choose(page, POINTS, FLOOR);
  await enter(field(page), '14');
  await field(page).pressSequentially('15');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(rowOf(page, POINTS, FLOOR), 'the job is not undone').toContainText('14 in');
  await field(page).fill('15 1/4');
  await page.keyboard.press('Alt+2');
  await expect(page.getByRole('grid', { name: 'Members in build order' })).toBeVisible();
  await page.keyboard.press('Alt+1');
  await expect(rowOf(page, POINTS, FLOOR), 'entered on the way').toContainText('15 1/4 in');
});
