/** A whole bar moved along an axis: every node of it comes to a coordinate by just so much greater, and by no more than the bars it slides on have. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { isPrimed, primed } from '../../../src/core/job/reference.ts';
import { barFreedom } from '../../../src/core/shape/move-bar.ts';
import { drawn } from '../../draws.ts';
import { derivedOrSkipped, fixed, mirroredFrame, plainFrame } from '../../laws/frames.ts';
import { jobOf } from '../frame.ts';
import { again, placesIn, read, solved } from './sides.ts';

const demo = solved(read(readFileSync('public/demo.cagewright.json', 'utf8')));

const refs = (frame: Derived, bar: string): readonly string[] =>
  frame.bars.get(bar)!.member.path.map((reference) => (isPrimed(bar) ? primed(reference) : reference));

/** The frame with the bar moved along the axis. */
function movedJob(frame: Derived, bar: string, axis: number, mm: number): Job {
  const freedom = barFreedom(frame, bar)!;
  const to = freedom.place.map((each, i) => each + (i === axis ? mm : 0)) as unknown as typeof freedom.place;
  return again(freedom.moved(frame.job, to));
}
const moved = (...asked: Parameters<typeof movedJob>): Derived => solved(movedJob(...asked));

const ray = (from: string) => ({ kind: 'ray', from, direction: [1, 0.5, 0.5], until: { axis: 'x', value: 400 } });

const grown = (before: Derived, after: Pick<Derived, 'nodes'>, bar: string, axis: number): number[] =>
  refs(before, bar).map((node) => after.nodes.get(node)![axis]! - before.nodes.get(node)![axis]!);

describe('a whole bar', () => {
  it('the harness bar of the demo goes up the hoop by just so much, both ends; not across: its ends are each other’s image', () => {
    expect(barFreedom(demo, 'harness')!.open).toEqual([2]);
    const after = moved(demo, 'harness', 2, 20);
    for (const each of grown(demo, after, 'harness', 2)) expect(each).toBeCloseTo(20, 9);
  });

  it('goes no farther than the bars that it slides on', () => {
    const post = (name: string) => ({ id: name, name, path: [`${name}-foot`, `${name}-top`] });
    const job = jobOf({
      nodes: {
        'p-foot': [0, 0, 0],
        'p-top': [0, 0, 500],
        'q-foot': [0, 600, 0],
        'q-top': [0, 640, 400],
        a: { kind: 'on', member: 'p', from: 'end', distance: 300 },
        b: { kind: 'on', member: 'q', from: 'start', distance: 150 },
      },
      members: [post('p'), post('q'), { id: 'bar', name: 'bar', path: ['a', 'b'] }],
    });
    const frame = solved(job);
    expect(barFreedom(frame, 'bar')!.open).toEqual([2]);
    // b begins 150 / sqrt(40^2 + 400^2) x 400 up the slanted post, which ends 400 up; a 200 up, and could go down by 200.
    const [low, high] = [-1e4, 1e4].map((mm) => grown(frame, moved(frame, 'bar', 2, mm), 'bar', 2));
    const height = (150 / Math.hypot(40, 400)) * 400;
    for (const each of high!) expect(each).toBeCloseTo(400 - height, 9);
    for (const each of low!) expect(each).toBeCloseTo(-height, 9);
  });

  it('a twin goes its own way: to its right is to the left of its member', () => {
    const job = jobOf({
      nodes: { a: [0, 300, 0], b: [400, 350, 100] },
      members: [{ id: 'bar', name: 'bar', path: ['a', 'b'], mirror: true }],
    });
    const frame = solved(job);
    const after = moved(frame, "bar'", 1, -10);
    expect(grown(frame, after, "bar'", 1)).toEqual([-10, -10]);
    expect(grown(frame, after, 'bar', 1)).toEqual([10, 10]);
  });

  it('a node between two of its own follows them, and is not moved twice', () => {
    const job = jobOf({
      nodes: { a: [0, 0, 0], m: { kind: 'between', nodes: ['a', 'b'], fraction: 0.4 }, b: [400, 50, 100] },
      members: [{ id: 'bar', name: 'bar', path: ['a', 'm', 'b'] }],
    });
    const frame = solved(job);
    for (const each of grown(frame, moved(frame, 'bar', 0, 33), 'bar', 0)) expect(each).toBeCloseTo(33, 9);
  });

  it.each([
    [
      'level with the other end',
      { kind: 'lined-up', x: { value: 500 }, y: { node: 'a' }, z: { value: 100 } },
      [0, 1, 2],
    ],
    [
      'in line with one that follows it',
      { kind: 'lined-up', x: { node: 'w' }, y: { value: 5 }, z: { value: 7 } },
      [1, 2],
    ],
    ['between it and a place off the bar', { kind: 'between', nodes: ['a', 'off'], fraction: 0.5 }, []],
    ['on a bar that it carries at one end', { kind: 'on', member: 'other', from: 'start', distance: 300 }, []],
    ['on a bar that stands on what follows it', { kind: 'on', member: 'third', from: 'start', distance: 300 }, []],
    ['on a post, level with it', { kind: 'on', member: 'post', until: { axis: 'z', node: 'a' }, nth: 1 }, [2]],
    ['by a ray from it to a place in x', ray('a'), [0, 1, 2]],
    ['by a ray from what follows it', ray('w'), []],
  ])('one end %s: all of it is moved, or none', (_, b, open) => {
    const job = jobOf({
      nodes: {
        a: [0, 0, 50],
        b,
        off: [400, 900, 300],
        w: { kind: 'lined-up', x: { node: 'a', plus: 5 }, y: { node: 'a' }, z: { node: 'a', plus: 50 } },
        low: [700, -300, -400],
        high: [800, -350, 600],
      },
      members: [
        { id: 'other', name: 'other', path: ['a', 'off'] },
        { id: 'third', name: 'third', path: ['w', 'off'] },
        { id: 'post', name: 'post', path: ['low', 'high'] },
        { id: 'bar', name: 'bar', path: ['a', 'b'] },
      ],
    });
    const frame = solved(job);
    expect(barFreedom(frame, 'bar')!.open).toEqual(open);
    for (const axis of open) {
      for (const each of grown(frame, moved(frame, 'bar', axis, 10), 'bar', axis)) expect(each).toBeCloseTo(10, 9);
    }
  });

  it('of the demo goes along every axis that is open with all its nodes', () => {
    for (const bar of demo.bars.keys()) {
      for (const axis of barFreedom(demo, bar)!.open) {
        const after = placesIn(movedJob(demo, bar, axis, 0.5));
        for (const each of grown(demo, { nodes: after }, bar, axis)) expect(each, bar).toBeCloseTo(0.5, 9);
      }
    }
  });

  it('is null for a bar that is not there', () => expect(barFreedom(demo, 'none')).toBeNull());

  it('of random frames goes so far, or nowhere; and by nothing the file is as it was', () => {
    let tried = 0;
    fc.assert(
      fc.property(fc.oneof(plainFrame, mirroredFrame), fc.integer({ min: -300, max: 300 }), (job, tenths) => {
        const frame = derivedOrSkipped(job);
        for (const bar of [...frame.bars.keys()].slice(0, 2)) {
          const freedom = barFreedom(frame, bar)!;
          expect(serialiseJob(freedom.moved(job, freedom.place))).toBe(serialiseJob(job));
          for (const axis of freedom.open) {
            const outcome = derive(movedJob(frame, bar, axis, tenths / 10));
            if (!outcome.ok) continue; // what stands on it has no room any more
            const after = grown(frame, outcome.value, bar, axis);
            // Its nodes all alike, so far as asked unless a bar that they slide on ends before.
            for (const each of after) expect(each).toBeCloseTo(after[0]!, 5);
            expect(Math.abs(after[0]!)).toBeLessThanOrEqual(Math.abs(tenths / 10) + 1e-6);
            tried += 1;
          }
        }
      }),
      fixed(drawn(6, 100)),
    );
    expect(tried).toBeGreaterThan(10);
  });
});
