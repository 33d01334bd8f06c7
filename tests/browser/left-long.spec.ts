/** An end left long for the scatter of the shop, by one key: the marks on screen, on paper and in the run all count from the longer blank's end. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { fewTubes } from '../few-tubes.ts';
import { readPdf, type Printed } from '../exports/pdf.ts';
import { chooseTube, expect, FEW, goTo, openFile, savedText, showPart, start, test, undoKey } from './journey.ts';

test.use(FEW);
test.setTimeout(120_000);

/** Mark by bend, as it is read: "360 +". */
type Marks = Readonly<Record<string, string>>;

const figure = (spoken: string): string =>
  spoken
    .replace(/ mm.*$/u, '')
    .concat(spoken.includes('hair more') ? ' +' : spoken.includes('hair less') ? ' −' : '')
    .replaceAll(/\s+/gu, ' ');
const read = async (mark: Locator): Promise<string> => figure((await mark.textContent())!);
const number = (mark: string): number => Number.parseFloat(mark);

async function leftAtEnds(page: Page): Promise<number[]> {
  type Saved = { members: { id: string; ends: { allowance?: number }[] }[] };
  const { members } = JSON.parse(await savedText(page)) as Saved;
  return members.find(({ id }) => id === 'hoop')!.ends.map(({ allowance }) => allowance ?? 0);
}

async function onScreen(page: Page): Promise<Marks> {
  const table = page.getByRole('region', { name: 'Marks on the tape' }).getByRole('table');
  const rows = await table
    .getByRole('row')
    .filter({ has: page.locator('.marks-figure') })
    .all();
  const marks = rows.map(async (row) => [
    (await row.getByRole('rowheader').innerText()).trim(),
    await read(row.locator('.marks-figure .spoken-only')),
  ]);
  return Object.fromEntries(await Promise.all(marks)) as Marks;
}

async function inRun(page: Page): Promise<Marks> {
  await showPart(page, 'Bending');
  for (const name of ['Bend this tube', 'Begin', 'It is cut']) await page.getByRole('button', { name }).click();
  const terms = await page.locator('.run-marks dt').allInnerTexts();
  const marks = terms.flatMap((term, i) => {
    const bend = /^bend (\d+)$/iu.exec(term.trim())?.[1];
    const mark = page.locator('.run-marks dd').nth(i).locator('.spoken-only').first();
    return bend === undefined ? [] : [read(mark).then((text) => [bend, text] as const)];
  });
  return Object.fromEntries(await Promise.all(marks)) as Marks;
}

/** The first sheet of the hoop. */
async function onPaper(page: Page): Promise<readonly Printed[]> {
  await showPart(page, 'Files');
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'sheets.pdf', exact: true }).click();
  const { pages } = await readPdf(new Uint8Array(readFileSync(await (await coming).path())));
  return pages.find(({ texts }) => texts.some(({ text }) => /Tube 1 of/u.test(text)))!.texts;
}

test('one key leaves an end long, says so, and every list of marks counts from there', async ({ page }) => {
  await start(page);
  await openFile(page, 'mm.json', JSON.stringify({ ...JSON.parse(fewTubes()), name: 'In mm', lengthUnit: 'mm' }));
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('In mm');
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Marks');
  const key = page.getByRole('button', { name: /^Leave end [AB] long$/u });
  const letter = /end ([AB])/u.exec((await key.getAttribute('aria-label'))!)![1] as 'A' | 'B';
  const which = letter === 'A' ? 0 : 1;
  const marksPart = page.getByRole('region', { name: 'Marks on the tape' });
  await marksPart.getByRole('radio', { name: `End ${letter}`, exact: true }).check({ force: true });

  const [plain, before] = [await onScreen(page), await leftAtEnds(page)];
  const asked = await page.getByText(/^To cut end [AB] after bending, leave it/u).innerText();
  const amount = Number(/([\d.]+) mm long/u.exec(asked.replaceAll(/\s+/gu, ' '))![1]);
  await key.click();
  await expect(key).toBeHidden();
  await expect(page.getByText(`End ${letter} is left`)).toBeVisible();
  const left = await leftAtEnds(page);
  // The very figure that was shown is what is kept.
  expect(left).toEqual(before.with(which, amount));
  await expect(undoKey(page)).toHaveAccessibleName(/Leave end [AB] of Main hoop long/u);

  const screen = await onScreen(page);
  expect(Object.keys(screen)).toHaveLength(4);
  for (const bend of Object.keys(screen))
    // Both are read to 1 mm.
    expect(Math.abs(number(screen[bend]!) - number(plain[bend]!) - amount + before[which]!)).toBeLessThanOrEqual(1);

  const paper = await onPaper(page);
  const printed = paper
    .filter(({ size }) => Math.abs(size - 7) < 0.05)
    .map(({ text }) => text.replaceAll(/\s+/gu, ' '));
  for (const mark of Object.values(screen)) expect(printed).toContain(mark);
  expect(paper.map(({ text }) => text).join(' ')).toContain(`Left ${amount.toFixed(1)} mm long at end ${letter}`);

  expect(await inRun(page)).toEqual(screen);
});
