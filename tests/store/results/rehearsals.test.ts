import { beforeEach, describe, expect, it } from 'vitest';
import type { Obstacle } from '../../../src/core/job/kinds/obstacle.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import type { Tab } from '../memory.ts';
import { documentOf, editorOf, openBrowser, resultsOf, undoOf, workHere } from '../memory.ts';

let tab: Tab;

beforeEach(async () => {
  tab = await openBrowser().openTab();
});

/** Stands where the hoop's second leg swings on every die: no order from end A is free of it. */
const POST: Obstacle = {
  name: 'Post',
  kind: 'box',
  centre: [600, 400, 900],
  size: [200, 200, 1800],
  rotation: [0, 0, 0],
};

const withPost = (job: Job): Job => ({
  ...job,
  dies: job.dies.map((die) => ({ ...die, bender: { ...die.bender!, room: [...die.bender!.room, POST] } })),
});

const moved = (job: Job): Job => ({
  ...job,
  points: job.points.map((point, i) =>
    i === 0 ? { ...point, position: [point.position[0] + 3, point.position[1], point.position[2]] } : point,
  ),
});

const swings = () => resultsOf(tab).findings.filter(({ id }) => /^bend\/(no-free-order|order-matters)$/u.test(id));
const bent = () => documentOf(tab).derived.tubes.filter(({ bends }) => bends.length > 0);

describe('rehearsals', () => {
  it('are made while idle, one tube at a time, the chosen one first', () => {
    expect(resultsOf(tab).rehearsals.size).toBe(0);
    const last = bent().at(-1)!;
    editorOf(tab).select({ kind: 'tube', id: last.id });
    tab.idle(1);
    expect([...resultsOf(tab).rehearsals.keys()]).toEqual([last.id]);
    tab.idle(1);
    expect(resultsOf(tab).rehearsals.size).toBe(2);
    tab.idle();
    expect([...resultsOf(tab).rehearsals.keys()].toSorted()).toEqual(
      bent()
        .map(({ id }) => id)
        .toSorted(),
    );
  });

  it('add what they find to the findings, as the command line does, and leave the rest as it is', () => {
    expect(documentOf(tab).edit('Put a post there', withPost)).toEqual([]);
    const before = documentOf(tab).derived;
    expect(swings()).toEqual([]);
    tab.idle();
    expect(swings().length).toBeGreaterThan(0);
    expect(resultsOf(tab).findings).toEqual(withSlowFindings(before).findings);
    expect(documentOf(tab).derived.tubes).toBe(before.tubes);
    const ranks = resultsOf(tab).findings.map(({ severity }) => ['error', 'warning', 'note'].indexOf(severity));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    expect(undoOf(tab), 'no step of its own').toBe('Put a post there');
  });

  it('go with what they belong to: none of them outlives an undo, and a redo need not search again', () => {
    documentOf(tab).edit('Put a post there', withPost);
    tab.idle();
    const found = swings();
    expect(found.length).toBeGreaterThan(0);
    documentOf(tab).undo();
    expect(swings()).toEqual([]);
    tab.idle();
    expect(swings()).toEqual([]);
    documentOf(tab).redo();
    tab.idle();
    expect(swings()).toEqual(found);
  });

  it('drop what was under way when the job changes before it is done', () => {
    tab.idle();
    documentOf(tab).edit('Put a post there', withPost);
    tab.idle(1);
    expect(resultsOf(tab).rehearsals.size).toBe(1);
    documentOf(tab).undo();
    tab.idle();
    expect(swings()).toEqual([]);
    expect(resultsOf(tab).rehearsals.size).toBe(bent().length);
  });

  it('rest during a gesture, and are there at once for what it did not touch', () => {
    documentOf(tab).edit('Put a post there', withPost);
    tab.idle();
    const [known, derived] = [resultsOf(tab).rehearsals, documentOf(tab).derived];
    documentOf(tab).begin('Drag');
    documentOf(tab).preview(moved);
    const during = resultsOf(tab).rehearsals;
    tab.idle();
    expect(resultsOf(tab).rehearsals).toBe(during);
    for (const [id, rehearsal] of during) expect(rehearsal).toBe(known.get(id));
    documentOf(tab).cancel();
    expect(documentOf(tab).derived).toBe(derived);
    documentOf(tab).begin('Drag');
    documentOf(tab).preview(moved);
    documentOf(tab).commit();
    tab.idle();
    expect(resultsOf(tab).rehearsals.size).toBe(bent().length);
  });

  it('keep the same result as long as nothing new is known', () => {
    tab.idle();
    const { derived } = documentOf(tab);
    editorOf(tab).select({ kind: 'tube', id: bent()[0]!.id });
    tab.idle();
    expect(documentOf(tab).derived).toBe(derived);
  });
});

describe('a tube on the bender', () => {
  const hoop = () => bent()[0]!;

  it('is chosen with it, and Escape brings the frame back before it drops the choice', () => {
    editorOf(tab).rehearse(hoop().id);
    expect(editorOf(tab).rehearsing).toBe(hoop().id);
    expect(editorOf(tab).selection).toEqual({ kind: 'tube', id: hoop().id });
    editorOf(tab).escape();
    expect(editorOf(tab).rehearsing).toBeNull();
    expect(editorOf(tab).selection).not.toBeNull();
    editorOf(tab).escape();
    expect(editorOf(tab).selection).toBeNull();
  });

  it('stays through an edit, and leaves with another choice, another station, another job', () => {
    const again = () => editorOf(tab).rehearse(hoop().id);
    again();
    documentOf(tab).edit('Put a post there', withPost);
    editorOf(tab).select({ kind: 'tube', id: hoop().id });
    expect(editorOf(tab).rehearsing).toBe(hoop().id);
    for (const leave of [
      () => editorOf(tab).select({ kind: 'tube', id: bent()[1]!.id }),
      () => editorOf(tab).setStation('frame'),
      () => editorOf(tab).goTo([0, 0, 0]),
      () => editorOf(tab).rehearse(null),
    ]) {
      again();
      leave();
      expect(editorOf(tab).rehearsing).toBeNull();
    }
    again();
    tab.opening.newJob();
    expect(editorOf(tab).rehearsing).toBeNull();
  });

  it('is not put on a bender that nobody has set up, and leaves with it', () => {
    const straight = documentOf(tab).derived.tubes.find(({ bends }) => bends.length === 0)!;
    editorOf(tab).rehearse(straight.id);
    expect(editorOf(tab).rehearsing).toBeNull();
    editorOf(tab).rehearse(hoop().id);
    documentOf(tab).edit('Take the bender away', (job) => ({
      ...job,
      dies: job.dies.map(({ bender: gone, ...die }) => (gone === undefined ? die : die)),
    }));
    expect(editorOf(tab).rehearsing).toBeNull();
  });
});

it('that cannot be searched for stop nothing: what is done is kept, and it is said', async () => {
  const browser = openBrowser();
  tab = await browser.openTab();
  tab.results.start(() => {
    throw new Error('no worker here');
  });
  const none = () => new Map(bent().map(({ id }) => [id, 'no worker here']));
  expect(resultsOf(tab).unrehearsed).toEqual(none());
  expect(documentOf(tab).edit('Move', moved)).toEqual([]);
  await tab.keeping.flush();
  expect([...browser.documents.values()].map(({ kept }) => kept.text)).toEqual([serialiseJob(documentOf(tab).job)]);
  expect(resultsOf(tab)).toMatchObject({ revision: documentOf(tab).revision, unrehearsed: none() });
  expect(() => editorOf(tab).select({ kind: 'tube', id: bent()[0]!.id })).not.toThrow();
  tab.results.start((_, stage, item, heard) => {
    heard({ ok: true, value: workHere(stage)(item) });
    return () => {};
  });
  // And the fitting of the whole cage.
  expect(resultsOf(tab)).toMatchObject({ unrehearsed: new Map(), progress: { done: bent().length + 1 } });
});

it('of which one fails are made but for that one, and its tube is named with why', () => {
  const [first] = bent();
  tab.results.start((_, stage, item, heard) => {
    heard(
      stage.idOf(item) === first!.id ? { ok: false, why: 'no answer' } : { ok: true, value: workHere(stage)(item) },
    );
    return () => {};
  });
  expect(resultsOf(tab).unrehearsed).toEqual(new Map([[first!.id, 'no answer']]));
  expect(resultsOf(tab).rehearsals.size).toBe(bent().length - 1);
});
