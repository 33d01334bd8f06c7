/** Names that are too long: one typed is refused with words, an older one in a file is kept and shown shortened. */
import { demoText } from '../command-line.ts';
import { FEW, enter, expect, goTo, openFile, savedText, SHOP_PARTS, showPart, start, test } from './journey.ts';

test.use(FEW);

const LONG = 'bar of a door '.repeat(1200).trim();
/** More than may be shown of it. */
const TOO_MUCH = LONG.slice(0, 201);

/** The innermost elements whose text, fields or attributes hold it. */
function holdersOf(text: string): string[] {
  const holds = (element: Element): boolean =>
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.nodeValue?.includes(text)) ||
    [...element.attributes].some(({ value }) => value.includes(text)) ||
    (element instanceof HTMLInputElement && element.value.includes(text));
  return [...document.body.querySelectorAll('*')]
    .filter(holds)
    .map((element) => element.cloneNode(false) as Element)
    .map(({ outerHTML }) => outerHTML.slice(0, 200));
}

test('a job name of more than 200 letters stays in its field with the reason, until it is shorter', async ({
  page,
}) => {
  await start(page);
  const name = page.getByRole('textbox', { name: 'Job' });
  const refusal = page.getByText('more than 200 letters');
  const before = await name.inputValue();
  await enter(name, 'x'.repeat(201));
  await expect(refusal).toBeVisible();
  await expect(name).toHaveValue('x'.repeat(201));
  await name.fill('x'.repeat(200));
  await expect(refusal).toBeHidden();
  await name.press('Escape');
  await expect(name).toHaveValue(before);
});

test('a file with a longer name everywhere keeps them, and no screen shows one whole', async ({ page }) => {
  const job = JSON.parse(demoText());
  job.name = LONG;
  for (const list of [job.points, job.bodyLines, job.sections, job.dies, job.nodes, job.members, job.envelopes])
    for (const record of list) record.name = LONG;
  await start(page);
  await openFile(page, 'long.json', JSON.stringify(job));
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(`${LONG.slice(0, 199)}…`);
  for (const station of ['Survey', 'Frame', 'Checks', 'Shop'] as const) {
    await goTo(page, station);
    const row = page.getByRole('gridcell').first();
    if (await row.isVisible()) await row.click();
    expect(await page.evaluate(holdersOf, TOO_MUCH), station).toEqual([]);
  }
  for (const part of SHOP_PARTS) {
    await showPart(page, part);
    await expect(page.getByRole('tabpanel', { name: part })).not.toBeEmpty();
    expect(await page.evaluate(holdersOf, TOO_MUCH), part).toEqual([]);
  }
  expect(JSON.parse(await savedText(page)).members[0].name).toBe(LONG);
});
