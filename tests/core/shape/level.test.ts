/** A straight bar made level: which end follows, what it keeps, and why it cannot where it cannot. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { moveNode } from '../../../src/core/edit/nodes.ts';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { levelBy, levelMember } from '../../../src/core/shape/level.ts';
import { jobOf } from '../frame.ts';

function solved(job: Job): Derived {
  const outcome = derive(job);
  if (!outcome.ok) throw new Error(outcome.faults.map(({ place, message }) => `${place}: ${message}`).join('; '));
  return outcome.value;
}
function levelled(job: Job, id = 'bar'): Job {
  const answer = levelMember(job, solved(job), id);
  if (Array.isArray(answer)) throw new Error(answer[0].message);
  return answer as Job;
}
const refusal = (job: Job, id = 'bar') => {
  const answer = levelMember(job, solved(job), id);
  return Array.isArray(answer) ? (answer[0].message as string) : null;
};
const at = (job: Job, id: string) => job.nodes.find((node) => node.id === id)!.at;
const BAR = { id: 'bar', path: ['a', 'b'] };
const HOOP = { id: 'hoop', path: ['foot', 'top', "top'", "foot'"] };
const POSTS = { foot: [0, 600, 0], top: [0, 500, 1100] };

describe('a bar made level', () => {
  it('by end B, which keeps its place along and across, and follows from then on', () => {
    const job = levelled(jobOf({ nodes: { a: [0, 300, 700], b: [10, -300, 650] }, members: [BAR] }));
    expect(at(job, 'b')).toEqual({ kind: 'lined-up', x: { value: 10 }, y: { value: -300 }, z: { node: 'a', plus: 0 } });
    expect(at(job, 'a').kind).toBe('fixed');
    expect(levelBy(job, 'bar')).toBe('B');
    const raised = moveNode(job, 'a', [0, 300, 812.7]);
    expect(solved(raised).nodes.get('b')).toEqual([10, -300, 812.7]);
    expect(refusal(raised)).toContain('level already');
  });

  it('goes on following the point that its end hung on, but for the height', () => {
    const b = { kind: 'point', point: 'p', offset: [1, 2, 3] };
    const points = [{ id: 'p', position: [50, 60, 70] }];
    const job = levelled(jobOf({ points, nodes: { a: [0, 300, 700], b }, members: [{ ...BAR, path: ['a', "b'"] }] }));
    expect(at(job, 'b')).toEqual({
      kind: 'lined-up',
      x: { point: 'p', plus: 1 },
      y: { point: 'p', plus: 2 },
      z: { node: 'a', plus: 0 },
    });
    expect(solved(job).nodes.get("b'")).toEqual([51, -62, 700]);
  });

  it('by the end that gives up less, and of like ones the one that fewer members share', () => {
    const ray = { kind: 'ray', from: 'top', direction: [-1, 0, -1], until: { axis: 'z', value: 400 } };
    const byA = levelled(jobOf({ nodes: { ...POSTS, a: [0, 300, 700], b: ray }, members: [BAR] }));
    expect([at(byA, 'a').kind, at(byA, 'b').kind]).toEqual(['lined-up', 'ray']);
    expect([levelBy(byA, 'bar'), levelBy(byA, 'no such member')]).toEqual(['A', null]);
    const nodes = { a: [0, 300, 700], b: [10, -300, 650], c: [0, 0, 0] };
    const shared = levelled(jobOf({ nodes, members: [BAR, { id: 'other', path: ['b', 'c'] }] }));
    expect([at(shared, 'a').kind, at(shared, 'b').kind]).toEqual(['lined-up', 'fixed']);
  });

  it('by an end that stays on its tube, at the place nearest where it was, whatever its offset', () => {
    const b = { kind: 'on', member: 'hoop', from: 'end', distance: 500, offset: [5, 0, 7] };
    const side = { kind: 'between', nodes: ['side', 'side'], fraction: 0 };
    const job = jobOf({ nodes: { ...POSTS, side: [900, -500, 640], a: side, b }, members: [HOOP, BAR] });
    const before = solved(job).nodes.get('b')!;
    const after = levelled(job);
    expect(at(after, 'b')).toMatchObject({
      kind: 'on',
      until: { axis: 'z', node: 'a', plus: -7 },
      nth: 2,
      offset: [5, 0, 7],
    });
    const place = solved(after).nodes.get('b')!;
    expect(place[2]).toBeCloseTo(640, 9);
    expect(Math.sign(place[1])).toBe(Math.sign(before[1]));
    expect(refusal(after)).toContain('level already');
  });

  it('is refused in words where neither end can follow, and where there is nothing to level', () => {
    // B stands on a post that ends at A, so that A cannot follow it.
    const post = { id: 'post', path: ['low', 'a'] };
    const over = { kind: 'on', member: 'post', from: 'start', distance: 50, offset: [0, 0, 500] };
    const neither = jobOf({ nodes: { ...POSTS, low: [400, -200, 0], a: [400, 0, 90], b: over }, members: [post, BAR] });
    expect(refusal(neither)).toBe(
      'end B cannot follow: post never comes to that height; nor can end A: the other end hangs on a',
    );
    expect(refusal(jobOf({ nodes: POSTS, members: [HOOP] }), 'hoop')).toContain('corners');
    expect(refusal(jobOf({ nodes: POSTS, members: [{ id: 'bar', path: ['top', "top'"] }] }))).toContain(
      'level already',
    );
  });

  it('of the demo is level, or says why it is not, and nothing else moves than what hangs on it', () => {
    const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
    if (!parsed.ok) throw new Error('the demo');
    const { job } = parsed;
    const frame = solved(job);
    let made = 0;
    for (const { id, path } of job.members.filter((member) => member.path.length === 2)) {
      const answer = levelMember(job, frame, id);
      if (Array.isArray(answer)) {
        expect(answer[0].message.length).toBeGreaterThan(20);
        continue;
      }
      const outcome = derive(answer as Job, frame);
      if (!outcome.ok) continue;
      made += 1;
      const [a, b] = path.map((reference) => outcome.value.nodes.get(reference)!);
      expect(a![2], id).toBeCloseTo(b![2], 9);
    }
    expect(made).toBeGreaterThan(3);
  });
});
