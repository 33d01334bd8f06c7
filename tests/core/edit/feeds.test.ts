import { describe, expect, it } from 'vitest';
import { setMarking, setTubeFrom, setTubeOrder } from '../../../src/core/edit/feeds.ts';
import { updateMember } from '../../../src/core/edit/members.ts';
import { removeSeveral } from '../../../src/core/edit/several.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { BendStep } from '../../../src/core/job/kinds/bent.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const { marking: _, ...sample } = sampleJob();
const job = deepFreeze<Job>({ ...sample, bent: [], made: [], feeds: [] });
const ORDER: readonly BendStep[] = [
  { bend: 2, front: 'A' },
  { bend: 1, front: 'B' },
];
const inFile = (made: Job): void => expect(parseJob(serialiseJob(made))).toEqual({ ok: true, job: made });

describe('how all tubes are marked', () => {
  it('fills up with what is usual, and is the same job when it is so already', () => {
    const marked = deepFreeze(setMarking(job, { from: 'B' }));
    expect(marked.marking).toEqual({ from: 'B', mark: 'start', fine: false });
    expect(setMarking(marked, { from: 'B', fine: false })).toBe(marked);
    expect(setMarking(marked, { mark: 'clamp' }).marking).toEqual({ from: 'B', mark: 'clamp', fine: false });
    inFile(marked);
  });
});

describe('how one tube is fed', () => {
  it('has one entry, which goes with the last thing that it says', () => {
    const ended = deepFreeze(setTubeFrom(job, "stay'", 'B'));
    const both = deepFreeze(setTubeOrder(ended, "stay'", ORDER));
    expect(both.feeds).toEqual([{ tube: "stay'", from: 'B', order: ORDER }]);
    inFile(both);
    expect(setTubeFrom(both, "stay'", 'B')).toBe(both);
    const ordered = deepFreeze(setTubeFrom(both, "stay'", null));
    expect(ordered.feeds).toEqual([{ tube: "stay'", order: ORDER }]);
    expect(setTubeOrder(ordered, "stay'", null).feeds).toEqual([]);
    expect(setTubeOrder(job, 'hoop', null)).toBe(job);
  });

  it('leaves the others alone', () => {
    const two = deepFreeze(setTubeFrom(setTubeFrom(job, 'hoop', 'middle'), 'stay', 'B'));
    const after = setTubeOrder(two, 'stay', ORDER);
    expect(after.feeds[0]).toBe(two.feeds[0]);
  });

  it('goes with the member, the twin’s with the twin', () => {
    const fed = deepFreeze(
      setTubeFrom(setTubeFrom(setTubeOrder({ ...job, nodes: job.nodes }, 'hoop', ORDER), 'stay', 'B'), "stay'", 'A'),
    );
    const single = updateMember(
      { ...fed, members: fed.members.map((each) => ({ ...each, ends: each.ends.map(() => SQUARE) as never })) },
      'stay',
      { mirror: false },
    );
    expect(single.feeds.map(({ tube }) => tube)).toEqual(['hoop', 'stay']);
    const without = removeSeveral(fed, 'members', ['stay']) as Job;
    expect(without.feeds.map(({ tube }) => tube)).toEqual(['hoop']);
    // Refused, since a node stands on it: nothing goes.
    expect(Array.isArray(removeSeveral(fed, 'members', ['hoop']))).toBe(true);
  });
});

const SQUARE = { fit: 'square', allowance: 0 } as const;
