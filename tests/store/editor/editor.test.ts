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

describe('what a list points out', () => {
  const pointedOut = { key: '0 hill', tubes: ['hoop'], line: null, text: '', isAmiss: true };

  it('stays while a node is taken hold of, until anything else is chosen or looked at, another station or another job among it', () => {
    const go = editorOf(tab);
    go.pointOut(pointedOut);
    go.select({ kind: 'node', id: documentOf(tab).derived.job.nodes[0]!.id });
    expect(editorOf(tab).pointedOut).toBe(pointedOut);
    const others = [
      () => go.select(null),
      () => go.goTo([1, 2, 3]),
      () => go.setStation('shop'),
      () => go.escape(),
      () => tab.opening.newJob(),
    ];
    for (const other of others) {
      editorOf(tab).pointOut(pointedOut);
      expect(editorOf(tab).pointedOut).toBe(pointedOut);
      other();
      expect(editorOf(tab).pointedOut).toBeNull();
    }
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

describe('a tube that is half drawn', () => {
  const put = (): void => {
    const { drawing, draw } = editorOf(tab);
    const steps = documentOf(tab).committed.history.past.length;
    draw({ ...drawing!, places: [...drawing!.places, { ground: { kind: 'space', position: [0, 0, 0] }, steps }] });
  };
  const placesOf = (): number | undefined => editorOf(tab).drawing?.places.length;

  it('is undone place by place, an edit made since before it', () => {
    expect(editorOf(tab).undoPlace()).toBe(false);
    editorOf(tab).beginDrawing();
    expect(editorOf(tab).undoIsPlace()).toBe(false);
    put();
    documentOf(tab).edit('Rename job', renamed('In between'));
    expect(editorOf(tab).undoPlace()).toBe(false);
    put();
    expect([editorOf(tab).undoPlace(), placesOf()]).toEqual([true, 1]);
    expect(editorOf(tab).undoPlace()).toBe(false);
    documentOf(tab).undo();
    expect([editorOf(tab).undoPlace(), placesOf()]).toEqual([true, 0]);
    expect(editorOf(tab).undoPlace()).toBe(false);
  });

  it('waits at another station, is gone on with, and does not go over to another job', () => {
    editorOf(tab).select({ kind: 'envelope', id: 'head' });
    editorOf(tab).beginDrawing();
    expect([editorOf(tab).station, editorOf(tab).selection]).toEqual(['frame', null]);
    put();
    editorOf(tab).setStation('checks');
    expect([placesOf(), editorOf(tab).undoPlace()]).toEqual([1, false]);
    editorOf(tab).beginDrawing();
    expect([placesOf(), editorOf(tab).station]).toEqual([1, 'frame']);
    tab.opening.newJob();
    expect(editorOf(tab).drawing).toBeNull();
  });
});
