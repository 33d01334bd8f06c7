/** The second copy in files, and both copies together: each brings the work back alone, and nothing torn is taken for whole. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { createAutosave } from '../../../src/store/keeping/autosave.ts';
import type { FirstCopy } from '../../../src/store/storage/indexedDb.ts';
import { isLater, type Stored } from '../../../src/store/storage/persistence.ts';
import type { SecondCopy } from '../../../src/store/storage/secondCopy.ts';
import { LATE, twoCopies } from '../../../src/store/storage/twoCopies.ts';
import { DELAY, RETRY } from '../../../src/store/storage/writer.ts';
import { folder, secondIn } from './folder.ts';
import { openBrowser, type Browser } from '../memory.ts';

const MOST = 3;

afterEach(() => {
  vi.useRealTimers();
});

const stored = (slot: string, count: number, name = `${slot} ${count}`, savedAt = count): Stored => ({
  kept: { slot, name, text: `{"name":"${name}"}`, history: null, fileName: '', station: 'frame', savedAt },
  stamp: { tab: 't', count },
});

describe('the second copy', () => {
  it('gives back what was written last', async () => {
    const copy = secondIn(folder());
    for (const count of [1, 2, 3]) await copy.write(stored('a', count), MOST);
    expect(await copy.read('a')).toEqual(stored('a', 3));
    expect(await copy.read('b')).toBeNull();
  });

  it('gives back the one before when a write was torn, wherever it was torn, and goes on from there', async () => {
    const files = folder();
    const copy = secondIn(files);
    await copy.write(stored('a', 1), MOST);
    const before = new Map(files.texts);
    await copy.write(stored('a', 2), MOST);
    const [name, whole] = [...files.texts].find(([file]) => !before.has(file))!;
    for (let length = 0; length < whole.length; length += 1) {
      files.texts.set(name, whole.slice(0, length));
      expect(await copy.read('a'), `cut at ${length}`).toEqual(stored('a', 1));
    }
    files.texts.set(name, whole.replace('a 2', 'a 9'));
    expect(await copy.read('a'), 'another text than was written').toEqual(stored('a', 1));
    await copy.write(stored('a', 3), MOST);
    expect(await copy.read('a')).toEqual(stored('a', 3));
    expect([...files.texts.values()], 'the good one before it was not written over').toContain([...before.values()][0]);
  });

  it('does not go back to something older, whoever writes it', async () => {
    const copy = secondIn(folder());
    await copy.write(stored('a', 5), MOST);
    await copy.write(stored('a', 4, 'late'), MOST);
    await copy.write(stored('a', 5, 'same count, earlier', 4), MOST);
    expect(await copy.read('a')).toEqual(stored('a', 5));
  });

  it('lets go of the documents written longest ago', async () => {
    const files = folder();
    const copy = secondIn(files);
    for (const slot of ['a', 'b', 'c', 'a', 'd'])
      await copy.write(stored(slot, slot === 'a' ? files.texts.size + 1 : 1), MOST);
    expect(await copy.slots()).toEqual(['d', 'a', 'c']);
    expect(files.texts.size).toBe(4);
  });

  it('finds its documents whatever their slots are called, and nothing in strange files', async () => {
    const files = folder();
    const copy = secondIn(files);
    const slots = ['../x', 'a.b', 'a.b.a', 'é %'];
    for (const slot of slots) await copy.write(stored(slot, 1), 9);
    for (const name of ['note.txt', '.a', 'x', '%.a']) files.texts.set(name, 'strange');
    expect((await copy.slots()).toSorted()).toEqual(slots.toSorted());
    for (const slot of slots) expect(await copy.read(slot)).toEqual(stored(slot, 1));
  });
});

describe('two copies', () => {
  function both() {
    const browser = openBrowser();
    const files = folder();
    const second = secondIn(files);
    const first: FirstCopy = {
      ...browser.persistence,
      keepDamaged: async (damaged) => void browser.damaged.unshift(damaged),
      async restore(one) {
        const there = browser.documents.get(one.kept.slot);
        if (there === undefined || isLater(one, there)) browser.documents.set(one.kept.slot, one);
      },
    };
    return { browser, files, second, work: twoCopies(first, second, MOST) };
  }

  const save = (work: ReturnType<typeof both>['work'], { kept, stamp }: Stored) =>
    work.save(kept, stamp.tab, stamp.count - 1, MOST);
  const namesIn = (browser: Browser) => [...browser.documents.values()].map(({ kept }) => kept.name);
  /** Until the second copy, which is written after the first, holds that. */
  const untilSecond = (second: SecondCopy, slot: string, name: string) =>
    vi.waitFor(async () => expect((await second.read(slot))?.kept.name).toBe(name), { timeout: 10_000 });
  const found = async (work: ReturnType<typeof both>['work'], slot: string) =>
    (await work.copies(slot)).map(({ found: copy }) => (copy as Stored).kept.name);

  it('hold the same, the second written after the first', async () => {
    const { browser, second, work } = both();
    await save(work, stored('a', 1));
    expect(namesIn(browser)).toEqual(['a 1']);
    await untilSecond(second, 'a', 'a 1');
  });

  it('give the one saved later first, whichever it is', async () => {
    const { browser, second, work } = both();
    browser.documents.set('a', stored('a', 2));
    await second.write(stored('a', 1), MOST);
    expect(await found(work, 'a')).toEqual(['a 2', 'a 1']);
    await second.write(stored('a', 3), MOST);
    expect(await found(work, 'a')).toEqual(['a 3', 'a 2']);
  });

  it('go on with the second when the first is gone, broken or damaged', async () => {
    const { browser, second, work } = both();
    await save(work, stored('a', 1));
    await untilSecond(second, 'a', 'a 1');
    browser.documents.set('a', 'spoilt' as never);
    expect((await work.copies('a')).map(({ checked }) => checked.ok)).toEqual([false, true]);
    browser.documents.clear();
    expect(await work.slots()).toEqual(['a']);
    expect(await found(work, 'a')).toEqual(['a 1']);
    browser.broken = true;
    expect(await work.slots()).toEqual(['a']);
    expect(await found(work, 'a')).toEqual(['a 1']);
  });

  it('say what the first says when the second has nothing, or cannot be reached', async () => {
    const { browser, work } = both();
    browser.broken = true;
    await expect(work.slots()).rejects.toThrow('storage is off');
    await expect(work.copies('a')).rejects.toThrow('storage is off');
  });

  it('keep in the second what the first does not take, but not what a newer program has taken over', async () => {
    const { browser, second, work } = both();
    await save(work, stored('a', 1));
    browser.refusal = 'QuotaExceededError';
    await expect(save(work, stored('a', 2))).rejects.toThrow('refused');
    await untilSecond(second, 'a', 'a 2');
    browser.refusal = 'VersionError';
    await expect(save(work, stored('a', 3))).rejects.toThrow('refused');
    browser.refusal = null;
    await save(work, stored('b', 1)); // written one after another: this one would come after it
    await untilSecond(second, 'b', 'b 1');
    expect((await second.read('a'))?.kept.name).toBe('a 2');
  });

  it('take no harm from a second that fails', async () => {
    const { browser, files, second, work } = both();
    files.refused = true;
    await save(work, stored('a', 1));
    await vi.waitFor(() => expect(files.refusals).toBe(1), { timeout: 10_000 });
    expect(namesIn(browser)).toEqual(['a 1']);
    files.refused = false;
    await save(work, stored('a', 2));
    await untilSecond(second, 'a', 'a 2');
  });

  it('are made even: what lies in one place only, and the opened document where one copy is behind', async () => {
    const { browser, second, work } = both();
    browser.documents.set('only first', stored('only first', 1));
    await second.write(stored('only second', 1), MOST);
    browser.documents.set('opened', stored('opened', 1));
    await second.write(stored('opened', 2), MOST);
    await work.evenOut('opened');
    expect(namesIn(browser).toSorted()).toEqual(['only first 1', 'only second 1', 'opened 2']);
    expect((await second.slots()).toSorted()).toEqual(['only first', 'only second', 'opened']);
  });

  it('are never made even over something that was written meanwhile', async () => {
    const { browser, second, work } = both();
    await second.write(stored('a', 4), MOST);
    browser.documents.set('a', stored('a', 5, 'meanwhile'));
    await work.evenOut('b');
    expect(namesIn(browser)).toEqual(['meanwhile']);
    await work.evenOut('a');
    expect(namesIn(browser)).toEqual(['meanwhile']);
    expect((await second.read('a'))?.kept.name).toBe('meanwhile');
  });

  it("stay a tab's own when what only the second took is brought back to the first", async () => {
    const { browser, second, work } = both();
    await save(work, stored('a', 1));
    browser.documents.clear();
    browser.refusal = 'UnknownError';
    await expect(save(work, stored('a', 2))).rejects.toThrow('refused');
    await untilSecond(second, 'a', 'a 2');
    browser.refusal = null;
    await work.evenOut('a');
    expect(namesIn(browser)).toEqual(['a 2']);
    // The tab has seen one write of its own; the second one failed as far as it knows.
    const { kept } = stored('a', 3);
    expect(await work.save(kept, 't', 1, MOST), 'no other tab has written').not.toBeNull();
    expect(await work.save(kept, 'another', 1, MOST), 'and one that saw less is still refused').toBeNull();
  });

  it('set aside what cannot be opened from the second, so that it is not found again', async () => {
    const { browser, second, work } = both();
    await second.write(stored('a', 1), MOST);
    const [copy] = await work.copies('a');
    await copy!.setAside({ savedAt: 1, name: 'a', text: 'a', why: 'no job' });
    expect(await work.copies('a')).toEqual([]);
    expect(browser.damaged).toHaveLength(1);
  });

  it('leave in the second what another tab has written there since it was read', async () => {
    const { second, work } = both();
    await second.write(stored('a', 1), MOST);
    const [copy] = await work.copies('a');
    const theirs = { ...stored('a', 2, 'theirs'), stamp: { tab: 'other', count: 2 } };
    await second.write(theirs, MOST);
    await copy!.setAside({ savedAt: 1, name: 'a', text: 'a', why: 'no job' });
    expect(await second.read('a')).toEqual(theirs);
  });

  it('give in the second way to another tab, whose write the first turns out to have taken before', async () => {
    const { browser, second, work } = both();
    browser.refusal = 'UnknownError';
    await expect(save(work, stored('a', 1, 'mine', 9))).rejects.toThrow('refused');
    await untilSecond(second, 'a', 'mine');
    browser.refusal = null;
    browser.documents.set('a', { ...stored('a', 1, 'theirs', 1), stamp: { tab: 'other', count: 1 } });
    expect(await save(work, stored('a', 1, 'mine', 9))).toBeNull();
    await vi.waitFor(async () => expect(await second.read('a')).toBeNull(), { timeout: 10_000 });
    await work.evenOut('a');
    expect(namesIn(browser)).toEqual(['theirs']);
  });

  describe('when the first does not answer', () => {
    /** It answers once it is let. */
    function hanging() {
      const all = both();
      let go = (): void => {};
      all.browser.pause = new Promise((resolve) => (go = resolve));
      const said: boolean[] = [];
      all.work.watch({
        stands: () => undefined,
        lost: () => undefined,
        leaving: async () => undefined,
        isInSecond: (itIs) => said.push(itIs),
      });
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
      return { ...all, said, go };
    }

    it('the second is written after a while, with what was jotted down since, and what follows', async () => {
      const { browser, second, work, said, go } = hanging();
      const saving = save(work, stored('a', 1));
      work.jot(stored('a', 1, 'jotted meanwhile', 2).kept, 't', 0);
      vi.advanceTimersByTime(LATE - 1);
      expect(said).toEqual([]);
      vi.advanceTimersByTime(1);
      await untilSecond(second, 'a', 'jotted meanwhile');
      work.jot(stored('a', 1, 'jotted later', 3).kept, 't', 0);
      await untilSecond(second, 'a', 'jotted later');
      await vi.waitFor(() => expect(said).toEqual([true, true]));
      go();
      await saving;
      expect(namesIn(browser)).toEqual(['a 1']);
      expect((await second.read('a'))?.kept.name, 'it goes back to nothing older').toBe('jotted later');
      await save(work, stored('a', 2, 'a 2', 4));
      await untilSecond(second, 'a', 'a 2');
    });

    it('says so when the second does not take it either', async () => {
      const { files, work, said } = hanging();
      files.refused = true;
      void save(work, stored('a', 1));
      vi.advanceTimersByTime(LATE);
      await vi.waitFor(() => expect(said).toEqual([false]));
    });
  });

  it.each([
    ['full', (browser: Browser) => void (browser.refusal = 'QuotaExceededError')],
    ['hanging', (browser: Browser) => void (browser.pause = new Promise(() => undefined))],
  ])(
    'take a job begun after another that is not written, the first being %s: both lie in the second',
    async (_, fail) => {
      const { browser, second, work } = both();
      let [name, names, time] = ['left', 0, 1000];
      vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
      const saver = createAutosave(
        {
          persistence: work,
          tabs: { announce: () => undefined, listen: () => undefined },
          tab: 't',
          newSlot: () => `slot ${(names += 1)}`,
          now: () => (time += 1000),
          read: () => ({ name, text: `{"name":"${name}"}`, history: null, fileName: '', station: 'frame' }),
          isMidway: () => false,
          show: () => undefined,
          showBehind: () => undefined,
        },
        'a',
      );
      fail(browser);
      saver.changed();
      vi.advanceTimersByTime(DELAY);
      saver.changed();
      saver.leave('b');
      name = 'open';
      saver.changed();
      void saver.flush();
      vi.advanceTimersByTime(LATE + RETRY);
      await untilSecond(second, 'b', 'open');
      await untilSecond(second, 'a', 'left');
    },
  );
});
