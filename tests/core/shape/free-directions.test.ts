/** The directions in which every node of the demo, and its mirror image, can be moved: each move goes as far and where it says. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { add, addScaled, distance, length, mirrored, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { bareId, type NodeRef } from '../../../src/core/job/reference.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { freedomOf } from '../../../src/core/shape/free-directions.ts';
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

const frame = solved(demo);
const references: readonly NodeRef[] = demo.nodes.flatMap(({ id }) => [id, `${id}'`]);

/** Of the way what the node is free to go: a coordinate that follows another node or a point stays with that. */
function ownWay(reference: NodeRef, way: Vec3): Vec3 {
  const { at } = demo.nodes.find(({ id }) => id === bareId(reference))!;
  if (at.kind !== 'lined-up') return way;
  return (['x', 'y', 'z'] as const).map((axis, i) => (at[axis].value === undefined ? 0 : way[i]!)) as unknown as Vec3;
}

describe('where a node can be moved', () => {
  it.each(references)('%s goes where it is sent, and its other side with it', (reference) => {
    const freedom = freedomOf(frame, reference)!;
    expect(freedom.place).toEqual(frame.nodes.get(reference));
    const kind = demo.nodes.find(({ id }) => id === bareId(reference))!.at.kind;
    expect(freedom.free).toBe(kind === 'fixed' || kind === 'point' || kind === 'lined-up' ? 'space' : 'line');

    const small = 0.01; // mm: along a bend the line is its tangent, which is left by less than a micrometre
    const [job, expected] =
      freedom.free === 'space'
        ? [freedom.moved(demo, add(freedom.place, [3, 4, 5])), add(freedom.place, ownWay(reference, [3, 4, 5]))]
        : [
            freedom.moved(demo, freedom.value + small * freedom.perMm),
            addScaled(freedom.place, freedom.direction, small),
          ];
    const again = solved(job);
    expect(distance(again.nodes.get(reference)!, expected)).toBeLessThan(1e-5);
    const other = reference.endsWith("'") ? bareId(reference) : `${reference}'`;
    expect(distance(again.nodes.get(other)!, mirrored(expected))).toBeLessThan(1e-5);
  });

  it('on a line is along a direction of length 1, and on a tube along its centreline from where the node is', () => {
    const seen = new Set<string>();
    for (const reference of references) {
      const freedom = freedomOf(frame, reference)!;
      if (freedom.free === 'space') continue;
      seen.add(freedom.at.kind);
      expect(length(freedom.direction)).toBeCloseTo(1, 12);
      expect(freedom.inMm).toBe(freedom.at.kind !== 'between');
      expect(freedom.host !== null).toBe(freedom.at.kind === 'on');
      if (freedom.host === null || freedom.at.kind !== 'on') continue;
      const offset = reference.endsWith("'") ? mirrored(freedom.at.offset) : freedom.at.offset;
      const { point } = freedom.host.placeAt(freedom.host.at);
      expect(distance(add(point, offset), freedom.place)).toBeLessThan(1e-6);
    }
    expect([...seen].toSorted()).toEqual(['between', 'on', 'ray']);
  });

  it('counts from end B against the way of the tube', () => {
    const job = jobOf({
      nodes: { a: [0, 0, 0], b: [0, 0, 1000], n: { kind: 'on', member: 'm', from: 'end', distance: 100 } },
      members: [{ id: 'm', path: ['a', 'b'] }],
    });
    const freedom = freedomOf(solved(job), 'n')!;
    if (freedom.free !== 'line') throw new Error('free in space');
    expect(freedom.direction).toEqual([-0, -0, -1]);
    expect(freedom.host).toMatchObject({ at: 900, length: 1000, sense: -1 });
    expect(solved(freedom.moved(job, 250)).nodes.get('n')![2]).toBeCloseTo(750, 9);
  });

  const held = jobOf({
    points: [{ id: 'p', position: [0, 40, 0] }],
    nodes: {
      foot: [0, 600, 0],
      top: [0, 400, 1000],
      n: { kind: 'lined-up', x: { value: 5 }, y: { point: 'p' }, z: { node: 'top', plus: -20 } },
      clear: { kind: 'point', point: 'p', offset: [1, 2, 3], clear: { direction: [0, 1, 1], gap: 30 } },
      high: { kind: 'on', member: 'hoop', until: { axis: 'z', value: 500 }, nth: 2, offset: [0, 0, 4] },
      level: { kind: 'on', member: 'hoop', until: { axis: 'z', node: 'n' } },
      cross: { kind: 'crossing', member: 'hoop', line: ['n', 'clear'] },
    },
    members: [
      { id: 'hoop', path: ['foot', 'top', "top'", "foot'"] },
      { id: 'bar', path: ['n', 'clear'] },
    ],
  });
  const heldFrame = solved(held);

  it('in line with others is free in what is its own number, and follows in the rest', () => {
    const freedom = freedomOf(heldFrame, "n'")!;
    if (freedom.free !== 'space') throw new Error('on a line');
    expect(freedom.open).toEqual([0]);
    const moved = solved(freedom.moved(held, add(freedom.place, [7, 8, 9])));
    expect(moved.nodes.get("n'")).toEqual([12, -40, 980]);
    expect(freedom.moved(held, freedom.place)).toBe(held);
  });

  it('is nowhere where others decide it altogether', () => {
    for (const reference of ['level', 'cross', "cross'"]) {
      const freedom = freedomOf(heldFrame, reference)!;
      expect(freedom).toMatchObject({ free: 'space', open: [], place: heldFrame.nodes.get(reference) });
      expect(freedom.free === 'space' && freedom.moved(held, [1, 2, 3])).toBe(held);
    }
  });

  it('clear of a point moves by its offset, and keeps the gap', () => {
    const freedom = freedomOf(heldFrame, "clear'")!;
    if (freedom.free !== 'space') throw new Error('on a line');
    expect(freedom.open).toEqual([0, 1, 2]);
    const to = add(freedom.place, [3, 4, 5]);
    const job = freedom.moved(held, to);
    expect(distance(solved(job).nodes.get("clear'")!, to)).toBeLessThan(1e-9);
    expect(job.nodes.find(({ id }) => id === 'clear')!.at).toMatchObject({ clear: { gap: 30 } });
  });

  it('at a height slides along its tube, which gives it another height, and counts anew which place it is', () => {
    const freedom = freedomOf(heldFrame, 'high')!;
    if (freedom.free !== 'line') throw new Error('free in space');
    const hoop = heldFrame.byId.get('hoop')!;
    expect(freedom.host).toMatchObject({ length: hoop.developedLength, sense: 1 });
    expect(freedom.value).toBeCloseTo(freedom.host!.at, 9);
    // Over the top to the other leg.
    for (const along of [freedom.value + 30, 250, hoop.developedLength - 100]) {
      const job = freedom.moved(held, along);
      const { point } = freedom.host!.placeAt(along);
      expect(distance(solved(job).nodes.get('high')!, add(point, [0, 0, 4]))).toBeLessThan(1e-6);
      expect(job.nodes.find(({ id }) => id === 'high')!.at).toMatchObject({ kind: 'on', nth: along < 1000 ? 1 : 2 });
    }
  });

  it('is null for a node that the frame does not hold', () => {
    expect(freedomOf(frame, 'nobody')).toBeNull();
  });
});
