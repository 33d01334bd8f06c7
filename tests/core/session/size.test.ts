/** How much a step holds: what changed, however long the list in which it changed. In bytes of the kept history. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { beginRun, logReading } from '../../../src/core/edit/bent.ts';
import { addObstacle } from '../../../src/core/edit/dies.ts';
import { addMember, moveMember } from '../../../src/core/edit/members.ts';
import { movePoint } from '../../../src/core/edit/points.ts';
import { addPull, removePull, updatePull } from '../../../src/core/edit/pulls.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { commitEdit, newHistory, undo, type History } from '../../../src/core/session/history.ts';
import { keptHistory, resumeHistory } from '../../../src/core/session/kept.ts';
import { latticeOf } from '../../bench/lattice.ts';

const demo = (() => {
  const parsed = parseJob(
    readFileSync(new URL('../../../tests/fixtures/demo-typed.cagewright.json', import.meta.url), 'utf8'),
  );
  if (!parsed.ok) throw new Error('the demo must open');
  return parsed.job;
})();
const bytesOf = (history: History): number => JSON.stringify(keptHistory(history, Infinity)).length;

/** The history after so many edits. */
function after(start: Job, edits: number, edit: (job: Job, nth: number) => Job): History {
  let history = newHistory(start);
  for (let nth = 0; nth < edits; nth += 1) history = commitEdit(history, 'An edit', edit(history.job, nth));
  expect(history.past).toHaveLength(edits);
  return history;
}

const pull = (nth: number) => ({
  die: 'die-175',
  section: 'main',
  batch: 'H-204',
  pulled: 90 + nth / 100,
  net: 87,
  on: '2026-03-02',
});
const logged = after(demo, 800, (job, nth) => addPull(job, pull(nth)));

it('of 800 logged pulls each holds its own', () => {
  expect(bytesOf(logged)).toBeLessThan(250_000);
});

it('of 800 logged pulls one holds what changed of it, also after reopening', () => {
  const { job } = logged;
  const { history, loss } = resumeHistory(
    serialiseJob(job),
    job,
    JSON.parse(JSON.stringify(keptHistory(logged, 2000))),
  );
  expect(loss).toBeNull();
  expect(history.past).toEqual(logged.past);
  for (const next of [updatePull(job, 400, { net: 86 }), removePull(job, 10), addPull(job, pull(801))]) {
    const one = commitEdit(newHistory(job), 'An edit', next);
    expect(bytesOf(one)).toBeLessThan(400);
    expect(serialiseJob(undo(one).job)).toBe(serialiseJob(job));
  }
});

it('of 300 moved points each holds two places', () => {
  const moved = after(demo, 300, (job, nth) =>
    movePoint(job, job.points[nth % job.points.length]!.id, [nth, 500.25, 300]),
  );
  expect(bytesOf(moved)).toBeLessThan(60_000);
});

it('of readings, walls and bars each holds its own', () => {
  const order = Array.from({ length: 100 }, (_, nth) => ({ bend: nth + 1, front: 'A' as const }));
  const begun = beginRun(demo, 'hoop', order, { legs: [1, 2], angles: [90], rotations: [0] });
  const read = after(begun, 100, (job, nth) =>
    logReading(job, 'hoop', nth + 1, { pulled: 92, net: 90, on: '2026-03-02' }),
  );
  expect(bytesOf(read)).toBeLessThan(100 * 600);
  const walls = after(demo, 90, (job, nth) =>
    addObstacle(job, 'die-175', { name: `Wall ${nth}`, kind: 'plane', point: [0, 4000 + nth, 0], normal: [0, -1, 0] }),
  );
  expect(bytesOf(walls)).toBeLessThan(90 * 500);
  const lattice = latticeOf(500);
  const path = [lattice.nodes[0]!.id, lattice.nodes.at(-1)!.id];
  const section = lattice.sections[0]!.id;
  const added = after(lattice, 10, (job) => addMember(job, { name: 'Bar', path, section, mirror: false }));
  expect(bytesOf(added)).toBeLessThan(10 * 500);
  const built = after(lattice, 10, (job, nth) => moveMember(job, job.members[nth]!.id, 400));
  expect(bytesOf(built)).toBeLessThan(10 * 300);
});
