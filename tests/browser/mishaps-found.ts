/** What the program can find in the browser's storage when it is opened, or meet there: other layouts, and records that are none. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { checkStored } from '../../src/store/storage/records.ts';
import { CORRUPT_DOCUMENTS, CORRUPT_VERSIONS } from '../store/storage/corrupt.ts';
import { enter, start, undoKey, untilKept, untilThere } from './journey.ts';
import {
  expect,
  jobName,
  mustBeKept,
  mustLieInSecond,
  mustStand,
  name,
  notSaved,
  pageBeside,
  reload,
  type,
  type Mishap,
} from './mishaps.ts';
import { hold, keptNames, lay, letGo, recordsIn, secondCopies, type Laid } from './stores.ts';

const strip = (page: Page) => page.locator('.notices');

/** A document that an older program has kept. */
async function layOlder(beside: Page, words: string): Promise<void> {
  const text = JSON.stringify({ ...JSON.parse(demoText()), name: words });
  const kept = { slot: 's', name: words, text, fileName: '', station: 'frame', history: null, savedAt: 1.7e12 };
  await lay(beside, 'documents', { kept, stamp: { tab: 't', count: 1 } }, 's');
}

/** Opens the program while an older tab, which is answered, is in the way; it holds `Older work`. */
async function behindOlder(page: Page): Promise<Page> {
  const older = await pageBeside(page);
  expect(await hold(older, 2)).toBe(true);
  await layOlder(older, 'Older work');
  await page.goto('/');
  await expect(strip(page)).toContainText('Close the other Cagewright tabs');
  return older;
}

const openVersions = async (page: Page) => {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Earlier versions' }).click();
  return page.getByRole('dialog').getByRole('listitem');
};

/** Of the one document that there is. */
const onlySlot = async (beside: Page): Promise<string> => {
  const [only] = (await recordsIn(beside, 'documents')) as [Laid];
  return only.value.kept.slot;
};

/** The same record for another slot; one that names its slot goes on to name the one that it lies in. */
function inSlot(record: unknown, slot: string): unknown {
  const { kept } = (record ?? {}) as { readonly kept?: { readonly slot?: unknown } };
  return kept?.slot === 'spoilt' ? { ...(record as object), kept: { ...kept, slot } } : record;
}

export const FOUND: readonly Mishap[] = [
  {
    name: 'an older tab in the way, waited for',
    async run({ page, draw }) {
      const older = await behindOlder(page);
      await mustStand(page);
      await expect(page.getByText('Saved in this browser')).toBeHidden();
      await expect(jobName(page)).toBeDisabled();
      await page.waitForTimeout(draw.between(0, 500));
      await letGo(older);
      await untilThere(page);
      await expect(jobName(page)).toHaveValue('Older work');
      await expect(strip(page)).not.toContainText('Close the other Cagewright tabs');
      await mustBeKept(page, await type(page, draw));
    },
  },
  {
    name: 'an older tab in the way, and work begun meanwhile',
    inLongRun: true,
    async run({ page, draw }) {
      const older = await behindOlder(page);
      await page.getByRole('button', { name: 'Menu' }).click();
      await page.getByRole('button', { name: 'New job' }).click();
      const words = await type(page, draw);
      await expect(notSaved(page)).toBeVisible();
      const [last] = await Promise.all([
        draw.chance(0.5) ? type(page, draw) : Promise.resolve(words),
        page.waitForTimeout(draw.between(0, 600)).then(() => letGo(older)),
      ]);
      await mustBeKept(page, last);
      expect((await keptNames(older)).toSorted()).toEqual(['Older work', last]);
    },
  },
  {
    name: 'an older tab in the way until the page is gone',
    async run({ page, draw }) {
      const older = await behindOlder(page);
      await page.getByRole('button', { name: 'Menu' }).click();
      await page.getByRole('button', { name: 'Earlier versions' }).click();
      await expect(page.getByRole('dialog')).toContainText('Close the other Cagewright tabs');
      await page.keyboard.press('Escape');
      await page.getByRole('button', { name: 'Menu' }).click();
      await page.getByRole('button', { name: 'New job' }).click();
      const words = await type(page, draw);
      await mustLieInSecond(older, words);
      await expect(notSaved(page)).toContainText('second copy');
      await page.goto('about:blank');
      await letGo(older);
      await page.goto('/');
      await untilThere(page);
      await mustBeKept(page, words);
      await expect.poll(async () => (await keptNames(older)).toSorted()).toEqual(['Older work', words]);
    },
  },
  {
    name: 'a newer layout takes the storage over',
    async run({ page, draw }) {
      await start(page);
      const words = await type(page, draw);
      const newer = await pageBeside(page);
      expect(await hold(newer, 99)).toBe(true);
      await expect(strip(page)).toContainText('newer Cagewright');
      // What waited was written before the page made way.
      expect(await keptNames(newer)).toEqual([words]);
      await type(page, draw);
      await expect(notSaved(page)).toContainText('newer Cagewright');
      await mustStand(page);
      expect(await keptNames(newer)).toEqual([words]);
    },
  },
  {
    name: 'a newer layout holds the storage',
    inLongRun: true,
    async run({ page, draw }) {
      const newer = await pageBeside(page);
      expect(await hold(newer, 99)).toBe(true);
      await letGo(newer);
      await start(page);
      await expect(strip(page)).toContainText('newer Cagewright');
      await expect(page.getByText('Saved in this browser')).toBeHidden();
      await type(page, draw);
      await expect(notSaved(page)).toBeVisible();
      await mustStand(page);
      expect(await keptNames(newer)).toEqual([]);
    },
  },
  {
    name: 'every kind of spoilt record above a good one',
    async run({ page }) {
      const beside = await pageBeside(page);
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
      await expect(strip(page)).toContainText('could not be read');
      await expect(
        strip(page)
          .getByRole('button', { name: /^Download/u })
          .first(),
      ).toBeVisible();
      await name(page, 'Good one, on');
      expect((await recordsIn(beside, 'documents')).map(({ key }) => key)).toEqual(['g']);
      await expect((await openVersions(page)).filter({ hasText: 'could not be read' }).first()).toBeVisible();
      await page.keyboard.press('Escape');
      await reload(page);
      await expect(strip(page), 'said once').not.toContainText('could not be read');
    },
  },
  {
    name: "each kind of spoilt record in the place of the tab's own",
    inShortRun: true,
    async run({ page, draw, share }) {
      await start(page);
      const beside = await pageBeside(page);
      const first = Math.floor(draw.between(0, CORRUPT_DOCUMENTS.length));
      const count = Math.max(1, Math.round(CORRUPT_DOCUMENTS.length * share));
      for (let nth = 0; nth < count; nth += 1) {
        const [what, record] = CORRUPT_DOCUMENTS[(first + nth) % CORRUPT_DOCUMENTS.length]!;
        const words = `Before one ${what} ${nth}`;
        await name(page, words);
        await expect.poll(async () => Object.values(await secondCopies(beside)).join()).toContain(words);
        const key = await onlySlot(beside);
        const laid = inSlot(record, key);
        await lay(beside, 'documents', laid, key);
        await reload(page);
        await mustStand(page);
        await expect(jobName(page), what).toHaveValue(words);
        await expect(undoKey(page), what).toBeEnabled();
        // One that passes for an older document is passed over for the later one: there is nothing to say.
        if (!checkStored(laid, key).ok) await expect(strip(page), what).toContainText('could not be read');
      }
      await name(page, 'After all');
      expect(await keptNames(beside)).toEqual(['After all']);
      return count;
    },
  },
  {
    name: 'a spoilt record laid under the page',
    inLongRun: true,
    async run({ page, draw }) {
      await start(page);
      await name(page, 'Once');
      const beside = await pageBeside(page);
      const key = await onlySlot(beside);
      // One that is sound but for its text is another tab's work as far as anyone can tell, and is left to that tab.
      const unsound = CORRUPT_DOCUMENTS.map(([, record]) => inSlot(record, key)).filter(
        (record) => !checkStored(record, key).ok,
      );
      const spoilt = draw.oneOf(unsound);
      const words = await type(page, draw, () => lay(beside, 'documents', spoilt, key));
      await untilKept(page);
      // If nothing was written since, the next edit does.
      await name(page, `${words}, on`);
      expect(await keptNames(beside)).toEqual([`${words}, on`]);
      await mustBeKept(page, `${words}, on`);
    },
  },
  {
    name: 'every kind of spoilt version among good ones',
    async run({ page }) {
      await start(page);
      await name(page, 'Good version');
      const beside = await pageBeside(page);
      for (const [, version] of CORRUPT_VERSIONS) await lay(beside, 'versions', version);
      const rows = await openVersions(page);
      await expect(rows.filter({ hasText: 'Good version' }).first()).toBeVisible();
      await expect(rows.filter({ hasText: 'could not be read' }).first()).toBeVisible();
      expect((await recordsIn(beside, 'versions')).map(({ value }) => value.name)).toEqual(['Good version']);
      await page.keyboard.press('Escape');
      await enter(jobName(page), 'After them');
      await mustBeKept(page, 'After them');
      return CORRUPT_VERSIONS.length;
    },
  },
];
