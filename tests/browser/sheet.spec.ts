/** The tube's sheet: what it says of a tube that cannot be made, and what a telephone shows of it first. */
import type { Page } from '@playwright/test';
import { demoText } from '../command-line.ts';
import { chooseTube, expect, goTo, openFile, savedText, showPart, start, test, tubeRow, undoKey } from './journey.ts';

/** Opens the job under this name, and waits until it is there in the place of the last. */
async function openAs(page: Page, name: string, text: string): Promise<void> {
  await openFile(page, 'job.json', JSON.stringify({ ...JSON.parse(text), name }));
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue(name);
}

/** The demo's hoop alone, on dies so large that its bends run into each other. */
function overlapping(): string {
  const job = JSON.parse(demoText()) as {
    dies: { centrelineRadius: number }[];
    members: { id: string }[];
    nodes: { id: string }[];
  };
  for (const die of job.dies) die.centrelineRadius *= 4;
  const members = job.members.filter(({ id }) => id === 'hoop');
  const nodes = job.nodes.filter(({ id }) => id.startsWith('hoop-'));
  return JSON.stringify({ ...job, members, nodes });
}

test("what the demo's tubes show first, on a telephone and on a laptop", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await start(page);
  await goTo(page, 'Shop');
  await test.step('390 x 844: a tube tapped in the list brings up its head, cut length and notcher before the blank', async () => {
    await chooseTube(page, 'Main diagonal');
    const cut = page.getByText('Cut the blank to');
    const notcher = page.getByText(/^(?:One pass|Use the wrap)/u).first();
    await expect(cut).toBeInViewport({ ratio: 1 });
    await showPart(page, 'Ends');
    await expect(notcher).toBeInViewport({ ratio: 1 });
    const blank = page.getByRole('img', { name: /^The blank of/ });
    const top = async (thing: typeof cut): Promise<number> => (await thing.boundingBox())!.y;
    expect(await top(cut)).toBeLessThan(await top(notcher));
    expect(await top(notcher)).toBeLessThan(await top(blank));
  });

  await test.step('what is worked out under a bend wraps, and leaves the pull in sight at every width', async () => {
    for (const [width, height] of [
      [390, 844],
      [1440, 900],
    ] as const) {
      await page.setViewportSize({ width, height });
      await chooseTube(page, 'Front leg (left)', 'Bending');
      const bends = page.getByRole('region', { name: 'Bends' });
      await expect(bends.getByText('(1/2° scale; exactly 39.7°)')).toBeVisible();
      const [table, room] = await Promise.all([bends.getByRole('table').boundingBox(), bends.boundingBox()]);
      expect(table!.x + table!.width).toBeLessThanOrEqual(room!.x + room!.width + 1);
    }
  });
});

/** The demo on a machine that holds 600 mm behind the last bend: more than the front leg has at end B, less than at end A's. */
function gripping(): string {
  const job = JSON.parse(demoText()) as { dies: { leastGrip: number }[] };
  for (const die of job.dies) die.leastGrip = 600;
  return JSON.stringify(job);
}

test('what other jobs say in the Shop, each opened after the other', async ({ page }) => {
  await start(page);
  await test.step('a tube whose bends overlap is not to be cut: its row, its head and its blank say so', async () => {
    await openAs(page, 'Overlapping', overlapping());
    await goTo(page, 'Shop');
    const row = tubeRow(page, 'Main hoop');
    await expect(row).toContainText('×');
    await row.getByRole('gridcell').nth(1).click();
    const sheet = page.getByRole('article', { name: /^Tube 1,/ });
    await expect(sheet.getByRole('region', { name: 'Cannot be made like this' })).toContainText(
      'straight between bends',
    );
    await expect(sheet).not.toContainText('Cut the blank to');
    const blank = page.getByRole('img', { name: /^The blank of/ });
    await expect(blank).toHaveAccessibleName(/Cannot be made like this/);
    await expect(blank).not.toContainText('cut at');
  });

  await test.step('the length to cut holds the grip, and is one number in the list, under the tube and on the blank', async () => {
    await openAs(page, 'Gripping', gripping());
    await goTo(page, 'Shop');
    await chooseTube(page, 'Front leg (left)', 'Marks');
    const row = tubeRow(page, 'Front leg (left)');
    const sheet = page.getByRole('article', { name: /^Tube 11,/ });
    const head = sheet.locator('.headline dd');
    const marks = page.getByRole('region', { name: 'Marks on the tape' });
    const blank = page.getByRole('img', { name: /^The blank of/ });
    const spoken = async (thing: typeof head): Promise<string> =>
      (await thing.locator('.spoken-only').first().textContent())!.replace(/ in$/u, '').trim();

    const fromA = await spoken(head);
    await showPart(page, 'Tubes');
    expect(await row.textContent()).toContain(fromA);
    await showPart(page, 'Marks');
    await expect(sheet.getByText('scrap for the machine to hold')).toContainText('at end B');
    await expect(blank).toHaveAccessibleName(new RegExp(`cut to ${fromA} in, of which .* in at end B is scrap`));
    await expect(blank).toHaveAccessibleName(/measured from end A: 1 start/);

    await marks.getByRole('radio', { name: 'End B' }).check({ force: true });
    await expect(sheet.getByText('scrap for the machine to hold')).toContainText('at end A');
    // The drawing is measured from there too, and has the marks of the table.
    await expect(blank).toHaveAccessibleName(/measured from end B: 2 start/);
    const first = marks.getByRole('row').filter({ has: page.getByRole('rowheader', { name: '2' }) });
    const mark = /[\d/ ]+ in/u.exec((await first.locator('.spoken-only').first().textContent())!)![0];
    await expect(blank).toHaveAccessibleName(new RegExp(`2 start ${mark}`));
    await marks.getByRole('radio', { name: 'Clamp' }).check({ force: true });
    await expect(blank).toHaveAccessibleName(/measured from end B: 2 clamp/);
    const fromB = await spoken(head);
    expect(fromB).not.toBe(fromA);
    await showPart(page, 'Tubes');
    expect(await row.textContent()).toContain(fromB);
    await expect(blank).toHaveAccessibleName(new RegExp(`cut to ${fromB} in, of which .* in at end A is scrap`));
  });

  await test.step('the end that the tape is hooked over is an edit of the job, for every tube or for one alone, and is taken back', async () => {
    await openAs(page, 'Gripping once more', gripping());
    await goTo(page, 'Shop');
    const cutOf = (name: string) => tubeRow(page, name).getByRole('gridcell').nth(2);
    const [left, right] = [cutOf('Front leg (left)'), cutOf('Front leg (right)')];
    const fromA = (await left.textContent())!;
    const marks = page.getByRole('region', { name: 'Marks on the tape' });
    /** Picks under Marks, and looks at the list again. */
    const pick = async (...names: string[]): Promise<void> => {
      await showPart(page, 'Marks');
      for (const name of names) await marks.getByRole('radio', { name, exact: true }).check({ force: true });
      if (names.length === 2) await expect(marks).toContainText('The other tubes of this job are marked from end A.');
      await showPart(page, 'Tubes');
    };
    await chooseTube(page, 'Front leg (left)');

    await pick('End B');
    await expect(left).not.toHaveText(fromA);
    const fromB = (await left.textContent())!;
    await expect(right).toHaveText(fromB);
    await expect(undoKey(page)).toContainText('Mark from end B');
    await undoKey(page).click();
    await expect(left).toHaveText(fromA);
    expect(JSON.parse(await savedText(page))).not.toHaveProperty('marking');

    await pick('This tube alone', 'End B');
    await expect(left).toHaveText(fromB);
    await expect(right).toHaveText(fromA);
    expect(JSON.parse(await savedText(page))).toMatchObject({ feeds: [{ tube: 'leg', from: 'B' }] });
    await pick('Every tube');
    await expect(left).toHaveText(fromA);
  });

  await test.step('the order that keeps clear is kept for the tube before its run is begun, and dropped again', async () => {
    await openAs(page, 'With a post', withPost());
    await goTo(page, 'Shop');
    await chooseTube(page, 'Front leg (left)', 'Bending');
    const marks = page.getByRole('region', { name: 'Marks on the tape' });
    await page.getByRole('button', { name: 'Use this order' }).click();
    await showPart(page, 'Marks');
    await expect(marks).toContainText(
      'Kept for this tube: bend 1 with end A in front, then bend 2 with end B in front.',
    );
    await expect(undoKey(page)).toContainText('Order of bending for Front leg (left)');
    const order = [
      { bend: 1, front: 'A' },
      { bend: 2, front: 'B' },
    ];
    expect(JSON.parse(await savedText(page))).toMatchObject({ feeds: [{ tube: 'leg', order }] });
    // The run begins in it.
    await page.getByRole('button', { name: 'Bend this tube' }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    expect(JSON.parse(await savedText(page))).toMatchObject({ bent: [{ tube: 'leg', order }] });
    await undoKey(page).click();
    await page.getByRole('button', { name: 'Shop' }).first().click();
    await marks.getByRole('button', { name: 'Bend it as the marks come' }).click();
    await expect(marks).not.toContainText('Kept for this tube');
    expect(JSON.parse(await savedText(page))).toMatchObject({ feeds: [] });
  });
});

test('what this browser remembers of marks is offered to a job that says nothing, and begins the next job', async ({
  page,
}) => {
  // As it was kept while it stood in the browser alone.
  await page.addInitScript(() => {
    if (localStorage.getItem('cagewright.tape') === null)
      localStorage.setItem('cagewright.tape', '{"from":"B","style":"clamp","fine":true}');
  });
  await start(page);
  await openFile(page, 'gripping.json', gripping());
  await goTo(page, 'Shop');
  await showPart(page, 'Marks');
  const marking = { from: 'B', mark: 'clamp', fine: true };
  const marks = page.getByRole('region', { name: 'Marks on the tape' });
  await expect(marks.getByRole('radio', { name: 'End A' })).toBeChecked();
  await expect(marks).toContainText('Last time here: from end B, each bend’s clamp, tape in 1/32 in.');
  await marks.getByRole('button', { name: 'Mark as last time' }).click();
  await expect(marks.getByRole('radio', { name: 'End B' })).toBeChecked();
  await expect(marks).not.toContainText('Last time here');
  expect(JSON.parse(await savedText(page))).toMatchObject({ marking });
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'New job' }).click();
  await expect(page.getByRole('textbox', { name: 'Job' })).toHaveValue('New job');
  expect(JSON.parse(await savedText(page))).toMatchObject({ name: 'New job', marking });
});

/** The demo with a post where the second leg of a front leg swings: the order of its bends matters. */
function withPost(): string {
  const job = JSON.parse(demoText()) as { dies: { bender: { planeHeight: number; room: object[] } }[] };
  const size = [150, 150, 1800];
  for (const { bender } of job.dies) {
    bender.planeHeight = 900;
    bender.room.push({ name: 'Post', kind: 'box', centre: [600, 400, 900], size, rotation: [0, 0, 0] });
  }
  return JSON.stringify(job);
}
