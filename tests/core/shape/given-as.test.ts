/** Places given another way: in the demo, where a node is never moved by it, and in frames that have nothing to give one from. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setPlace } from '../../../src/core/edit/nodes.ts';
import { distance, length } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { givenAs, giveAs } from '../../../src/core/shape/given-as.ts';
import { wayOf, type Way } from '../../../src/core/shape/ways.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { jobOf } from '../frame.ts';

const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error(parsed.faults[0]?.message);
const demo = parsed.job;

function solved(job: Job, before?: Derived): Derived {
  const outcome = derive(job, before);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ message }) => message).join('; '));
  return outcome.value;
}

const WAYS: readonly Way[] = ['fixed', 'point', 'clear', 'on', 'until', 'between', 'ray', 'lined-up', 'crossing'];
/** Not every node has two others in line, or a line through it. */
const SELDOM: readonly Way[] = ['on', 'until', 'between', 'crossing'];

describe('a place given another way', () => {
  const frame = solved(demo);

  it.each(WAYS)('stays where it is as %s, for every node, and forms no loop', (way) => {
    let given = 0;
    for (const { id } of demo.nodes) {
      const place = givenAs(frame, id, way);
      if (place === null) continue;
      given += 1;
      expect(wayOf(place)).toBe(way);
      const again = solved(setPlace(demo, id, place), frame).nodes.get(id)!;
      expect(distance(again, frame.nodes.get(id)!)).toBeLessThan(0.011);
    }
    if (way !== 'crossing') expect(given).toBeGreaterThan(0);
    if (!SELDOM.includes(way)) expect(given).toBe(demo.nodes.length);
  });

  it.each(WAYS)('given as %s and then in every other way stays there, and keeps nothing of how it was given', (way) => {
    const points = [{ id: 'p', position: [10, 480, 590] }];
    const nodes = {
      foot: [0, 500, 0],
      top: [0, 300, 1000],
      p: [-100, 500, 900],
      q: [100, 300, 300],
      // On the hoop, and on the line between p and q.
      n: { kind: 'crossing', member: 'hoop', line: ['p', 'q'] },
      far: [700, 100, 80],
    };
    const members = [
      { id: 'hoop', path: ['foot', 'top', "top'", "foot'"] },
      { id: 'bar', path: ['far', "n'"] },
    ];
    const job = jobOf({ points, nodes, members });
    const here = solved(job).nodes.get('n')!;
    const once = giveAs(job, solved(job), 'n', way) as Job;
    for (const other of WAYS) {
      const twice = giveAs(once, solved(once), 'n', other);
      if (Array.isArray(twice)) {
        expect([other, twice[0].message]).toEqual(['between', 'no two nodes have it between them on one line']);
        continue;
      }
      const frame = solved(twice as Job);
      expect(distance(frame.nodes.get('n')!, here), `${way}, then ${other}`).toBeLessThan(0.011);
      const at = frame.job.nodes.find(({ id }) => id === 'n')!.at;
      expect(wayOf(at)).toBe(other);
      // An offset is there in the ways that show one, and nothing where the node is on the axis.
      if (at.kind === 'on') {
        expect(at.offset).toEqual([0, 0, 0]);
        expect(Object.keys(at)).not.toContain(other === 'until' ? 'distance' : 'until');
      }
      expect(Object.keys(at).includes('clear')).toBe(other === 'clear');
    }
  });

  it('on a tube is given by its height there, or nearly level by another coordinate, and stays on its own tube', () => {
    const nodes = {
      a: [0, 0, 0],
      b: [0, 200, 900],
      c: [5, 0, 400],
      d: [900, 5, 420],
      n: [0, 100, 450],
      m: [300, 9, 399],
    };
    const on = { kind: 'on', member: 'level', from: 'start', distance: 100, offset: [0, 0, 50] };
    const job = jobOf({
      nodes: { ...nodes, o: on },
      members: [
        { id: 'post', path: ['a', 'b'] },
        { id: 'level', path: ['c', 'd'] },
      ],
    });
    const frame = solved(job);
    expect(givenAs(frame, 'n', 'until')).toMatchObject({
      member: 'post',
      until: { axis: 'z', value: expect.closeTo(450, 9) },
      nth: 1,
    });
    expect(givenAs(frame, 'm', 'until')).toMatchObject({ member: 'level', until: { axis: 'x' }, nth: 1 });
    expect(givenAs(frame, 'o', 'until')).toMatchObject({ member: 'level', until: { axis: 'x' } });
    expect(givenAs(frame, 'o', 'crossing')).toBeNull();
  });

  it('off the trim is the gap from the outside of the tube, square to the car, and the rest of it an offset', () => {
    const points = [{ id: 'trim', position: [0, 700, 900] }];
    const nodes = { n: [4, 640, 897], a: [500, 640, 897] };
    const job = jobOf({ points, nodes, members: [{ id: 'bar', path: ['a', 'n'] }] });
    expect(givenAs(solved(job), 'n', 'clear')).toEqual({
      kind: 'point',
      point: 'trim',
      offset: [4, 0, -3],
      clear: { direction: [0, -1, 0], gap: 60 - 22.225 },
    });
  });

  it('is in line with the nearest node that has the coordinate already, and else a number', () => {
    const nodes = { far: [10, 900, 40], near: [10, 30, 700], level: [-50, 800, 40], n: [10, 20, 40] };
    expect(givenAs(solved(jobOf({ nodes })), 'n', 'lined-up')).toEqual({
      kind: 'lined-up',
      x: { node: 'near', plus: 0 },
      y: { value: 20 },
      z: { node: 'level', plus: 0 },
    });
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
