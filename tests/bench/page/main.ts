/**
 * What a typed number costs in the real page: the built program in Chromium, a lattice of so many tubes opened in it, and
 * something entered at each station. `npm run build && npm run -s bench:page [-- TUBES ...] [-- --profile]`; before that what a scan costs, with 0 tubes that alone.
 *
 * A trace of the page's main thread is read as the browser's own tools read it: every event's own time, what is nested in it
 * taken off, in time of the processor. `script` is the program's, the collector's included; `layout` is the browser's styles and layout. The first pair
 * runs from the key to the end of the next frame, the second until the page rests. `--profile` prints the functions that took
 * longest, of a build that keeps their names: `npx vite build --minify false`.
 */
import { existsSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium, type Browser, type Locator, type Page } from '@playwright/test';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { portOf, serve } from '../../../src/scripts/serve.mjs';
import browserSettings from '../../browser/playwright.config.ts';
import { timingOf } from '../clock.ts';
import { latticeOf } from '../lattice.ts';
import { furnished } from './furnished.ts';
import { hottest } from './profile.ts';
import { timeScan } from './scan.ts';
import { spentIn, type Spent, type Times } from './trace.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Milliseconds of script from a typed number to the next frame. */
const GOALS: ReadonlyMap<number, number> = new Map([
  [500, 50],
  [2000, 150],
]);

const TYPED = 7;
/** Milliseconds after the frame, in which the page also keeps what was typed. */
const REST = 2000;

/** Where something is typed: the station, what makes ready for it the first time and each time, and the key that enters it. */
interface Place {
  readonly name: string;
  readonly station: string;
  readonly open: (page: Page) => Promise<Locator>;
  readonly fill: (field: Locator) => Promise<void>;
  readonly key: string;
}

const typed = (next: (value: string) => string): Pick<Place, 'fill' | 'key'> => ({
  fill: async (field) => field.fill(next(await field.inputValue())),
  key: 'Enter',
});

const number = typed((value) => (Number(value) + 1.3).toFixed(1));

const PLACES: readonly Place[] = [
  {
    name: 'Survey, a point',
    station: 'Survey',
    async open(page) {
      await chooseMiddle(page, /^Measured points/u);
      return page.getByRole('article', { name: /^Point/u }).getByRole('textbox', { name: 'Along' });
    },
    ...number,
  },
  {
    name: 'Frame, a node',
    station: 'Frame',
    async open(page) {
      await page.getByRole('tab', { name: /^Nodes/u }).click();
      await chooseMiddle(page, /^Nodes/u);
      return page.getByRole('article', { name: /^Node/u }).getByRole('textbox', { name: 'Along' });
    },
    ...number,
  },
  {
    name: 'Checks, a gap',
    station: 'Checks',
    async open(page) {
      const card = page.getByRole('article', { name: 'Helmet' });
      await card.getByText('The box').click();
      return card.getByRole('textbox', { name: 'Gap to keep' });
    },
    ...number,
  },
  {
    name: 'Shop, the name of the job',
    station: 'Shop',
    open: async (page) => page.getByRole('textbox', { name: 'Job' }),
    ...typed((value) => `${value}.`),
  },
  {
    name: 'the bay, a turn of the view',
    station: 'Frame',
    open: async (page) => page.getByRole('application', { name: /^Frame/u }),
    fill: (field) => field.focus(),
    key: 'ArrowLeft',
  },
];

async function chooseMiddle(page: Page, table: RegExp): Promise<void> {
  const rows = page.getByRole('grid', { name: table }).getByRole('row');
  const middle = rows.nth(Math.floor((await rows.count()) / 2));
  await middle.getByRole('gridcell').first().click();
}

export async function main(given: readonly string[]): Promise<number> {
  const sizes = given.filter((word) => !word.startsWith('--')).map(Number);
  // The program is bundled into another folder: what lies in the project's own is found from where npm stands.
  const build = resolve(process.env['CAGEWRIGHT_BUILD'] ?? 'dist');
  if (!existsSync(join(build, 'index.html'))) {
    say('There is no build to measure: npm run build');
    return 2;
  }
  const server = await serve(build, 0);
  const withBay = browserSettings.projects!.find(({ name }) => name === 'with the bay')!;
  const browser = await chromium.launch(withBay.use?.launchOptions);
  await sayScan(browser, `http://localhost:${portOf(server)}/`);
  say(
    `Milliseconds of the processor on the main thread, medians of ${TYPED} typed numbers. Load on this machine: ${loadavg()[0]!.toFixed(1)}.`,
  );
  say(`${''.padEnd(42)}${'to the next frame'.padEnd(27)}until all is quiet`);
  for (const tubes of sizes.length > 0 ? sizes.filter((size) => size > 0) : [100, 500, 2000]) {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
    page.setDefaultTimeout(120_000);
    await page.goto(`http://localhost:${portOf(server)}/`);
    await openLattice(page, tubes);
    for (const place of PLACES) await measure(page, tubes, place, given.includes('--profile'));
    await page.close();
  }
  await browser.close();
  server.closeAllConnections();
  server.close();
  return 0;
}

/** Seconds from a scan's file to its picture, asked for 4. */
const SCAN_GOAL = 4;

async function sayScan(browser: Browser, url: string): Promise<void> {
  const { read, drawn, silent, reports } = await timeScan(browser, url);
  const all = (read + drawn) / 1000;
  say(
    `A scan of 500 000 triangles: read in ${read} ms with ${reports} reports, drawn ${drawn} ms after the answer; goal <= ${SCAN_GOAL} s: ` +
      `${all.toFixed(1)} s, ${all <= SCAN_GOAL ? 'reached' : 'NOT reached'}. Longest without an answer of the page: ${Math.round(silent)} ms.`,
  );
}

async function openLattice(page: Page, tubes: number): Promise<void> {
  await page.getByRole('button', { name: 'Got it' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  const buffer = Buffer.from(serialiseJob(furnished(latticeOf(tubes))));
  await (await chooser).setFiles({ name: 'lattice.json', mimeType: 'application/json', buffer });
  await page
    .getByRole('textbox', { name: 'Job' })
    .and(page.locator(`[value="${tubes} tubes"]`))
    .waitFor();
}

async function measure(page: Page, tubes: number, place: Place, profiled: boolean): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: place.station }).click();
  const field = await place.open(page);
  const spent: Spent[] = [];
  const session = await page.context().newCDPSession(page);
  // The first one warms the program up.
  for (let i = 0; i <= TYPED; i += 1) {
    await place.fill(field);
    await page.waitForTimeout(REST / 2);
    await page.evaluate(markTheNextFrame);
    if (profiled && i === TYPED) {
      await session.send('Profiler.enable');
      await session.send('Profiler.setSamplingInterval', { interval: 100 });
      await session.send('Profiler.start');
      await press(page, place.key);
      for (const line of hottest((await session.send('Profiler.stop')).profile)) say(line);
    } else {
      await page
        .context()
        .browser()!
        .startTracing(page, { categories: ['devtools.timeline', 'v8', 'blink.user_timing'] });
      await press(page, place.key);
      const trace = await page.context().browser()!.stopTracing();
      if (i > 0) spent.push(spentIn(trace.toString()));
    }
  }
  const median = (of: (each: Spent) => number): number => timingOf(spent.map(of)).median;
  const pair = (of: (each: Spent) => Times): string => {
    const [script, layout] = [median((each) => of(each).script), median((each) => of(each).layout)];
    return `script ${script.toFixed(0).padStart(5)} layout ${layout.toFixed(0).padStart(4)}`;
  };
  const name = `${tubes} tubes: ${place.name}`;
  const goal = GOALS.get(tubes);
  const verdict =
    goal === undefined
      ? ''
      : `goal <= ${goal}: ${median(({ toFrame }) => toFrame.script) <= goal ? 'reached' : 'NOT reached'}`;
  say(
    `${name.padEnd(42)}${pair(({ toFrame }) => toFrame).padEnd(27)}${pair(({ toRest }) => toRest).padEnd(27)}${verdict}`,
  );
}

/** Waits until what the key entered is shown and kept. */
async function press(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  await page.waitForFunction(() => performance.getEntriesByName('shown').length > 0);
  await page.waitForTimeout(REST);
}

/** Marks the key in the page, and the first moment after the frame that follows it was drawn. */
function markTheNextFrame(): void {
  performance.clearMarks();
  const typed = (): void => {
    performance.mark('typed');
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.addEventListener('message', () => performance.mark('shown'), { once: true });
      port1.start();
      port2.postMessage(null);
    });
  };
  window.addEventListener('keydown', typed, { capture: true, once: true });
}
