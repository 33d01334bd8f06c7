/** Another document in the place of the open one. */
import { beforeEach, describe, expect, it } from 'vitest';
import { emptyJob } from '../../src/core/job/empty-job.ts';
import { serialiseJob } from '../../src/core/job/serialise.ts';
import type { Job } from '../../src/core/job/types.ts';
import { DEMO, documentOf, editorOf, openBrowser, undoOf, type Tab } from './memory.ts';

const renamed =
  (name: string) =>
  (job: Job): Job => ({ ...job, name });

let tab: Tab;
beforeEach(async () => {
  tab = await openBrowser().openTab();
});

describe('opening', () => {
  it('begins a history of its own and forgets an earlier refusal', () => {
    documentOf(tab).edit('Rename job', renamed('Mine'));
    tab.opening.open('broken.json', '{');
    tab.opening.open('other.cagewright.json', DEMO);
    expect(editorOf(tab).refused).toBeNull();
    expect(documentOf(tab).fileName).toBe('other.cagewright.json');
    expect(undoOf(tab)).toBeNull();
  });

  it.each([
    ['no JSON', 'cut here ->'],
    ['another format', '{"format":"x"}'],
    ['nothing', ''],
    ['a dangling section', DEMO.replace(/"section": "[^"]+"/u, '"section": "gone"')],
  ])('refuses %s beside the name of the file', (_, text) => {
    const { job, revision } = documentOf(tab);
    tab.opening.open('bad.json', text);
    expect(editorOf(tab).refused?.fileName).toBe('bad.json');
    expect(editorOf(tab).refused!.faults.length).toBeGreaterThan(0);
    expect(documentOf(tab).job).toBe(job);
    expect(documentOf(tab).revision).toBe(revision);
    editorOf(tab).dismissRefusal();
    expect(editorOf(tab).refused).toBeNull();
  });

  it('asks first of a file that is another state of the open job, and of no other', () => {
    const { job } = documentOf(tab);
    tab.opening.bring('same.json', serialiseJob(job));
    expect(editorOf(tab).otherState).toBeNull();
    expect(documentOf(tab).fileName).toBe('same.json');
    tab.opening.bring('renamed.json', serialiseJob(renamed('Theirs')(job)));
    expect(editorOf(tab).otherState).toMatchObject({ fileName: 'renamed.json', job: { name: 'Theirs' } });
    expect(documentOf(tab).fileName).toBe('same.json');
    tab.opening.bring('strange.json', serialiseJob(emptyJob('mm')));
    expect(documentOf(tab).fileName).toBe('strange.json');
    expect(editorOf(tab).otherState).toBeNull();
  });

  it('gives a file that opens again as the same job', () => {
    documentOf(tab).edit('Rename job', renamed('Tube: a/b?'));
    const { fileName, text } = documentOf(tab).file();
    expect(fileName).toBe('Tube- a-b-.cagewright.json');
    const before = documentOf(tab).job;
    tab.opening.newJob();
    expect(documentOf(tab).job.members).toEqual([]);
    tab.opening.open(fileName, text);
    expect(documentOf(tab).job).toEqual(before);
  });
});
