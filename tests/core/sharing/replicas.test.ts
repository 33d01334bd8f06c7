/**
 * Three devices on one job, by the thousand: edits on each, carried late, twice, in any order, or not at all until they meet again; devices that
 * start anew from what they kept. Whatever happened, all end with one job, it is one that a file holds, and every reading is in it.
 */
import { describe, expect, it } from 'vitest';
import { nextId } from '../../../src/core/edit/ids.ts';
import { addPull } from '../../../src/core/edit/pulls.ts';
import { appendRecord, type Edited } from '../../../src/core/edit/records.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { carried, entriesOf, entryOf, type Entry } from '../../../src/core/sharing/entries.ts';
import {
  begun,
  caughtUp as catchUp,
  edited,
  received,
  replicaOf,
  type Replica,
} from '../../../src/core/sharing/replica.ts';
import { drawn } from '../../draws.ts';
import { RANDOM_EDITS } from '../../laws/random-edits.ts';
import { uniformFrom } from '../../reference/oracles/seeded.ts';
import { sampleFile } from '../job/sample.ts';

const DEVICES = ['saw', 'bender', 'desk'] as const;

const read = (text: string): Job | null => {
  const parsed = parseJob(text);
  return parsed.ok ? parsed.job : null;
};
const START = read(JSON.stringify(sampleFile()))!;

/** All that a device has, as it is kept and carried: nothing comes out again but what can be written as JSON. */
function kept({ cells }: Replica): readonly Entry[] {
  const all = [...cells.values()].flatMap((group) => [...group.values()].flatMap(entriesOf));
  return (JSON.parse(JSON.stringify(all.map(carried))) as [string, unknown][]).map(([key, written]) =>
    entryOf(key, written)!,
  );
}

const caughtUp = (replica: Replica): Replica => catchUp(replica, 0).replica;

type Below = (count: number) => number;

/** One edit of any kind; every other one logs a pull or a reading by a number that no other has. */
function anyEdit(job: Job, mark: number, below: Below): Edited {
  const kind = below(4);
  if (kind === 0) return addPull(job, { die: 'd1', section: 'main', pulled: 92, net: 90, on: '', batch: `${mark}` });
  const [from, to] = [job.points[below(job.points.length)], job.points[below(job.points.length)]];
  if (kind === 1 && from !== undefined && to !== undefined && from !== to) {
    const id = nextId(job, 'measurements');
    return appendRecord(job, 'measurements', { id, kind: 'distance', from: from.id, to: to.id, value: mark });
  }
  return RANDOM_EDITS[below(RANDOM_EDITS.length)]!(job, below(1000), below(1000));
}

const pullsOf = ({ pulls }: Job): readonly string[] => pulls.flatMap(({ batch }) => batch ?? []);
const readingsOf = ({ measurements }: Job): readonly number[] => measurements.map(({ value }) => value);

/** What the edit left, as the door reads it; null where it is refused, or takes away what was measured. */
function afterEdit(job: Job, mark: number, below: Below): Job | null {
  const answer = anyEdit(job, mark, below);
  const after = 'format' in answer ? read(serialiseJob(answer)) : null;
  if (after === null) return null;
  const [pulls, readings] = [new Set(pullsOf(after)), new Set(readingsOf(after))];
  return pullsOf(job).every((heat) => pulls.has(heat)) && readingsOf(job).every((value) => readings.has(value))
    ? after
    : null;
}

interface Course {
  readonly ends: readonly Replica[];
  readonly pulls: ReadonlySet<string>;
  readonly readings: ReadonlySet<number>;
}

function course(seed: number): Course {
  const uniform = uniformFrom(seed);
  const below: Below = (count) => Math.floor(uniform() * count);
  const clocks = [1e12, 1e12 - 4e6, 1e12 + 9e6]; // more than an hour apart: no two devices agree on the time
  const first = begun(DEVICES[0], START, clocks[0]!);
  const devices = DEVICES.map((name, nth) => {
    if (nth === 0) return first.replica;
    const joined = caughtUp(received(replicaOf(name, START), first.entries));
    return { ...joined, shown: { ...joined.shown, job: { ...joined.shown.job, idMark: name } } };
  });
  const post: { readonly to: number; readonly entries: readonly Entry[] }[] = [];
  const [pulls, readings] = [new Set(pullsOf(START)), new Set(readingsOf(START))];
  for (let step = 0; step < 40; step += 1) {
    const who = below(3);
    const device = devices[who]!;
    clocks[who]! += below(1000);
    const deed = below(10);
    if (deed < 5) {
      const after = afterEdit(device.shown.job, 1000 + step, below);
      if (after === null) continue;
      const { replica, entries } = edited(device, after, clocks[who]!);
      devices[who] = replica;
      for (const heat of pullsOf(after)) pulls.add(heat);
      for (const value of readingsOf(after)) readings.add(value);
      for (const to of [0, 1, 2]) if (to !== who) post.push({ to, entries });
    } else if (deed < 8 && post.length > 0) {
      const [{ to, entries }] = post.splice(below(post.length), 1) as [(typeof post)[number]];
      const times = below(5); // 0: it is lost until they meet again
      if (times > 0) devices[to] = caughtUp(received(devices[to]!, times === 1 ? [...entries, ...entries] : entries));
    } else if (deed === 8) {
      const anew = caughtUp(received(replicaOf(device.device, device.shown.job), kept(device)));
      devices[who] = anew;
    } else devices[who] = caughtUp(device);
  }
  // They meet, and meet again until nobody has anything to put right.
  let ends: readonly Replica[] = devices;
  for (let round = 0; round < 3; round += 1) {
    const all = ends.map(kept);
    ends = ends.map((device, who) =>
      caughtUp(received(device, [...all[(who + 2) % 3]!, ...all[(who + 1) % 3]!].toReversed())),
    );
  }
  return { ends, pulls, readings };
}

describe('three devices on one job', () => {
  it('end with one job that has every reading, whatever was late, lost, doubled or begun anew', () => {
    let together = 0;
    const courses = drawn(4, 1000);
    for (let seed = 1; seed <= courses; seed += 1) {
      const { ends, pulls, readings } = course(seed);
      const [faults, ...others] = ends.map(({ held }) => held);
      expect(others, `seed ${seed}`).toEqual([faults, faults]);
      if (faults!.length > 0) continue;
      together += 1;
      for (const end of ends) if (end.held.length === 0) expect(catchUp(end, 0).entries, `seed ${seed}`).toEqual([]);
      const jobs = ends.map(({ shown: { job } }) => read(serialiseJob({ ...job, idMark: 'x' })));
      expect(jobs[0], `seed ${seed}`).not.toBeNull();
      expect(jobs.slice(1), `seed ${seed}`).toEqual([jobs[0], jobs[0]]);
      const there = new Set(pullsOf(jobs[0]!));
      expect(
        [...pulls].filter((heat) => !there.has(heat)),
        `seed ${seed}`,
      ).toEqual([]);
      const are = new Set(readingsOf(jobs[0]!));
      expect(
        [...readings].filter((value) => !are.has(value)),
        `seed ${seed}`,
      ).toEqual([]);
    }
    expect(together / courses).toBeGreaterThan(0.9);
  });
});
