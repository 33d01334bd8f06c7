/**
 * What the journeys share. Each runs in a browser of its own that knows nothing yet, and fails as well when the page
 * logs an error, throws, or asks anything of another origin. Things are addressed as a person would: by role and name.
 */
import { readFileSync } from 'node:fs';
import { test as plain, expect, type Download, type Locator, type Page } from '@playwright/test';

export { expect };

/** What goes wrong in the page on the way; a journey that provokes something expected takes it out. */
export function troublesOf(page: Page, ownOrigin: string): string[] {
  const troubles: string[] = [];
  page.on('console', (message) => message.type() === 'error' && troubles.push(message.text()));
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    if (protocol !== 'data:' && protocol !== 'blob:' && origin !== ownOrigin) {
      troubles.push(`outside: ${request.url()}`);
    }
  });
  return troubles;
}

export const test = plain.extend<{ troubles: string[] }>({
  troubles: [
    async ({ page, baseURL }, use) => {
      const troubles = troublesOf(page, baseURL!);
      await use(troubles);
      expect(troubles).toEqual([]);
    },
    { auto: true },
  ],
});

/** For a test that needs the bay drawn; all others run in a browser that cannot draw in 3D: see playwright.config.ts. */
export const IN_THE_BAY = { tag: '@bay' } as const;

/** For tests in which the job is nothing but a job: the program comes up with few tubes (serve-build.ts), at half the cost. */
export const FEW = { baseURL: process.env['CAGEWRIGHT_SMALL_URL'] ?? '' } as const;

/** A laptop, a tablet and a telephone. */
export const SIZES = [
  { width: 1440, height: 900 },
  { width: 1024, height: 768 },
  { width: 390, height: 844 },
];

/** Loads the page as somebody who has seen the hints, and waits until the job is there. */
export async function start(page: Page): Promise<void> {
  // An empty page, which some tests go by, has no storage.
  await page.addInitScript(() => window.origin !== 'null' && window.localStorage.setItem('cagewright.hints', 'true'));
  await page.goto('/');
  await untilThere(page);
}

export type StationName = 'Survey' | 'Frame' | 'Checks' | 'Shop' | 'Stock';

export const stationKey = (page: Page, name: StationName): Locator =>
  page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name });

export const goTo = (page: Page, name: StationName): Promise<void> => stationKey(page, name).click();

/** The parts of the Shop, which shows one of them. */
export const SHOP_PARTS = ['Tubes', 'Ends', 'Marks', 'Bending', 'Pulls', 'Files'] as const;
export type ShopPart = (typeof SHOP_PARTS)[number];

export const showPart = (page: Page, name: ShopPart): Promise<void> =>
  page.getByRole('tablist', { name: 'Parts of the Shop' }).getByRole('tab', { name }).click();

/** In the Shop: the tube in the list, and then the part that is looked at. */
export async function chooseTube(page: Page, name: string, part: ShopPart = 'Tubes'): Promise<void> {
  await showPart(page, 'Tubes');
  await tubeRow(page, name).getByRole('gridcell').nth(1).click();
  if (part !== 'Tubes') await showPart(page, part);
}

/** The job is there: in the bay, or beside what stands in its place where the browser cannot draw in 3D. */
export async function untilThere(page: Page): Promise<void> {
  // Looked for with each frame: a locator looks again half a second later, and a page is loaded some two hundred times.
  await page.waitForFunction(() => document.querySelector('.bay-stage, .bay-missing') !== null);
}

/** The part of the bay that takes pointer and keys. */
export const bay = (page: Page): Locator => page.getByRole('application', { name: /^Frame/ });

/** What the bay says of the selection to those who do not see it. */
export const spoken = (page: Page): Locator =>
  page.getByRole('region', { name: '3D view of the frame' }).getByRole('status');

/** The row that has a cell of just this. */
export const rowOf = (page: Page, table: string | RegExp, name: string): Locator =>
  page
    .getByRole('grid', { name: table })
    .getByRole('row')
    .filter({
      has: page.getByRole('gridcell', { name, exact: true }),
    });

/** Selects the row by a press on its name. */
export const choose = (page: Page, table: string | RegExp, name: string): Promise<void> =>
  rowOf(page, table, name).getByRole('gridcell', { name, exact: true }).first().click();

/** The tube's row in the Shop. */
export const tubeRow = (page: Page, name: string): Locator =>
  page
    .getByRole('grid', { name: /^Tubes/ })
    .getByRole('row')
    .filter({ hasText: name });

export const undoKey = (page: Page): Locator => page.getByRole('button', { name: /^Undo/ });
export const redoKey = (page: Page): Locator => page.getByRole('button', { name: /^Redo/ });

/** Where the chosen point comes of readings its place is typed from here on: a step of its own. */
export async function typeItsPlace(page: Page): Promise<void> {
  const card = page.getByRole('article', { name: /^Point/ });
  const key = card.getByRole('button', { name: 'Type its place' });
  const height = card.getByRole('textbox', { name: 'Height' });
  await key.or(height).first().waitFor();
  if (await key.isVisible()) await key.click();
  await height.waitFor();
}

/** Types into a field and enters it. */
export async function enter(field: Locator, text: string): Promise<void> {
  await field.fill(text);
  await field.press('Enter');
}

export async function textOf(download: Promise<Download>): Promise<string> {
  return readFileSync(await (await download).path(), 'utf8');
}

/** The job file as Save gives it now, by its keys: the mouse may be holding something. */
export async function savedText(page: Page): Promise<string> {
  await untilMayDownload(page);
  const download = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+s');
  return textOf(download);
}

/** When the page began its last downloads. */
const downloads = new WeakMap<Page, number[]>();

/** Chromium drops, without a word, what would be the eleventh download of a page within one second. */
async function untilMayDownload(page: Page): Promise<void> {
  const begun = downloads.get(page) ?? [];
  const tenth = begun.at(-10);
  if (tenth !== undefined) await page.waitForTimeout(Math.max(0, tenth + 1_100 - Date.now()));
  downloads.set(page, [...begun, Date.now()]);
}

/** Picks a file in the browser's own dialog; one that is another state of the open job is opened in its own place. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  const before = await page.getByRole('textbox', { name: 'Job' }).inputValue();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await openedInItsOwnPlace(page, before, /"name": ?"([^"\\]*)"/u.exec(text)?.[1]);
}

/** Longest that a question is waited for where the name of the job does not say that it was opened without one, ms. */
const ASKED_WITHIN = 5_000;

/** Answers what is asked of a file that is another state of the open job, called `before`; by the name of the job in it one sees that nothing is asked. */
export async function openedInItsOwnPlace(page: Page, before: string, jobName?: string): Promise<void> {
  const question = page.getByRole('dialog', { name: 'Another state of this job' });
  await page
    .waitForFunction(
      (opened) =>
        document.querySelector('.take-over-foot, .notice-wrong') !== null ||
        document.querySelector<HTMLInputElement>('.job-name')?.value === opened,
      jobName === before ? null : jobName,
      jobName === undefined || jobName === before ? { timeout: ASKED_WITHIN } : {},
    )
    .catch(() => {});
  if (await question.isHidden()) return;
  await question.getByRole('button', { name: 'Open it in its own place' }).click();
  await question.waitFor({ state: 'hidden' });
}

/** Until the last change is written to the browser's own store. */
export const untilKept = (page: Page): Promise<void> => page.getByText('Saved in this browser').waitFor();

type Box = NonNullable<Awaited<ReturnType<Locator['boundingBox']>>>;

/** Where it stands once it stands still: labels are placed anew with each frame that is drawn. */
export async function stillBox(thing: Locator): Promise<Box> {
  let last: Box | null = null;
  await expect(async () => {
    const before = last;
    last = await thing.boundingBox();
    expect(last).not.toBeNull();
    expect(last).toEqual(before);
  }).toPass({ intervals: [500] });
  return last!;
}
