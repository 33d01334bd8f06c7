/** A cage begun from tape figures. Actions are counted as a person counts: a press, a field typed and entered, a key. */
import type { Locator, Page } from '@playwright/test';
import { enter, expect, FEW, goTo, savedText, SIZES, start, test, undoKey } from './journey.ts';

test.use(FEW);

/** An action of a person. */
type Act = (does: Promise<unknown>) => Promise<void>;

function counted(): { act: Act; made: () => number } {
  let actions = 0;
  return {
    act: async (does) => {
      actions += 1;
      await does;
    },
    made: () => actions,
  };
}

const figure = (page: Page, name: RegExp) => page.getByRole('textbox', { name });
const form = (page: Page) => page.getByRole('form', { name: /^New/ });
const build = (page: Page) => page.getByRole('button', { name: 'Build it' });

async function untilAsked(page: Page, act: Act): Promise<void> {
  await act(page.getByRole('button', { name: 'Menu' }).click());
  await act(page.getByRole('button', { name: 'New job' }).click());
  await act(page.getByRole('button', { name: /what do you build/ }).click());
}

const TAPE = [
  [/width at the floor/, '49 1/2'],
  [/width at the belt/, '52 3/4'],
  [/^Belt line above/, '25 1/4'],
  [/width at the roof/, '41'],
  [/^Headliner/, '44 1/8'],
  [/^Between the rear towers/, '37 5/8'],
  [/^Towers above/, '20 1/4'],
  [/^Towers behind/, '31 3/8'],
  [/^Harness bar/, '24'],
  [/^Gap/, '1 1/4'],
] as const;

/** How a person works the page: each key is reached and pressed, each figure typed and entered, by these means alone. */
interface Means {
  press(thing: Locator): Promise<void>;
  type(field: Locator, text: string): Promise<void>;
}

const byMouse = (): Means => ({ press: (thing) => thing.click(), type: enter });

const byTouch = (): Means => ({
  press: (thing) => thing.tap(),
  async type(field, text) {
    await field.tap();
    await enter(field, text);
  },
});

/** Every press of Tab on the way is an action. */
function byKeys(page: Page, act: Act): Means {
  const isThere = (thing: Locator): Promise<boolean> => thing.evaluate((element) => element === document.activeElement);
  async function reach(thing: Locator): Promise<void> {
    for (let tabs = 0; tabs < 80 && !(await isThere(thing)); tabs += 1) await act(page.keyboard.press('Tab'));
    expect(await isThere(thing), 'Tab leads there').toBe(true);
  }
  return {
    async press(thing) {
      await thing.waitFor();
      await reach(thing);
      await page.keyboard.press('Enter');
    },
    async type(field, text) {
      await reach(field);
      await page.keyboard.type(text);
      await act(page.keyboard.press('Tab')); // enters it, and is on the next
    },
  };
}

/** From the page as it starts to a roll bar that stands, its tape figures typed. */
async function rollBar(page: Page, act: Act, { press, type }: Means): Promise<void> {
  await act(press(page.getByRole('button', { name: 'Menu' })));
  await act(press(page.getByRole('button', { name: 'New job' })));
  await act(press(page.getByRole('button', { name: /what do you build/ })));
  await act(press(page.getByRole('button', { name: /New roll bar/ })));
  await expect(form(page)).toContainText('10 of 10 figures are guesses');
  for (const [name, text] of TAPE) await act(type(figure(page, name), text));
  await expect(form(page)).toContainText('Every figure is yours.');
  await act(press(build(page)));
  await expect(page.getByRole('grid', { name: /^Members/ })).toBeVisible();
}

test('a roll bar from nothing, by keyboard alone', async ({ page }) => {
  await start(page);
  const { act, made } = counted();
  await rollBar(page, act, byKeys(page, act));
  console.log(`A roll bar from nothing, by keyboard alone: ${made()} actions, each Tab counted.`);
});

test.describe('on a touch screen', () => {
  test.use({ hasTouch: true, viewport: { width: 1024, height: 768 } });

  test('a roll bar from nothing, by touch: at most 30 actions', async ({ page }) => {
    await start(page);
    const { act, made } = counted();
    await rollBar(page, act, byTouch());
    console.log(`A roll bar from nothing, by touch: ${made()} actions.`);
    expect(made()).toBeLessThanOrEqual(30);
  });
});

test('a roll bar from nothing, its tape figures typed: at most 30 actions', async ({ page }) => {
  await start(page);
  const { act, made } = counted();
  await rollBar(page, act, byMouse());
  console.log(`A roll bar from nothing: ${made()} actions.`);
  expect(made()).toBeLessThanOrEqual(30);

  const job = JSON.parse(await savedText(page));
  expect(job.members.map(({ role }: { role: string }) => role)).toEqual([
    'main-hoop',
    'rear-stay',
    'main-diagonal',
    'harness-bar',
    'rear-cross-bar',
    'rear-diagonal',
    'rear-diagonal',
  ]);
  // Half of 49 1/2 in, 25 1/4 in up: as typed, not as guessed.
  expect(job.points[0].position).toEqual([0, 628.65, 0]);
  expect(job.points.some((point: object) => 'guessed' in point)).toBe(false);
  await expect(page.getByRole('button', { name: /^Checks/ })).not.toContainText('×');

  // One step, taken back as one.
  await expect(undoKey(page)).toContainText('New roll bar');
  await undoKey(page).click();
  await expect(page.getByRole('button', { name: /^New roll bar/ })).toBeVisible();
});

test('the form of a cage: what is typed, what cannot be, and how it is left', async ({ page }) => {
  await start(page);
  await test.step('by keyboard alone, Escape leaves it and nothing is there', async () => {
    const { act, made } = counted();
    await untilAsked(page, act);
    const card = page.getByRole('button', { name: /New six-point/ });
    await card.focus();
    await act(page.keyboard.press('Enter'));
    await figure(page, /width at the floor/).focus();
    for (const text of ['49', '52 1/2', '25', '41 1/2']) {
      await act(page.keyboard.type(text));
      await act(page.keyboard.press('Enter')); // takes it, and is on the next
    }
    await expect(form(page)).toContainText('of 19 figures are guesses');
    await expect(form(page)).toContainText('25 tubes');
    // However far down, one sees in the picture where the figure is taken.
    await figure(page, /^Harness bar above/).focus();
    await expect(page.locator('.start-pointed circle')).toBeInViewport({ ratio: 1 });
    await expect(figure(page, /^Harness bar above/)).toBeInViewport({ ratio: 1 });
    await build(page).focus();
    await page.keyboard.press('Escape');
    await expect(card).toBeVisible();
    expect(JSON.parse(await savedText(page)).points).toEqual([]);
    console.log(`Begun by keyboard, left by Escape: ${made()} actions.`);

    // What was typed is not asked again, whichever cage is begun.
    await page.getByRole('button', { name: /^New roll bar/ }).click();
    await expect(figure(page, /width at the belt/)).toHaveValue('52 1/2');
    await expect(form(page)).toContainText('6 of 10 figures are guesses');
    // Nor in another job.
    await page.getByRole('button', { name: 'Leave it' }).click();
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'New job' }).click();
    await goTo(page, 'Frame');
    await page.getByRole('button', { name: /^New roll bar/ }).click();
    await expect(form(page)).toContainText('10 of 10 figures are guesses');
  });

  await test.step('who types the very figure that was guessed has said it', async () => {
    await untilAsked(page, counted().act);
    await page.getByRole('button', { name: /New roll bar/ }).click();
    const floor = figure(page, /width at the floor/);
    await expect(floor).toHaveValue('50');
    await floor.focus();
    await page.keyboard.press('Tab');
    await expect(form(page)).toContainText('10 of 10 figures are guesses');
    await enter(floor, '50');
    await expect(form(page)).toContainText('9 of 10 figures are guesses');
    await figure(page, /width at the belt/).press('Enter');
    await expect(form(page)).toContainText('8 of 10 figures are guesses');
  });

  await test.step('undo ends the form; redo brings the cage with what was typed, and no form', async () => {
    await untilAsked(page, counted().act);
    const card = page.getByRole('button', { name: /^New roll bar/ });
    await card.click();
    await enter(figure(page, /width at the belt/), '53');
    await build(page).focus();
    await page.keyboard.press('Control+z');
    await expect(card).toBeVisible();
    await page.keyboard.press('Control+y');
    await expect(page.getByRole('grid', { name: /^Members/ })).toBeVisible();
    await expect(form(page)).toHaveCount(0);
    const job = JSON.parse(await savedText(page));
    // Half of 53 in.
    expect(job.points.find(({ id }: { id: string }) => id === 'belt-b').position[1]).toBeCloseTo(673.1, 9);
  });

  await test.step('figures that no job can take are said, and the cage before them is not built for them', async () => {
    await untilAsked(page, counted().act);
    await page.getByRole('button', { name: /^New side hoops/ }).click();
    await expect(build(page)).toBeEnabled();
    await enter(figure(page, /^Headliner/), '394');
    await expect(form(page).getByRole('alert')).toContainText('No cage can be made of these figures');
    await expect(build(page)).toBeDisabled();
  });

  await test.step('the form waits while another station is looked at; what stays a guess is listed in Survey until it is confirmed or measured', async () => {
    await untilAsked(page, counted().act);
    await page.getByRole('button', { name: /New side hoops/ }).click();
    await enter(figure(page, /width at the floor/), '49');
    await goTo(page, 'Checks');
    await goTo(page, 'Frame');
    await expect(figure(page, /width at the floor/)).toHaveValue('49');
    await page.getByRole('radio', { name: 'a V' }).check();
    await expect(page.getByRole('radio', { name: 'a V' })).toBeChecked();
    await build(page).click();
    await goTo(page, 'Survey');
    const guesses = page.getByRole('region', { name: /^Still guessed/ });
    await expect(guesses.getByRole('listitem')).toHaveCount(11);
    await guesses.getByRole('button', { name: 'Confirm Rear spring tower, left' }).click();
    await expect(guesses.getByRole('listitem')).toHaveCount(10);
    await guesses.getByRole('button', { name: 'B-pillar at the belt line, left', exact: true }).click();
    await enter(page.getByRole('article').getByRole('textbox', { name: /^Height/ }), '26');
    await expect(guesses.getByRole('listitem')).toHaveCount(9);
  });

  await test.step('figures that leave no room are said in words, and cannot be built', async () => {
    await untilAsked(page, counted().act);
    await page.getByRole('button', { name: /New roll bar/ }).click();
    await enter(figure(page, /^Headliner/), '26');
    await expect(form(page).getByRole('alert')).toContainText('no room for the hoop’s bends');
    await expect(build(page)).toBeDisabled();
    await enter(figure(page, /^Headliner/), '44');
    await expect(build(page)).toBeEnabled();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await expect(form(page)).toHaveCount(0);
  });

  await test.step('a cage that was being begun when the page was left is there, as one step', async () => {
    await untilAsked(page, counted().act);
    await page.getByRole('button', { name: /^New roll bar/ }).click();
    await expect(build(page)).toBeEnabled();
    await enter(figure(page, /width at the belt/), '53');
    await expect(form(page)).toContainText('9 of 10 figures are guesses');
    await page.reload();
    await goTo(page, 'Frame');
    await expect(page.getByRole('grid', { name: /^Members/ })).toBeVisible();
    await expect(undoKey(page)).toContainText('New roll bar');
  });

  await test.step('at each size: the form lies within the page, its keys in reach', async () => {
    await untilAsked(page, counted().act);
    for (const size of SIZES) {
      await page.setViewportSize(size);
      await expect(page.getByRole('button', { name: /New side hoops/ })).toBeVisible();
      expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    }
    await page.getByRole('button', { name: /New two hoops/ }).click();
    for (const size of SIZES) {
      await page.setViewportSize(size);
      await expect(build(page)).toBeInViewport({ ratio: 1 });
      for (const box of await Promise.all(
        (await form(page).locator('input:not([type=radio]), select, button, svg').all()).map((one) =>
          one.boundingBox(),
        ),
      )) {
        expect(box!.x + box!.width).toBeLessThanOrEqual(size.width);
      }
    }
  });
});
