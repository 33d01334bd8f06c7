/** Places given another way: in the demo, where a node is never moved by it, and in frames that have nothing to give one from. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setPlace } from '../../../src/core/edit/nodes.ts';
import { distance, length } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Place } from '../../../src/core/job/places.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { givenAs, giveAs } from '../../../src/core/shape/given-as.ts';
import { derive } from '../../../src/core/derive.ts';
import type { Frame } from '../../../src/core/solve/types.ts';
import { jobOf } from '../frame.ts';

const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
const demo = parsed.job;

function solved(job: Job): Frame {
  const outcome = derive(job);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('; '));
  return outcome.value;
}

const KINDS: readonly Place['kind'][] = ['fixed', 'point', 'on', 'between', 'ray'];

describe('a place given another way', () => {
  const frame = solved(demo);

  it.each(KINDS)('stays where it is as %s, for every node, and forms no loop', (kind) => {
    let given = 0;
    for (const { id } of demo.nodes) {
      const place = givenAs(frame, id, kind);
      if (place === null) continue;
      given += 1;
      expect(place.kind).toBe(kind);
      const again = solved(setPlace(demo, id, place)).nodes.get(id)!;
      expect(distance(again, frame.nodes.get(id)!)).toBeLessThan(0.011);
    }
    expect(given).toBeGreaterThan(0);
    if (kind === 'fixed' || kind === 'point' || kind === 'ray') expect(given).toBe(demo.nodes.length);
  });

  it('is given from the nearest point, which may be the image of one', () => {
    const job = jobOf({
      points: [
        { id: 'near', position: [0, -100, 0] },
        { id: 'far', position: [500, 100, 0] },
      ],
      nodes: { n: [10, 100, 20] },
    });
    expect(givenAs(solved(job), 'n', 'point')).toEqual({ kind: 'point', point: "near'", offset: [10, 0, 20] });
  });

  it('stands on the axis of a tube that runs through it, without an offset of rounding', () => {
    const job = jobOf({
      nodes: { a: [0, 0, 0], b: [300, 400, 0], n: [150, 200, 0.001] },
      members: [{ id: 'm', path: ['a', 'b'] }],
    });
    const place = givenAs(solved(job), 'n', 'on');
    expect(place).toMatchObject({ kind: 'on', member: 'm', from: 'start', offset: [0, 0, 0] });
    expect(place?.kind === 'on' && place.distance).toBeCloseTo(250, 6);
  });

  it('lies between the closest pair that has it on its line', () => {
    const job = jobOf({ nodes: { a: [-1000, 0, 0], b: [-100, 0, 0], c: [300, 0, 0], n: [0, 0, 0] } });
    expect(givenAs(solved(job), 'n', 'between')).toEqual({ kind: 'between', nodes: ['b', 'c'], fraction: 0.25 });
  });

  it('ends a line at the coordinate that changes most along it', () => {
    const job = jobOf({ nodes: { from: [0, 30, 0], n: [10, 20, -40] } });
    const place = givenAs(solved(job), 'n', 'ray');
    expect(place).toMatchObject({ kind: 'ray', from: 'from', until: { axis: 'z', value: -40 } });
    expect(place?.kind === 'ray' && length(place.direction)).toBeGreaterThan(0);
  });

  it('is refused in words where nothing is there to give it from', () => {
    const job = jobOf({ nodes: { n: [0, 0, 100], m: [50, 0, 100] } });
    const frame = solved(job);
    expect(giveAs(job, frame, 'n', 'point')).toEqual([{ place: '', message: 'no point has been measured' }]);
    expect(giveAs(job, frame, 'n', 'on')).toEqual([{ place: '', message: 'every tube hangs on this node itself' }]);
    expect(giveAs(job, frame, 'n', 'between')).toEqual([
      { place: '', message: 'no two nodes have it between them on one line' },
    ]);
    const alone = jobOf({ nodes: { n: [0, 0, 100] } });
    expect(giveAs(alone, solved(alone), 'n', 'ray')).toEqual([
      { place: '', message: 'there is no other node to start from' },
    ]);
    expect(givenAs(frame, 'no such node', 'between')).toBeNull();
  });
});
