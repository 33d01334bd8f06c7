/**
 * A scan of 500 000 triangles in the built page: from its file to the question what it is, from the answer to the picture, on the wall's clock, and the
 * longest that the page did not answer in between. The picture is drawn in software here: that is most of what comes last.
 */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from '@playwright/test';
import { binaryStl } from '../../core/scan/files.ts';
import { ball } from '../../core/scan/shapes.ts';

export interface ScanSpent {
  /** ms from the file's choice to the question, the answer given by hand left out, and from the answer to the picture. */
  readonly read: number;
  readonly drawn: number;
  /** ms: the longest between two beats of a clock of 10 ms in the page. */
  readonly silent: number;
  /** How often the page showed how far it is. */
  readonly reports: number;
}

export async function timeScan(browser: Browser, url: string): Promise<ScanSpent> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
  page.setDefaultTimeout(120_000);
  await page.goto(url);
  await page.getByRole('button', { name: 'Got it' }).click();
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: 'Survey' }).click();
  await page.getByText('Scans of the car').click();
  const open = page.getByRole('button', { name: 'Open a scan…' });
  await open.waitFor();
  // A file of the disk, as a person has it: handed over as bytes it would be unpacked in the page.
  const folder = mkdtempSync(join(tmpdir(), 'scan-'));
  const path = join(folder, 'ball.stl');
  writeFileSync(path, binaryStl(ball(1900, [0, 0, 700], 500, 501)));
  const chooser = page.waitForEvent('filechooser');
  await open.click();
  await page.evaluate(listenToTheClock);
  const chosen = await chooser;
  const begun = Date.now();
  await chosen.setFiles(path);
  const put = page.getByRole('button', { name: 'Put it round the frame' });
  await put.waitFor();
  const read = Date.now() - begun;
  const answered = Date.now();
  await put.click();
  await page.getByRole('article', { name: 'Scan ball' }).waitFor();
  // A picture of the page waits for what the graphics card, or who stands for it, still has to draw.
  await page.waitForFunction(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true)))),
  );
  await page.screenshot();
  const drawn = Date.now() - answered;
  const { silent, reports } = await page.evaluate(
    () => (window as unknown as { heard: { silent: number; reports: number } }).heard,
  );
  await page.close();
  rmSync(folder, { recursive: true });
  return { read, drawn, silent, reports };
}

function listenToTheClock(): void {
  const heard = { silent: 0, reports: 0 };
  (window as unknown as { heard: typeof heard }).heard = heard;
  let last = performance.now();
  setInterval(() => {
    const now = performance.now();
    heard.silent = Math.max(heard.silent, now - last);
    last = now;
  }, 10);
  new MutationObserver(() => {
    if (document.querySelector('.scan-reading progress') !== null) heard.reports += 1;
  }).observe(document.body, { subtree: true, attributes: true, childList: true });
}
