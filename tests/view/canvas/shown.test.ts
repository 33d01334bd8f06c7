import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { derive } from '../../../src/core/derive.ts';
import { distance, subtract, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { boxFrame } from '../../../src/core/geometry/solid-box.ts';
import { describeSelection, tellPlace } from '../../../src/view/bay/describe.ts';
import { placesOfSelection } from '../../../src/view/canvas/extent.ts';
import { boxCorners, BOX_EDGES, BOX_FACES } from '../../../src/view/meshes/box.ts';
import { floorUnder, layFloor } from '../../../src/view/scene/floor.ts';
import { shortestGaps } from '../../../src/view/scene/gap.ts';
import { nodeSpots, pointSpots } from '../../../src/view/canvas/shown.ts';

const parsed = parseJob(readFileSync('public/demo.cagewright.json', 'utf8'));
if (!parsed.ok) throw new Error('the demo does not parse');
const derivation = derive(parsed.job);
if (!derivation.ok) throw new Error('the demo cannot be derived');
const derived = derivation.value;
const { job } = derived;

describe('the gap that is drawn', () => {
  it('is the shortest of each envelope, and as long as it says', () => {
    const gaps = shortestGaps(derived);
    expect(gaps.map(({ envelope }) => envelope)).toEqual(job.envelopes.map(({ id }) => id));
    for (const gap of gaps) {
      const all = derived.clearances
        .filter(({ envelope }) => envelope === gap.envelope)
        .map((clearance) => clearance.distance);
      expect(gap.distance).toBe(Math.min(...all));
      expect(distance(gap.onTube, gap.onEnvelope)).toBeCloseTo(gap.distance, 6);
    }
  });
});

describe('the nodes that are drawn', () => {
  it('are those of the selected tube, its twin’s on the twin', () => {
    const twin = derived.tubes.find((tube) => tube.twinOf !== null)!;
    const ids = nodeSpots(derived, 'shop', { kind: 'tube', id: twin.id }).map(({ selection }) => selection.id);
    expect(ids).toEqual(twin.member.path.map((id) => (id.endsWith("'") ? id.slice(0, -1) : `${id}'`)));
    expect(nodeSpots(derived, 'shop', null)).toEqual([]);
  });

  it('are all of them at the Frame station, each place once', () => {
    const spots = nodeSpots(derived, 'frame', null);
    for (const { id } of job.nodes) expect(spots.some(({ selection }) => selection.id === id)).toBe(true);
    const places = spots.map(({ at }) => at.map((mm) => Math.round(mm * 1e6)).join());
    const centred = places.filter((_, i) => Math.abs(spots[i]!.at[1]) < 1e-9);
    expect(new Set(centred).size).toBe(centred.length);
  });
});

describe('the points that are drawn', () => {
  it('are as measured, and a mirror image only when it is selected', () => {
    const [first] = job.points;
    expect(pointSpots(job, null)).toHaveLength(job.points.length);
    const spots = pointSpots(job, { kind: 'point', id: `${first!.id}'` });
    expect(spots.at(-1)!.at).toEqual([first!.position[0], -first!.position[1], first!.position[2]]);
  });
});

describe('an envelope’s box', () => {
  it('has its size along its own axes, turned about the fixed axes in their order, and closed outward faces', () => {
    const box = boxFrame([10, 20, 30], [100, 200, 300], [Math.PI / 2, 0, Math.PI / 2]);
    const corners = boxCorners(box);
    // About x by 90: own y leads up, own z to the right; then about z by 90: own x leads left, own z forward.
    const along = (from: number, to: number): Vec3 =>
      subtract(corners[to]!, corners[from]!).map((mm) => Math.round(mm * 1e9) / 1e9 + 0) as unknown as Vec3;
    expect(along(0, 1)).toEqual([0, 100, 0]);
    expect(along(0, 2)).toEqual([0, 0, 200]);
    expect(along(0, 4)).toEqual([300, 0, 0]);
    expect(BOX_EDGES.every(([a, b]) => [1, 2, 4].includes(a ^ b))).toBe(true);
    // The volume by the faces is the box's own, and positive: all wound outwards.
    let six = 0;
    for (const [a, b, c, d] of BOX_FACES) {
      for (const [p, q, r] of [
        [a, b, c],
        [a, c, d],
      ] as const) {
        const [u, v, w] = [corners[p]!, corners[q]!, corners[r]!];
        six +=
          u[0] * (v[1] * w[2] - v[2] * w[1]) + u[1] * (v[2] * w[0] - v[0] * w[2]) + u[2] * (v[0] * w[1] - v[1] * w[0]);
      }
    }
    expect(six / 6).toBeCloseTo(100 * 200 * 300, 3);
  });
});

describe('the floor', () => {
  it('reaches past everything measured, alike on both sides, and marks datum and directions', () => {
    const under = floorUnder(
      job.points.map(({ position }) => position),
      'in',
    );
    const floor = layFloor(under);
    const xs = floor.grid.flat().map(([x]) => x);
    const ys = floor.grid.flat().map(([, y]) => y);
    for (const { position } of job.points) {
      expect(Math.min(...xs)).toBeLessThan(position[0]);
      expect(Math.max(...xs)).toBeGreaterThan(position[0]);
      expect(Math.max(...ys)).toBeGreaterThan(Math.abs(position[1]));
    }
    expect(Math.min(...ys)).toBe(-Math.max(...ys));
    expect(floor.grid.flat().every(([, , z]) => z === 0)).toBe(true);
    expect(floor.forward[0]).toBeGreaterThan(Math.max(...xs));
    expect([floor.forward[1], floor.left[0], floor.up[0], floor.up[1]]).toEqual([0, 0, 0, 0]);
  });
});

describe('what is said of a selection', () => {
  it('names the tube by its number, and places by the side of the car they are on', () => {
    expect(describeSelection(derived, { kind: 'tube', id: 'hoop' })).toMatch(
      /^Tube 1, Main hoop: 4 bends, developed length /u,
    );
    expect(tellPlace([-25.4, -50.8, 0], job)).toBe('along 1 in back, offset 2 in right, height 0 in up');
    expect(describeSelection(derived, null)).toBe('');
    expect(describeSelection(derived, { kind: 'tube', id: 'gone' })).toBe('');
  });

  it('can be brought into view, unless it is gone', () => {
    expect(placesOfSelection(derived, { kind: 'tube', id: 'hoop' }).length).toBeGreaterThan(5);
    expect(placesOfSelection(derived, { kind: 'node', id: 'gone' })).toEqual([]);
    expect(placesOfSelection(derived, { kind: 'envelope', id: job.envelopes[0]!.id })).toHaveLength(8);
  });
});
