/** The shop record: filled from a job, kept through a reload, begun from, asked about, saved and opened as a file. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { shopFile } from '../core/shop/sample.ts';
import { recordsIn } from './stores.ts';
import {
  FEW,
  chooseTube,
  enter,
  goTo,
  showPart,
  expect,
  openFile,
  openedInItsOwnPlace,
  savedText,
  SIZES,
  start,
  test,
  textOf,
  undoKey,
  untilThere,
} from './journey.ts';

test.use(FEW);

type Job = { dies: { clampOffset: number }[]; sections: object[]; pulls: object[]; members: object[] };

/** The demo as another shop has it: its first die clamps elsewhere. */
function elsewhere(clampOffset = 100): string {
  const job = JSON.parse(demoText()) as Job;
  job.dies[0]!.clampOffset = clampOffset;
  return JSON.stringify(job);
}

async function openRecord(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Shop record', exact: true }).click();
}
const record = (page: Page) => page.getByRole('dialog', { name: 'Shop record' });
/** Until it is gone keys are the dialog's own. */
async function close(page: Page): Promise<void> {
  await record(page).getByRole('button', { name: 'Close' }).click();
  await expect(record(page)).toBeHidden();
}
const question = (page: Page) => page.getByRole('region', { name: 'Shop and job differ' });

async function takeFromJob(page: Page): Promise<void> {
  await openRecord(page);
  await record(page).getByRole('button', { name: 'Take this job’s dies, sections and pulls into the shop' }).click();
}

async function openShopFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await record(page).getByRole('button', { name: 'Open a file' }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** Until the record is written to the browser's own store. */
const recordKept = (page: Page): Promise<void> =>
  expect.poll(async () => (await recordsIn(page, 'shop')).length).toBe(1);

test('what a job has goes into it, is there after a reload, and a new job begins with it', async ({ page }) => {
  await start(page);
  const demo = JSON.parse(await savedText(page)) as Job;
  await takeFromJob(page);
  await expect(record(page)).toContainText('The shop has all that this job has.');
  await expect(record(page).getByRole('table', { name: 'Dies of the shop' }).getByRole('row')).toHaveCount(
    demo.dies.length + 1,
  );
  await enter(record(page).getByRole('textbox', { name: 'Left long at a foot' }), '1 1/2');
  await close(page);
  await recordKept(page);
  await page.reload();
  await untilThere(page);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('New job');
  const job = JSON.parse(await savedText(page)) as Job;
  expect(job.members).toEqual([]);
  expect([job.dies, job.sections, job.pulls]).toEqual([demo.dies, demo.sections, demo.pulls]);

  await test.step('a cage that is begun then has its feet left long by what the record says', async () => {
    await page.getByRole('button', { name: /what do you build/ }).click();
    await page.getByRole('button', { name: /New roll bar/ }).click();
    await page.getByRole('button', { name: 'Build it' }).click();
    const { members } = JSON.parse(await savedText(page)) as {
      members: { ends: { fit?: string; allowance?: number }[] }[];
    };
    const feet = members.flatMap(({ ends }) => ends.filter(({ fit }) => fit === 'foot'));
    expect(new Set(feet.map(({ allowance }) => allowance))).toEqual(new Set([38.1]));
  });
});

test('a job that differs is asked about once, in words; its answers change the job, nothing, or the shop', async ({
  page,
}) => {
  await start(page);
  await takeFromJob(page);
  await close(page);
  await openFile(page, 'other.json', elsewhere());
  await expect(question(page)).toContainText('Clamp before start of bend: shop');
  // Whoever came to it from somewhere stands there again when it is answered.
  const name = page.getByRole('textbox', { name: 'Job' });
  await name.focus();
  await question(page).getByRole('button', { name: 'Use the shop’s' }).focus();
  await page.keyboard.press('Enter');
  await expect(question(page)).toHaveCount(0);
  await expect(name).toBeFocused();
  expect(JSON.parse(await savedText(page)).dies).toEqual((JSON.parse(demoText()) as Job).dies);
  await expect(undoKey(page)).toHaveAccessibleName(/Use the shop’s/);

  await openFile(page, 'other.json', elsewhere());
  await question(page).getByRole('button', { name: 'Keep this job’s' }).press('Enter');
  await expect(question(page)).toHaveCount(0);
  await openFile(page, 'other.json', elsewhere());
  await expect(page.getByRole('button', { name: 'Menu' })).toBeVisible();
  await expect(question(page)).toHaveCount(0);
  expect((JSON.parse(await savedText(page)) as Job).dies[0]!.clampOffset).toBe(100);

  await openFile(page, 'third.json', elsewhere(101));
  await question(page).getByRole('button', { name: 'Put this job’s into the shop' }).press('Enter');
  await openRecord(page);
  const coming = page.waitForEvent('download');
  await record(page).getByRole('button', { name: 'Save as file' }).click();
  expect((JSON.parse(await textOf(coming)) as Job).dies[0]!.clampOffset).toBe(101);
});

test('files of the record: opened, saved, and what is in them taken out and added', async ({ page }) => {
  await start(page);
  await openRecord(page);
  await test.step('a file is opened and saved as it is; one with a fault says where, and what was there before can be had back', async () => {
    await openShopFile(page, 'job.json', demoText());
    await expect(record(page).getByRole('alert')).toContainText('a job file: open it as a job');
    await openShopFile(page, 'shop.json', JSON.stringify(shopFile()));
    await expect(record(page).getByRole('alert')).toHaveCount(0);
    const coming = page.waitForEvent('download');
    await record(page).getByRole('button', { name: 'Save as file' }).click();
    expect(JSON.parse(await textOf(coming))).toEqual(shopFile());

    await record(page).getByRole('button', { name: 'Take out die 6 in CLR' }).click();
    await expect(record(page).getByRole('table', { name: 'Dies of the shop' })).not.toContainText('6 in CLR');
    await record(page).getByRole('button', { name: 'Put back what was here before' }).click();
    await expect(record(page).getByRole('table', { name: 'Dies of the shop' })).toContainText('6 in CLR');
  });

  await test.step('a misread pull is taken out of the shop’s log by itself; the scatter of a mark is in the unit of the job', async () => {
    await expect(record(page).getByRole('row', { name: /of a mark/iu })).toContainText('0.031 in');
    const pulls = shopFile().pulls as { pulled: number; net: number }[];
    const [one] = pulls;
    for (const log of await record(page).locator('.record-pulls > summary').all()) await log.click();
    await record(page)
      .getByRole('button', { name: `Take out the pull to ${one!.pulled}° that came out as ${one!.net}°` })
      .first()
      .click();
    const coming = page.waitForEvent('download');
    await record(page).getByRole('button', { name: 'Save as file' }).click();
    expect((JSON.parse(await textOf(coming)) as Job).pulls).toEqual(pulls.slice(1));
  });

  await test.step('a saw, a notcher and sticks are added by keyboard, and refused where they cannot be', async () => {
    await openShopFile(page, 'shop.json', JSON.stringify({ ...shopFile(), saws: [], notchers: [], sticks: [] }));
    await expect(record(page).getByRole('table', { name: 'Hole saws' })).toHaveCount(0);
    const saws = record(page).getByRole('form', { name: 'Add a hole saw' });
    const diameter = saws.getByRole('textbox', { name: 'Diameter' });
    await diameter.fill('50');
    await diameter.press('Enter');
    await expect(saws.getByRole('alert')).toContainText('beyond 1000 mm');
    await diameter.fill('1 3/4');
    await diameter.press('Enter');
    await expect(record(page).getByRole('table', { name: 'Hole saws' })).toContainText('1 3/4');
    // The press that leaves the field is the press on the key: what is below the field must not move from under it.
    await diameter.fill('2 1/4');
    const key = saws.getByRole('button', { name: 'Add a hole saw' });
    await key.scrollIntoViewIfNeeded();
    const { x, y, width, height } = (await key.boundingBox())!;
    await page.mouse.click(x + width / 2, y + height / 2);
    await expect(record(page).getByRole('table', { name: 'Hole saws' })).toContainText('2 1/4');
    const notchers = record(page).getByRole('form', { name: 'Add a notcher' });
    await notchers.getByRole('textbox', { name: 'Off square, up to' }).fill('95');
    await notchers.getByRole('textbox', { name: 'What it is called' }).fill('By the door');
    await notchers.getByRole('textbox', { name: 'What it is called' }).press('Enter');
    await expect(notchers.getByRole('alert')).toContainText('from 0 to 90');
    await notchers.getByRole('textbox', { name: 'Off square, up to' }).fill('60');
    await notchers.getByRole('textbox', { name: 'Off square, up to' }).press('Enter');
    await expect(record(page).getByRole('table', { name: 'Notchers' })).toContainText(
      'By the door60°any anglenot saidno',
    );
    const sticks = record(page).getByRole('form', { name: 'Put sticks on the rack' });
    await sticks.getByRole('textbox', { name: 'Length' }).fill("20'");
    await sticks.getByRole('textbox', { name: 'How many' }).fill('5');
    await sticks.getByRole('textbox', { name: 'How many' }).press('Enter');
    const coming = page.waitForEvent('download');
    await record(page).getByRole('button', { name: 'Save as file' }).click();
    expect(JSON.parse(await textOf(coming))).toMatchObject({
      saws: [{ diameter: 44.45 }, { diameter: 57.15 }],
      notchers: [{ name: 'By the door', greatestOffSquare: 60, takesOffset: false }],
      sticks: [{ section: 'main', length: 6096, count: 5 }],
    });
  });

  await test.step('a job that has none takes them where its ends are, in one step that can be undone', async () => {
    await close(page);
    await goTo(page, 'Shop');
    await chooseTube(page, 'Rear stay (left)');
    await showPart(page, 'Ends');
    const take = page.getByRole('button', { name: 'Use the shop’s notchers and saws', exact: true });
    await take.click();
    await expect(take).toHaveCount(0);
    expect(JSON.parse(await savedText(page))).toMatchObject({
      tools: { saws: [{ diameter: 44.45 }, { diameter: 57.15 }] },
    });
    await undoKey(page).click();
    await expect(take).toBeVisible();
  });
});

test('at each size the record and the question keep within the page', async ({ page }) => {
  const wide = { ...shopFile(), notchers: [{ name: 'N'.repeat(180), greatestOffSquare: 50 }] };
  // Listened to all the time: else the first press is at times before the browser hands its dialog to the test.
  page.on('filechooser', () => {});
  await start(page);
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await openRecord(page);
    await openShopFile(page, 'shop.json', JSON.stringify(wide));
    await expect(record(page).getByRole('table', { name: 'Notchers' })).toBeVisible();
    const body = record(page).locator('.dialog-body');
    expect(await body.evaluate((box) => box.scrollWidth - box.clientWidth)).toBe(0);
    await record(page).getByRole('heading', { name: 'Shop record' }).scrollIntoViewIfNeeded();
    await close(page);
    // On a telephone a file is opened with the keys, or from the menu. Answered once, another is asked.
    const chooser = page.waitForEvent('filechooser');
    await page.keyboard.press('ControlOrMeta+o');
    const buffer = Buffer.from(elsewhere(size.width));
    await (await chooser).setFiles({ name: 'other.json', mimeType: 'application/json', buffer });
    await openedInItsOwnPlace(page, '');
    await expect(question(page)).toBeVisible();
    const box = (await question(page).boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(size.width);
    await question(page).getByRole('button', { name: 'Keep this job’s' }).press('Enter');
    await expect(question(page)).toHaveCount(0);
  }
});
