/** Nodes of every kind, moved by their handles in an earlier demo, and by keys. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { dot, length, mirrored, normalize, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { nearestOnPath } from '../../../src/core/geometry/path.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import type { Place } from '../../../src/core/job/places.ts';
import type { NodeRef } from '../../../src/core/job/reference.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { projectionOf } from '../../../src/view/camera/projection.ts';
import { freedomOf } from '../../../src/core/shape/free-directions.ts';
import { gripsOf } from '../../../src/view/gizmo/grips.ts';
import { dragMove, nudge } from '../../../src/view/gizmo/moves.ts';

const parsed = parseJob(readFileSync('tests/fixtures/demo-second-round.cagewright.json', 'utf8'));
const demo = parsed.ok ? parsed.job : null;
const solve = (job: Job): Derived => {
  const derivation = derive(job);
  if (!derivation.ok) throw new Error(JSON.stringify(derivation.faults));
  return derivation.value;
};
const derived = solve(demo!);
const view = projectionOf({ target: [0, 0, 600], yaw: 0.66, pitch: 0.42, span: 2000 }, 1200, 800);

const firstOf = (kind: Place['kind']): NodeRef => demo!.nodes.find((node) => node.at.kind === kind)!.id;

/** Where the node stands after its grip was dragged by so many pixels, moved along its own axis on the screen. */
function dragged(
  reference: NodeRef,
  key: string,
  pixels: number,
  fine = true,
): { before: Vec3; after: Vec3; along: Vec3 } {
  const freedom = freedomOf(derived, reference)!;
  const grip = gripsOf(freedom).find((candidate) => candidate.key === key)!;
  const along = grip.along[0]!;
  const [dx, dy] = [dot(along, view.right) * pixels, -dot(along, view.up) * pixels];
  const { change } = dragMove(freedom, grip, view, { dx, dy, fine }, 'mm', []);
  return { before: freedom.place, after: solve(change(demo!)).nodes.get(reference)!, along };
}

describe('a node that others decide in part', () => {
  const job = {
    ...demo!,
    nodes: [
      ...demo!.nodes,
      {
        id: 'lined',
        name: '',
        at: { kind: 'lined-up', x: { value: 5 }, y: { value: 7 }, z: { node: 'hoop-top', plus: 0 } },
      },
      { id: 'none', name: '', at: { kind: 'crossing', member: 'hoop', line: ['hoop-foot', 'stay-foot'] } },
    ] as Job['nodes'],
  };
  const frame = solve(job);
  const freedom = freedomOf(frame, 'lined')!;

  it('has handles along and in what is free, and none where nothing is', () => {
    expect(gripsOf(freedom).map(({ key }) => key)).toEqual(['x', 'y', 'xy']);
    expect(gripsOf(freedomOf(frame, 'none')!)).toEqual([]);
  });

  it('takes the keys of what is free, and leaves the others', () => {
    expect(nudge(freedom, 'PageUp', 'mm', false)).toBeNull();
    expect(nudge(freedomOf(frame, 'none')!, 'ArrowUp', 'mm', false)).toBeNull();
    const moved = solve(nudge(freedom, 'ArrowLeft', 'mm', false)!(job)).nodes.get('lined')!;
    expect(moved).toEqual([5, 8, frame.nodes.get('hoop-top')![2]]);
  });
});

describe('dragging a node', () => {
  it('moves a fixed node, and one on a point, along one axis by what the pointer covered', () => {
    for (const kind of ['fixed', 'point'] as const) {
      const { before, after } = dragged(firstOf(kind), 'y', 20);
      expect(after[0]).toBe(before[0]);
      expect(after[2]).toBe(before[2]);
      expect(Math.abs(after[1] - before[1] - 20 / view.pixelsPerMm)).toBeLessThan(0.051);
    }
  });

  it('leaves the point where it is: the offset takes the move', () => {
    const reference = firstOf('point');
    const freedom = freedomOf(derived, reference)!;
    const grip = gripsOf(freedom)[0]!;
    const moved = dragMove(freedom, grip, view, { dx: 40, dy: 0, fine: false }, 'mm', []).change(demo!);
    expect(moved.points).toEqual(demo!.points);
    const at = moved.nodes.find(({ id }) => id === reference)!.at;
    // Steps are counted from the point: the offset comes out in whole millimetres.
    expect(at.kind === 'point' && Math.abs(at.offset[0] - Math.round(at.offset[0])) < 1e-9).toBe(true);
  });

  it('moves a mirror image to where it was dragged, and its node on the other side', () => {
    const bare = demo!.nodes.find(({ at }) => at.kind === 'fixed' && Math.abs(at.position[1]) > 50)!.id;
    const { before, after } = dragged(`${bare}'`, 'y', -15);
    expect(Math.abs(after[1] - before[1] + 15 / view.pixelsPerMm)).toBeLessThan(0.051);
  });

  it('keeps a sliding node on its host’s centreline, round a bend and to the very end of the tube', () => {
    const reference = demo!.nodes.find(({ at }) => at.kind === 'on' && at.member === 'hoop')!.id;
    // The hoop alone, so that nothing else limits where the node may go.
    const job: Job = {
      ...demo!,
      members: demo!.members.filter(({ id }) => id === 'hoop'),
      nodes: demo!.nodes.filter(({ id }) => id === reference || id.startsWith('hoop-')),
    };
    const freedom = freedomOf(solve(job), reference)!;
    const [grip] = gripsOf(freedom);
    const hoop = derived.byId.get('hoop')!;
    const seen = new Set<boolean>();
    for (let pixels = -400; pixels <= 400; pixels += 40) {
      const { change } = dragMove(freedom, grip!, view, { dx: pixels, dy: Math.abs(pixels), fine: true }, 'mm', []);
      const place = solve(change(job)).nodes.get(reference)!;
      const nearest = nearestOnPath(hoop.path, place);
      expect(nearest.distance).toBeLessThan(1e-6);
      seen.add(nearest.onArc);
    }
    expect(seen).toEqual(new Set([true, false]));
  });

  it('moves a node between two others along their line, and a ray’s along the ray', () => {
    for (const kind of ['between', 'ray'] as const) {
      const { before, after, along } = dragged(firstOf(kind), 'line', 15);
      const moved = subtract(after, before);
      expect(length(moved)).toBeGreaterThan(1);
      expect(dot(normalize(moved), along)).toBeCloseTo(1, 9);
    }
  });

  it('slides the mirror image of a sliding node the way it is dragged', () => {
    const reference = `${firstOf('on')}'`;
    const { before, after, along } = dragged(reference, 'line', 12);
    expect(dot(subtract(after, before), along)).toBeGreaterThan(1);
    expect(mirrored(before)).toEqual(derived.nodes.get(firstOf('on')));
  });

  it('takes over a neighbour’s coordinate on the dragged axis only', () => {
    const reference = firstOf('fixed');
    const freedom = freedomOf(derived, reference)!;
    const grip = gripsOf(freedom)[2]!;
    const neighbours = freedom.place.map((value) => [{ value: value + 2, name: 'Tower' }]);
    const { change, inLineWith } = dragMove(freedom, grip, view, { dx: 0, dy: 0, fine: false }, 'mm', neighbours);
    const after = solve(change(demo!)).nodes.get(reference)!;
    expect(subtract(after, freedom.place).map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([0, 0, 2]);
    expect(inLineWith).toEqual(['Tower']);
  });
});

describe('nudging a node by a key', () => {
  it('goes one step the way the key says', () => {
    const reference = firstOf('fixed');
    const freedom = freedomOf(derived, reference)!;
    const moved = (key: string): Vec3 =>
      subtract(solve(nudge(freedom, key, 'in', false)!(demo!)).nodes.get(reference)!, freedom.place);
    // 1/8 in.
    expect(moved('ArrowUp')[0]).toBeCloseTo(3.175, 9);
    expect(moved('ArrowLeft')[1]).toBeCloseTo(3.175, 9);
    expect(moved('PageDown')[2]).toBeCloseTo(-3.175, 9);
    expect(nudge(freedom, 'Home', 'in', false)).toBeNull();
  });
});
