/** Bars taken out on which others stand: in the demo, where what stays must not move, and what goes is found by another way. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import type { Edited } from '../../../src/core/edit/records.ts';
import { distance } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Member } from '../../../src/core/job/kinds/member.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { jointJob } from '../gusset/gusset-jobs.ts';
import { leaningOn, removeLeaving, removeWithLeaning } from '../../../src/core/shape/remove-bars.ts';
import type { Frame } from '../../../src/core/solve/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { derived, jobOf } from '../frame.ts';

const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
const demo = deepFreeze({ ...parsed.job, bent: [] });

function solved(job: Job): Frame {
  const outcome = derive(job);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('; '));
  return outcome.value;
}
const made = (edited: Edited): Job => {
  expect(Array.isArray(edited) ? edited : []).toEqual([]);
  return edited as Job;
};
const frame = solved(demo);

/** What is left when whatever names something that is gone goes too, as the reader of files finds it, until nothing does. */
function leftByReading(job: Job, gone: string): Job {
  let left: Job = { ...job, members: job.members.filter(({ id }) => id !== gone) };
  for (;;) {
    const read = parseJob(serialiseJob(left));
    if (read.ok) return left;
    const hit = (place: RegExp): ReadonlySet<number> =>
      new Set(
        read.faults.flatMap((fault) => (place.exec(fault.place)?.[1] ? [Number(place.exec(fault.place)![1])] : [])),
      );
    const nodes = hit(/^nodes\[(\d+)\]/u);
    const members = hit(/^members\[(\d+)\]\.path/u);
    const ends = read.faults.every(({ place }) => /^nodes|^members\[\d+\]\.path/u.test(place));
    expect(ends, read.faults.map(({ place }) => place).join(' ')).toBe(true);
    left = {
      ...left,
      nodes: left.nodes.filter((_, index) => !nodes.has(index)),
      members: left.members.filter((_, index) => !members.has(index)),
    };
  }
}

/** Made whole, with no angle kept. */
function plainly(member: Member): Member {
  const { cutBy: _, keptAngles: __, ...plain } = member;
  return plain;
}

/** The demo with nothing that names a tube but places: only these are left for the reader to go by. */
const untold: Job = {
  ...demo,
  feeds: [],
  members: demo.members.map((member) => ({
    ...plainly(member),
    ends: [
      { fit: 'auto', allowance: 0 },
      { fit: 'auto', allowance: 0 },
    ],
  })),
};

describe('a bar on which others stand', () => {
  it('goes alone: every node and every other centreline stays where it is', () => {
    let carried = 0;
    for (const { id } of demo.members) {
      const ids = new Set([id]);
      const { nodes, goes } = leaningOn(demo, ids);
      const left = made(removeLeaving(demo, frame, ids));
      expect(parseJob(serialiseJob(left))).toEqual({ ok: true, job: left });
      expect(left.members.map((member) => member.id)).toEqual(
        demo.members.filter((member) => member.id !== id).map((member) => member.id),
      );
      expect(left.nodes.filter((node, index) => node !== demo.nodes[index])).toHaveLength(nodes.length);
      carried += nodes.length;
      expect(goes.nodes.length).toBeGreaterThanOrEqual(nodes.length);
      const now = solved(left);
      const moved = [...frame.nodes].map(([reference, place]) => distance(now.nodes.get(reference)!, place));
      expect(Math.max(...moved), `places without ${id}`).toBeLessThan(1e-6);
      const grown = [...now.bars.values()].map((bar) =>
        Math.abs(bar.developedLength - frame.bars.get(bar.id)!.developedLength),
      );
      expect(Math.max(...grown), `tubes without ${id}`).toBeLessThan(1e-6);
    }
    expect(carried).toBeGreaterThan(10);
  });

  it('goes with all that is placed from it, and nothing else', () => {
    let most = 0;
    for (const { id } of untold.members) {
      const left = made(removeWithLeaning(untold, new Set([id])));
      expect(left).toEqual(leftByReading(untold, id));
      const { goes } = leaningOn(untold, new Set([id]));
      const gone = untold.members.filter((member) => member.id !== id && !left.members.includes(member));
      expect(goes.members).toEqual(gone);
      expect(goes.nodes).toEqual(untold.nodes.filter((node) => !left.nodes.includes(node)));
      most = Math.max(most, gone.length);
    }
    expect(most, 'the hoop carries most of the cage').toBeGreaterThan(5);
  });

  it('is taken out of the copes that name it, and one that names nothing else copes to what it meets', () => {
    const job = jobOf({
      nodes: { a: [0, -500, 0], b: [0, 500, 0], c: [0, 0, 0], d: [700, 0, 0], e: [0, -500, 300], f: [0, 500, 300] },
      members: [
        { id: 'run', path: ['a', 'b'] },
        { id: 'other', path: ['e', 'f'] },
        {
          id: 'leg',
          path: ['c', 'd'],
          ends: [
            { fit: 'cope', against: ['run'], allowance: 2 },
            { fit: 'cope', against: ['other', 'run'], allowance: 0 },
          ],
        },
      ],
    });
    const { nodes, named } = leaningOn(job, new Set(['run']));
    expect([nodes.length, named.map(({ id }) => id)]).toEqual([0, ['leg']]);
    const left = made(removeLeaving(job, solved(job), new Set(['run'])));
    expect(left.members.find(({ id }) => id === 'leg')!.ends).toEqual([
      { fit: 'auto', allowance: 2 },
      { fit: 'cope', against: ['other'], allowance: 0 },
    ]);
  });

  it('that cut another leaves it whole again', () => {
    const records = {
      nodes: { a: [0, -500, 0], b: [0, 500, 0], c: [-400, 0, 0], d: [400, 0, 0] },
      members: [
        { id: 'run', path: ['a', 'b'] },
        { id: 'bar', path: ['c', 'd'], cutBy: ['run'] },
      ],
    };
    expect(derived(records).tubes.map(({ id }) => id)).toEqual(['run', 'bar.1', 'bar.2']);
    const job = jobOf(records);
    const left = made(removeLeaving(job, solved(job), new Set(['run'])));
    expect(solved(left).tubes.map(({ id }) => id)).toEqual(['bar']);
  });

  it('stays while its bend run is in the job, or one of a tube that would go with it', () => {
    const run = { tube: frame.tubes[0]!.id, order: [], done: [], bends: [], checks: [] };
    const bent: Job = { ...demo, bent: [run] };
    const refused = removeLeaving(bent, frame, new Set([frame.tubes[0]!.member.id]));
    expect(Array.isArray(refused) && refused[0]!.message).toContain('bend run');
  });
});

it('gussets that are welded to a bar are named before they go with it', () => {
  const { job } = jointJob();
  expect(leaningOn(job, new Set(['branch'])).gussets.map(({ id }) => id)).toEqual(['g']);
  expect(leaningOn({ ...job, gussets: [] }, new Set(['branch'])).gussets).toEqual([]);
});
