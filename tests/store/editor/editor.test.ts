/** What the screen remembers follows the document. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { TubeRef } from '../../../src/core/job/reference.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { documentOf, editorOf, openBrowser, resultsOf, type Tab } from '../memory.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';

const renamed =
  (name: string) =>
  (job: Job): Job => ({ ...job, name });

let tab: Tab;
beforeEach(async () => {
  tab = await openBrowser().openTab();
});

describe('the selection', () => {
  it('ends with what it names', () => {
    const tube = documentOf(tab).derived.tubes[0]!;
    editorOf(tab).select({ kind: 'tube', id: tube.id });
    documentOf(tab).edit('Rename job', renamed('Still there'));
    expect(editorOf(tab).selection).toEqual({ kind: 'tube', id: tube.id });
    tab.opening.newJob();
    expect(editorOf(tab).selection).toBeNull();
  });

  it('is reported anew with each place that is asked for', () => {
    editorOf(tab).goTo([1, 2, 3]);
    editorOf(tab).goTo([1, 2, 3], { kind: 'envelope', id: 'head' });
    expect(editorOf(tab).lookAt).toEqual({ at: [1, 2, 3], asked: 2 });
    expect(editorOf(tab).selection).toEqual({ kind: 'envelope', id: 'head' });
  });
});

it('whoever follows the document after them sees job, derivation, results and selection that belong together', () => {
  const { job: demo } = documentOf(tab);
  // One that nothing stands on, so that it can be taken out.
  const outs = demo.members.map(({ id }) => ({ id, without: removeSeveral(demo, 'members', [id]) }));
  const { id, without } = outs.find(({ without: edited }) => 'members' in edited)!;
  editorOf(tab).select({ kind: 'tube', id });
  tab.idle(); // what the rehearsals find is known
  let heard = 0;
  tab.document.subscribe(({ job, derived, revision }) => {
    heard += 1;
    expect(derived.job).toBe(job);
    expect(resultsOf(tab).revision).toBe(revision);
    expect([...resultsOf(tab).rehearsals.keys()].filter((id) => !derived.byId.has(id))).toEqual([]);
    const { selection } = editorOf(tab);
    expect(selection === null || derived.byId.has(selection.id as TubeRef)).toBe(true);
  });
  documentOf(tab).begin('Rename');
  documentOf(tab).preview(renamed('Draft'));
  documentOf(tab).commit();
  documentOf(tab).undo();
  expect(documentOf(tab).edit('Take it out', () => without as Job)).toEqual([]);
  expect(editorOf(tab).selection).toBeNull();
  documentOf(tab).undo();
  tab.opening.newJob();
  expect(heard).toBe(7);
});
