import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Job } from '../../../src/core/job/types.ts';
import { MOST_DOCUMENTS, MOST_VERSIONS } from '../../../src/store/keeping/autosave.ts';
import { DELAY, LONGEST_RETRY, RETRY, SLOW } from '../../../src/store/storage/writer.ts';
import type { Version } from '../../../src/store/types.ts';
import type { Browser, Tab } from '../memory.ts';
import { DEMO, documentOf, editorOf, keepingOf, openBrowser, undoOf } from '../memory.ts';

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
  documentOf(tab).edit(`Rename to ${name}`, renamed(name));
  browser.time += 1000;
  await vi.advanceTimersByTimeAsync(DELAY + 1);
}
const versionsOf = async (tab: Tab): Promise<readonly Version[]> => (await keepingOf(tab).earlierVersions()) ?? [];
const reload = (tab: Tab): Promise<Tab> => browser.openTab(tab.memory());
const storedNames = (): string[] => [...browser.documents.values()].map(({ kept }) => JSON.parse(kept.text).name);

describe('which document it is', () => {
  it('stays under another name and through a reload; another file is another', async () => {
    const tab = await browser.openTab();
    const { slot } = keepingOf(tab);
    expect(slot).not.toBe('');
    await work(tab, 'renamed');
    expect(keepingOf(tab).slot).toBe(slot);
    const again = await reload(tab);
    expect(keepingOf(again).slot).toBe(slot);
    again.opening.open('other.json', DEMO);
    expect(keepingOf(again).slot).not.toBe(slot);
  });
});

describe('saving', () => {
  it('opens the demo on the first start and keeps nothing until something changes', async () => {
    const tab = await browser.openTab();
    expect(documentOf(tab).ready).toBe(true);
    expect(documentOf(tab).job.name).toBe(DEMO_NAME);
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    expect(browser.documents.size).toBe(0);
  });

  it('writes the latest at most a moment after the first change, then says so', async () => {
    const tab = await browser.openTab();
    documentOf(tab).edit('a', renamed('a'));
    await vi.advanceTimersByTimeAsync(DELAY - 10);
    documentOf(tab).edit('b', renamed('b'));
    expect(keepingOf(tab).saved).toBe('saving');
    expect(storedNames()).toEqual([]);
    await vi.advanceTimersByTimeAsync(10);
    expect(keepingOf(tab).saved).toBe('saved');
    expect(storedNames()).toEqual(['b']);
  });

  it('does not wait when the page goes out of sight', async () => {
    const tab = await browser.openTab();
    documentOf(tab).edit('a', renamed('a'));
    await tab.keeping.flush();
    expect(storedNames()).toEqual(['a']);
  });

  it('keeps the draft of a gesture under way, with the way back to before it, and leaves it under way', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    documentOf(tab).begin('Drag');
    for (const draft of ['draft 1', 'draft 2', 'draft 3']) {
      documentOf(tab).preview(renamed(draft));
      await vi.advanceTimersByTimeAsync(DELAY);
      expect(storedNames()).toEqual([draft]);
    }
    expect(documentOf(tab).gesture).toMatchObject({ label: 'Drag' });
    const again = await reload(tab);
    expect(documentOf(again).job.name).toBe('draft 3');
    expect(undoOf(again)).toBe('Drag');
    documentOf(again).undo();
    expect(documentOf(again).job.name).toBe('before');
  });

  it('writes what stood before a gesture again when that is dropped', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    documentOf(tab).begin('Drag');
    documentOf(tab).preview(renamed('draft'));
    await vi.advanceTimersByTimeAsync(DELAY);
    documentOf(tab).cancel();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['before']);
    expect(undoOf(await reload(tab))).toBe('Rename to before');
  });

  it('shows and keeps no draft that could not be read back, but what stood before it', async () => {
    const tab = await browser.openTab();
    await work(tab, 'before');
    documentOf(tab).begin('Drag');
    expect(documentOf(tab).preview((job) => ({ ...job, lengthUnit: 'ell' as 'in' }))).toBe(false);
    expect(documentOf(tab).job.lengthUnit).toBe('in');
    await vi.advanceTimersByTimeAsync(DELAY);
    const again = await reload(tab);
    expect(documentOf(again).job.name).toBe('before');
    expect(editorOf(again).notice).toBeNull();
  });

  it('makes no version of a draft', async () => {
    const tab = await browser.openTab();
    documentOf(tab).begin('Drag');
    documentOf(tab).preview(renamed('draft'));
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['draft']);
    expect(browser.versions).toEqual([]);
  });

  it.each<[string, (tab: Tab) => unknown]>([
    ['the page goes out of sight', (tab) => tab.keeping.flush()],
    ['another job is opened', (tab) => tab.opening.open('demo.json', DEMO)],
    ['a new job is begun', (tab) => tab.opening.newJob()],
    ['the demo is asked for', (tab) => tab.opening.openDemo()],
  ])('enters the gesture under way when %s', async (_, leave) => {
    const tab = await browser.openTab();
    documentOf(tab).begin('Nudge');
    documentOf(tab).preview(renamed('nudged'));
    await leave(tab);
    await vi.advanceTimersByTimeAsync(0);
    expect(storedNames()).toContain('nudged');
  });

  it('keeps at most 2 000 steps for the next visit, and all of them until then', async () => {
    const tab = await browser.openTab();
    tab.opening.newJob(); // with nothing in it, thousands of steps take no time
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
    for (let step = 0; step < 2001; step += 1) documentOf(again).undo();
    expect(documentOf(again).job.name).toBe('0');
  });

  it('is not called failed when only a version could not be kept', async () => {
    browser.noVersions = true;
    const tab = await browser.openTab();
    await work(tab, 'a');
    expect(keepingOf(tab).saved).toBe('saved');
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
    expect(keepingOf(tab).trouble).toBe('off');
    expect(documentOf(tab).job.name).toBe(DEMO_NAME);
    expect(editorOf(tab).notice?.message).toMatch(/cannot be reached/);
    await work(tab, 'a');
    expect(keepingOf(tab).saved).toBe('failed');
    browser.broken = false;
    await work(tab, 'b');
    expect(keepingOf(tab).saved).toBe('saved');
    expect(keepingOf(tab).trouble).toBeNull();
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
    expect(keepingOf(tab)).toMatchObject({ saved: 'failed', trouble });
    browser.refusal = null;
    await vi.advanceTimersByTimeAsync(RETRY);
    expect(keepingOf(tab)).toMatchObject({ saved: 'saved', trouble: null });
    expect(storedNames()).toEqual(['refused']);
  });

  it('still writes a job that was left for another while nothing could be written', async () => {
    const tab = await browser.openTab();
    await work(tab, 'first');
    browser.refusal = 'QuotaExceededError';
    await work(tab, 'first, on');
    tab.opening.open('demo.json', DEMO);
    await work(tab, 'second');
    expect(storedNames()).toEqual(['first']);
    browser.refusal = null;
    await vi.advanceTimersByTimeAsync(LONGEST_RETRY);
    expect(storedNames()).toEqual(['first, on', 'second']);
    expect(keepingOf(tab).saved).toBe('saved');
  });

  it('jots down a job that is left for another in its own slot, and nothing of it in the slot of the other', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const { slot } = keepingOf(tab);
    browser.jotted = [];
    documentOf(tab).edit('Rename', renamed('b'));
    tab.opening.newJob();
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
    documentOf(again).undo();
    expect(documentOf(again).job.name).toBe('a');
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
    documentOf(tab).edit('a', renamed('a'));
    await browser.happens.leaving();
    expect(storedNames()).toEqual(['a']);
  });
});

describe('a reload', () => {
  it('brings back the job, the station and the way back', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    documentOf(tab).undo();
    editorOf(tab).setStation('shop');
    editorOf(tab).select({ kind: 'tube', id: documentOf(tab).derived.tubes[0]!.id });
    await vi.advanceTimersByTimeAsync(DELAY + 1);

    const again = await reload(tab);
    expect(documentOf(again).job).toEqual(documentOf(tab).job);
    expect(editorOf(again).station).toBe('shop');
    expect(editorOf(again).selection).toBeNull();
    documentOf(again).redo();
    expect(documentOf(again).job.name).toBe('b');
    documentOf(again).undo();
    documentOf(again).undo();
    expect(documentOf(again).job.name).toBe(DEMO_NAME);
    expect(undoOf(again)).toBeNull();
  });

  it('opens the demo, and keeps the damaged text, when what was kept cannot be read', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    const damaged = kept.text.slice(0, 500);
    browser.documents.set(slot, { kept: { ...kept, text: damaged }, stamp });

    const again = await reload(tab);
    expect(documentOf(again).job.name).toBe(DEMO_NAME);
    expect(editorOf(again).notice?.damaged.map(({ text }) => text)).toEqual([damaged]);
    expect(editorOf(again).notice!.damaged[0]!.why).not.toBe('');
    await work(again, 'new work');
    expect(storedNames()).toEqual(['new work']);
    expect((await versionsOf(again)).find(({ why }) => why !== undefined)?.text).toBe(damaged);
    expect(editorOf(await reload(again)).notice, 'said once').toBeNull();
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
    expect(documentOf(again).job.name).toBe('a');
    expect(undoOf(again)).toBeNull();
    expect(editorOf(again).notice?.message).toMatch(/steps .* damaged/);
  });

  it.each<[string, object, boolean]>([
    [
      'a shape that no job has',
      { head: [{ key: 'lengthUnit', before: 'ell', after: 'in' }], collections: {} },
      true, // it is let go when the job is brought out
    ],
    [
      'references that lead nowhere',
      {
        head: [],
        collections: { sections: { records: [{ key: 'light', after: sectionOf('light') }], order: LIGHT_NEW } },
      },
      false,
    ],
  ])('takes no kept step that leads to %s', async (_, diff, isLetGo) => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    const [slot, { kept, stamp }] = [...browser.documents][0]!;
    const history = { past: [{ label: 'x', diff }], future: [] };
    browser.documents.set(slot, { kept: { ...kept, history }, stamp });
    const again = await reload(tab);
    const { job } = documentOf(again);
    expect(documentOf(again).undo()).toBe(isLetGo);
    expect(documentOf(again).job).toBe(job);
    expect(editorOf(again).notice?.message ?? '').toMatch(isLetGo ? /steps/ : /^$/);
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
    expect(documentOf(tab).ready).toBe(false);
    expect(documentOf(tab).edit('Rename', renamed('over it'))).not.toEqual([]);
    documentOf(tab).begin('Drag');
    expect(documentOf(tab).preview(renamed('over it'))).toBe(false);
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    await go();
    expect(documentOf(tab).ready).toBe(true);
    expect(keepingOf(tab)).toMatchObject({ saved: 'saved' });
    expect(documentOf(tab).job.name).toBe('kept');
    expect(undoOf(tab)).toBe('Rename to kept');
  });

  it('keeps what was begun meanwhile beside the work, and says where that is', async () => {
    const { tab, go } = await waitingTab();
    tab.opening.newJob();
    documentOf(tab).edit('Rename', renamed('meanwhile'));
    await vi.advanceTimersByTimeAsync(SLOW + DELAY);
    expect(keepingOf(tab)).toMatchObject({ saved: 'failed', trouble: 'slow' });
    await go();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(keepingOf(tab)).toMatchObject({ saved: 'saved', trouble: null });
    expect(documentOf(tab).job.name).toBe('meanwhile');
    expect(editorOf(tab).notice?.message).toMatch(/Earlier versions/);
    expect(storedNames()).toEqual(['kept', 'meanwhile']);
    expect((await versionsOf(tab)).map(({ name }) => name)).toContain('kept');
  });

  it('speaks of earlier work only where there is some', async () => {
    let go = (): void => {};
    browser.pause = new Promise((resolve) => (go = resolve));
    const tab = browser.loadTab();
    tab.opening.newJob();
    browser.pause = null;
    go();
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(editorOf(tab).notice).toBeNull();
  });

  it('says what was damaged also to one who did not wait, and evens the copies out', async () => {
    const { tab, go } = await waitingTab();
    const [slot, record] = [...browser.documents][0]!;
    browser.documents.set('good', { ...record, kept: { ...record.kept, slot: 'good' } });
    browser.documents.set(slot, 'nonsense' as never);
    let isEven = false;
    browser.persistence.evenOut = async () => void (isEven = true);
    tab.opening.newJob();
    await go();
    expect(editorOf(tab).notice?.damaged).toHaveLength(1);
    expect(editorOf(tab).notice?.message).toMatch(/could not be read.*can be reached again/u);
    tab.idle();
    expect(isEven).toBe(true);
  });

  it('is called slow while it does not answer', async () => {
    const { tab, go } = await waitingTab();
    await vi.advanceTimersByTimeAsync(SLOW);
    expect(documentOf(tab).ready).toBe(false);
    expect(keepingOf(tab)).toMatchObject({ trouble: 'slow' });
    await go();
    expect(documentOf(tab).ready).toBe(true);
    expect(keepingOf(tab)).toMatchObject({ trouble: null });
  });

  it('is asked again after a look that failed, and nothing more is said against it once it answers', async () => {
    const before = await browser.openTab();
    await work(before, 'kept');
    browser.broken = true;
    const tab = await reload(before);
    expect(keepingOf(tab).trouble).toBe('off');
    await vi.advanceTimersByTimeAsync(10 * RETRY);
    expect(keepingOf(tab).trouble).toBe('off');
    browser.broken = false;
    await vi.advanceTimersByTimeAsync(LONGEST_RETRY);
    expect(keepingOf(tab)).toMatchObject({ trouble: null, saved: 'saved' });
    expect(editorOf(tab).notice?.message).toMatch(/can be reached again/);
    expect(documentOf(tab).job.name, 'what is shown stays').toBe(DEMO_NAME);
  });

  it('says what the storage says of itself, for as long as it does', async () => {
    const { tab, go } = await waitingTab();
    browser.happens.stands('blocked');
    expect(keepingOf(tab).trouble).toBe('blocked');
    browser.happens.stands(null);
    await go();
    expect(keepingOf(tab).trouble).toBeNull();
  });

  it('sends a tab back to its own job after a load that could not reach it', async () => {
    const first = await browser.openTab();
    await work(first, 'own');
    const other = await browser.openTab();
    other.opening.open('demo.json', DEMO);
    await work(other, 'newer');
    browser.broken = true;
    const failed = await reload(first);
    editorOf(failed).setStation('shop');
    browser.broken = false;
    expect(documentOf(await reload(failed)).job.name).toBe('own');
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
    documentOf(tab).edit('a', renamed('a'));
    await vi.advanceTimersByTimeAsync(DELAY);
    documentOf(tab).edit('b', renamed('b'));
    await vi.advanceTimersByTimeAsync(10 * DELAY);
    expect(browser.versions.map(({ name }) => name)).toEqual(['a']);
  });

  it('come back as one step', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    const [version] = await versionsOf(tab);
    const asked = tab.editor.getState().wholeAsked;
    tab.opening.restore(version!);
    expect(documentOf(tab).job.name).toBe('a');
    expect(tab.editor.getState().wholeAsked, 'the bay shows it whole').toBe(asked + 1);
    documentOf(tab).undo();
    expect(documentOf(tab).job.name).toBe('b');
  });

  it('hold the job that an opened file took the place of', async () => {
    const tab = await browser.openTab();
    await work(tab, 'a');
    await work(tab, 'b');
    tab.opening.open('demo.json', DEMO);
    await vi.advanceTimersByTimeAsync(0);
    expect((await versionsOf(tab)).map(({ name }) => name)).toEqual([DEMO_NAME, 'b', 'a']);
  });

  it.each<[string, (tab: Tab) => unknown]>([
    ['Open', (tab) => tab.opening.open('demo.json', DEMO)],
    ['New', (tab) => tab.opening.newJob()],
    ['Demo', (tab) => tab.opening.openDemo()],
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
    tab.opening.restore(versions.find(({ name }) => name === 'before, last')!);
    expect(documentOf(tab).job.name).toBe('before, last');
    documentOf(tab).undo();
    expect(documentOf(tab).job.name, 'undo does not lead from one job into another').toBe('before, last');
    expect((await versionsOf(tab)).map(({ name }) => name)).toContain('after 39');
    expect(documentOf(await reload(tab)).job.name, 'it is the job of the tab').toBe('before, last');
  });

  it('are of the newest thirty jobs in the browser', async () => {
    const tab = await browser.openTab();
    for (let number = 0; number < MOST_DOCUMENTS + 5; number += 1) {
      tab.opening.open('demo.json', DEMO);
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
    expect(await keepingOf(tab).earlierVersions()).toBeNull();
  });
});

describe('two tabs', () => {
  async function twoTabs(): Promise<[Tab, Tab]> {
    const first = await browser.openTab();
    await work(first, 'begun');
    return [first, await browser.openTab()];
  }

  it('the tab that is behind learns of it, and writes nothing over the other', async () => {
    const [first, second] = await twoTabs();
    expect(documentOf(second).job.name).toBe('begun');
    await work(second, 'second');
    expect(keepingOf(first).behind).toBe(true);
    expect(keepingOf(second).behind).toBe(false);
    await work(first, 'first');
    await first.keeping.flush();
    expect(storedNames()[0]).toBe('second');
    expect(documentOf(first).job.name).toBe('first');
    expect(documentOf(await reload(second)).job.name).toBe('second');
  });

  it('the tab that is behind keeps all that it does in a place apart, where a crash cannot take it', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await work(first, 'first, later');
    expect(keepingOf(first).saved).toBe('saved');
    expect(storedNames()).toEqual(['second', 'first, later']);
    const fresh = await reload(second);
    expect((await versionsOf(fresh)).map(({ name }) => name)).toContain('first, later');
  });

  it('an edit that was not saved yet when the other tab was faster is kept apart as well', async () => {
    const [first, second] = await twoTabs();
    documentOf(first).edit('Rename', renamed('first'));
    documentOf(second).edit('Rename', renamed('second'));
    await second.keeping.flush();
    expect(keepingOf(first).behind).toBe(true);
    await vi.advanceTimersByTimeAsync(DELAY + 1);
    expect(storedNames()).toEqual(['second', 'first']);
  });

  it('takes the other work when asked, and keeps its own among the earlier versions', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await keepingOf(first).takeOtherTab();
    expect(documentOf(first).job.name).toBe('second');
    expect(keepingOf(first).behind).toBe(false);
    expect((await versionsOf(first)).map(({ name }) => name)).toContain('first');
    await work(first, 'first, on top');
    expect(storedNames()[0]).toBe('first, on top');
    expect(keepingOf(second).behind).toBe(true);
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
    documentOf(first).edit('Rename', renamed('first, on'));
    await keepingOf(first).takeOtherTab();
    expect(keepingOf(first)).toMatchObject({ saved: 'saved', trouble: null, behind: true });
    expect(editorOf(first).notice?.message).toMatch(/could not be taken/);
    browser.noVersions = false;
    await keepingOf(first).takeOtherTab();
    expect(documentOf(first).job.name).toBe('second');
  });

  it('says so when the other work is no longer there, and goes on in the place apart', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    browser.documents.delete(keepingOf(second).slot);
    await keepingOf(first).takeOtherTab();
    expect(editorOf(first).notice?.message).toMatch(/no longer there/);
    expect(keepingOf(first).behind).toBe(false);
    await work(first, 'first, on');
    expect(storedNames()).toEqual(['first, on']);
    expect(documentOf(await reload(first)).job.name).toBe('first, on');
  });

  it('keeps a copy in a place of its own when asked, and finds it again', async () => {
    const [first, second] = await twoTabs();
    await work(second, 'second');
    await work(first, 'first');
    await keepingOf(first).keepAsCopy();
    await vi.advanceTimersByTimeAsync(DELAY + 1);
    expect(storedNames().toSorted()).toEqual(['first (copy)', 'second']);
    await work(second, 'second, on');
    expect(keepingOf(first).behind).toBe(false);
    expect(documentOf(await reload(first)).job.name).toBe('first (copy)');
    expect(documentOf(await reload(second)).job.name).toBe('second, on');
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
      expect(tabs.map((tab) => keepingOf(tab).behind)).toEqual([false, false]);
      expect(storedNames()).toEqual(['begun']);
      await work(late, 'on');
      expect(tabs.map((tab) => keepingOf(tab).behind)).toEqual(tabs.map((tab) => tab !== late));
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
    documentOf(first).edit('Rename', renamed('a'));
    void first.keeping.flush();
    documentOf(first).edit('Rename', renamed('b'));
    void first.keeping.flush();
    go();
    browser.pause = null;
    await vi.advanceTimersByTimeAsync(DELAY);
    expect(storedNames()).toEqual(['theirs', 'b']);
    expect(keepingOf(first)).toMatchObject({ behind: true, saved: 'saved' });
  });

  it('refuses to write over work it never heard of', async () => {
    const [first, second] = await twoTabs();
    const [slot, stored] = [...browser.documents][0]!;
    browser.documents.set(slot, { ...stored, stamp: { tab: 'unheard', count: stored.stamp.count + 1 } });
    await work(second, 'second');
    expect(keepingOf(second).behind).toBe(true);
    expect(storedNames()).toEqual(['begun', 'second']);
    expect(keepingOf(first).behind).toBe(false);
  });
});
