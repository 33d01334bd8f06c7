/**
 * One job on two browsers, with the relay between them: what is done on one is seen on the other, through a relay that is killed and a
 * network that goes. The relay runs in a process of its own, as `npm start -- --network` has it.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Browser, BrowserContext, Locator, Page } from '@playwright/test';
import { LONG } from '../draws.ts';
import { build } from './build.ts';
import { chooseTube, enter, expect, goTo, savedText, test, troublesOf, undoKey, untilThere } from './journey.ts';

const served = join(import.meta.dirname, '../relay/served.mjs');

interface Relay {
  readonly port: number;
  kill(): Promise<void>;
}

async function startRelay(shared: string, port = 0): Promise<Relay> {
  const child: ChildProcess = spawn(process.execPath, [served, build, shared, String(port)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [said] = (await once(createInterface({ input: child.stdout! }), 'line')) as [string];
  return {
    port: Number(said),
    async kill() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const gone = once(child, 'exit');
      child.kill('SIGKILL');
      await gone;
    },
  };
}

interface Pair {
  readonly relay: Relay;
  readonly shared: string;
  readonly desk: Page;
  readonly phone: Page;
}

const dialog = (page: Page): Locator => page.getByRole('dialog', { name: 'Phone at the bender' });
const jobName = (page: Page): Locator => page.getByRole('textbox', { name: 'Job' });

async function openDialog(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Phone at the bender', exact: true }).click();
  await dialog(page).waitFor();
}

const closeDialog = async (page: Page): Promise<void> => {
  await page.keyboard.press('Escape');
  await dialog(page).waitFor({ state: 'hidden' });
};

async function newPage(browser: Browser): Promise<Page> {
  const context: BrowserContext = await browser.newContext({ viewport: { width: 1024, height: 768 } });
  await context.addInitScript(() => window.localStorage.setItem('cagewright.hints', 'true'));
  return context.newPage();
}

/** The desk shares its job; the phone opens what the desk shows, by this machine's other name. */
async function pair(browser: Browser): Promise<Pair> {
  const shared = mkdtempSync(join(tmpdir(), 'cagewright-shared-'));
  const relay = await startRelay(shared);
  const [desk, phone] = [await newPage(browser), await newPage(browser)];
  await desk.goto(`http://localhost:${relay.port}/`);
  await untilThere(desk);
  await openDialog(desk);
  await dialog(desk).getByRole('button', { name: 'Share this job' }).click();
  const address = await dialog(desk).getByRole('textbox', { name: 'Address' }).first().inputValue();
  await closeDialog(desk);
  await phone.goto(`http://127.0.0.1:${relay.port}/${new URL(address).hash}`);
  await untilThere(phone);
  await expect(mark(phone)).toContainText('2');
  return { relay, shared, desk, phone };
}

/** Beside the job's name: how it stands. */
const mark = (page: Page): Locator => page.getByRole('button', { name: /^Phone at the bender\./u });

async function end({ relay, shared, desk, phone }: Pair): Promise<void> {
  await Promise.all([desk, phone].map((page) => page.context().close()));
  await relay.kill();
  rmSync(shared, { recursive: true });
}

const pullForm = (page: Page): Locator => page.getByRole('form', { name: 'Log a pull' });

async function toPulls(page: Page): Promise<void> {
  await goTo(page, 'Shop');
  await chooseTube(page, 'Main hoop', 'Pulls');
}

async function logPull(page: Page, pulled: string, net: string): Promise<void> {
  await pullForm(page).getByRole('textbox', { name: 'Pulled' }).fill(pulled);
  await pullForm(page).getByRole('textbox', { name: 'Finished, let go' }).fill(net);
  await pullForm(page).getByRole('button', { name: 'Log the pull' }).click();
}

/** The job as its file, without the mark of the device. */
const jobOf = async (page: Page): Promise<string> => (await savedText(page)).replace(/^\s*"idMark":.*\n/mu, '');

test.use({ reuseContext: false });

test('a pull logged on one is seen on the other, and each takes back its own', async ({ browser }) => {
  const both = await pair(browser);
  const { desk, phone, relay } = both;
  const troubles = [desk, phone].map((page, i) =>
    troublesOf(page, `http://${['localhost', '127.0.0.1'][i]}:${relay.port}`),
  );
  await toPulls(desk);
  await toPulls(phone);
  await logPull(phone, '26.8', '25');
  const row = (page: Page): Locator => page.getByRole('row').filter({ hasText: '26.8' });
  await expect(row(desk)).toBeVisible();
  await expect(undoKey(desk)).not.toContainText('pull');
  await enter(jobName(desk), 'From the desk');
  await expect(jobName(phone)).toHaveValue('From the desk');
  await undoKey(phone).click();
  await expect(row(desk)).toBeHidden();
  await expect(jobName(phone)).toHaveValue('From the desk');
  expect(await jobOf(phone)).toBe(await jobOf(desk));
  expect(troubles.flat().filter((trouble) => !trouble.includes('ws://'))).toEqual([]);
  await end(both);
});

test('fifty edits without a network, a relay killed meanwhile, a page loaded anew: all of it is on both in the end', async ({
  browser,
}) => {
  const both = await pair(browser);
  const { desk, phone, shared, relay } = both;
  await toPulls(phone);
  await toPulls(desk);
  await phone.context().setOffline(true);
  await expect(mark(phone)).toContainText(/away/iu);
  for (let nth = 0; nth < 50; nth += 1) await logPull(phone, `${30 + nth}.3`, `${28 + nth}`);
  await logPull(desk, '41.7', '40');
  await relay.kill();
  await logPull(desk, '42.7', '41');
  const again = await startRelay(shared, relay.port);
  await phone.context().setOffline(false);
  await phone.reload();
  await untilThere(phone);
  await toPulls(phone);
  for (const page of [desk, phone]) {
    await expect(page.getByRole('row').filter({ hasText: '79.3' })).toBeVisible();
    await expect(page.getByRole('row').filter({ hasText: '42.7' })).toBeVisible();
  }
  const text = await jobOf(desk);
  expect(await jobOf(phone)).toBe(text);
  const pulled = (JSON.parse(text) as { pulls: { pulled: number }[] }).pulls.map((each) => each.pulled);
  for (let nth = 0; nth < 50; nth += 1) expect(pulled).toContain(Number(`${30 + nth}.3`));
  await end({ ...both, relay: again });
});

test('both rename the job apart: the later counts, both are shown, and one key takes the other', async ({
  browser,
}) => {
  const both = await pair(browser);
  const { desk, phone } = both;
  await phone.context().setOffline(true);
  await expect(mark(phone)).toContainText(/away/iu);
  await enter(jobName(desk), 'From the desk');
  await enter(jobName(phone), 'From the phone');
  await phone.context().setOffline(false);
  await expect(jobName(desk)).toHaveValue('From the phone');
  await openDialog(desk);
  await expect(dialog(desk)).toContainText('Both wrote: 1');
  await dialog(desk)
    .getByRole('button', { name: /^Use ours/u })
    .click();
  await closeDialog(desk);
  await expect(jobName(phone)).toHaveValue('From the desk');
  await end(both);
});

/** Ten minutes are for the long run alone: docs/long-runs.md. */
if (LONG)
  test('ten minutes of two devices editing every second take no more memory than one', async ({ browser }) => {
    test.setTimeout(900_000);
    const both = await pair(browser);
    const pages = [both.desk, both.phone];
    const sessions = await Promise.all(pages.map((page) => page.context().newCDPSession(page)));
    const used = async (): Promise<number> => {
      const sizes = await Promise.all(
        sessions.map(async (session) => {
          await session.send('HeapProfiler.collectGarbage');
          return (await session.send('Runtime.getHeapUsage')).usedSize;
        }),
      );
      return Math.max(...sizes) / 2 ** 20;
    };
    let first = 0;
    for (let second = 0; second < 600; second += 1) {
      await Promise.all(pages.map((page, i) => enter(jobName(page), `Job ${second} ${i}`)));
      await both.desk.waitForTimeout(800);
      if (second === 60) first = await used();
    }
    const last = await used();
    console.log(`heap after a minute ${first.toFixed(1)} MB, after ten ${last.toFixed(1)} MB`);
    expect(last - first).toBeLessThan(4); // each edit is a step that undo keeps: a kilobyte
    expect(await jobOf(both.phone)).toBe(await jobOf(both.desk));
    await end(both);
  });
