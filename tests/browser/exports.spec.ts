/**
 * What is taken away in the browser: the same files as on the command line, made while the page goes on answering, to be
 * stopped at any moment, and without a network once the parts have been loaded.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { root } from '../../src/scripts/install.mjs';
import { openFewTubes } from './few-tubes.ts';
import { enter, expect, FEW, goTo, savedText, showPart, start, test, undoKey, untilKept } from './journey.ts';
import type { Download, Page } from '@playwright/test';

/** Solids take as long as they take. */
test.setTimeout(300_000);
const SLOW = 240_000;

const ALL = 'pdf,csv,dxf,svg,step,gltf,stl,dossier,quote';

// A browser of its own each: what one has kept, and that it is offline, is no matter of the next.
test.use({ reuseContext: false });

const fileKey = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const making = (page: Page) => page.getByRole('group', { name: 'Being made' });
const bytesOf = async (download: Download) => new Uint8Array(readFileSync(await download.path()));

const NUMBER = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gu;

/** mm: where a line only grazes the run, the last digit of a sine moves its trim by the root of that. */
const GRAZE = 1e-5;

function expectSameText(ours: string, theirs: string, within: number, name: string, inAnyOrder = false): void {
  expect(ours.replace(NUMBER, '#') === theirs.replace(NUMBER, '#'), `${name}: the same words`).toBe(true);
  const numbersIn = (text: string): number[] => {
    const numbers = (text.match(NUMBER) ?? []).map(Number);
    return inAnyOrder ? numbers.toSorted((p, q) => p - q) : numbers;
  };
  const [a, b] = [numbersIn(ours), numbersIn(theirs)];
  const away = a.reduce((most, number, i) => Math.max(most, Math.abs(number - b[i]!)), 0);
  expect(away, name).toBeLessThan(within);
}

/** Corners of all facets. */
function cornersOf(stl: Uint8Array): number[] {
  const view = new DataView(stl.buffer, stl.byteOffset, stl.byteLength);
  return Array.from({ length: 9 * view.getUint32(80, true) }, (_, i) =>
    view.getFloat32(84 + 50 * Math.floor(i / 9) + 12 + 4 * (i % 9), true),
  );
}

const pagesOf = (pdf: Uint8Array) => new TextDecoder('latin1').decode(pdf).match(/\/Type \/Page\b/gu)!.length;

const bodiesOf = (step: string) => [...step.matchAll(/MANIFOLD_SOLID_BREP\('([^']*)'/gu)].map(([, name]) => name);

test('the page answers while solids are made, and Cancel stops them', async ({ page }) => {
  await start(page);
  await goTo(page, 'Shop');
  await showPart(page, 'Files');
  let downloads = 0;
  page.on('download', () => (downloads += 1));
  await fileKey(page, 'cage.step').click();
  await expect(making(page)).toContainText(/tube \d+ of \d+/u, { timeout: SLOW });

  await page.getByRole('button', { name: /^Next tube/u }).click();
  await expect(page.getByRole('article', { name: /^Tube 2,/u })).toBeVisible();
  await expect(making(page)).toBeVisible();
  // Looked at another part meanwhile, one finds how far it is, and can still stop it.
  await showPart(page, 'Marks');
  await expect(making(page)).toHaveCount(0);
  await showPart(page, 'Files');
  await expect(making(page)).toContainText('cage.step');
  await expect(fileKey(page, 'cage.step')).toBeDisabled();

  await making(page).getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByText('Stopped: nothing was saved.')).toBeVisible();
  await expect(making(page)).toBeHidden();
  await expect(page.getByRole('alert')).toHaveCount(0);
  expect(downloads).toBe(0);

  const coming = page.waitForEvent('download');
  await fileKey(page, 'tubes.csv').click();
  expect((await coming).suggestedFilename()).toBe('tubes.csv');
  await expect(page.getByText('tubes.csv handed to the browser to save.')).toBeVisible();
});

test.describe('in a job of few tubes', () => {
  test.use(FEW);

  test('what is ticked for the zip, and what the printed bars measure, is found again after a reload', async ({
    page,
  }) => {
    await start(page);
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    for (const kind of [
      'To print',
      'Solids for CAD',
      'For a vinyl cutter',
      '3D to look at',
      '3D as a plain mesh',
      'For the inspector',
      'Order and quote',
    ]) {
      await page.getByRole('checkbox', { name: kind }).uncheck();
    }
    await page.getByRole('checkbox', { name: 'For a laser' }).uncheck();
    const part = page.locator('details').filter({ hasText: 'what the printer makes of it' }).last();
    await part.locator('summary').click();
    await part.getByRole('radio', { name: 'A4' }).check();
    await enter(part.getByRole('textbox', { name: '4 in bar, across' }), '3.9');
    await expect(part).toContainText('102.56 % across and 100.00 % up');
    await expect(part.getByRole('textbox', { name: '4 in bar, across' })).toHaveValue('3.900');
    await enter(part.getByRole('textbox', { name: '4 in bar, up' }), '3');
    await expect(part.getByRole('alert')).toContainText('too far off');
    await page.reload();
    await goTo(page, 'Shop');
    await showPart(page, 'Files');

    await test.step('only what is ticked goes into the zip', async () => {
      const coming = page.waitForEvent('download');
      await page.getByRole('button', { name: 'Take what is ticked as one zip' }).click();
      expect(Object.keys(unzipSync(await bytesOf(await coming)))).toEqual([
        'fabrication.json',
        'tubes.csv',
        'bends.csv',
        'xyz.csv',
        'copes.csv',
      ]);
    });

    await test.step('the next print is scaled, on the paper that was picked', async () => {
      await part.locator('summary').click();
      await expect(part.getByRole('radio', { name: 'A4' })).toBeChecked();
      await expect(part).toContainText('102.56 % across');
      const coming = page.waitForEvent('download', { timeout: SLOW });
      await fileKey(page, 'wraps.pdf').click();
      const pdf = new TextDecoder('latin1').decode(await bytesOf(await coming));
      // ISO 216: A4 is 210 x 297 mm; 72 points an inch.
      const [, width, height] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/u.exec(pdf)!;
      expect(Number(width)).toBeCloseTo((210 / 25.4) * 72, 2);
      expect(Number(height)).toBeCloseTo((297 / 25.4) * 72, 2);
    });

    await test.step('what was printed is noted in the job, without a step that undo would take back', async () => {
      await expect.poll(async () => JSON.parse(await savedText(page)).printed?.length ?? 0).toBeGreaterThan(0);
      await expect(undoKey(page)).toBeDisabled();
    });
  });

  test('a part that cannot be loaded is explained in words, and the page goes on', async ({ browser, baseURL }) => {
    const context = await browser.newContext({ serviceWorkers: 'block', baseURL: baseURL! });
    await context.route(/\.wasm$/u, (route) => route.abort());
    const page = await context.newPage();
    await start(page);
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    await fileKey(page, 'cage.step').click();
    await expect(page.getByRole('alert')).toContainText('could not be loaded');
    const coming = page.waitForEvent('download');
    await fileKey(page, 'tubes.csv').click();
    await coming;
    // Nor the typefaces of the paper at first; once they come, the paper does.
    const typefaces = /DejaVuSansCondensed[^/]*\.ttf$/u;
    await context.route(typefaces, (route) => route.abort());
    await fileKey(page, 'layout.pdf').click();
    await expect(page.getByRole('alert')).toContainText('The typeface could not be loaded');
    await context.unroute(typefaces);
    const paper = page.waitForEvent('download');
    await fileKey(page, 'layout.pdf').click();
    await paper;
    await context.close();
  });
});

test.describe('kept by the browser', () => {
  test.use({ ...FEW, serviceWorkers: 'allow' });

  test('all as one zip holds the files that the command line writes for the same job; once solids were made, they are made without a network', async ({
    page,
    context,
  }, testInfo) => {
    await start(page);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await openFewTubes(page);
    const job = testInfo.outputPath('job.json');
    writeFileSync(job, await savedText(page));
    const out = testInfo.outputPath('out');
    const fab = spawnSync(
      process.execPath,
      // The kernel is large, and most of it is run a few times: to optimise it costs more than it saves.
      [
        '--wasm-tiering-budget=1000000000',
        'src/scripts/launch.mjs',
        'src/fab.ts',
        job,
        '--out',
        out,
        '--formats',
        ALL,
        '--paper',
        'letter',
      ],
      { cwd: root, encoding: 'utf8' },
    );
    expect(fab.stderr).toBe('');

    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    const coming = page.waitForEvent('download', { timeout: SLOW });
    await page.getByRole('button', { name: 'Take all as one zip' }).click();
    const download = await coming;
    expect(download.suggestedFilename()).toMatch(/\.zip$/u);
    await expect(making(page)).toBeHidden();
    const zipped = unzipSync(await bytesOf(download));

    const written = readdirSync(out, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(out.length + 1));
    expect(Object.keys(zipped).toSorted()).toEqual(written.toSorted());
    for (const name of written) {
      const [ours, theirs] = [zipped[name]!, new Uint8Array(readFileSync(join(out, name)))];
      const [oursText, theirsText] = [ours, theirs].map((bytes) => new TextDecoder().decode(bytes)) as [string, string];
      if (/\.(?:csv|json)$/u.test(name)) expectSameText(oursText, theirsText, GRAZE, name);
      // Two tips of one height may be marked in either order.
      else if (/\.(?:svg|dxf)$/u.test(name)) expectSameText(oursText, theirsText, 0.001, name, true);
      else if (name.endsWith('.step')) expect(bodiesOf(oursText)).toEqual(bodiesOf(theirsText));
      else if (name.endsWith('.stl')) {
        const [a, b] = [cornersOf(ours), cornersOf(theirs)];
        expect(a.length).toBe(b.length);
        expect(a.reduce((most, each, i) => Math.max(most, Math.abs(each - b[i]!)), 0)).toBeLessThan(0.001);
      } else if (name.endsWith('.pdf')) expect(pagesOf(ours)).toBe(pagesOf(theirs));
      else expect(ours.length, name).toBe(theirs.length);
    }

    await untilKept(page);
    await context.setOffline(true);
    await page.reload();
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    const solids = page.waitForEvent('download', { timeout: SLOW });
    await fileKey(page, 'cage.step').click();
    expect(await bytesOf(await solids)).toEqual(zipped['cage.step']);
  });

  test('without a network, and before solids were ever made, the zip comes without them, and says so', async ({
    page,
    context,
  }) => {
    await start(page);
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await openFewTubes(page);
    await untilKept(page);
    await context.setOffline(true);
    await page.reload();
    await goTo(page, 'Shop');
    await showPart(page, 'Files');
    const coming = page.waitForEvent('download', { timeout: SLOW });
    await page.getByRole('button', { name: 'Take all as one zip' }).click();
    const zipped = unzipSync(await bytesOf(await coming));
    const names = Object.keys(zipped);
    expect(names).toContain('sheets.pdf');
    expect(names).toContain('cage.stl');
    expect(names).not.toContain('cage.step');
    const note = new TextDecoder().decode(zipped['NOT IN THIS ZIP.txt']);
    expect(note).toMatch(/cage\.step\s+The part that makes solids could not be loaded/u);
    await expect(page.getByText('Without cage.step: The part that makes solids could not be loaded')).toBeVisible();
    await expect(page.getByRole('alert')).toHaveCount(0);
  });
});
