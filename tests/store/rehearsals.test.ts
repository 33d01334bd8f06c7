import { beforeEach, describe, expect, it } from 'vitest';
import type { Obstacle } from '../../src/core/job/kinds/obstacle.ts';
import type { Job } from '../../src/core/job/types.ts';
import { withSlowFindings } from '../../src/core/stages/slow.ts';
import type { Tab } from './memory.ts';
import { openBrowser } from './memory.ts';

let tab: Tab;
const state = () => tab.workspace.getState();

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

const swings = () => state().derived.findings.filter(({ id }) => /^bend\/(no-free-order|order-matters)$/u.test(id));
const bent = () => state().derived.tubes.filter(({ bends }) => bends.length > 0);

describe('rehearsals', () => {
  it('are made while idle, one tube at a time, the chosen one first', () => {
    expect(state().rehearsals.size).toBe(0);
    const last = bent().at(-1)!;
    state().select({ kind: 'tube', id: last.id });
    tab.idle(1);
    expect([...state().rehearsals.keys()]).toEqual([last.id]);
    tab.idle(1);
    expect(state().rehearsals.size).toBe(2);
    tab.idle();
    expect([...state().rehearsals.keys()].toSorted()).toEqual(
      bent()
        .map(({ id }) => id)
        .toSorted(),
    );
  });

  it('add what they find to the findings, as the command line does, and leave the rest as it is', () => {
    expect(state().edit('Put a post there', withPost)).toEqual([]);
    const before = state().derived;
    expect(swings()).toEqual([]);
    tab.idle();
    expect(swings().length).toBeGreaterThan(0);
    expect(state().derived.findings).toEqual(withSlowFindings(before).findings);
    expect(state().derived.tubes).toBe(before.tubes);
    const ranks = state().derived.findings.map(({ severity }) => ['error', 'warning', 'note'].indexOf(severity));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    expect(state().undoLabel, 'no step of its own').toBe('Put a post there');
  });

  it('go with what they belong to: none of them outlives an undo, and a redo need not search again', () => {
    state().edit('Put a post there', withPost);
    tab.idle();
    const found = swings();
    expect(found.length).toBeGreaterThan(0);
    state().undo();
    expect(swings()).toEqual([]);
    tab.idle();
    expect(swings()).toEqual([]);
    state().redo();
    tab.idle();
    expect(swings()).toEqual(found);
  });

  it('drop what was under way when the job changes before it is done', () => {
    tab.idle();
    state().edit('Put a post there', withPost);
    tab.idle(1);
    expect(state().rehearsals.size).toBe(1);
    state().undo();
    tab.idle();
    expect(swings()).toEqual([]);
    expect(state().rehearsals.size).toBe(bent().length);
  });

  it('rest during a gesture, and are there at once for what it did not touch', () => {
    state().edit('Put a post there', withPost);
    tab.idle();
    const [known, derived] = [state().rehearsals, state().derived];
    state().begin('Drag');
    state().preview(moved);
    const during = state().rehearsals;
    tab.idle();
    expect(state().rehearsals).toBe(during);
    for (const [id, rehearsal] of during) expect(rehearsal).toBe(known.get(id));
    state().cancel();
    expect(state().derived).toBe(derived);
    state().begin('Drag');
    state().preview(moved);
    state().commit();
    tab.idle();
    expect(state().rehearsals.size).toBe(bent().length);
  });

  it('keep the same result as long as nothing new is known', () => {
    tab.idle();
    const { derived } = state();
    state().select({ kind: 'tube', id: bent()[0]!.id });
    tab.idle();
    expect(state().derived).toBe(derived);
  });
});

describe('a tube on the bender', () => {
  const hoop = () => bent()[0]!;

  it('is chosen with it, and Escape brings the frame back before it drops the choice', () => {
    state().rehearse(hoop().id);
    expect(state().rehearsing).toBe(hoop().id);
    expect(state().selection).toEqual({ kind: 'tube', id: hoop().id });
    state().escape();
    expect(state().rehearsing).toBeNull();
    expect(state().selection).not.toBeNull();
    state().escape();
    expect(state().selection).toBeNull();
  });

  it('stays through an edit, and leaves with another choice, another station, another job', () => {
    const again = () => state().rehearse(hoop().id);
    again();
    state().edit('Put a post there', withPost);
    state().select({ kind: 'tube', id: hoop().id });
    expect(state().rehearsing).toBe(hoop().id);
    for (const leave of [
      () => state().select({ kind: 'tube', id: bent()[1]!.id }),
      () => state().setStation('frame'),
      () => state().goTo([0, 0, 0]),
      () => state().rehearse(null),
    ]) {
      again();
      leave();
      expect(state().rehearsing).toBeNull();
    }
    again();
    state().newJob();
    expect(state().rehearsing).toBeNull();
  });

  it('is not put on a bender that nobody has set up, and leaves with it', () => {
    const straight = state().derived.tubes.find(({ bends }) => bends.length === 0)!;
    state().rehearse(straight.id);
    expect(state().rehearsing).toBeNull();
    state().rehearse(hoop().id);
    state().edit('Take the bender away', (job) => ({
      ...job,
      dies: job.dies.map(({ bender: gone, ...die }) => (gone === undefined ? die : die)),
    }));
    expect(state().rehearsing).toBeNull();
  });
});
