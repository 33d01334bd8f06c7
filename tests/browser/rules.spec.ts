/** The rule book in Checks: a sheet filled in by keyboard, what comes of it as the frame changes, its file, and the inspector's word. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import {
  bay,
  choose,
  enter,
  expect,
  FEW,
  goTo,
  IN_THE_BAY,
  openFile,
  savedText,
  SIZES,
  start,
  test,
  textOf,
  undoKey,
} from './journey.ts';

// Each opens a job of its own.
test.use(FEW);

/** The demo, and as it is before anyone has a rule book in hand. */
const DEMO = readFileSync('public/demo.cagewright.json', 'utf8');
const { rules: _rules, ...BARE } = JSON.parse(DEMO) as Record<string, unknown>;

async function startBare(page: Page): Promise<void> {
  await start(page);
  await openFile(page, 'bare.cagewright.json', JSON.stringify({ ...BARE, name: 'No rule book' }));
  await goTo(page, 'Checks');
}

const book = (page: Page): Locator => page.getByRole('region', { name: 'Rule book' });
const counts = (page: Page): Locator => book(page).getByRole('status').first();
const back = (page: Page) => page.getByRole('button', { name: 'Back to Checks' }).first().click();
const question = (page: Page, asks: string | RegExp): Locator => page.getByRole('group', { name: asks });

/** Five answers, by keyboard alone from the first field on. */
async function fillFive(page: Page): Promise<void> {
  const keys = page.keyboard;
  await expect(page.getByLabel('Whose rules')).toBeFocused();
  await keys.type('Valley Hill Climb');
  await keys.press('Tab');
  await keys.type('2026');
  await keys.press('Tab');
  const first = question(page, 'Which tube may hoops, front legs and rear stays be of?');
  await first.getByLabel(/^tube/u).focus();
  // Enter leads from field to field, over the article's number and the shop's own words.
  await keys.type('1 3/4 x .095 or 1.5 x .12');
  await keys.press('Enter');
  await keys.press('Enter');
  await keys.type('8.1');
  await keys.press('Enter');
  await keys.press('Enter');
  await expect(question(page, 'Which tube, in heavier cars?').getByLabel(/^tube/u)).toBeFocused();
  const lean = question(page, /^How far may the main hoop lean/u);
  await lean.getByRole('textbox', { name: 'at most' }).focus();
  await keys.type('10');
  await keys.press('Enter');
  await keys.type('8.2');
  await keys.press('Enter');
  await question(page, /^At what angle from upright/u)
    .getByRole('textbox', { name: 'at least' })
    .focus();
  await keys.type('45');
  await keys.press('Enter');
  await question(page, /^How many door bars/u)
    .getByRole('textbox', { name: 'on each side' })
    .focus();
  await keys.type('9');
  await keys.press('Enter');
  const holes = question(page, /^Inspection holes/u).getByRole('checkbox');
  await holes.focus();
  await keys.press('Space');
  await expect(holes).toBeChecked();
}

test('a sheet filled in by keyboard: undone like anything else, saved as a file and read back, answered by the inspector', async ({
  page,
}) => {
  await startBare(page);
  await test.step('what is filled in is held against the frame', async () => {
    await expect(book(page)).toContainText('No rule sheet yet.');
    await book(page).getByRole('button', { name: 'Fill in a sheet' }).click();
    await fillFive(page);
    await expect(page.getByRole('status').filter({ hasText: 'answered' })).toHaveText(/^5 of \d+ answered$/u);
    // The key leads from one empty question to the next.
    await page.getByRole('button', { name: 'Next empty one' }).click();
    await expect(question(page, 'Which tube, in heavier cars?').getByLabel(/^tube/u)).toBeFocused();
    await page.getByRole('button', { name: 'Next empty one' }).click();
    await expect(question(page, /^Which tube may the bars between/u).getByLabel(/^tube/u)).toBeFocused();
    const roof = page.getByRole('listitem').filter({ hasText: 'How many diagonals in the roof?' });
    await roof.getByRole('checkbox', { name: 'the book does not ask this' }).check();
    await expect(page.getByRole('status').filter({ hasText: 'answered' })).toHaveText(/^6 of \d+ answered$/u);
    await back(page);
    await expect(book(page)).toContainText('Held against this sheet: Valley Hill Climb, 2026.');
    await expect(counts(page)).toHaveText(/^\s*1 not met\s*1 not checked\s*3 met/u);
  });

  await test.step('it is saved as a file and read back; one that is no sheet says where it is wrong', async () => {
    const coming = page.waitForEvent('download');
    await book(page).getByRole('button', { name: 'Save Valley Hill Climb, 2026 as file' }).click();
    expect((await coming).suggestedFilename()).toBe('Valley Hill Climb, 2026.rules.json');
    const text = await textOf(coming);
    const open = async (name: string, content: string): Promise<void> => {
      const chooser = page.waitForEvent('filechooser');
      await book(page).getByRole('button', { name: 'From a file' }).click();
      await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
    };
    await open('back.rules.json', text);
    await expect(book(page)).toContainText(
      'Held against these sheets: Valley Hill Climb, 2026; Valley Hill Climb, 2026.',
    );
    const { rules } = JSON.parse(await savedText(page)) as { rules: { sheet: string }[] };
    const [one, other] = rules as [{ sheet: string }, { sheet: string }];
    expect({ ...other, sheet: '' }).toEqual({ ...one, sheet: '' });

    await open('wrong.rules.json', text.replace('"least": 45', '"least": "steep"'));
    await expect(book(page).getByRole('alert')).toContainText(/checks\[2\]\.least.*not a number/u);
    await expect(book(page)).toContainText('Valley Hill Climb, 2026; Valley Hill Climb, 2026.');
    // Kept in the shop, it is offered to a job that has none.
    await book(page).getByRole('button', { name: 'Keep Valley Hill Climb, 2026 in the shop' }).first().click();
    await expect(book(page)).toContainText('Kept in the shop record');
    await undoKey(page).click();
    await expect(book(page)).toContainText('Held against this sheet: Valley Hill Climb, 2026.');
  });

  await test.step('what comes of it changes with the frame', async () => {
    // The least angle is raised beyond the stays' own: it is not met any more, with how much is short.
    const saved = async () =>
      (JSON.parse(await savedText(page)) as { rules: { checks: object[]; notAsked: string[] }[] }).rules;
    expect(await saved()).toMatchObject([{ checks: { length: 5 }, notAsked: ['roof'] }]);
    // The fold of the sheets is open still when one comes back from one.
    await book(page).getByRole('button', { name: 'Fill in Valley Hill Climb, 2026' }).click();
    await enter(question(page, /^At what angle from upright/u).getByRole('textbox', { name: 'at least' }), '80');
    await back(page);
    await expect(counts(page)).toHaveText(/^\s*2 not met/u);
    const stays = book(page).getByRole('button', { name: /Rear stay: .*at least 80/u });
    await expect(stays).toContainText(/not met: .*Rear stay \(left\).*short\.$/u);
    await stays.click();
    await expect(stays).toHaveAttribute('aria-current', 'true');
    await undoKey(page).click();
    await expect(counts(page)).toHaveText(/^\s*1 not met/u);

    // A bar that loses its role: nothing is met that it may have been meant by, and its role is given back here.
    await goTo(page, 'Frame');
    await choose(page, 'Members', 'Harness bar');
    await page.getByLabel('Role', { exact: true }).selectOption('none');
    await goTo(page, 'Checks');
    await expect(book(page)).toContainText('Without a role: Harness bar');
    await book(page).getByLabel('Role of Harness bar').first().selectOption('harness bar');
    await expect(counts(page)).toHaveText(/3 met/u);
  });

  await test.step('what the inspector says is the verdict where a person has to look, and is noted beside what was measured', async () => {
    const holes = book(page).getByRole('listitem').filter({ hasText: 'Inspection holes' });
    // It stays where it is while it is answered: the note is typed at once.
    await holes.getByRole('radio', { name: 'met', exact: true }).check();
    await expect(counts(page)).toHaveText(/^\s*1 not met\s*0 not checked\s*4 met/u);
    await expect(holes.getByRole('textbox', { name: 'Note' })).toBeVisible();
    await holes.getByRole('radio', { name: 'not met', exact: true }).check();
    await expect(counts(page)).toHaveText(/^\s*2 not met\s*0 not checked/u);
    await enter(holes.getByRole('textbox', { name: 'By' }), 'Scrutineer');
    await enter(holes.getByRole('textbox', { name: 'Note' }), 'two are missing');
    await expect(holes).toContainText(/Answered by Scrutineer on \d{4}-\d\d-\d\d: two are missing\./u);
    const doors = book(page).getByRole('listitem').filter({ hasText: 'Door bar:' });
    await doors.getByText('The inspector’s word').click();
    await doors.getByRole('radio', { name: 'met', exact: true }).check();
    await expect(doors).toContainText('The inspector’s word: met. Answered by Scrutineer');
    await expect(doors).toContainText('not met:');
  });
});

test(
  'a press on what is not met shows it in the bay, with the dimension drawn; whatever is chosen next takes that away',
  IN_THE_BAY,
  async ({ page }) => {
    await startBare(page);
    await book(page).getByRole('button', { name: 'Fill in a sheet' }).click();
    await enter(question(page, /^How wide must it be inside/u).getByRole('textbox', { name: 'at least' }), '60');
    await back(page);
    const row = book(page).getByRole('button', { name: /Main hoop: inside, between its feet/u });
    const width = /not met: ([\d.]+ in)/u.exec(await row.innerText())![1]!;
    await row.click();
    const dimension = page.getByRole('region', { name: '3D view of the frame' }).getByText(`× ${width}`);
    await expect(dimension).toBeVisible();
    await bay(page).press('Escape');
    await expect(dimension).toHaveCount(0);
    await expect(row).not.toHaveAttribute('aria-current', 'true');
  },
);

test(
  'a node is moved until the article is met: its dimension and its row go with it, in place',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await openFile(page, 'demo.cagewright.json', DEMO);
    await goTo(page, 'Checks');
    // The demo's diagonal begins 6 1/4 in over the hoop's foot, and 6 in are asked at most.
    const row = book(page).getByRole('button', { name: /Main diagonal; at most 6\.000 in/u });
    await row.click();
    const view = page.getByRole('region', { name: '3D view of the frame' });
    await expect(view.getByText('× 6.250 in')).toBeVisible();
    const { x, y, width, height } = (await bay(page).boundingBox())!;
    // It was brought into the middle.
    await page.mouse.click(x + width / 2, y + height / 2);
    await expect(row).toHaveAttribute('aria-current', 'true');
    await expect(async () => {
      await bay(page).press('PageDown');
      await expect(row).toContainText(/(?<!not )met: 5\.\d+ in/u, { timeout: 500 });
    }).toPass();
    await expect(view.getByText(/^5\.\d+ in$/u)).toBeVisible();
  },
);

test('nothing of it stands out of the page at any size', async ({ page }) => {
  await startBare(page);
  await book(page).getByRole('button', { name: 'Take a ready one' }).click();
  await book(page).getByRole('button', { name: /^FIA/u }).click();
  for (const size of SIZES) {
    await page.setViewportSize(size);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(size.width);
    for (const part of await book(page).locator('button:visible, input:visible').all()) {
      const box = (await part.boundingBox())!;
      expect(box.x + box.width).toBeLessThanOrEqual(size.width);
    }
  }
});
