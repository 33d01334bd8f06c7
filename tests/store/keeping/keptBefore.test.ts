/**
 * Work that an earlier program has kept, as it lies in a browser when a newer one comes. The files in tests/fixtures/kept-1 were
 * written by the first program that kept steps, and stay as they are: the demo with thirty-one edits of most kinds, the last six
 * undone.
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import type { Stored } from '../../../src/store/storage/persistence.ts';
import { documentOf, editorOf, keepingOf, openBrowser, type Tab, undoOf, redoOf } from '../memory.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/kept-1/${name}`, import.meta.url), 'utf8');
const kept1 = (): Stored => JSON.parse(fixture('document.json')) as Stored;

interface PlainStep {
  readonly diff: { readonly collections: Record<string, { records: { before?: object; after?: object }[] }> };
}
const stepsOf = ({ kept }: Stored): PlainStep[] => {
  const { past, future } = kept.history as { past: PlainStep[]; future: PlainStep[] };
  return [...past, ...future];
};

async function opened(stored: Stored): Promise<Tab> {
  const browser = openBrowser();
  browser.documents.set(stored.kept.slot, stored);
  return browser.openTab({ slot: stored.kept.slot, station: 'frame' });
}

const LABELS = { undo: undoOf, redo: redoOf };

const jobOf = (tab: Tab): Job => documentOf(tab).job;
/** As the door gives it back: a later program may write defaults that the first did not know. */
const written = (text: string): string => {
  const parsed = parseJob(text);
  if (!parsed.ok) throw new Error(text.slice(0, 100));
  return serialiseJob(parsed.job);
};

/** The bytes of the job after each step, from where it stands, and how often it went. */
function steppedAll(tab: Tab, way: 'undo' | 'redo'): readonly string[] {
  const texts = [serialiseJob(jobOf(tab))];
  const label = () => LABELS[way](tab);
  while (label() !== null) {
    documentOf(tab)[way]();
    expect(editorOf(tab).notice).toBeNull();
    texts.push(serialiseJob(jobOf(tab)));
  }
  return texts;
}

it('opens with the same bytes, goes back to the start, and on to the end', async () => {
  const tab = await opened(kept1());
  const { job, derived } = documentOf(tab);
  const { notice } = editorOf(tab);
  expect(notice).toBeNull();
  expect(serialiseJob(job)).toBe(written(kept1().kept.text));
  expect(derived.tubes.every(({ blankLength }) => Number.isFinite(blankLength))).toBe(true);
  const back = steppedAll(tab, 'undo');
  expect(back).toHaveLength(25 + 1);
  expect(back.at(-1)).toBe(written(fixture('start.cagewright.json')));
  const forth = steppedAll(tab, 'redo');
  expect(forth).toHaveLength(31 + 1);
  expect(forth.slice(0, back.length)).toEqual(back.toReversed());
  expect(forth.at(-1)).toBe(written(fixture('end.cagewright.json')));
});

it('is kept again with the version of the job format, and opens as before', async () => {
  const stored = kept1();
  const browser = openBrowser();
  browser.documents.set(stored.kept.slot, stored);
  const first = await browser.openTab({ slot: stored.kept.slot, station: 'frame' });
  documentOf(first).undo();
  await first.keeping.flush();
  const again = browser.documents.get(stored.kept.slot)!;
  expect(again.kept.history).toMatchObject({ version: 1 });
  const second = await browser.openTab(first.memory());
  expect(steppedAll(second, 'undo')).toHaveLength(24 + 1);
  expect(steppedAll(second, 'redo').at(-1)).toBe(written(fixture('end.cagewright.json')));
});

it('with steps that lack what later programs know, is shown with what the door fills in', async () => {
  const stored = kept1();
  const text = stored.kept.text.replaceAll(/, "allowance": [^ ,}]+/gu, '');
  expect(text).not.toBe(stored.kept.text);
  for (const { diff } of stepsOf(stored)) {
    for (const { before, after } of diff.collections['members']?.records ?? []) {
      for (const member of [before, after] as ({ ends?: { allowance?: number }[] } | undefined)[]) {
        for (const end of member?.ends ?? []) delete end.allowance;
      }
    }
  }
  const tab = await opened({ ...stored, kept: { ...stored.kept, text } });
  expect(editorOf(tab).notice).toBeNull();
  for (const way of ['undo', 'redo'] as const) {
    while (LABELS[way](tab) !== null) {
      documentOf(tab)[way]();
      const { job, derived } = documentOf(tab);
      expect(parseJob(serialiseJob(job))).toEqual({ ok: true, job });
      for (const { id, blankLength } of derived.tubes) expect(blankLength, id).toBeGreaterThan(0);
    }
  }
  expect(documentOf(tab).job.members.flatMap(({ ends }) => ends.map(({ allowance }) => allowance))).toContain(0);
});

it.each([
  [
    'of another version than its job',
    (kept: Stored['kept']) => ({ ...(kept.history as object), version: 2 }),
    /another/,
  ],
  ['with a date in a step', withDate, /damaged/],
])('a history %s is set aside with words, and the job opens', async (_, spoilt, words) => {
  const { kept, stamp } = kept1();
  const browser = openBrowser();
  browser.documents.set(kept.slot, { kept: { ...kept, history: spoilt(kept) }, stamp });
  const tab = await browser.openTab({ slot: kept.slot, station: 'frame' });
  const { notice } = editorOf(tab);
  const { job } = documentOf(tab);
  const undoLabel = undoOf(tab);
  expect(serialiseJob(job)).toBe(written(kept.text));
  expect(undoLabel).toBeNull();
  expect(notice?.message).toMatch(words);
  expect(notice?.message).toMatch(/set aside, under Earlier versions/u);
  const aside = (await keepingOf(tab).earlierVersions())!.filter(({ why }) => why !== undefined);
  expect(aside).toEqual(notice!.damaged);
  expect(JSON.parse(aside[0]!.text)).toMatchObject({ history: { past: expect.any(Array) } });
});

function withDate(kept: Stored['kept']): object {
  const { past, future } = kept.history as { past: { label: string; diff: object }[]; future: object[] };
  const last = past.at(-1)!;
  const diff = { head: [{ key: 'shift', after: new Date(5) }], collections: {} };
  return { past: [...past.slice(0, -1), { ...last, diff }], future };
}
