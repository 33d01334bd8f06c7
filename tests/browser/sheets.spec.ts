/** The sheets as the browser makes them: in a worker, under the page's own policy, read back with pdf.js. */
import { unwatched } from '../../src/drawing/going.ts';
import { dayOf } from '../../src/exports/shared/day.ts';
import { readFileSync } from 'node:fs';
import { fonts } from '../exports/fonts.ts';
import { derivedFrom } from '../exports/jobs.ts';
import { readPdf } from '../exports/pdf.ts';
import { sheetsPdf } from '../../src/exports/sheets/sheets.ts';
import { fewTubes } from '../few-tubes.ts';
import { expect, FEW, goTo, showPart, start, test } from './journey.ts';

const SLOW = 120_000;
test.setTimeout(SLOW);
test.use(FEW);

test('the sheets say in the browser what they say in Node, and the page answers meanwhile', async ({ page }) => {
  await start(page);
  const job = fewTubes();
  await goTo(page, 'Shop');
  await showPart(page, 'Files');
  const day = dayOf(new Date());
  const coming = page.waitForEvent('download', { timeout: SLOW });
  await page.getByRole('button', { name: 'sheets.pdf', exact: true }).click();
  await expect(page.getByRole('group', { name: 'Being made' })).toBeVisible();
  await page.getByRole('button', { name: /^Next tube/u }).click();
  await expect(page.getByRole('article', { name: /^Tube 2,/u })).toBeVisible();
  const download = await coming;
  const made = await readPdf(new Uint8Array(readFileSync(await download.path())), true);

  const paper = made.pages[0]!.height > 290 ? 'a4' : 'letter';
  const settings = { paper, printed: { x: 1, y: 1 }, day } as const;
  const own = await readPdf((await sheetsPdf(derivedFrom(job), fonts, settings, unwatched)).bytes);
  expect(made.pages.map(({ texts }) => texts)).toEqual(own.pages.map(({ texts }) => texts));
  expect(made.pages.every(({ faces }) => faces.every(({ embedded }) => embedded))).toBe(true);
});
