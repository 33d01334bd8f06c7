/** What comes of two devices that worked apart, case by case. */
import { describe, expect, it } from 'vitest';
import { beginRun, logReading, removeRun, tickStep } from '../../../src/core/edit/bent.ts';
import { addMember } from '../../../src/core/edit/members.ts';
import { addNode } from '../../../src/core/edit/nodes.ts';
import { addPoint, renamePoint } from '../../../src/core/edit/points.ts';
import { addPull } from '../../../src/core/edit/pulls.ts';
import { takeOut } from '../../../src/core/edit/records.ts';
import { keepNumbers, withNumbers } from '../../../src/core/edit/numbers.ts';
import { numbersOf } from '../../../src/core/job/numbers.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import {
  begun,
  caughtUp as catchUp,
  edited,
  received,
  replicaOf,
  type Replica,
} from '../../../src/core/sharing/replica.ts';
import { entriesOf, entryOf, keyOf, pathOf } from '../../../src/core/sharing/entries.ts';
import { writtenTwice } from '../../../src/core/sharing/written-twice.ts';
import { sampleFile } from '../job/sample.ts';

const read = (job: object): Job => {
  const parsed = parseJob(serialiseJob(job as Job));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return parsed.job;
};
const START = read(sampleFile());
const NOON = 1_700_000_000_000;

const caughtUp = (replica: Replica): Replica => catchUp(replica, NOON).replica;

/** Both start from one job; each makes its own of it, at its own time by its own clock, and both hear of the other's. */
function apart(
  here: (job: Job) => Job,
  there: (job: Job) => Job,
  { start = START, times = [NOON, NOON + 60_000] }: { start?: Job; times?: readonly [number, number] } = {},
): readonly [Replica, Replica] {
  const first = begun('desk', start, NOON - 3_600_000);
  const joined = caughtUp(received(replicaOf('phone', START), first.entries));
  const phone = { ...joined, shown: { ...joined.shown, job: { ...joined.shown.job, idMark: 'ph' } } };
  const [a, b] = [
    edited(first.replica, read(here(first.replica.shown.job)), times[0]),
    edited(phone, read(there(phone.shown.job)), times[1]),
  ];
  return [caughtUp(received(a.replica, b.entries)), caughtUp(received(b.replica, a.entries))];
}

/** The job that both show. */
function both([a, b]: readonly [Replica, Replica]): Job {
  expect(a.held).toEqual([]);
  expect(b.held).toEqual([]);
  const { idMark: _mark, ...job } = b.shown.job;
  expect(job).toEqual(a.shown.job);
  return a.shown.job;
}

/** All that a device would hand over. */
const entriesIn = ({ cells }: Replica) =>
  [...cells.values()].flatMap((group) => [...group.values()].flatMap(entriesOf));

const rename = (name: string) => (job: Job) => renamePoint(job, job.points[0]!.id, name);
const run = (job: Job): Job =>
  beginRun(
    job,
    'hoop',
    [
      { bend: 2, front: 'A' },
      { bend: 1, front: 'A' },
    ],
    { legs: [1100, 1000, 1100], angles: [84, 84], rotations: [0, 0] },
  );

describe('two devices that worked apart', () => {
  it('keep edits of two records, and of two fields of one', () => {
    const job = both(
      apart(rename('Front'), (before) => ({
        ...before,
        points: before.points.map((point, i) =>
          i === 0 ? { ...point, position: [1, 2, 3] } : { ...point, name: 'Other' },
        ),
      })),
    );
    expect(job.points[0]).toMatchObject({ name: 'Front', position: [1, 2, 3] });
    expect(job.points[1]).toMatchObject({ name: 'Other' });
  });

  it.each([
    [[NOON, NOON + 1], 'Phone'],
    [[NOON + 1, NOON], 'Desk'],
  ] as const)('have the later of two names, whoever it was, and list the other: %j', (times, name) => {
    const pair = apart(rename('Desk'), rename('Phone'), { times });
    expect(both(pair).points[0]!.name).toBe(name);
    for (const { cells } of pair) {
      const twice = writtenTwice(cells);
      expect(twice.map(({ counts, other }) => [counts.value, other.value])).toEqual([
        [name, name === 'Desk' ? 'Phone' : 'Desk'],
      ]);
    }
  });

  it('list nothing where the second knew of the first, however wrong its clock', () => {
    const first = begun('desk', START, NOON);
    const phone = caughtUp(received(replicaOf('phone', START), first.entries));
    const named = edited(first.replica, rename('Desk')(START), NOON);
    const heard = caughtUp(received(phone, named.entries));
    const again = edited(heard, rename('Phone')(heard.shown.job), 5); // 1970
    const end = caughtUp(received(named.replica, again.entries));
    expect(end.shown.job.points[0]!.name).toBe('Phone');
    expect(writtenTwice(end.cells)).toEqual([]);
  });

  it('keep both pulls where both log the very same one', () => {
    const pull = { die: 'd1', section: 'main', pulled: 92, net: 90, on: '' };
    const add = (job: Job): Job => addPull(job, pull);
    expect(both(apart(add, add)).pulls.length).toBe(START.pulls.length + 2);
  });

  it('keep what each measured and ticked in one bend run that both began', () => {
    const one = (job: Job): Job =>
      logReading(tickStep(run(job), 'hoop', 'cut'), 'hoop', 2, { pulled: 92, net: 84, on: '' });
    const other = (job: Job): Job =>
      logReading(tickStep(run(job), 'hoop', 'mark'), 'hoop', 1, { pulled: 93, net: 85, on: '' });
    const { bent } = both(apart(one, other));
    const hoop = bent.find(({ tube }) => tube === 'hoop')!;
    expect(hoop.done).toEqual(expect.arrayContaining(['cut', 'mark']));
    expect(hoop.bends.map(({ bend, net }) => [bend, net]).toSorted(([a], [b]) => a! - b!)).toEqual([
      [1, 85],
      [2, 84],
    ]);
  });

  it('make ids of their own, in the order in which each made its records', () => {
    const two = (name: string) => (job: Job) => addPoint(addPoint(job, `${name} 1`, [1, 0, 0]), `${name} 2`, [2, 0, 0]);
    const { points } = both(apart(two('Desk'), two('Phone')));
    const names = points.slice(START.points.length).map(({ name }) => name);
    expect(names.toSorted()).toEqual(['Desk 1', 'Desk 2', 'Phone 1', 'Phone 2']);
    expect(names.indexOf('Desk 1')).toBeLessThan(names.indexOf('Desk 2'));
    expect(names.indexOf('Phone 1')).toBeLessThan(names.indexOf('Phone 2'));
  });

  it('have a point again that one took out while the other put a node on it', () => {
    const spare = read(addPoint(START, 'Spare', [7, 7, 7]));
    const id = spare.points.at(-1)!.id;
    const job = both(
      apart(
        (before) => takeOut(before, 'points', new Set([id])),
        (before) => addNode(before, 'New', { kind: 'point', point: id, offset: [0, 0, 0] }),
        { start: spare, times: [NOON + 60_000, NOON] },
      ),
    );
    expect(job.points.at(-1)).toMatchObject({ name: 'Spare', position: [7, 7, 7] });
    expect(job.nodes.at(-1)!.at).toMatchObject({ point: id });
  });

  it.each([[[NOON, NOON + 1]], [[NOON + 1, NOON]]] as const)(
    'have a record again that one took out while the other named it: %j',
    (times) => {
      const spare = read(addPoint(START, 'Spare', [7, 7, 7]));
      const id = spare.points.at(-1)!.id;
      const pair = apart(
        (before) => takeOut(before, 'points', new Set([id])),
        (before) => renamePoint(before, id, 'Wanted'),
        { start: spare, times },
      );
      expect(both(pair).points.some(({ name }) => name === 'Wanted')).toBe(true);
      // Knowing of the name it can be taken out.
      const gone = edited(pair[0], takeOut(pair[0].shown.job, 'points', new Set([id])), NOON + 5);
      expect(
        both([gone.replica, caughtUp(received(pair[1], gone.entries))]).points.some(({ name }) => name === 'Wanted'),
      ).toBe(false);
    },
  );

  it('keep what was read on a scrapped piece of steel off the new one', () => {
    const begunRun = read(run(START));
    const reading = { pulled: 92, net: 84, on: '' };
    const job = both(
      apart(
        (before) => before,
        (before) => tickStep(logReading(before, 'hoop', 2, reading), 'hoop', 'cut'),
        { start: begunRun },
      ),
    );
    expect(job.bent.find(({ tube }) => tube === 'hoop')!.done).toContain('cut');
    const first = begun('desk', begunRun, NOON);
    const phone = caughtUp(received(replicaOf('phone', START), first.entries));
    const read2 = edited(
      phone,
      read(tickStep(logReading(phone.shown.job, 'hoop', 2, reading), 'hoop', 'cut')),
      NOON + 9000,
    );
    const without = edited(first.replica, read(removeRun(begunRun, 'hoop')), NOON + 5000);
    const anew = edited(without.replica, read(run(without.replica.shown.job)), NOON + 6000);
    const desk = caughtUp(received(anew.replica, read2.entries));
    const other = caughtUp(received(received(read2.replica, without.entries), anew.entries));
    const hoop = both([desk, { ...other, shown: { ...other.shown } }]).bent.find(({ tube }) => tube === 'hoop')!;
    expect([hoop.done, hoop.bends]).toEqual([[], []]);
    expect(desk.shown.job.pulls.length).toBe(START.pulls.length + 1); // the pull was made, whatever it was made on
  });

  it('list a value that lost, though the one that counts was written twice', () => {
    const first = begun('desk', START, NOON - 5000);
    const phone = caughtUp(received(replicaOf('phone', START), first.entries));
    const lost = edited(phone, rename('Phone')(phone.shown.job), NOON);
    const once = edited(first.replica, rename('Desk')(START), NOON + 10);
    const twice = edited(once.replica, rename('Desk 2')(once.replica.shown.job), NOON + 20);
    const end = caughtUp(received(twice.replica, lost.entries));
    expect(writtenTwice(end.cells).map(({ counts, other }) => [counts.value, other.value])).toEqual([
      ['Desk 2', 'Phone'],
    ]);
  });

  it('give no two tubes one number: who had it first keeps it', () => {
    const start = read(withNumbers(START, [...numbersOf(START)], numbersOf(START).size));
    const add = (name: string) => (before: Job) => {
      const [from, to] = [before.nodes[0]!.id, before.nodes[1]!.id];
      return keepNumbers(before, addMember(before, { name, path: [from, to], section: 'main', mirror: false }));
    };
    const pair = apart(add('Late'), add('Early'), { start, times: [NOON + 5, NOON] });
    const job = both(pair);
    const next = numbersOf(start).size;
    const numbers = new Map(job.members.map(({ id, name }) => [name, numbersOf(job).get(id)]));
    expect([numbers.get('Early'), numbers.get('Late')]).toEqual([next + 1, next + 2]);
    expect(job.lastNumber).toBe(next + 2);
    // Whatever comes after, they stay.
    const [a, b] = pair;
    const more = edited(a, read(add('More')(a.shown.job)), NOON + 20);
    const after = both([more.replica, caughtUp(received(b, [...entriesIn(a), ...more.entries]))]);
    const then = new Map(after.members.map(({ id, name }) => [name, numbersOf(after).get(id)]));
    expect([then.get('Early'), then.get('Late'), then.get('More')]).toEqual([next + 1, next + 2, next + 3]);
  });

  it('hold back what goes together on neither, say why, and go on once it is mended', () => {
    const hold =
      (axis: 'x' | 'y', of: number) =>
      (job: Job): Job => ({
        ...job,
        holds: [...job.holds, { point: job.points[of]!.id, and: job.points[of + 1]!.id, axis, value: 0 }],
      });
    const [a, b] = apart(hold('x', 0), hold('x', 1));
    expect(a.held.length).toBeGreaterThan(0);
    expect(b.held).toEqual(a.held);
    expect(a.shown.job.holds.length).toBe(START.holds.length + 1);
    const mended = edited(a, START, NOON + 99_000);
    const [one, other] = [caughtUp(mended.replica), caughtUp(received(b, mended.entries))];
    expect(one.held).toEqual([]);
    expect(other.shown.job.holds).toEqual(one.shown.job.holds);
    expect(one.shown.job.holds.length).toBe(START.holds.length + 1);
  });
});

describe('what came from outside', () => {
  it('is no entry where it has not the shape of one', () => {
    for (const written of [
      null,
      5,
      [],
      [1],
      [1, 2, 3, 4],
      [-1, 0, 1],
      [1.5, 0, 1],
      ['1', 0],
      [1, 0, Number.NaN],
      [1, 0, new Date()],
      [1, 0, { __proto__: null }],
    ])
      expect(entryOf('desk/points/p1/name', written)).toBeNull();
    expect(entryOf('desk', [1, 0])).toBeNull();
    expect(entryOf('desk/points', [1, 0])).toBeNull();
    expect(entryOf('desk/points/p1/name', [1, 0, 'A'])).toMatchObject({
      device: 'desk',
      path: ['points', 'p1', 'name'],
      value: 'A',
    });
  });

  it('changes nothing of the program, and is held back where it is no job', () => {
    const { replica } = begun('desk', START, NOON);
    const bad = [
      ['x/nodes/n1/#', [NOON * 2, 0, 1]],
      ['x/nodes/n1/at', [NOON * 2, 0, { kind: 'fixed', position: ['<script>', 0, 0] }]],
      ['x//__proto__/polluted', [NOON * 2, 0, true]],
      ['x//constructor', [NOON * 2, 0, 1]],
    ] as const;
    const entries = bad.map(([key, written]) => entryOf(key, written)!);
    const end = caughtUp(received(replica, entries));
    expect(end.held.map(({ place }) => place)).toEqual(['nodes[1].id', 'nodes[1].at.position[0]']);
    expect(end.shown.job).toBe(replica.shown.job);
    expect(({} as { polluted?: unknown }).polluted).toBeUndefined();
  });

  it('goes by paths that any id can stand in', () => {
    const paths = [
      ['points', 'a/b', '~1'],
      ['', '~', '/'],
      ['x', '', '~01'],
    ];
    expect(paths.map((path) => pathOf(keyOf(path)))).toEqual(paths);
  });
});
