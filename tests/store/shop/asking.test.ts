/** The shop record beside a job: what is asked when the two differ, once, and what of the job it takes up by itself. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { addPull } from '../../../src/core/edit/pulls.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { DELAY } from '../../../src/store/storage/writer.ts';
import { DEMO, documentOf, undoOf } from '../memory.ts';
import { openShopBrowser, type ShopBrowser, type ShopTab } from './shops.ts';

const demo = JSON.parse(DEMO) as Job;
/** The demo as another shop's: its first die clamps elsewhere. */
const other = (clampOffset = 99): string =>
  JSON.stringify({ ...demo, dies: demo.dies.map((die, i) => (i === 0 ? { ...die, clampOffset } : die)) });

let browser: ShopBrowser;
let tab: ShopTab;

beforeEach(async () => {
  vi.useFakeTimers();
  browser = openShopBrowser();
  tab = await browser.openTab();
});
afterEach(() => {
  vi.useRealTimers();
});

const shop = () => tab.shop.getState();
const kinds = () => shop().asked.map(({ kind }) => kind);
const [die] = demo.dies as [(typeof demo.dies)[0]];
const [section] = demo.sections as [(typeof demo.sections)[0]];
const pull = { die: die.id, section: section.id, pulled: 63, net: 60, on: '' };

describe('asked', () => {
  it('is nothing while the shop has nothing, nor after it took this job’s', () => {
    expect(kinds()).toEqual([]);
    shop().takeFromJob();
    expect(shop().shop.dies.map(({ name }) => name)).toEqual(demo.dies.map(({ name }) => name));
    expect(shop().shop.bender).toEqual(die.bender);
    tab.opening.open('again.json', DEMO);
    expect(kinds()).toEqual([]);
  });

  it('is asked when a job is opened that differs, and not while a person changes one', () => {
    shop().takeFromJob();
    tab.opening.open('other.json', other());
    expect(kinds()).toEqual(['die/otherwise']);
    shop().keepJobs();
    documentOf(tab).edit('Clamp', (job) => ({ ...job, dies: job.dies.map((one) => ({ ...one, clampOffset: 1 })) }));
    expect(kinds()).toEqual([]);
  });

  it('takes the shop’s as one step that can be undone', () => {
    shop().takeFromJob();
    tab.opening.open('other.json', other());
    expect(shop().takeShops()).toEqual([]);
    expect(documentOf(tab).job.dies[0]!.clampOffset).toBe(die.clampOffset);
    expect([undoOf(tab), kinds()]).toEqual(['Use the shop’s', []]);
    documentOf(tab).undo();
    expect(documentOf(tab).job.dies[0]!.clampOffset).toBe(99);
    expect(kinds()).toEqual([]);
  });

  it('once: what was kept is not asked again, on this job or at the next start; another value is', async () => {
    shop().takeFromJob();
    await vi.advanceTimersByTimeAsync(DELAY + 1);
    tab.opening.open('other.json', other());
    shop().keepJobs();
    expect(documentOf(tab).job.dies[0]!.clampOffset).toBe(99);
    tab.opening.open('other.json', other());
    expect(kinds()).toEqual([]);
    tab.opening.open('other.json', other(98));
    expect(kinds()).toEqual(['die/otherwise']);
    tab = await browser.openTab();
    tab.opening.open('other.json', other());
    expect(kinds()).toEqual([]);
  });

  it('puts the job’s into the shop, and there is a way back', () => {
    shop().takeFromJob();
    tab.opening.open('other.json', other());
    shop().giveJobs();
    expect(shop().shop.dies[0]!.clampOffset).toBe(99);
    expect(kinds()).toEqual([]);
    shop().goBack();
    expect(shop().shop.dies[0]!.clampOffset).toBe(die.clampOffset);
  });

  it('is asked no more where it is so no more', () => {
    shop().takeFromJob();
    tab.opening.open('other.json', other());
    documentOf(tab).edit('Clamp', () => demo);
    expect(kinds()).toEqual([]);
  });

  it('says why where the job cannot take the shop’s, and leaves both as they are', () => {
    shop().takeFromJob();
    // No tube bends round a radius less than its own.
    const tight = { ...shop().shop, dies: shop().shop.dies.map((one) => ({ ...one, centrelineRadius: 5 })) };
    expect(shop().open(JSON.stringify(tight))).toEqual([]);
    tab.opening.open('again.json', DEMO);
    expect(kinds()).toEqual(['die/otherwise', 'die/otherwise']);
    expect(shop().takeShops().length).toBeGreaterThan(0);
    expect(kinds()).toEqual(['die/otherwise', 'die/otherwise']);
    expect(serialiseJob(documentOf(tab).job)).toBe(serialiseJob(demo));
  });
});

describe('a pull that is logged in the job', () => {
  it('stands in the shop’s log, and goes from it again when it is undone', () => {
    shop().takeFromJob();
    const before = shop().shop.pulls;
    documentOf(tab).edit('Log a pull', (job) => addPull(job, pull));
    expect(shop().shop.pulls).toEqual([...before, pull]);
    documentOf(tab).undo();
    expect(shop().shop.pulls).toEqual(before);
    documentOf(tab).redo();
    expect(shop().shop.pulls).toEqual([...before, pull]);
  });

  it('is not what a job brings that is opened: of that the person is asked', () => {
    shop().takeFromJob();
    const before = shop().shop.pulls;
    tab.opening.open('pulled.json', serialiseJob(addPull(demo, pull)));
    expect(shop().shop.pulls).toBe(before);
    expect(shop().asked).toMatchObject([{ kind: 'pulls/not-in-shop', count: 1 }]);
    shop().giveJobs();
    expect(shop().shop.pulls).toEqual([...before, pull]);
    tab.opening.open('demo.json', DEMO);
    expect(shop().asked).toMatchObject([{ kind: 'pulls/not-in-job', count: 1 }]);
    expect(shop().takeShops()).toEqual([]);
    expect(documentOf(tab).job.pulls).toEqual([...demo.pulls, pull]);
  });
});
