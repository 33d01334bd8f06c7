/** Storage that goes wrong under the page, or lies wrong when it comes: words that say so, no blank page, and no work lost. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { enter, expect, goTo, choose, start, test, undoKey, untilKept, untilThere } from './journey.ts';
import { CORRUPT_DOCUMENTS, CORRUPT_VERSIONS } from '../store/corrupt.ts';
import {
  bare,
  clearSiteData,
  dropDatabase,
  dropSecondCopies,
  hold,
  keptNames,
  lay,
  letGo,
  type Laid,
  recordsIn,
  secondCopies,
} from './stores.ts';

const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });
const notSaved = (page: Page) => page.locator('.notice').filter({ hasText: 'Not saved' });

/** Names the job so and waits until that is kept. */
async function name(page: Page, words: string): Promise<void> {
  await enter(jobName(page), words);
  await untilKept(page);
}

/** Loads the program again, and waits for its job. */
async function reload(page: Page): Promise<void> {
  await page.reload();
  await untilThere(page);
}

test('what is cleared away under the page is written again, without an edit', async ({ page, context }) => {
  await start(page);
  await name(page, 'Once');
  await name(page, 'Twice');
  const beside = await bare(context);
  await clearSiteData(page);
  await expect.poll(() => keptNames(beside)).toEqual(['Twice']);
  await expect.poll(async () => Object.values(await secondCopies(beside)).join()).toContain('Twice');
  await expect.poll(async () => (await recordsIn(beside, 'versions')).map(({ value }) => value.name)).toEqual(['Once']);
  await name(page, 'Thrice');
  await reload(page);
  await expect(jobName(page)).toHaveValue('Thrice');
  for (const before of ['Twice', 'Once']) {
    await undoKey(page).click();
    await expect(jobName(page)).toHaveValue(before);
  }
});

test('a full disk is said, and what could not be saved is saved once there is room, without an edit', async ({
  page,
}) => {
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...given) {
      if (window.full) throw new DOMException('no room', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await start(page);
  await name(page, 'Fits');
  await page.evaluate(() => (window.full = true));
  await enter(jobName(page), 'Too much');
  await expect(notSaved(page)).toContainText('full');
  await expect(page.locator('.notices').getByRole('button', { name: 'Save the file' })).toBeVisible();
  await page.evaluate(() => (window.full = false));
  await untilKept(page);
  await expect(notSaved(page)).toBeHidden();
  await reload(page);
  await expect(jobName(page)).toHaveValue('Too much');
});

test('either copy alone brings the work back, with its way back', async ({ page, context }) => {
  await start(page);
  await name(page, 'Kept twice');
  const beside = await bare(context);
  await expect.poll(async () => Object.values(await secondCopies(beside)).join()).toContain('Kept twice');
  await page.close();
  for (const drop of [dropDatabase, dropSecondCopies, dropDatabase]) {
    await drop(beside);
    const again = await context.newPage();
    await start(again);
    await expect(jobName(again), drop.name).toHaveValue('Kept twice');
    await expect(undoKey(again)).toBeEnabled();
    // What was missing has been made again.
    await expect.poll(() => keptNames(beside)).toEqual(['Kept twice']);
    await expect.poll(async () => Object.values(await secondCopies(beside)).join()).toContain('Kept twice');
    await again.close();
  }
});

/** The renderer is gone at once, as when the machine kills it: no page hears of it. */
async function crash(page: Page): Promise<void> {
  const crashed = page.waitForEvent('crash');
  const session = await page.context().newCDPSession(page);
  void session.send('Page.crash').catch(() => undefined);
  await crashed;
}

test('an arrow key that is held is kept while it is held, and the way back to before it', async ({ page, context }) => {
  await start(page);
  const height = async (on: Page) => {
    await goTo(on, 'Survey');
    await choose(on, 'Measured points, in inches', 'Floor at A-pillar, left');
    return on.getByRole('article', { name: /^Point/ }).getByRole('textbox', { name: 'Height' });
  };
  const field = await height(page);
  const before = await field.inputValue();
  await field.focus();
  const shown: { readonly at: number; readonly value: string }[] = [];
  for (const end = Date.now() + 3000; Date.now() < end; await page.waitForTimeout(40)) {
    await page.keyboard.down('ArrowUp');
    shown.push({ at: Date.now(), value: await field.inputValue() });
  }
  await crash(page);

  const again = await context.newPage();
  await start(again);
  const kept = await (await height(again)).inputValue();
  const old = shown.findIndex(({ value }) => value === kept);
  expect(old, `${kept} was shown`).toBeGreaterThanOrEqual(0);
  await undoKey(again).click();
  await expect(await height(again), 'a key that was held is one step').toHaveValue(before);
  await expect(undoKey(again)).toBeDisabled();
});

test('what was typed a moment before the page is closed is kept', async ({ page, context }) => {
  await start(page);
  await enter(jobName(page), 'At the last moment');
  await page.close();
  const again = await context.newPage();
  await start(again);
  await expect(jobName(again)).toHaveValue('At the last moment');
});

test('while an older tab is in the way the page says so, takes no edit, and brings the work out after it', async ({
  page,
  context,
}) => {
  const older = await bare(context);
  expect(await hold(older, 2)).toBe(true);
  const kept = { slot: 's', name: 'Older work', fileName: '', station: 'frame', history: null, savedAt: 1.7e12 };
  const text = JSON.stringify({ ...JSON.parse(demoText()), name: 'Older work' });
  await lay(older, 'documents', { kept: { ...kept, text }, stamp: { tab: 't', count: 1 } }, 's');
  await page.goto('/');
  const strip = page.locator('.notices');
  await expect(strip).toContainText('Close the other Cagewright tabs');
  await expect(page.getByText('Saved in this browser')).toBeHidden();
  await expect(jobName(page)).toBeDisabled();
  await letGo(older);
  await untilThere(page);
  await expect(jobName(page)).toHaveValue('Older work');
  await expect(strip).not.toContainText('Close the other Cagewright tabs');
});

test('what is begun while an older tab is in the way lies beside the kept work, not over it', async ({
  page,
  context,
}) => {
  const older = await bare(context);
  expect(await hold(older, 2)).toBe(true);
  const kept = { slot: 's', name: 'Older work', fileName: '', station: 'frame', history: null, savedAt: 1.7e12 };
  await lay(older, 'documents', { kept: { ...kept, text: demoText() }, stamp: { tab: 't', count: 1 } }, 's');
  await page.goto('/');
  await expect(page.locator('.notices')).toContainText('Close the other Cagewright tabs');
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New empty job' }).click();
  await enter(jobName(page), 'Begun meanwhile');
  await expect(notSaved(page)).toBeVisible();
  await letGo(older);
  await untilKept(page);
  await expect(jobName(page)).toHaveValue('Begun meanwhile');
  expect((await keptNames(older)).toSorted()).toEqual(['Begun meanwhile', 'Older work']);
});

test('the page makes way for a newer layout, and says that it must be loaded again', async ({ page, context }) => {
  await start(page);
  await name(page, 'Mine');
  const newer = await bare(context);
  expect(await hold(newer, 99)).toBe(true);
  await expect(page.locator('.notices')).toContainText('newer Cagewright');
  await enter(jobName(page), 'After it');
  await expect(notSaved(page)).toContainText('newer Cagewright');
  expect(await keptNames(newer)).toEqual(['Mine']);
});

test('work that a newer layout holds is said, and not written over', async ({ page, context }) => {
  const newer = await bare(context);
  expect(await hold(newer, 99)).toBe(true);
  await letGo(newer);
  await start(page);
  await expect(page.locator('.notices')).toContainText('newer Cagewright');
  await expect(page.getByText('Saved in this browser')).toBeHidden();
  await enter(jobName(page), 'Not into it');
  await expect(notSaved(page)).toBeVisible();
  expect(await keptNames(newer)).toEqual([]);
});

test('without a channel between tabs it works on', async ({ page }) => {
  await page.addInitScript(() => delete (window as Partial<typeof globalThis>).BroadcastChannel);
  await start(page);
  await name(page, 'Alone');
  await reload(page);
  await expect(jobName(page)).toHaveValue('Alone');
});

test('each record that is spoilt is set aside with words, and the good one below opens', async ({ page, context }) => {
  const beside = await bare(context);
  await hold(beside, 2);
  await letGo(beside);
  const text = JSON.stringify({ ...JSON.parse(demoText()), name: 'Good one' });
  const good = { slot: 'g', name: 'Good one', text, history: null, fileName: '', station: 'frame', savedAt: 1e12 };
  await lay(beside, 'documents', { kept: good, stamp: { tab: 't', count: 1 } }, 'g');
  for (const [index, [, record]] of CORRUPT_DOCUMENTS.entries()) {
    await lay(beside, 'documents', inSlot(record, `spoilt ${index}`), `spoilt ${index}`);
  }
  await start(page);
  await expect(jobName(page)).toHaveValue('Good one');
  const strip = page.locator('.notices');
  await expect(strip).toContainText('could not be read');
  await expect(strip.getByRole('button', { name: /^Download/ }).first()).toBeVisible();
  await name(page, 'Good one, on');
  expect((await recordsIn(beside, 'documents')).map(({ key }) => key)).toEqual(['g']);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  await expect(
    page
      .getByRole('dialog')
      .getByText(/could not be read/)
      .first(),
  ).toBeVisible();
  await page.keyboard.press('Escape');
  await reload(page);
  await expect(strip, 'said once').not.toContainText('could not be read');
});

/** The same record for another slot; one that names its slot goes on to name the one that it lies in. */
function inSlot(record: unknown, slot: string): unknown {
  const { kept } = (record ?? {}) as { readonly kept?: { readonly slot?: unknown } };
  return kept?.slot === 'spoilt' ? { ...(record as object), kept: { ...kept, slot } } : record;
}

test('a stamp that is spoilt under the page does not stop it from saving', async ({ page, context }) => {
  await start(page);
  await name(page, 'Once');
  const beside = await bare(context);
  const [{ key, value }] = (await recordsIn(beside, 'documents')) as [Laid];
  await lay(beside, 'documents', { ...value, stamp: 'gone' }, key);
  await name(page, 'Twice');
  expect(await keptNames(beside)).toEqual(['Twice']);
});

test('versions that are none are set aside with words, and the good ones stay', async ({ page, context }) => {
  await start(page);
  await name(page, 'Good version');
  const beside = await bare(context);
  for (const [, version] of CORRUPT_VERSIONS) await lay(beside, 'versions', version);
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  const rows = page.getByRole('dialog').getByRole('listitem');
  await expect(rows.filter({ hasText: 'Good version' }).first()).toBeVisible();
  await expect(rows.filter({ hasText: 'could not be read' }).first()).toBeVisible();
  expect((await recordsIn(beside, 'versions')).map(({ value }) => value.name)).toEqual(['Good version']);
});
