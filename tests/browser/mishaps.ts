/**
 * What can happen to the browser's storage while the program runs. Each row does it to a page that has just been opened, at a time and
 * among edits that are drawn, and asks the same of all: words where something could not be saved, no blank page, and the work kept
 * again as soon as it can be, without an edit. Between them, storage.spec.ts and the short torture run try each once; the whole torture run
 * tries all many times over.
 */
import { expect as plain, type BrowserContext, type Page } from '@playwright/test';
import type { Draw } from '../reference/oracles/seeded.ts';
import { enter, start, undoKey, untilKept, untilThere } from './journey.ts';
import {
  bare,
  clearSiteData,
  dropDatabase,
  dropSecondCopies,
  keptNames,
  limitRoom,
  recordsIn,
  secondCopies,
  spoilSecondCopy,
} from './stores.ts';
import { closeConnections, enterQuickly, fail, FAILURES, mend, saidBy } from './wreck.ts';

export interface Given {
  /** A page in a browser that knows nothing yet, which is not loaded and has been prepared (wreck.ts). */
  readonly page: Page;
  readonly context: BrowserContext;
  readonly origin: string;
  readonly draw: Draw;
  /** 1 for all that a row can try, less for some of it. */
  readonly share: number;
}

export interface Mishap {
  readonly name: string;
  /** The short torture run tries it, once; the browser tests try the others. */
  readonly inShortRun?: true;
  /** Tried in the long run alone (tests/draws.ts): other rows and tests/store go the same way. */
  readonly inLongRun?: true;
  /** Rejects with what does not hold; answers how many were tried, if it was more than one. */
  readonly run: (given: Given) => Promise<number | void>;
}

/** Also where nobody configures it, on a busy machine. */
export const expect = plain.configure({ timeout: 20_000 });

export const jobName = (page: Page) => page.getByRole('textbox', { name: 'Job' });
export const notSaved = (page: Page) => page.locator('.notice').filter({ hasText: 'Not saved' });

/** Names the job so and waits until that is kept. */
export async function name(page: Page, words: string): Promise<void> {
  await enter(jobName(page), words);
  await untilKept(page);
}

/** Loads the program again, and waits for its job. */
export async function reload(page: Page): Promise<void> {
  await page.reload();
  await untilThere(page);
}

/** A page beside it that does not run the program; the one that does stays in front, where a browser leaves it its whole speed. */
export async function pageBeside(page: Page): Promise<Page> {
  const beside = await bare(page.context());
  await page.bringToFront();
  return beside;
}

let counter = 0;

/** Some edits one after the other, in a rhythm that is drawn; `meanwhile` happens at some moment among them. Answers the job's last name. */
export async function type(page: Page, draw: Draw, meanwhile?: () => Promise<unknown>): Promise<string> {
  const stem = `Work ${(counter += 1)}`;
  const count = 1 + Math.floor(draw.between(0, 12));
  const isQuick = draw.chance(0.6);
  const at = draw.between(0, 80 * count);
  const pauses = Array.from({ length: count }, () => draw.between(0, 250));
  const happening = meanwhile && page.waitForTimeout(at).then(meanwhile);
  if (isQuick) await enterQuickly(jobName(page), stem, count);
  else {
    for (const [nth, pause] of pauses.entries()) {
      await enter(jobName(page), `${stem} ${nth + 1}`);
      await page.waitForTimeout(pause);
    }
  }
  await happening;
  return `${stem} ${count}`;
}

/** The page stands, says that all is saved, and shows the work and a way back after it was loaded again. */
export async function mustBeKept(page: Page, words: string): Promise<void> {
  await untilKept(page);
  await expect(notSaved(page)).toBeHidden();
  await expect(jobName(page)).toHaveValue(words);
  await reload(page);
  await mustStand(page);
  await expect(jobName(page)).toHaveValue(words);
  await expect(undoKey(page)).toBeEnabled();
}

export const mustStand = (page: Page): Promise<void> =>
  expect(page.getByRole('navigation', { name: 'Stations' })).toBeVisible();

/** The second copy has it. */
export const mustLieInSecond = (beside: Page, words: string): Promise<void> =>
  expect.poll(async () => Object.values(await secondCopies(beside)).join()).toContain(words);

const mustSay = (page: Page, words: RegExp): Promise<void> => expect.poll(() => saidBy(page)).toMatch(words);

/** How many edits are made at most until a disk is full. */
const MOST_EDITS = 60;

export const MISHAPS: readonly Mishap[] = [
  {
    name: 'a write that fails once',
    inShortRun: true,
    async run({ page, draw }) {
      await start(page);
      const how = draw.oneOf(FAILURES);
      const words = await type(page, draw, () => fail(page, how, 1));
      await untilKept(page);
      // All may have been written before: then it is the next that fails.
      const isOver = await page.evaluate(() => window.wreck.failing?.left === 0);
      const last = isOver ? words : await type(page, draw);
      // A connection that is closed is opened again before anyone sees it.
      if (how !== 'InvalidStateError') await mustSay(page, /Not saved/u);
      await mustBeKept(page, last);
    },
  },
  {
    name: 'writes that fail until they work again',
    async run({ page, draw }) {
      await start(page);
      const how = draw.oneOf(FAILURES);
      await type(page, draw, () => fail(page, how));
      let words = await type(page, draw);
      await expect(notSaved(page)).toContainText(how === 'QuotaExceededError' ? 'is full' : 'does not answer');
      await expect(page.locator('.notices').getByRole('button', { name: 'Save the file' })).toBeVisible();
      await mustStand(page);
      await mend(page);
      const way = draw.oneOf(['waits', 'presses', 'edits']);
      if (way === 'presses') await page.getByRole('button', { name: 'Try again now' }).click();
      if (way === 'edits') words = await type(page, draw);
      await mustBeKept(page, words);
    },
  },
  {
    name: 'writes that fail for good',
    inShortRun: true,
    async run({ page, context, draw }) {
      await start(page);
      const words = await type(page, draw, () => fail(page, draw.oneOf(FAILURES))).then(() => type(page, draw));
      await expect(notSaved(page)).toBeVisible();
      const beside = await pageBeside(page);
      await mustLieInSecond(beside, words);
      await page.close();
      const again = await context.newPage();
      await start(again);
      await expect(jobName(again)).toHaveValue(words);
      await mustBeKept(again, words);
      await again.close();
    },
  },
  {
    name: 'the connection closed under the page',
    inShortRun: true,
    async run({ page, draw }) {
      await start(page);
      const words = await type(page, draw, () => closeConnections(page));
      await mustBeKept(page, words);
    },
  },
  {
    name: 'storage cleared under the page',
    inLongRun: true,
    async run({ page, draw }) {
      await start(page);
      await name(page, 'Once');
      const beside = await pageBeside(page);
      const isAmongEdits = draw.chance(0.5);
      const words = await type(page, draw, () => (isAmongEdits ? clearSiteData(page) : Promise.resolve()));
      if (!isAmongEdits) await untilKept(page).then(() => clearSiteData(page));
      await expect.poll(() => keptNames(beside)).toEqual([words]);
      await mustLieInSecond(beside, words);
      const versions = async () => (await recordsIn(beside, 'versions')).map(({ value }) => value.name);
      await expect.poll(versions).toContain('Once');
      await mustBeKept(page, words);
      while (await undoKey(page).isEnabled()) await undoKey(page).click();
      await expect(jobName(page)).not.toHaveValue(/^(Once|Work)/u);
    },
  },
  {
    name: 'the database deleted under the page',
    inShortRun: true,
    async run({ page, draw }) {
      await start(page);
      const beside = await pageBeside(page);
      const isAmongEdits = draw.chance(0.5);
      const words = await type(page, draw, () => (isAmongEdits ? dropDatabase(beside) : Promise.resolve()));
      if (!isAmongEdits) await untilKept(page).then(() => dropDatabase(beside));
      await expect.poll(() => keptNames(beside)).toEqual([words]);
      await mustBeKept(page, words);
    },
  },
  {
    name: 'either copy missing',
    inLongRun: true,
    async run({ page, context, draw }) {
      await start(page);
      const words = await type(page, draw);
      await untilKept(page);
      const beside = await pageBeside(page);
      await mustLieInSecond(beside, words);
      await page.close();
      for (const drop of [dropDatabase, dropSecondCopies, dropDatabase]) {
        await drop(beside);
        const again = await context.newPage();
        await start(again);
        await expect(jobName(again), drop.name).toHaveValue(words);
        await expect(undoKey(again)).toBeEnabled();
        // What was missing has been made again.
        await expect.poll(() => keptNames(beside)).toEqual([words]);
        await mustLieInSecond(beside, words);
        await again.close();
      }
    },
  },
  {
    name: 'the second copy spoilt, and the database gone',
    inShortRun: true,
    async run({ page, context, draw }) {
      await start(page);
      await name(page, 'Before it');
      const beside = await pageBeside(page);
      await mustLieInSecond(beside, 'Before it');
      await name(page, 'Last');
      await mustLieInSecond(beside, 'Last');
      await page.close();
      await spoilSecondCopy(beside, draw.oneOf(['cut short', 'emptied', 'another text'] as const));
      await dropDatabase(beside);
      const again = await context.newPage();
      await start(again);
      await mustStand(again);
      await expect(jobName(again)).toHaveValue('Before it');
      await mustBeKept(again, 'Before it');
      await again.close();
    },
  },
  {
    name: 'a disk that is full, and has room again',
    async run({ page, origin, draw }) {
      await clearSiteData(page, origin);
      await limitRoom(page, origin, Math.round(draw.between(150_000, 300_000)));
      await start(page);
      await name(page, 'Fits');
      await limitRoom(page, origin, 1);
      let words = '';
      for (let edits = 0; edits < MOST_EDITS && !(await notSaved(page).isVisible()); edits += 1) {
        words = `Too much ${edits}`;
        await enter(jobName(page), words);
        await page.waitForTimeout(draw.between(200, 400));
      }
      await expect(notSaved(page)).toContainText('is full');
      await mustStand(page);
      await limitRoom(page, origin, null);
      await mustBeKept(page, words);
      const beside = await pageBeside(page);
      await mustLieInSecond(beside, words);
    },
  },
  {
    name: 'closed a moment after the last edit',
    inLongRun: true,
    async run({ page, context, draw }) {
      await start(page);
      const words = await type(page, draw);
      await page.close();
      const again = await context.newPage();
      await start(again);
      await expect(jobName(again)).toHaveValue(words);
      await again.close();
    },
  },
  {
    name: 'no channel between tabs',
    async run({ page, draw }) {
      await page.addInitScript(() => delete (window as Partial<typeof globalThis>).BroadcastChannel);
      await start(page);
      await mustBeKept(page, await type(page, draw));
    },
  },
];
