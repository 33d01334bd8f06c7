import { describe, expect, it } from 'vitest';
import { moveFixedNodes, movePoints, removeSeveral } from '../../../src/core/edit/several.ts';
import { faultLine } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import { hostOf } from '../../../src/core/job/places.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { deepFreeze } from '../../laws/jobs.ts';
import { sampleJob } from '../job/sample.ts';

const job = deepFreeze(sampleJob());
const positions = (of: Job) => of.points.map(({ position }) => position);

describe('several at once', () => {
  it('moves the points that are named, each by the same, and leaves the others the same objects', () => {
    const moved = movePoints(job, new Set(['post']), [1, -2, 25.4]);
    expect(positions(moved)).toEqual([
      [0, 640, 310],
      [-39, 598, 925.4],
      [-870, 450, 700],
    ]);
    expect(moved.points[0]).toBe(job.points[0]);
    expect(moved.nodes).toBe(job.nodes);
    expect(movePoints(job, new Set(['post']), [0, 0, 0])).toBe(job);
    expect(movePoints(job, new Set(['nobody']), [1, 1, 1])).toBe(job);
  });

  it('moves nodes at fixed places, and none that something else puts where it is', () => {
    const all = new Set(job.nodes.map(({ id }) => id));
    const moved = moveFixedNodes(job, all, [0, 0, 10]);
    const changed = moved.nodes.filter((node, index) => node !== job.nodes[index]).map(({ id }) => id);
    expect(changed).toEqual(['foot', 'top', 'tower']);
    expect(moved.nodes[1]!.at).toEqual({ kind: 'fixed', position: [0, 500, 1110] });
  });

  it('deletes what only refers to one another, and says who else holds them', () => {
    const chain: Job = {
      ...job,
      nodes: [
        ...job.nodes,
        { id: 'p', name: 'p', at: { kind: 'fixed', position: [1, 2, 3] } },
        { id: 'q', name: 'q', at: { kind: 'between', nodes: ['p', 'foot'], fraction: 0.5 } },
      ],
    };
    expect(removeSeveral(chain, 'nodes', ['p', 'q'])).toEqual({ ...chain, nodes: [...job.nodes] });
    const refused = removeSeveral(chain, 'nodes', ['p', 'foot']);
    expect(Array.isArray(refused) && refused.map(faultLine).join('\n')).toMatch(/q.*uses it/u);
    const kept = removeSeveral(job, 'points', ['post', 'sill-l']);
    expect(Array.isArray(kept) && kept.map(faultLine)).toEqual([
      'bodyLines[0].points[0]: "Door opening" uses it: change or delete that first',
      'nodes[2].at.point: "sill" uses it: change or delete that first',
      'nodes[8].at.point: "off-post" uses it: change or delete that first',
      'nodes[10].at.y.point: "in-line" uses it: change or delete that first',
      'envelopes[1].eye: "Driver" uses it: change or delete that first',
      'bent[0].seat[0].point: its bend run uses it: change or delete that first',
      'scans[0].pairs[0].point: "Inside" uses it: change or delete that first',
    ]);
  });

  it('leaves a job that a file can hold when members go, and with them how they are fed', () => {
    const bare: Job = { ...job, bent: [], made: [], nodes: job.nodes.filter(({ at }) => hostOf(at) === null) };
    const gone = removeSeveral(
      bare,
      'members',
      job.members.map(({ id }) => id),
    ) as Job;
    expect([gone.members, gone.feeds]).toEqual([[], []]);
    expect(parseJob(serialiseJob(gone))).toEqual({ ok: true, job: gone });
  });
});
