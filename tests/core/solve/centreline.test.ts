import { describe, expect, it } from 'vitest';
import { degrees, derived, faultsOf, tube } from '../frame.ts';

const bar = (...places: (readonly number[])[]) => {
  const nodes = Object.fromEntries(places.map((place, i) => [`n${i}`, place]));
  return { nodes, members: [{ id: 'bar', path: Object.keys(nodes) }] };
};

describe('centreline', () => {
  it('a straight-through corner is no bend, and not a corner', () => {
    const straight = tube(derived(bar([0, 0, 0], [100, 10, 0], [300, 30, 0])), 'bar');
    expect(straight.bends).toEqual([]);
    expect(straight.corners).toHaveLength(2);
    expect(straight.route).toHaveLength(3);
    expect(straight.straights).toHaveLength(1);
    expect(straight.developedLength).toBeCloseTo(Math.hypot(300, 30), 9);
  });
  it('bends overlapping show a negative straight, which stays in the developed length', () => {
    const zed = tube(derived(bar([0, 0, 0], [400, 0, 0], [400, 200, 0], [800, 200, 0])), 'bar');
    expect(zed.straights.map((each) => Math.round(each * 10) / 10)).toEqual([247.6, -104.8, 247.6]);
    expect(zed.developedLength).toBeCloseTo(247.6 * 2 - 104.8 + Math.PI * 152.4, 9);
    expect(degrees(zed.bends[1]!.rotation)).toBeCloseTo(180, 9);
  });
  it('a half turn of rotation is +180, whatever the rounding', () => {
    for (const tilt of [0, 0.1, 0.7, 1.3, 2.9]) {
      const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
      const zed = tube(derived(bar([0, 0, 0], [500, 0, 0], [500, 500 * c, 500 * s], [1000, 500 * c, 500 * s])), 'bar');
      expect(degrees(zed.bends[1]!.rotation)).toBeCloseTo(180, 6);
    }
  });
  it('refuses what has no tube, and names the place in the path', () => {
    expect(faultsOf(bar([0, 0, 0], [500, 0, 0], [0, 0, 0]))).toEqual([
      { place: 'members[0].path[1]', message: 'the path doubles back at "n1"' },
    ]);
    expect(faultsOf(bar([0, 0, 0], [500, 0, 0], [500, 0, 0], [900, 50, 0]))).toEqual([
      { place: 'members[0].path[2]', message: '"n2" stands at the same place as "n1" before it' },
    ]);
    const { nodes, members } = bar([0, 0, 0], [500, 0, 0], [500, 500, 0]);
    expect(faultsOf({ nodes, members: members.map((member) => ({ ...member, die: undefined })) })).toEqual([
      { place: 'members[0].die', message: 'the path bends at "n1", so the member needs a die' },
    ]);
  });
});
