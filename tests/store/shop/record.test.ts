/** The shop record of a browser: kept, brought out, set aside where it is damaged, and heard of by the other tabs. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { jobFrom } from '../../../src/core/shop/exchange.ts';
import { parseShop } from '../../../src/core/shop/parse.ts';
import { EMPTY_SHOP, type Shop } from '../../../src/core/shop/types.ts';
import { DELAY, RETRY } from '../../../src/store/storage/writer.ts';
import { shopFile } from '../../core/shop/sample.ts';
import { DEMO, documentOf, undoOf } from '../memory.ts';
import { openShopBrowser, type ShopBrowser, type ShopTab } from './shops.ts';

const SAMPLE = JSON.stringify(shopFile());
const sample = shopFile() as unknown as Shop;

let browser: ShopBrowser;

beforeEach(() => {
  vi.useFakeTimers();
  browser = openShopBrowser();
});
afterEach(() => {
  vi.useRealTimers();
});

const read = (tab: ShopTab) => tab.shop.getState();
const saved = (): Promise<unknown> => vi.advanceTimersByTimeAsync(DELAY + 1);
const keptShop = (): unknown => {
  const parsed = parseShop((browser.copies[0] as { text: string }).text);
  return parsed.ok ? parsed.shop : parsed.faults;
};

describe('kept', () => {
  it('is nothing on the first start, and nothing is written of that', async () => {
    const tab = await browser.openTab();
    await saved();
    expect(read(tab).shop).toBe(EMPTY_SHOP);
    expect(browser.writes).toBe(0);
  });

  it('is what changed, a moment later, and is there at the next start', async () => {
    const tab = await browser.openTab();
    expect(read(tab).open(SAMPLE)).toEqual([]);
    read(tab).change((shop) => ({ ...shop, saws: [] }));
    expect(read(tab).saved).toBe('saving');
    await saved();
    expect(read(tab).saved).toBe('saved');
    expect(browser.writes).toBe(1);
    expect(keptShop()).toEqual({ ...sample, saws: [] });
    expect(read(await browser.openTab()).shop).toEqual({ ...sample, saws: [] });
  });

  it('does not wait when the page goes, and is written again when the browser has lost it', async () => {
    const tab = await browser.openTab();
    read(tab).open(SAMPLE);
    await tab.shop.flush();
    expect(keptShop()).toEqual(sample);
    browser.copies = [];
    tab.storage.lost();
    await saved();
    expect(keptShop()).toEqual(sample);
  });

  it('is written as soon as the storage takes it, and until then says so', async () => {
    const tab = await browser.openTab();
    browser.broken = true;
    read(tab).open(SAMPLE);
    await saved();
    expect([read(tab).saved, read(tab).trouble]).toEqual(['failed', 'off']);
    browser.broken = false;
    await vi.advanceTimersByTimeAsync(RETRY);
    expect([read(tab).saved, read(tab).trouble]).toEqual(['saved', null]);
    expect(keptShop()).toEqual(sample);
  });

  it('is not written over by a page that could not read it: what was changed meanwhile is put into it', async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    browser.broken = true;
    const tab = await browser.openTab();
    read(tab).change((shop) => ({ ...shop, saws: [{ diameter: 30 }] }));
    await saved();
    expect(read(tab).trouble).toBe('off');
    browser.broken = false;
    await vi.advanceTimersByTimeAsync(10 * RETRY);
    const both = { ...sample, saws: [...sample.saws, { diameter: 30 }] };
    expect(read(tab).shop).toEqual(both);
    expect(read(tab).notice?.message).toContain('can be reached again');
    expect(keptShop()).toEqual(both);
  });

  it('is the copy that was saved last, and is then in both', async () => {
    const older = JSON.stringify({ ...shopFile(), saws: [] });
    browser.copies = [
      { text: older, savedAt: 5 },
      { text: SAMPLE, savedAt: 6 },
    ];
    expect(read(await browser.openTab()).shop).toEqual(sample);
    await saved();
    expect([browser.copies.length, keptShop()]).toEqual([1, sample]);
  });
});

it('what is written last is the latest, though the clock was set back', async () => {
  browser.copies = [{ text: SAMPLE, savedAt: 5e9 }];
  const tab = await browser.openTab();
  read(tab).change((shop) => ({ ...shop, saws: [] }));
  await saved();
  expect((browser.copies[0] as { savedAt: number }).savedAt).toBeGreaterThan(5e9);
});

describe('damaged', () => {
  it.each([
    ['a text that is no shop record', { text: '{ "format": "cagewright/shop"', savedAt: 7 }, 'line 1, column'],
    [
      'a reference that leads nowhere',
      { text: SAMPLE.replace('"section":"main"', '"section":"gone"'), savedAt: 7 },
      'no section "gone"',
    ],
    ['no text', { savedAt: 7, text: 8 }, 'its text is missing'],
    ['no date', { text: SAMPLE, savedAt: 'yesterday' }, 'its date is missing'],
    ['nothing at all', 7, 'there is no shop record in it'],
  ])('%s is set aside, in words, and an empty record is used', async (_, found, why) => {
    browser.copies = [found];
    const tab = await browser.openTab();
    expect(read(tab).shop).toBe(EMPTY_SHOP);
    expect(read(tab).notice?.message).toContain('could not be read');
    expect(browser.damaged.map((one) => [one.name, one.why.includes(why)])).toEqual([['Shop record', true]]);
  });

  it('gives way to its other copy, which is written in its place', async () => {
    browser.copies = [
      { text: '{', savedAt: 9 },
      { text: SAMPLE, savedAt: 6 },
    ];
    const tab = await browser.openTab();
    expect(read(tab).shop).toEqual(sample);
    expect(read(tab).notice?.message).toContain('Its other copy is used');
    await saved();
    expect(browser.copies).toHaveLength(1);
    expect(keptShop()).toEqual(sample);
  });

  it('is not what a newer program has made: that stays, whatever is done here', async () => {
    const newer = JSON.stringify({ ...shopFile(), version: 2 });
    browser.copies = [{ text: newer, savedAt: 9 }];
    const tab = await browser.openTab();
    expect(read(tab).notice?.message).toContain('newer Cagewright');
    read(tab).change((shop) => ({ ...shop, saws: [{ diameter: 30 }] }));
    await saved();
    expect(browser.writes).toBe(0);
    expect(browser.copies).toEqual([{ text: newer, savedAt: 9 }]);
    expect(browser.damaged).toEqual([]);
  });
});

describe('what a page had jotted down when it was gone', () => {
  const withoutSaws = JSON.stringify({ ...shopFile(), saws: [] });

  it('is jotted with the change itself, against what it was made of', async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    const tab = await browser.openTab();
    read(tab).change((shop) => ({ ...shop, saws: [] }));
    const [{ base, own }] = browser.jotted as [{ base: string; own: string }];
    expect([parseShop(base), parseShop(own)]).toEqual([parseShop(SAMPLE), parseShop(withoutSaws)]);
    await saved();
    expect(browser.jotted).toEqual([]);
  });

  it('is put together with what lies there, and saved', async () => {
    const others = { ...shopFile(), notchers: [] };
    browser.copies = [{ text: JSON.stringify(others), savedAt: 5 }];
    browser.jotted = [{ base: SAMPLE, own: withoutSaws }];
    const tab = await browser.openTab();
    expect(read(tab).shop).toEqual({ ...sample, notchers: [], saws: [] });
    expect(read(tab).notice).toBeNull();
    await saved();
    expect(keptShop()).toEqual({ ...sample, notchers: [], saws: [] });
    expect(browser.jotted).toEqual([]);
  });

  it('is set aside where it cannot be read', async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    browser.jotted = [{ base: SAMPLE, own: '{' }, 7];
    const tab = await browser.openTab();
    expect(read(tab).shop).toEqual(sample);
    expect(browser.damaged.map(({ text }) => text)).toEqual(['{', '7']);
    await saved();
    expect(browser.jotted).toEqual([]);
  });
});

it('is a newer program’s where either copy is, whichever was saved last', async () => {
  const newer = { text: JSON.stringify({ ...shopFile(), version: 2 }), savedAt: 5 };
  for (const copies of [
    [newer, { text: SAMPLE, savedAt: 9 }],
    [{ text: SAMPLE, savedAt: 9 }, newer],
  ]) {
    browser.copies = copies;
    const tab = await browser.openTab();
    expect(read(tab).notice?.message).toContain('newer Cagewright');
    read(tab).change((shop) => ({ ...shop, saws: [{ diameter: 30 }] }));
    await saved();
    expect([browser.copies, browser.jotted, browser.writes]).toEqual([copies, [], 0]);
  }
});

describe('a file', () => {
  it('that has a fault changes nothing', async () => {
    const tab = await browser.openTab();
    read(tab).open(SAMPLE);
    const before = read(tab).shop;
    expect(
      read(tab)
        .open('{"format":"cagewright/job","version":1}')
        .map(({ message }) => message),
    ).toEqual(['a job file: open it as a job']);
    expect(read(tab).shop).toBe(before);
  });

  it('comes out as it went in, and the record before it can be had back', async () => {
    const tab = await browser.openTab();
    read(tab).open(SAMPLE);
    expect(JSON.parse(read(tab).text())).toEqual(shopFile());
    read(tab).open(JSON.stringify(EMPTY_SHOP));
    expect(read(tab).shop).toEqual(EMPTY_SHOP);
    read(tab).goBack();
    expect(read(tab).shop).toEqual(sample);
  });
});

it('what one tab changes the other has', async () => {
  const [a, b] = [await browser.openTab(), await browser.openTab()];
  read(a).open(SAMPLE);
  await saved();
  expect(read(b).shop).toEqual(sample);
  expect(browser.writes).toBe(1);
  read(b).change((shop) => ({ ...shop, saws: [] }));
  await saved();
  expect(read(a).shop).toEqual({ ...sample, saws: [] });
  expect(keptShop()).toEqual({ ...sample, saws: [] });
});

describe('what two tabs change at the same moment', () => {
  const withSaw = (shop: Shop): Shop => ({ ...shop, saws: [...shop.saws, { diameter: 30 }] });
  const withNotcher = (shop: Shop): Shop => ({
    ...shop,
    notchers: [...shop.notchers, { name: 'Other', greatestOffSquare: 45, takesOffset: false }],
  });
  const both = withNotcher(withSaw(sample));

  it.each([
    ['before either is written', null],
    ['while each is being written', new Promise<void>((resolve) => setTimeout(resolve, 40))],
  ])('%s is in both, and kept', async (_, pause) => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    const [a, b] = [await browser.openTab(), await browser.openTab()];
    browser.pause = pause;
    read(a).change(withSaw);
    read(b).change(withNotcher);
    vi.useRealTimers();
    await Promise.all([a.shop.flush(), b.shop.flush()]);
    expect(keptShop()).toEqual(both);
    expect([read(a).shop, read(b).shop]).toEqual([both, both]);
    expect([read(a).saved, read(b).saved]).toEqual(['saved', 'saved']);
  });

  it('stays with what is not written yet, when the other is heard of', async () => {
    const [a, b] = [await browser.openTab(), await browser.openTab()];
    read(a).open(SAMPLE);
    await saved();
    read(b).change(withSaw);
    read(a).change(withNotcher);
    await a.shop.flush();
    expect(read(b).shop).toEqual(both);
    expect(read(a).shop).toEqual(withNotcher(sample));
    await saved();
    expect([read(a).shop, keptShop()]).toEqual([both, both]);
  });

  it('is not taken back by a word of before that comes late', async () => {
    const [a, b] = [await browser.openTab(), await browser.openTab()];
    const words: (() => void)[] = [];
    browser.onTheWay = (tell) => void words.push(tell);
    read(a).open(SAMPLE);
    await saved();
    read(b).change(withSaw);
    await saved();
    for (const tell of words.toReversed()) tell();
    expect([read(a).shop, read(b).shop]).toEqual([withSaw(sample), withSaw(sample)]);
  });
});

describe('a change made before what is kept could be read', () => {
  const withSaw = (shop: Shop): Shop => ({ ...shop, saws: [...shop.saws, { diameter: 30 }] });

  it('counts as not saved while the storage cannot be reached, and as saved once it is', async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    browser.broken = true;
    const tab = await browser.openTab();
    expect([read(tab).saved, read(tab).trouble], 'nothing is missing yet').toEqual(['saved', 'off']);
    read(tab).change(withSaw);
    expect([read(tab).saved, read(tab).trouble]).toEqual(['failed', 'off']);
    await vi.advanceTimersByTimeAsync(RETRY);
    expect(read(tab).saved, 'after another try').toBe('failed');
    browser.broken = false;
    await vi.advanceTimersByTimeAsync(10 * RETRY);
    expect([read(tab).saved, read(tab).trouble]).toEqual(['saved', null]);
    expect(keptShop()).toEqual(withSaw(sample));
  });

  it('is being saved until the storage is known to be in trouble', async () => {
    let arrive = (): void => {};
    browser.reading = new Promise((resolve) => (arrive = resolve));
    const tab = await browser.openTab();
    read(tab).change(withSaw);
    expect(read(tab).saved).toBe('saving');
    tab.storage.stands('blocked');
    expect([read(tab).saved, read(tab).trouble]).toEqual(['failed', 'blocked']);
    tab.storage.stands(null);
    expect(read(tab).saved).toBe('saving');
    arrive();
    await saved();
    expect([read(tab).saved, keptShop()]).toEqual(['saved', withSaw(EMPTY_SHOP)]);
  });
});

describe('a new job that waits for it', () => {
  let arrive = (): void => {};
  let tab: ShopTab;
  beforeEach(async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    browser.reading = new Promise((resolve) => (arrive = resolve));
    tab = await browser.openTab();
  });
  const begin = (): Promise<boolean> =>
    tab.opening.newJobFrom(async () => {
      await tab.shop.whenRead();
      return jobFrom(read(tab).shop, 'in');
    });

  it('says so as long as it waits, and is begun once', async () => {
    const { opened } = documentOf(tab);
    const [one, two] = [begin(), begin()];
    expect(read(tab).awaited).toBe(true);
    arrive();
    expect([await one, await two]).toEqual([true, false]);
    expect(read(tab).awaited).toBe(false);
    expect(documentOf(tab)).toMatchObject({ opened: opened + 1, job: { dies: [{ id: 'd1' }, { id: 'd2' }] } });
    expect(await begin(), 'and another when asked again').toBe(true);
  });

  it('gives way to a file that is opened meanwhile', async () => {
    const begun = begin();
    tab.opening.open('mine.json', DEMO);
    const { opened, job } = documentOf(tab);
    arrive();
    expect(await begun).toBe(false);
    expect([documentOf(tab).opened, documentOf(tab).job]).toEqual([opened, job]);
  });
});

it('is waited for by whoever begins a job with it, as long as it can come', async () => {
  browser.copies = [{ text: SAMPLE, savedAt: 5 }];
  let arrive = (): void => {};
  browser.reading = new Promise((resolve) => (arrive = resolve));
  const [tab, stuck] = [await browser.openTab(), await browser.openTab()];
  const [begun, begunStuck] = [tab, stuck].map(({ shop }) => shop.whenRead());
  stuck.storage.stands('blocked');
  expect(await begunStuck).toBe(false);
  expect(await stuck.shop.whenRead(), 'known by now').toBe(false);
  arrive();
  expect(await begun).toBe(true);
  expect(read(tab).shop).toEqual(sample);
});

it('is waited for no longer than a few seconds', async () => {
  browser.reading = new Promise(() => undefined);
  const begun = (await browser.openTab()).shop.whenRead();
  await vi.advanceTimersByTimeAsync(5000);
  expect(await begun).toBe(false);
});

it('is known to be unread where it cannot be read', async () => {
  browser.broken = true;
  expect(await (await browser.openTab()).shop.whenRead()).toBe(false);
});

describe('what earlier builds kept apart', () => {
  const tape = { from: 'B', style: 'clamp', fine: true };
  const tolerances = { angle: 0.25, rotation: 'much', mark: 400 };

  it('goes into the record once, as far as it can be used', async () => {
    browser.earlier = { tape, tolerances };
    const tab = await browser.openTab();
    const { marking, scatter } = read(tab).shop;
    expect(marking).toEqual({ from: 'B', mark: 'clamp', fine: true });
    expect(scatter).toEqual({ angle: 0.25, rotation: 0.5, mark: 1 });
    expect(browser.earlier).toEqual({ tape, tolerances });
    await saved();
    expect(browser.earlier).toEqual({ tape: null, tolerances: null });
    expect(read(await browser.openTab()).shop.marking).toEqual(marking);
  });

  it('is not put in the place of what the record says', async () => {
    browser.copies = [{ text: SAMPLE, savedAt: 5 }];
    browser.earlier = { tape: { ...tape, from: 'A' }, tolerances };
    expect(read(await browser.openTab()).shop).toEqual(sample);
  });

  it.each([null, 3, 'start', [], { other: 1 }])('is nothing where %j was kept', async (kept) => {
    browser.earlier = { tape: kept, tolerances: kept };
    expect(read(await browser.openTab()).shop).toBe(EMPTY_SHOP);
  });
});

describe('a job that is begun from it', () => {
  it('has what the shop has, through the door, with nothing to undo and nothing to ask', async () => {
    const tab = await browser.openTab();
    read(tab).open(SAMPLE);
    tab.opening.newJob(jobFrom(read(tab).shop, 'mm'));
    const { job } = documentOf(tab);
    expect([job.dies.length, job.sections.length, job.pulls.length, job.lengthUnit, undoOf(tab)]).toEqual([
      2,
      2,
      2,
      'mm',
      null,
    ]);
    expect(job.dies.map(({ bender }) => bender)).toEqual([sample.bender, sample.bender]);
    expect(read(tab).asked).toEqual([]);
  });
});

it('says which stick its rack has no room for, and takes the one that was sawn off all the same', async () => {
  const tab = await browser.openTab();
  const section = documentOf(tab).job.sections[0]!;
  const sticks = Array.from({ length: 200 }, (_, i) => ({ section: section.id, length: 3000 + i, count: 2 }));
  const faults = read(tab).change((shop) => ({ ...shop, sections: [section], sticks }));
  expect(faults).toEqual([]);
  const sawn = { id: 'w9', section: section.id, length: 3000, cuts: [], left: 777, kept: 'k9', rack: true, on: '' };
  expect(documentOf(tab).edit('Sawn', (job) => ({ ...job, sawn: [{ ...sawn, rack: true as const }] }))).toEqual([]);
  expect(read(tab).shop.sticks[0]).toMatchObject({ length: 3000, count: 1 });
  expect(read(tab).shop.sticks).toHaveLength(200);
  expect(read(tab).notice?.message).toMatch(/^Not put on the shop’s rack: .* It is full with 200 kinds/u);
});
