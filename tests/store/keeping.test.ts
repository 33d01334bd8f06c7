import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Job } from '../../src/core/job/types.ts';
import { MOST_DOCUMENTS, MOST_VERSIONS } from '../../src/store/autosave.ts';
import { DELAY, LONGEST_RETRY, RETRY, SLOW } from '../../src/store/writer.ts';
import type { Version } from '../../src/store/types.ts';
import type { Browser, Tab } from './memory.ts';
import { DEMO, openBrowser } from './memory.ts';

const DEMO_NAME: string = JSON.parse(DEMO).name;
const renamed =
  (name: string) =>
  (job: Job): Job => ({ ...job, name });

/** A section of the demo, and the order of its sections before and after that was added. */
const sectionOf = (id: string): object =>
  JSON.parse(DEMO).sections.find((section: { id: string }) => section.id === id);
const LIGHT_NEW = { before: ['main'], after: ['main', 'light'] };

let browser: Browser;

beforeEach(() => {
  vi.useFakeTimers();
  browser = openBrowser();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Edits and waits until it is saved. */
async function work(tab: Tab, name: string): Promise<void> {
  tab.workspace.getState().edit(`Rename to ${name}`, renamed(name));
  browser.time += 1000;
  await vi.advanceTimersByTimeAsync(DELAY + 1);
}
const read = (tab: Tab) => tab.workspace.getState();
const versionsOf = async (tab: Tab): Promise<readonly Version[]> => (await read(tab).earlierVersions()) ?? [];
const reload = (tab: Tab): Promise<Tab> => browser.openTab(tab.memory());
const storedNames = (): string[] => [...browser.documents.values()].map(({ kept }) => JSON.parse(kept.text).name);

describe('which document it is', () => {
  it('stays under another name and through a reload; another file is another', async () => {
    const tab = await browser.openTab();
    const { slot } = read(tab);
    expect(slot).not.toBe('');
    await work(tab, 'renamed');
    expect(read(tab).slot).toBe(slot);
    const again = await reload(tab);
    expect(read(again).slot).toBe(slot);
    read(again).open('other.json', DEMO);
    expect(read(again).slot).not.toBe(slot);
  });
});

describe('saving', () => {
  it('opens the demo on the first start and keeps nothing until something changes', async () => {
    const tab = await browser.openTab();
    expect(read(tab).ready).toBe(true);
    expect(read(tab).job.name).toBe(DEMO_NAME);
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    expect(browser.documents.size).toBe(0);
  });

  it('writes the latest at most a moment after the first change, then says so', async () => {
    const tab = await browser.openTab();
    read(tab).edit('a', renamed('a'));
    await vi.advanceTimersByTimeAsync(DELAY - 10);
    read(tab).edit('b', renamed('b'));
    expect(read(tab).saved).toBe('saving');
    expect(storedNames()).toEqual([]);
    await vi.advanceTimersByTimeAsync(10);
    expect(read(tab).saved).toBe('saved');
    expect(storedNames()).toEqual(['b']);
  });

  it('does not wait when the page goes out of sight', async () => {
    const tab = await browser.openTab();
    read(tab).edit('a', renamed('a'));
    await tab.workspace.flush();
    expect(storedNames()).toEqual(['a']);
  });

  it('keeps the draft of a gesture under way, with the way back to before it, and leaves it under way', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    read(tab).begin('Drag');
    for (const draft of ['draft 1', 'draft 2', 'draft 3']) {
      read(tab).preview(renamed(draft));
      await vi.advanceTimersByTimeAsync(DELAY);
      expect(storedNames()).toEqual([draft]);
    }
    expect(read(tab).gesture).toBe('Drag');
    const again = await reload(tab);
    expect(read(again).job.name).toBe('draft 3');
    expect(read(again).undoLabel).toBe('Drag');
    read(again).undo();
    expect(read(again).job.name).toBe('before');
  });

  it('writes what stood before a gesture again when that is dropped', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    read(tab).begin('Drag');
    read(tab).preview(renamed('draft'));
    await vi.advanceTimersByTimeAsync(DELAY);
    read(tab).cancel();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['before']);
    expect(read(await reload(tab)).undoLabel).toBe('Rename to before');
  });

  it('shows and keeps no draft that could not be read back, but what stood before it', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    read(tab).begin('Drag');
    expect(read(tab).preview((job) => ({ ...job, lengthUnit: 'ell' as 'in' }))).toBe(false);
    expect(read(tab).job.lengthUnit).toBe('in');
    await vi.advanceTimersByTimeAsync(DELAY);
    const again = await reload(tab);
    expect(read(again).job.name).toBe('before');
    expect(read(again).notice).toBeNull();
  });

  it('makes no version of a draft', async () => {
    const tab = await browser.openTab();
    read(tab).begin('Drag');
    read(tab).preview(renamed('draft'));
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['draft']);
    expect(browser.versions).toEqual([]);
  });

  it.each<[string, (tab: Tab) => unknown]>([
    ['the page goes out of sight', (tab) => tab.workspace.flush()],
    ['another job is opened', (tab) => read(tab).open('demo.json', DEMO)],
    ['a new job is begun', (tab) => read(tab).newJob()],
    ['the demo is asked for', (tab) => read(tab).openDemo()],
  ])('enters the gesture under way when %s', async (_, leave) => {
    const tab = await browser.openTab();
    read(tab).begin('Nudge');
    read(tab).preview(renamed('nudged'));
    await leave(tab);
    await vi.advanceTimersByTimeAsync(0);
    expect(storedNames()).toContain('nudged');
  });

  it('keeps at most 2 000 steps for the next visit, and all of them until then', async () => {
    const tab = await browser.openTab();
    read(tab).newJob(); // with nothing in it, thousands of steps take no time
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    const step = (number: number) => ({
      label: `step ${number}`,
      diff: { head: [{ key: 'name', before: `${number}`, after: `${number + 1}` }], collections: {} },
    });
    const past = Array.from({ length: 2000 }, (_, number) => step(number));
    const text = kept.text.replace('"name": "a"', '"name": "2000"');
    browser.documents.set(slot, { kept: { ...kept, text, history: { past, future: [] } }, stamp });
    const again = await reload(tab);
    await work(again, 'one more');
    const stored = browser.documents.get(slot)!.kept.history as { past: { label: string }[] };
    expect(stored.past).toHaveLength(2000);
    expect(stored.past[0]!.label).toBe('step 1');
    for (let step = 0; step < 2001; step += 1) read(again).undo();
    expect(read(again).job.name).toBe('0');
  });

  it('is not called failed when only a version could not be kept', async () => {
    browser.noVersions = true;
    const tab = await browser.openTab();
    await work(tab, 'a');
    expect(read(tab).saved).toBe('saved');
    expect(storedNames()).toEqual(['a']);
    browser.noVersions = false;
    await work(tab, 'b');
    expect(
      browser.versions.map(({ name }) => name),
      'tried again at once',
    ).toEqual(['b']);
  });

  it('says when the browser keeps nothing, and saves again once it does', async () => {
    browser.broken = true;
    const tab = await browser.openTab();
    expect(read(tab).trouble).toBe('off');
    expect(read(tab).job.name).toBe(DEMO_NAME);
    expect(read(tab).notice?.message).toMatch(/cannot be reached/);
    await work(tab, 'a');
    expect(read(tab).saved).toBe('failed');
    browser.broken = false;
    await work(tab, 'b');
    expect(read(tab).saved).toBe('saved');
    expect(read(tab).trouble).toBeNull();
    expect(storedNames()).toEqual(['b']);
  });

  it.each([
    ['QuotaExceededError', 'full'],
    ['UnknownError', 'off'],
    ['VersionError', 'newer'],
  ])('says why after a %s, and saves without an edit once it can', async (error, trouble) => {
    const tab = await browser.openTab();
    await work(tab, 'fits');
    browser.refusal = error;
    await work(tab, 'refused');
    expect(read(tab)).toMatchObject({ saved: 'failed', trouble });
    browser.refusal = null;
    await vi.advanceTimersByTimeAsync(RETRY);
    expect(read(tab)).toMatchObject({ saved: 'saved', trouble: null });
    expect(storedNames()).toEqual(['refused']);
  });

  it('still writes a job that was left for another while nothing could be written', async () => {
    const tab = await browser.openTab();
    await work(tab, 'first');
    browser.refusal = 'QuotaExceededError';
    await work(tab, 'first, on');
    read(tab).open('demo.json', DEMO);
    await work(tab, 'second');
    expect(storedNames()).toEqual(['first']);
    browser.refusal = null;
    await vi.advanceTimersByTimeAsync(LONGEST_RETRY);
    expect(storedNames()).toEqual(['first, on', 'second']);
    expect(read(tab).saved).toBe('saved');
  });

  it('jots down a job that is left for another in its own slot, and nothing of it in the slot of the other', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const { slot } = read(tab);
    browser.jotted = [];
    read(tab).edit('Rename', renamed('b'));
    read(tab).newJob();
    expect(browser.jotted).toContainEqual([slot, 'b']);
    expect(browser.jotted.filter(([where, name]) => where !== slot && name === 'b')).toEqual([]);
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.documents.get(slot)?.kept.name).toBe('b');
  });

  it('writes everything again when it is lost under the page: the job with its way back, and the versions', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    browser.time += 60_000;
    await work(tab, 'b');
    browser.documents.clear();
    browser.versions = [];
    browser.happens.lost();
    await vi.advanceTimersByTimeAsync(0);
    expect(storedNames()).toEqual(['b']);
    expect(browser.versions.map(({ name }) => name)).toEqual(['b', 'a']);
    const again = await reload(tab);
    read(again).undo();
    expect(read(again).job.name).toBe('a');
  });

  it('evens the copies out once more a while after a loss: what clears the storage may not be through with the second', async () => {
    const browser = openBrowser();
    let isSecondThere = true;
    browser.persistence.evenOut = async () => void (isSecondThere = true);
    await browser.openTab();
    browser.happens.lost();
    await vi.advanceTimersByTimeAsync(1000);
    isSecondThere = false;
    await vi.advanceTimersByTimeAsync(5000);
    expect(isSecondThere).toBe(true);
  });

  it('writes nothing of a job that was never changed when the storage is lost', async () => {
    await browser.openTab();
    browser.happens.lost();
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    expect(browser.writes).toBe(0);
  });

  it('writes what waits before the storage is closed for another program', async () => {
    const tab = await browser.openTab();
    read(tab).edit('a', renamed('a'));
    await browser.happens.leaving();
    expect(storedNames()).toEqual(['a']);
  });
});

describe('a reload', () => {
  it('brings back the job, the station and the way back', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    read(tab).undo();
    read(tab).setStation('shop');
    read(tab).select({ kind: 'tube', id: read(tab).derived.tubes[0]!.id });
    await vi.advanceTimersByTimeAsync(DELAY + 1);

    const again = await reload(tab);
    expect(read(again).job).toEqual(read(tab).job);
    expect(read(again).station).toBe('shop');
    expect(read(again).selection).toBeNull();
    read(again).redo();
    expect(read(again).job.name).toBe('b');
    read(again).undo();
    read(again).undo();
    expect(read(again).job.name).toBe(DEMO_NAME);
    expect(read(again).undoLabel).toBeNull();
  });

  it('opens the demo, and keeps the damaged text, when what was kept cannot be read', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    const damaged = kept.text.slice(0, 500);
    browser.documents.set(slot, { kept: { ...kept, text: damaged }, stamp });

    const again = await reload(tab);
    expect(read(again).job.name).toBe(DEMO_NAME);
    expect(read(again).notice?.damaged.map(({ text }) => text)).toEqual([damaged]);
    expect(read(again).notice!.damaged[0]!.why).not.toBe('');
    await work(again, 'new work');
    expect(storedNames()).toEqual(['new work']);
    expect((await versionsOf(again)).find(({ why }) => why !== undefined)?.text).toBe(damaged);
    expect(read(await reload(again)).notice, 'said once').toBeNull();
  });

  it.each([
    ['is no history', 'nonsense'],
    ['has steps of another shape', { past: [{ label: 'x' }], future: [] }],
  ])('brings the job back alone when what was kept beside it %s', async (_, history) => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    browser.documents.set(slot, { kept: { ...kept, history }, stamp });
    const again = await reload(tab);
    expect(read(again).job.name).toBe('a');
    expect(read(again).undoLabel).toBeNull();
    expect(read(again).notice?.message).toMatch(/steps .* damaged/);
  });

  it.each<[string, object, RegExp]>([
    [
      'a shape that no job has',
      { head: [{ key: 'lengthUnit', before: 'ell', after: 'in' }], collections: {} },
      /steps/,
    ],
    [
      'references that lead nowhere',
      {
        head: [],
        collections: { sections: { records: [{ key: 'light', after: sectionOf('light') }], order: LIGHT_NEW } },
      },
      /history/,
    ],
  ])('takes no kept step that leads to %s', async (_, diff, told) => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    const history = { past: [{ label: 'x', diff }], future: [] };
    browser.documents.set(slot, { kept: { ...kept, history }, stamp });
    const again = await reload(tab);
    const { job } = read(again);
    read(again).undo();
    expect(read(again).job).toBe(job);
    expect(read(again).notice?.message).toMatch(told);
  });
});

describe('a storage that lets one wait', () => {
  /** A browser in which work lies, and a tab that cannot reach it until it is let. */
  async function waitingTab(): Promise<{ tab: Tab; go: () => Promise<unknown> }> {
    const before = await browser.openTab();
    await work(before, 'kept');
    let go = (): void => {};
    browser.pause = new Promise((resolve) => (go = resolve));
    const tab = browser.loadTab(before.memory());
    return {
      tab,
      go() {
        browser.pause = null;
        go();
        return vi.advanceTimersByTimeAsync(0);
      },
    };
  }

  it('takes no edit until the work is there, and then shows it', async () => {
    const { tab, go } = await waitingTab();
    expect(read(tab).ready).toBe(false);
    expect(read(tab).edit('Rename', renamed('over it'))).not.toEqual([]);
    read(tab).begin('Drag');
    expect(read(tab).preview(renamed('over it'))).toBe(false);
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    await go();
    expect(read(tab)).toMatchObject({ ready: true, saved: 'saved' });
    expect(read(tab).job.name).toBe('kept');
    expect(read(tab).undoLabel).toBe('Rename to kept');
  });

  it('keeps what was begun meanwhile beside the work, and says where that is', async () => {
    const { tab, go } = await waitingTab();
    read(tab).newJob();
    read(tab).edit('Rename', renamed('meanwhile'));
    await vi.advanceTimersByTimeAsync(SLOW + DELAY);
    expect(read(tab)).toMatchObject({ saved: 'failed', trouble: 'slow' });
    await go();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(read(tab)).toMatchObject({ saved: 'saved', trouble: null });
    expect(read(tab).job.name).toBe('meanwhile');
    expect(read(tab).notice?.message).toMatch(/Earlier versions/);
    expect(storedNames()).toEqual(['kept', 'meanwhile']);
    expect((await versionsOf(tab)).map(({ name }) => name)).toContain('kept');
  });

  it('speaks of earlier work only where there is some', async () => {
    let go = (): void => {};
    browser.pause = new Promise((resolve) => (go = resolve));
    const tab = browser.loadTab();
    read(tab).newJob();
    browser.pause = null;
    go();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(read(tab).notice).toBeNull();
  });

  it('says what was damaged also to one who did not wait, and evens the copies out', async () => {
    const { tab, go } = await waitingTab();
    const [slot, record] = [...browser.documents][0]!;
    browser.documents.set('good', { ...record, kept: { ...record.kept, slot: 'good' } });
    browser.documents.set(slot, 'nonsense' as never);
    let isEven = false;
    browser.persistence.evenOut = async () => void (isEven = true);
    read(tab).newJob();
    await go();
    expect(read(tab).notice?.damaged).toHaveLength(1);
    expect(read(tab).notice?.message).toMatch(/could not be read.*can be reached again/u);
    tab.idle();
    expect(isEven).toBe(true);
  });

  it('is called slow while it does not answer', async () => {
    const { tab, go } = await waitingTab();
    await vi.advanceTimersByTimeAsync(SLOW);
    expect(read(tab)).toMatchObject({ ready: false, trouble: 'slow' });
    await go();
    expect(read(tab)).toMatchObject({ ready: true, trouble: null });
  });

  it('is asked again after a look that failed, and nothing more is said against it once it answers', async () => {
    const before = await browser.openTab();
    await work(before, 'kept');
    browser.broken = true;
    const tab = await reload(before);
    expect(read(tab).trouble).toBe('off');
    await vi.advanceTimersByTimeAsync(10 * RETRY);
    expect(read(tab).trouble).toBe('off');
    browser.broken = false;
    await vi.advanceTimersByTimeAsync(LONGEST_RETRY);
    expect(read(tab)).toMatchObject({ trouble: null, saved: 'saved' });
    expect(read(tab).notice?.message).toMatch(/can be reached again/);
    expect(read(tab).job.name, 'what is shown stays').toBe(DEMO_NAME);
  });

  it('says what the storage says of itself, for as long as it does', async () => {
    const { tab, go } = await waitingTab();
    browser.happens.stands('blocked');
    expect(read(tab).trouble).toBe('blocked');
    browser.happens.stands(null);
    await go();
    expect(read(tab).trouble).toBeNull();
  });

  it('sends a tab back to its own job after a load that could not reach it', async () => {
    const first = await browser.openTab();
    await work(first, 'own');
    const other = await browser.openTab();
    read(other).open('demo.json', DEMO);
    await work(other, 'newer');
    browser.broken = true;
    const failed = await reload(first);
    read(failed).setStation('shop');
    browser.broken = false;
    expect(read(await reload(failed)).job.name).toBe('own');
  });
});

describe('earlier versions', () => {
  it('are kept at most once a minute, twenty of them, newest first', async () => {
    const tab = await browser.openTab();
    for (let second = 0; second < 180; second += 20) {
      await work(tab, `at ${second}`);
      browser.time += 19_000;
    }
    const versions = await versionsOf(tab);
    expect(versions.map(({ name }) => name)).toEqual(['at 120', 'at 60', 'at 0']);

    for (let minute = 0; minute < 25; minute += 1) {
      browser.time += 60_000;
      await work(tab, `minute ${minute}`);
    }
    expect(await versionsOf(tab)).toHaveLength(MOST_VERSIONS);
  });

  it('are one, also when the storage is still busy with it at the next write', async () => {
    const tab = await browser.openTab();
    const { versions } = browser.persistence;
    browser.persistence.versions = async () => {
      const found = await versions();
      await new Promise((resolve) => setTimeout(resolve, 3 * DELAY));
      return found;
    };
    read(tab).edit('a', renamed('a'));
    await vi.advanceTimersByTimeAsync(DELAY);
    read(tab).edit('b', renamed('b'));
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    expect(browser.versions.map(({ name }) => name)).toEqual(['a']);
  });

  it('come back as one step', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    const [version] = await versionsOf(tab);
    read(tab).restore(version!);
    expect(read(tab).job.name).toBe('a');
    read(tab).undo();
    expect(read(tab).job.name).toBe('b');
  });

  it('hold the job that an opened file took the place of', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    read(tab).open('demo.json', DEMO);
    await vi.advanceTimersByTimeAsync(0);
    expect((await versionsOf(tab)).map(({ name }) => name)).toEqual([DEMO_NAME, 'b', 'a']);
  });

  it.each<[string, (tab: Tab) => unknown]>([
    ['Open', (tab) => read(tab).open('demo.json', DEMO)],
    ['New', (tab) => read(tab).newJob()],
    ['Demo', (tab) => read(tab).openDemo()],
  ])('hold the job before %s however long the next one is worked on', async (_, replace) => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    await work(tab, 'before, last');
    await replace(tab);
    for (let minute = 0; minute < 2 * MOST_VERSIONS; minute += 1) {
      browser.time += 60_000;
      await work(tab, `after ${minute}`);
    }
    const versions = await versionsOf(tab);
    expect(versions.map(({ name }) => name)).toEqual(expect.arrayContaining(['before', 'before, last']));
    expect(versions.filter(({ name }) => name.startsWith('after'))).toHaveLength(MOST_VERSIONS);
    read(tab).restore(versions.find(({ name }) => name === 'before, last')!);
    expect(read(tab).job.name).toBe('before, last');
    expect(read(await reload(tab)).job.name, 'the tab finds its own job again').toBe('after 39');
  });

  it('are of the newest thirty jobs in the browser', async () => {
    const tab = await browser.openTab();
    for (let number = 0; number < MOST_DOCUMENTS + 5; number += 1) {
      read(tab).open('demo.json', DEMO);
      await work(tab, `job ${number}`);
    }
    const names = storedNames();
    expect(names).toHaveLength(MOST_DOCUMENTS);
    expect(names).toEqual(expect.arrayContaining(['job 5', 'job 34']));
    expect(new Set(browser.versions.map(({ slot }) => slot)).size).toBe(MOST_DOCUMENTS);
  });

  it('show what a closed tab left in a place of its own', async () => {
    const closed = await browser.openTab();
    const open = await browser.openTab();
    await work(closed, 'a');
    await work(closed, 'b');
    await work(open, 'c');
    expect((await versionsOf(open)).map(({ name }) => name)).toEqual(['c', 'b', 'a']);
  });

  it('are said to be out of reach while the storage is', async () => {
    const tab = await browser.openTab();
    browser.broken = true;
    expect(await read(tab).earlierVersions()).toBeNull();
  });
});

describe('two tabs', () => {
  async function twoTabs(): Promise<[Tab, Tab]> {
    const first = await browser.openTab();
    await work(first, 'begun');
    return [first, await browser.openTab()];
  }

  it('the tab that is behind is told, and writes nothing over the other', async () => {
    const [first, second] = await twoTabs();
    expect(read(second).job.name).toBe('begun');
    await work(second, 'second');
    expect(read(first).behind).toBe(true);
    expect(read(second).behind).toBe(false);
    await work(first, 'first');
    await first.workspace.flush();
    expect(storedNames()[0]).toBe('second');
    expect(read(first).job.name).toBe('first');
    expect(read(await reload(second)).job.name).toBe('second');
  });

  it('the tab that is behind keeps all that it does in a place apart, where a crash cannot take it', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await work(first, 'first, later');
    expect(read(first).saved).toBe('saved');
    expect(storedNames()).toEqual(['second', 'first, later']);
    const fresh = await reload(second);
    expect((await versionsOf(fresh)).map(({ name }) => name)).toContain('first, later');
  });

  it('an edit that was not saved yet when the other tab was faster is kept apart as well', async () => {
    const [first, second] = await twoTabs();
    read(first).edit('Rename', renamed('first'));
    read(second).edit('Rename', renamed('second'));
    await second.workspace.flush();
    expect(read(first).behind).toBe(true);
    await vi.advanceTimersByTimeAsync(DELAY + 1);
    expect(storedNames()).toEqual(['second', 'first']);
  });

  it('takes the other work when asked, and keeps its own among the earlier versions', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await read(first).takeOtherTab();
    expect(read(first).job.name).toBe('second');
    expect(read(first).behind).toBe(false);
    expect((await versionsOf(first)).map(({ name }) => name)).toContain('first');
    await work(first, 'first, on top');
    expect(storedNames()[0]).toBe('first, on top');
    expect(read(second).behind).toBe(true);
  });

  it.each<[string, (browser: Browser) => void]>([
    ['a version', (browser) => void (browser.noVersions = true)],
    [
      'the look for it',
      ({ persistence }) => {
        const { copies } = persistence;
        persistence.copies = () => {
          persistence.copies = copies;
          return Promise.reject(new Error('off'));
        };
      },
    ],
  ])('says that the other work could not be taken when %s failed, and calls nothing unsaved', async (_, fail) => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    fail(browser);
    browser.time += 60_000;
    read(first).edit('Rename', renamed('first, on'));
    await read(first).takeOtherTab();
    expect(read(first)).toMatchObject({ saved: 'saved', trouble: null, behind: true });
    expect(read(first).notice?.message).toMatch(/could not be taken/);
    browser.noVersions = false;
    await read(first).takeOtherTab();
    expect(read(first).job.name).toBe('second');
  });

  it('says so when the other work is no longer there, and goes on in the place apart', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    browser.documents.delete(read(second).slot);
    await read(first).takeOtherTab();
    expect(read(first).notice?.message).toMatch(/no longer there/);
    expect(read(first).behind).toBe(false);
    await work(first, 'first, on');
    expect(storedNames()).toEqual(['first, on']);
    expect(read(await reload(first)).job.name).toBe('first, on');
  });

  it('keeps a copy in a place of its own when asked, and finds it again', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await read(first).keepAsCopy();
    await vi.advanceTimersByTimeAsync(DELAY + 1);
    expect(storedNames().toSorted()).toEqual(['first (copy)', 'second']);
    await work(second, 'second, on');
    expect(read(first).behind).toBe(false);
    expect(read(await reload(first)).job.name).toBe('first (copy)');
    expect(read(await reload(second)).job.name).toBe('second, on');
  });

  it.each([
    ['the one that changed it', 0],
    ['the other', 1],
  ])(
    'that show the same go on together when the storage is cleared, whichever writes again first: %s',
    async (_, early) => {
      const tabs = await twoTabs();
      const late = tabs[1 - early]!;
      browser.documents.clear();
      tabs[early]!.happens.lost();
      await vi.advanceTimersByTimeAsync(0);
      late.happens.lost();
      await vi.advanceTimersByTimeAsync(DELAY);
      expect(tabs.map((tab) => read(tab).behind)).toEqual([false, false]);
      expect(storedNames()).toEqual(['begun']);
      await work(late, 'on');
      expect(tabs.map((tab) => read(tab).behind)).toEqual(tabs.map((tab) => tab !== late));
      expect(storedNames()).toEqual(['on']);
    },
  );

  it('two writes that are refused while under way make one document apart', async () => {
    const [first] = await twoTabs();
    const [slot, stored] = [...browser.documents][0]!;
    browser.documents.set(slot, {
      kept: { ...stored.kept, text: stored.kept.text.replace('begun', 'theirs') },
      stamp: { tab: 'unheard', count: stored.stamp.count + 1 },
    });
    let go = (): void => {};
    browser.pause = new Promise((resolve) => (go = resolve));
    read(first).edit('Rename', renamed('a'));
    void first.workspace.flush();
    read(first).edit('Rename', renamed('b'));
    void first.workspace.flush();
    go();
    browser.pause = null;
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['theirs', 'b']);
    expect(read(first)).toMatchObject({ behind: true, saved: 'saved' });
  });

  it('refuses to write over work it never heard of', async () => {
    const [first, second] = await twoTabs();
    const [slot, stored] = [...browser.documents][0]!;
    browser.documents.set(slot, { ...stored, stamp: { tab: 'unheard', count: stored.stamp.count + 1 } });
    await work(second, 'second');
    expect(read(second).behind).toBe(true);
    expect(storedNames()).toEqual(['begun', 'second']);
    expect(read(first).behind).toBe(false);
  });
});
