/** What the dossier wants beside the drawing, from the person's hand to the paper: certificates by heat, and photos that are made small, kept and printed. */
import { readFile } from 'node:fs/promises';
import { crc32, deflateSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { readJpeg } from '../../src/core/photo/jpeg.ts';
import { withPart } from '../core/photo/small-jpeg.ts';
import { readPdf } from '../exports/pdf.ts';
import {
  enter,
  expect,
  FEW,
  goTo,
  savedText,
  showPart,
  start,
  test,
  undoKey,
  untilKept,
  untilThere,
} from './journey.ts';

test.use({ ...FEW, reuseContext: false });

/** A grey picture as PNG (ISO/IEC 15948): signature, head, one deflated stretch of rows, end. */
function png(width: number, height: number): Buffer {
  const chunk = (kind: string, body: Buffer): Buffer => {
    const named = Buffer.concat([Buffer.from(kind, 'latin1'), body]);
    const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(body.length);
    check.writeUInt32BE(crc32(named));
    return Buffer.concat([length, named, check]);
  };
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head[8] = 8;
  const rows = Buffer.alloc(height * (width + 1), 120);
  for (let y = 0; y < height; y++) rows[y * (width + 1)] = 0;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

async function toPapers(page: Page): Promise<void> {
  await goTo(page, 'Shop');
  await showPart(page, 'Files');
  await page.getByText('For the dossier: certificates and photos').click();
  await page.getByRole('button', { name: 'Add photos…' }).waitFor();
}

async function add(page: Page, ...files: { name: string; mimeType: string; buffer: Buffer }[]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Add photos…' }).click();
  await (await chooser).setFiles(files);
}

const photo = (page: Page, name: string) => page.getByRole('article', { name: `Photo ${name}` });

const drawn = (page: Page, name: string): Promise<boolean> =>
  photo(page, name)
    .getByRole('img')
    .evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 0);

const keptPhotos = (page: Page): Promise<Record<string, number[]>> =>
  page.evaluate(
    () =>
      new Promise<Record<string, number[]>>((done, failed) => {
        const asked = indexedDB.open('cagewright-photos', 1);
        asked.addEventListener('error', () => failed(new Error('not opened')));
        asked.addEventListener('success', () => {
          const store = asked.result.transaction('photos').objectStore('photos');
          const [keys, values] = [store.getAllKeys(), store.getAll()];
          values.addEventListener('success', () => {
            const found = keys.result.map((key, i) => [key as string, Array.from(values.result[i].data as Uint8Array)]);
            asked.result.close();
            done(Object.fromEntries(found));
          });
        });
      }),
  );

test('photos come in small and without notes, are captioned, kept and printed; a broken one is refused', async ({
  page,
}) => {
  await start(page);
  await toPapers(page);
  await add(
    page,
    { name: 'Hoop on its boxes.png', mimeType: 'image/png', buffer: png(3200, 2000) },
    { name: 'broken.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture at all') },
    { name: 'act.svg', mimeType: 'image/svg+xml', buffer: Buffer.from('<svg onload="alert(1)"/>') },
    { name: 'noted.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(withPart(0xe1, 'Exif\0\0 at N 47.1')) },
  );
  await expect(page.getByText('broken.jpg cannot be read as a picture.')).toBeVisible();
  await expect(page.getByText('act.svg cannot be read as a picture.')).toBeVisible();
  await expect(photo(page, 'noted')).toBeVisible();
  await expect.poll(() => drawn(page, 'Hoop on its boxes')).toBe(true);

  await enter(photo(page, 'Hoop on its boxes').getByRole('textbox', { name: 'Caption' }), 'Feet welded');
  await photo(page, 'Feet welded').getByText('Shows no tube yet').click();
  await photo(page, 'Feet welded').getByRole('checkbox').first().check();
  await expect(photo(page, 'Feet welded')).toContainText('Shows 1');

  const kept = await keptPhotos(page);
  const job = JSON.parse(await savedText(page)) as { photos: { name: string; sum: string; tubes?: string[] }[] };
  expect(job.photos.map(({ name }) => name)).toEqual(['Feet welded', 'noted']);
  const [large, small] = job.photos.map(({ sum }) => new Uint8Array(kept[sum]!));
  expect(readJpeg(large!)).toMatchObject({ ok: true, width: 1600, height: 1000 });
  expect(readJpeg(small!)).toMatchObject({ ok: true, width: 24, height: 18 });
  expect(Buffer.from(small!).includes('N 47.1')).toBe(false);

  await untilKept(page);
  await page.reload();
  await untilThere(page);
  await toPapers(page);
  await expect.poll(() => drawn(page, 'Feet welded')).toBe(true);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'dossier.pdf', exact: true }).click();
  const { pages } = await readPdf(new Uint8Array(await readFile(await (await download).path())));
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  expect(words).toContain('1 Feet welded');
  expect(words).toContain('Shows tube 1.');
  expect(words).not.toContain('not kept here');
});

test('a picture that is not in this browser is said to be missing, and comes back from the saved ones', async ({
  page,
}) => {
  await start(page);
  await toPapers(page);
  await add(page, { name: 'One.png', mimeType: 'image/png', buffer: png(40, 30) });
  await expect.poll(() => drawn(page, 'One')).toBe(true);
  const [[sum, bytes]] = Object.entries(await keptPhotos(page)) as [[string, number[]]];
  await untilKept(page);
  await page.goto('about:blank');
  await page.goBack();
  await untilThere(page);
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        indexedDB.deleteDatabase('cagewright-photos').addEventListener('success', () => done());
      }),
  );
  await toPapers(page);
  await expect(photo(page, 'One')).toContainText('This picture is not in this browser.');
  await add(page, { name: `${sum}.jpg`, mimeType: 'image/jpeg', buffer: Buffer.from(bytes) });
  await expect.poll(() => drawn(page, 'One')).toBe(true);
  await expect(page.getByRole('article', { name: /^Photo/ })).toHaveCount(1);
});

test('a picture that is dropped there is a photo, and no job to open', async ({ page }) => {
  await start(page);
  await toPapers(page);
  const dragged = await page.evaluateHandle(
    (bytes) => {
      const carried = new DataTransfer();
      carried.items.add(new File([new Uint8Array(bytes)], 'Stay.png', { type: 'image/png' }));
      return carried;
    },
    Array.from(png(60, 40)),
  );
  const area = page.locator('.photos');
  await area.dispatchEvent('dragover', { dataTransfer: dragged });
  await expect(page.getByText('Drop the job file to open it')).toHaveCount(0);
  await area.dispatchEvent('drop', { dataTransfer: dragged });
  await expect.poll(() => drawn(page, 'Stay')).toBe(true);
  await expect(page.getByText('Stay.png')).toHaveCount(0);
  await page.locator('body').dispatchEvent('dragover', { dataTransfer: dragged });
  await expect(page.getByText('Drop the job file to open it')).toBeVisible();
});

test('certificates stand by heat, and are reached from the checks', async ({ page }) => {
  await start(page);
  await goTo(page, 'Checks');
  await page.getByRole('button', { name: /^Dossier, in the Shop/ }).click();
  await page.getByText('For the dossier: certificates and photos').click();
  await page
    .getByRole('button', { name: /^Add (a certificate|one for)/ })
    .first()
    .click();
  const cells = page
    .getByRole('grid', { name: 'Batches and certificates' })
    .getByRole('row')
    .last()
    .getByRole('gridcell');
  // Its heat is typed first, or passed by.
  await expect(cells.first()).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.type('Paper 4711');
  await page.keyboard.press('Enter');
  const job = JSON.parse(await savedText(page)) as { certificates: { certificate: string }[] };
  expect(job.certificates.at(-1)!.certificate).toBe('Paper 4711');
  await undoKey(page).click();
  await undoKey(page).click();
  await expect(page.getByText('Paper 4711')).toHaveCount(0);
});
