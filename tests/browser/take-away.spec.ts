/**
 * What the Shop hands out is what the command line writes for the same saved job, byte for byte but for the last digit of
 * a number: sine and its kin are implementation-approximated (ECMA-262, 21.3.2), and Node's and the browser's differ
 * by one unit in the last place. Where a line only grazes the run its trim is a double root, and such a digit moves it by
 * the square root of that, some 1e-6 mm: a ten-thousandth of what the profile promises.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../../src/scripts/install.mjs';
import { demoText } from '../command-line.ts';
import { drawn } from '../draws.ts';
import { fewTubes } from '../few-tubes.ts';
import { choose, enter, expect, FEW, goTo, openFile, savedText, showPart, start, test, textOf } from './journey.ts';

test.use(FEW);

const FILES = ['tubes.csv', 'bends.csv', 'xyz.csv', 'copes.csv', 'stock.csv', 'fabrication.json'];

/** mm. */
const GRAZE = 1e-5;

const NUMBER = /-?\d+(?:\.\d+)?(?:e[-+]?\d+)?/gu;

/** A file's text with a sign in place of each number, and the numbers. */
const apart = (text: string) => ({
  words: text.replace(NUMBER, '#'),
  numbers: (text.match(NUMBER) ?? []).map(Number),
});

/** The job of few tubes with the demo's sticks, of which its cutting plans are made. */
function withSticks(): string {
  const { kerf, squareOff, keepFrom, sticks } = JSON.parse(demoText()).stock;
  return JSON.stringify({
    ...JSON.parse(fewTubes()),
    name: 'With sticks',
    stock: { kerf, squareOff, keepFrom, sticks },
  });
}

test('the five tables and the fabrication file are those of the command line', async ({ page }, testInfo) => {
  await start(page);
  await openFile(page, 'few.cagewright.json', withSticks());
  await goTo(page, 'Survey');
  await choose(page, /^Measured points/, 'Floor at B-pillar, left');
  await enter(page.getByRole('article', { name: /^Point/ }).getByRole('textbox', { name: 'Height' }), '2 9/16');

  const job = testInfo.outputPath('job.json');
  writeFileSync(job, await savedText(page));
  const out = testInfo.outputPath('out');
  const fab = spawnSync(
    process.execPath,
    ['src/scripts/launch.mjs', 'src/fab.ts', job, '--out', out, '--formats', 'csv'],
    { cwd: root, encoding: 'utf8' },
  );
  expect(fab.stderr).toBe('');
  expect(fab.status).toBe(0);

  await goTo(page, 'Shop');
  await showPart(page, 'Files');
  for (const name of FILES) {
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name, exact: true }).click();
    expect((await download).suggestedFilename()).toBe(name);
    const text = await textOf(download);
    const [ours, theirs] = [apart(text), apart(readFileSync(join(out, name), 'utf8'))];
    expect(ours.numbers.length).toBeGreaterThan(drawn(20, 100));
    expect(ours.words, name).toBe(theirs.words);
    const away = ours.numbers.map((number, i) => Math.abs(number - theirs.numbers[i]!));
    expect(Math.max(...away), name).toBeLessThan(GRAZE);
  }
});
