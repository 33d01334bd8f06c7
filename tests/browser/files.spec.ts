/** Files that come in: broken ones are named one by one and change nothing, a good one opens, and names stay names. */
import type { Page } from '@playwright/test';
import { demoText, runFab } from '../command-line.ts';
import {
  FEW,
  choose,
  expect,
  goTo,
  IN_THE_BAY,
  openedInItsOwnPlace,
  openFile,
  savedText,
  SHOP_PARTS,
  showPart,
  spoken,
  start,
  test,
  undoKey,
} from './journey.ts';

test.use(FEW);

interface LooseJob {
  name: string;
  version: number;
  points: { name: string }[];
  sections: { name: string; wall: number; outerDiameter: number }[];
  dies: { name: string }[];
  nodes: { id: string; name: string; at: Record<string, unknown> }[];
  members: { name: string; role: string; path: string[] }[];
  envelopes: { name: string }[];
  bodyLines: { name: string }[];
}

function demoWith(change: (job: LooseJob) => void): string {
  const job = JSON.parse(demoText()) as LooseJob;
  change(job);
  return JSON.stringify(job, null, 2);
}

/** A name for each file, its text, and the place that has to be named. */
const broken: readonly (readonly [name: string, text: string, place: string])[] = [
  ['shopping list.json', 'bolts, 2 dozen', 'line 1, column 1'],
  ['half written.json', demoText().slice(0, 5_000), 'line'],
  ['from next year.json', demoWith((job) => (job.version = 2)), 'version'],
  ['dangling.json', demoWith((job) => (job.members[3]!.path[1] = 'a-fot')), 'members[3].path[1]'],
  [
    'loop.json',
    demoWith((job) => {
      job.nodes[0]!.at = { kind: 'between', nodes: [job.nodes[1]!.id, job.nodes[4]!.id], fraction: 0.5 };
      job.nodes[1]!.at = { kind: 'between', nodes: [job.nodes[0]!.id, job.nodes[4]!.id], fraction: 0.5 };
    }),
    'nodes[0]',
  ],
  ['proto.json', demoText().replace('{', '{ "__proto__": { "name": "Polluted" },'), '["__proto__"]'],
  ['brackets.json', '['.repeat(50_000), 'line 1'],
  ['thick wall.json', demoWith((job) => (job.sections[0]!.wall = 22.225)), 'sections[0].wall'],
];

test('each broken file is explained beside its name, as on the command line, and the open job is untouched', async ({
  page,
}) => {
  await start(page);
  const open = await savedText(page);
  const notice = page.getByRole('region').or(page.locator('section')).filter({ hasText: 'was not opened' });
  for (const [name, text, place] of broken) {
    await test.step(name, async () => {
      await openFile(page, name, text);
      await expect(notice).toContainText(`${name} was not opened`);
      const [fault] = (await runFab(text)).complaints;
      expect(fault).toContain(place);
      // On the page the place stands in another face, without the colon after it.
      const shown = await notice.getByRole('listitem').first().innerText();
      expect([fault, fault!.replace(': ', ' ')]).toContain(shown.trim());
      expect(await savedText(page)).toBe(open);
      await notice.getByRole('button', { name: 'Close this message' }).click();
      await expect(notice).toBeHidden();
    });
  }
  // By keyboard, from the job's name and back to it.
  const name = page.getByRole('textbox', { name: 'Job' });
  await openFile(page, broken[0]![0], broken[0]![1]);
  await name.focus();
  await notice.getByRole('button', { name: 'Close this message' }).focus();
  await page.keyboard.press('Enter');
  await expect(name).toBeFocused();
  await expect(undoKey(page)).toBeDisabled();
  expect(await page.evaluate(() => 'name' in {}), 'no name got into every object').toBe(false);
});

test('a file in another encoding is explained beside its name, and the open job is untouched', async ({ page }) => {
  await start(page);
  const open = await savedText(page);
  const latin1 = Buffer.from(
    demoWith((job) => (job.name = 'Gr\u00f6\u00dfe')),
    'latin1',
  );
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name: 'latin1.json', mimeType: 'application/json', buffer: latin1 });
  const notice = page.locator('section').filter({ hasText: 'latin1.json was not opened' });
  await expect(notice).toContainText('not UTF-8 text');
  expect(await savedText(page)).toBe(open);
});

test('a good file opens in place of the job, picked or dropped on the window', async ({ page }) => {
  await start(page);
  await openFile(
    page,
    'picked.json',
    demoWith((job) => (job.name = 'Picked')),
  );
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('Picked');
  await expect(undoKey(page)).toBeDisabled();

  const dropped = await page.evaluateHandle(
    (text) => {
      const carried = new DataTransfer();
      carried.items.add(new File([text], 'dropped.json', { type: 'application/json' }));
      return carried;
    },
    demoWith((job) => (job.name = 'Dropped')),
  );
  await page.getByRole('main').dispatchEvent('dragover', { dataTransfer: dropped });
  await expect(page.getByText('Drop the job file to open it')).toBeVisible();
  await page.getByRole('main').dispatchEvent('drop', { dataTransfer: dropped });
  await openedInItsOwnPlace(page, 'Picked', 'Dropped');
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('Dropped');
  await expect(page.getByText('Drop the job file to open it')).toBeHidden();
});

const HOSTILE = `<img src=x onerror="document.title='ran'">`;
const LINK = `javascript:document.title='ran'`;

/** Whether anything of the job's text became part of the page's own markup. */
const strangers = (page: Page): Promise<number> =>
  page.locator('img, iframe, object, embed, script:not([src]), [onerror], a[href^="javascript" i]').count();

test('names that look like scripts are shown as they are, and nothing runs', IN_THE_BAY, async ({ page }) => {
  const hostile = demoWith((job) => {
    job.name = HOSTILE;
    for (const records of [job.points, job.sections, job.dies, job.nodes, job.members, job.envelopes, job.bodyLines]) {
      records.forEach((record, index) => (record.name = `${index % 2 === 0 ? HOSTILE : LINK} ${index}`));
    }
    job.members[0]!.role = HOSTILE;
  });
  await start(page);
  await openFile(page, `${HOSTILE}.json`, hostile);
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(HOSTILE);
  await goTo(page, 'Survey');
  await choose(page, /^Measured points/, `${HOSTILE} 0`);
  await expect(spoken(page)).toContainText(HOSTILE);
  expect(await strangers(page)).toBe(0);
  await goTo(page, 'Frame');
  await choose(page, 'Members in build order', `${HOSTILE} 0`); // its section is called the same
  await expect(page.getByRole('article', { name: /^Member/ })).toContainText(HOSTILE);
  await page.getByRole('tab', { name: /^Nodes/ }).click();
  await choose(page, /^Nodes/, `${LINK} 1`);
  await page.getByRole('tab', { name: /^Tube/ }).click();
  expect(await strangers(page)).toBe(0);
  await goTo(page, 'Checks');
  await expect(page.getByRole('article', { name: `${HOSTILE} 0` })).toBeVisible();
  expect(await strangers(page)).toBe(0);
  await goTo(page, 'Shop');
  await expect(page.getByRole('article', { name: /^Tube/ })).toContainText(HOSTILE);
  for (const part of SHOP_PARTS) {
    await showPart(page, part);
    await expect(page.getByRole('tabpanel', { name: part })).not.toBeEmpty();
    expect(await strangers(page), part).toBe(0);
  }
  expect(JSON.parse(await savedText(page))).toEqual(JSON.parse(hostile));

  // A file's name comes from outside too.
  await openFile(page, '<img src=x onerror=alert(1)>.json', 'no');
  await expect(page.getByText('<img src=x onerror=alert(1)>.json was not opened')).toBeVisible();
  expect(await strangers(page)).toBe(0);
  await expect(page).toHaveTitle('Cagewright');
});
