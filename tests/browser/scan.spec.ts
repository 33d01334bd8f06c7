/** A scan of the car, from its file to a point picked on it, and what is left of it when the page, or its data, are gone. */
import type { Page } from '@playwright/test';
import { ball } from '../core/scan/shapes.ts';
import { binaryStl, plyFile } from '../core/scan/files.ts';
import {
  bay,
  choose,
  enter,
  expect,
  FEW,
  goTo,
  IN_THE_BAY,
  openFile,
  savedText,
  start,
  test,
  textOf,
  undoKey,
  untilKept,
  untilThere,
} from './journey.ts';

test.use({ ...FEW, reuseContext: false });

/** In metres, the datum in its middle. */
const BALL = ball(1.4, [0, 0, 0], 40, 20);

async function openScan(page: Page, name: string, bytes: Uint8Array, key: RegExp = /^Open a scan/u): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: key }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
}

async function toScans(page: Page): Promise<void> {
  await goTo(page, 'Survey');
  await page.getByText('Scans of the car').click();
}

const card = (page: Page) => page.getByRole('article', { name: 'Scan ball' });

const clearScans = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const asked = indexedDB.deleteDatabase('cagewright-scans');
        asked.addEventListener('success', () => done());
        asked.addEventListener('error', () => failed(new Error('not deleted')));
      }),
  );

test(
  'a scan is laid, picked on and kept; without its data the job is whole and asks for the file',
  IN_THE_BAY,
  async ({ page }) => {
    await start(page);
    await toScans(page);
    await openScan(page, 'ball.ply', plyFile(BALL, 'binary_big_endian'));
    const asked = page.getByRole('article', { name: 'Scan ball.ply' });
    await expect(asked.getByRole('radio', { name: 'metres', exact: true })).toBeChecked();
    await expect(asked).toContainText('1 520 triangles');
    await page.getByRole('button', { name: 'Put it round the frame' }).click();
    await expect(card(page)).toContainText('3 pairs lay it');
    await card(page).getByRole('button', { name: 'Pick a new point on it' }).click();
    await expect(page.getByText('Press on the scan where From scan 1 is.')).toBeVisible();
    const box = (await bay(page).boundingBox())!;
    await page.mouse.click(box.x + 3, box.y + 80);
    await expect(page.getByText('The scan is not there')).toBeVisible();
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    const point = page.getByRole('article', { name: 'Point From scan 1' });
    await expect(point).toContainText('From the scan ball, ±');
    const picked = JSON.parse(await savedText(page)) as {
      points: { position: number[]; from?: unknown; accuracy?: number }[];
    };
    const { position, from, accuracy } = picked.points.at(-1)!;
    expect({ from, accuracy }).toEqual({ from: { scan: 'scan1' }, accuracy: 3 });
    // It stands on the floor now: its middle is 1400 up, and the place on its skin, to the facets.
    const out = Math.hypot(position[0]!, position[1]!, position[2]! - 1400);
    expect(out).toBeLessThanOrEqual(1400.001);
    expect(out).toBeGreaterThan(1400 * 0.98);
    await untilKept(page);

    await page.reload();
    await untilThere(page);
    await toScans(page);
    await expect(card(page)).toBeVisible();
    await expect(card(page).getByRole('button', { name: 'Pick a new point on it' })).toBeVisible();
    await expect(card(page).getByRole('button', { name: 'From scan 1' })).toBeVisible();

    await clearScans(page);
    await page.reload();
    await untilThere(page);
    await toScans(page);
    await expect(card(page)).toContainText('Its data are not in this browser');
    await expect(page.getByRole('row').filter({ hasText: 'From scan 1' })).toBeVisible();
    await openScan(page, 'other.stl', binaryStl(BALL), /^Choose ball.ply again/u);
    await expect(page.getByText('This is another file')).toBeVisible();
    await page.getByRole('button', { name: 'Leave it' }).click();
    await openScan(page, 'ball.ply', plyFile(BALL, 'binary_big_endian'), /^Choose ball.ply again/u);
    await expect(card(page)).not.toContainText('Its data are not in this browser');
    await expect(card(page).getByRole('button', { name: 'Pick a new point on it' })).toBeVisible();
  },
);

test('a bad file says what is wrong and where, and the page goes on; a good one is cut on paper', async ({ page }) => {
  await start(page);
  await toScans(page);
  await openScan(page, 'big.stl', binaryStl(BALL, 80_000_000));
  await expect(page.getByRole('alert')).toContainText('big.stl, byte 80: it claims 80 000 000 triangles');
  await openScan(page, 'cut.ply', plyFile(BALL, 'ascii').subarray(0, 9000));
  await expect(page.getByRole('alert')).toContainText(/cut.ply, .*claims 1 520 of face|cut.ply, line \d+: /u);
  await openScan(page, 'ball.ply', plyFile(BALL, 'ascii'));
  await page.getByRole('button', { name: 'Put it round the frame' }).click();
  await expect(card(page)).toBeVisible();
  // Where a tube's plane cuts it, on paper.
  await page.getByLabel('Cut the scan in the plane of').selectOption({ index: 1 });
  await expect(page.getByText('Brass in the bay')).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'On paper, at full size' }).click();
  expect((await download).suggestedFilename()).toBe('scan-section.pdf');
  expect((await textOf(download)).slice(0, 5)).toBe('%PDF-');
  await undoKey(page).click();
  await expect(card(page)).toHaveCount(0);
});

test('pairs lay it, the one picked wrong is named, and a wrong unit is told', async ({ page }) => {
  await start(page);
  const job = JSON.parse(await savedText(page)) as Record<string, unknown>;
  const corners = [
    ['a', [500, 300, 200]],
    ['b', [-500, 300, 200]],
    ['c', [500, -300, 200]],
    ['d', [0, 0, 900]],
    ['e', [-400, -300, 1000]],
    ['f', [300, 200, 1100]],
  ] as const;
  const scan = {
    id: 'scan1',
    name: 'ball',
    kind: 'triangles',
    accuracy: 3,
    file: 'ball.ply',
    data: 'nowhere',
    unit: 'in',
    up: 'z',
    placement: { rotation: [0, 0, 0], shift: [0, 0, 0] },
    pairs: corners.map(([point, at]) => ({ point, at: point === 'd' ? [0, 60, 900] : at })),
    count: 1520,
  };
  const points = corners.map(([id, position]) => ({ id, name: `Corner ${id}`, position }));
  await openFile(
    page,
    'job.json',
    JSON.stringify({ ...job, points, bodyLines: [], nodes: [], members: [], scans: [scan] }),
  );
  await toScans(page);
  await expect(card(page)).toContainText('Its data are not in this browser');
  await expect(card(page)).toContainText('The scan measures 25.');
  await card(page).getByRole('button', { name: 'It is in millimetres' }).click();
  await expect(card(page)).toContainText('6 pairs');
  await expect(card(page)).toContainText('The worst is Corner d');
  await card(page).getByRole('button', { name: 'Take out the pair Corner d' }).click();
  await expect(card(page)).toContainText('5 pairs, 0');
  // Without a picture, and without the data, by numbers.
  await card(page).getByLabel('Measured point').selectOption('Corner d');
  await card(page).getByText('Type the place of Corner d on it').click();
  const typed = card(page).getByRole('form', { name: 'Type the place of Corner d on it' });
  for (const [axis, value] of [
    ['x', '0'],
    ['y', '0'],
    ['z', '900'],
  ] as const) {
    await typed.getByRole('textbox', { name: axis }).fill(value);
  }
  await typed.getByRole('button', { name: 'Pair it' }).click();
  await expect(card(page)).toContainText('6 pairs, 0');
  // One of them is measured again.
  const old = card(page).getByText('It lies by older places of these points');
  await expect(old).toHaveCount(0);
  await choose(page, /points/u, 'Corner a');
  await enter(page.getByRole('article', { name: 'Point Corner a' }).getByRole('textbox', { name: 'Along' }), '19.9');
  await expect(old).toBeVisible();
  await card(page).getByRole('button', { name: 'Lay it by its pairs' }).click();
  await expect(old).toHaveCount(0);
  await undoKey(page).click();
  await expect(old).toBeVisible();
  await undoKey(page).click();
  await expect(card(page)).toContainText('6 pairs, 0');
  await card(page).getByText('Type where it is on the scan').click();
  const place = card(page).getByRole('form', { name: 'Type where it is on the scan' });
  await place.getByRole('button', { name: 'Add the point' }).click();
  await expect(place.getByText('type a number').first()).toBeVisible();
  for (const [axis, value] of [
    ['x', '12.5'],
    ['y', '-40'],
    ['z', '333'],
  ] as const) {
    await place.getByRole('textbox', { name: axis }).fill(value);
  }
  await place.getByRole('button', { name: 'Add the point' }).click();
  await expect(card(page).getByRole('button', { name: 'From scan 1' })).toBeVisible();
  const saved = JSON.parse(await savedText(page)) as { points: { position: number[] }[] };
  for (const [axis, value] of [12.5, -40, 333].entries()) {
    expect(saved.points.at(-1)!.position[axis]).toBeCloseTo(value, 6);
  }
});
