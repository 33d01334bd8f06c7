import { describe, expect, it } from 'vitest';
import type { TubeEnd } from '../../../src/core/solve/types.ts';
import { degrees, derived, tube } from '../frame.ts';

/** A square branch 9 mm off the post's axis, its far end bent or cut so that the reference is not the acute side. */
const offset = (out: readonly (readonly number[])[], post: readonly [readonly number[], readonly number[]]) =>
  tube(
    derived({
      nodes: {
        p: post[0],
        q: post[1],
        on: { kind: 'on', member: 'post', from: 'start', distance: 500, offset: [0, 9, 0] },
        ...Object.fromEntries(out.map((place, i) => [`o${i}`, place])),
      },
      members: [
        { id: 'post', path: ['p', 'q'] },
        { id: 'bar', path: ['on', ...out.map((_, i) => `o${i}`)] },
      ],
    }),
    'bar',
  );

/** The trim at phi by the trade's formula for a straight run, from what the recipe says and nothing else. */
function trimFromRecipe({ cuts }: TubeEnd, phi: number, ra: number, rb: number): number {
  const [{ includedAngle, clocking, axisOffset }] = cuts as [TubeEnd['cuts'][number]];
  const fromAcute = (phi * Math.PI) / 180 - clocking;
  const root = Math.sqrt(rb ** 2 - (ra * Math.sin(fromAcute) + axisOffset) ** 2);
  return (ra * Math.cos(fromAcute) * Math.cos(includedAngle) + root) / Math.sin(includedAngle);
}

describe('the recipe of a cut and its profile say the same', () => {
  const upright = [
    [0, 0, 0],
    [0, 0, 1000],
  ] as const;
  const down = [
    [0, 0, 1000],
    [0, 0, 0],
  ] as const;
  it.each([
    ['straight, run up', [[600, 9, 500]], upright],
    ['straight, run down', [[600, 9, 500]], down],
    [
      'bent up',
      [
        [600, 9, 500],
        [600, 9, 1100],
      ],
      upright,
    ],
    [
      'bent down',
      [
        [600, 9, 500],
        [600, 9, -100],
      ],
      upright,
    ],
    [
      'bent aside',
      [
        [600, 9, 500],
        [600, 609, 500],
      ],
      upright,
    ],
    [
      'bent askew, run down',
      [
        [600, 9, 500],
        [800, 409, 300],
      ],
      down,
    ],
  ] as const)('square, off the axis: %s', (_, out, post) => {
    const [end] = offset(out, post).ends;
    const [cut] = end.cuts;
    expect(degrees(cut!.clocking)).toBeGreaterThanOrEqual(0);
    expect(degrees(cut!.clocking)).toBeLessThan(180);
    expect(Math.abs(cut!.axisOffset)).toBeCloseTo(9, 9);
    let compared = 0;
    for (let phi = 0; phi < 360; phi += 5) {
      if (Number.isNaN(end.outer[phi])) continue;
      expect(end.outer[phi]).toBeCloseTo(trimFromRecipe(end, phi, 22.225, 22.225), 6);
      compared++;
    }
    expect(compared).toBeGreaterThan(30);
  });
});

describe('a line that passes the run by at the joint', () => {
  // A hoop with its legs 1000 apart; the bar's end lies off the hoop's axis, so that some of its lines miss the near leg
  // and would meet the far one.
  const { ends, blankLength, developedLength } = tube(
    derived({
      nodes: {
        f: [0, 500, 0],
        t: [0, 500, 900],
        on: { kind: 'on', member: 'hoop', from: 'start', distance: 400, offset: [7, 0, 0] },
        out: [25, -300, 420],
      },
      members: [
        { id: 'hoop', path: ['f', 't', "t'", "f'"] },
        { id: 'bar', path: ['on', 'out'] },
      ],
    }),
    'bar',
  );
  it('is not cut by the hoop other leg: nothing reaches it', () => {
    const { outer } = ends[0];
    const missed = outer.filter((s) => Number.isNaN(s)).length;
    expect(missed).toBeGreaterThan(5);
    expect(missed).toBeLessThan(180);
    for (const s of outer) if (!Number.isNaN(s)) expect(Math.abs(s)).toBeLessThan(60);
    expect(blankLength).toBeGreaterThan(developedLength - 60);
    expect(blankLength).toBeLessThan(developedLength + 60);
  });
});

describe('a line that runs on inside the run from the joint', () => {
  // A short tube across a bend of the tube it is cut by, from the bend's middle to its straight: on the side of the run
  // the lines stay in the run to the other end, farther than a straight run at that angle would hold them.
  it('is cut where it leaves at last, however far that is', () => {
    const { ends } = tube(
      derived({
        sections: [{ id: 'main', outerDiameter: 25.4, wall: 1.65 }],
        dies: [{ id: 'd', outerDiameter: 25.4, centrelineRadius: 200 }],
        nodes: {
          a: [0, 600, 0],
          k: [0, 270, 1127],
          b: [0, -700, 1127],
          middle: { kind: 'on', member: 'run', bend: 1, where: 'middle' },
          straight: { kind: 'on', member: 'run', bend: 1, where: 'start', distance: -149 },
        },
        members: [
          { id: 'run', path: ['a', 'k', 'b'] },
          { id: 'bar', path: ['middle', 'straight'] },
        ],
      }),
      'bar',
    );
    expect(ends[0].throat).toBeGreaterThan(260);
    expect(ends[0].outer.includes(NaN)).toBe(false);
  });
});

describe('a tube that lies on its run tube, as thick as it, and end on in it', () => {
  // The run tube turns from +z to -y by atan(0.1 / 30) at z = 30: of 135 radius, its bend begins a set-back before the corner.
  const turn = Math.atan(0.1 / 30);
  const frame = derived({
    sections: [{ id: 'main', outerDiameter: 38, wall: 2.5 }],
    dies: [{ id: 'd', outerDiameter: 38, centrelineRadius: 135 }],
    nodes: {
      a: [0, 0, 0],
      b: [0, 0, 30],
      c: [0, -0.1, 60],
      foot: { kind: 'on', member: 'run', from: 'start', distance: 0 },
      end: [0, 0, 8.1],
    },
    members: [
      { id: 'run', path: ['a', 'b', 'c'] },
      { id: 'bar', path: ['foot', 'end'], ends: [{ fit: 'cope', against: ['run'] }, { fit: 'auto' }] },
    ],
  });
  const { tip, throat } = tube(frame, 'bar').ends[0];
  it('leaves where the straight along it ends and the bend turns away', () =>
    expect(tip).toBeCloseTo(30 - 135 * Math.tan(turn / 2), 6));
  it('leaves on the other side where the next straight has crossed it', () =>
    expect(throat).toBeCloseTo(30 + (19 + 19 / Math.cos(turn)) / Math.tan(turn), 5));
  it('is not said to have a saddle that runs past an end', () =>
    expect(frame.findings.map(({ id }) => id)).not.toContain('joint/off-run-end'));
});

describe('saw depth', () => {
  // Trade formula on a blank that runs past the cut: ODa / sin(al) + ODb / tan(al); the worked end of the format's own
  // example is 44.45 mm tube on 44.45 mm tube at 52.1 degrees: 56.33 + 34.60, given there as 91.0.
  it('at 52.1 degrees', () => {
    const angle = (52.1 * Math.PI) / 180;
    const bar = tube(
      derived({
        nodes: {
          p: [0, 0, 0],
          q: [0, 0, 1000],
          a: [0, 0, 500],
          b: [600 * Math.sin(angle), 0, 500 + 600 * Math.cos(angle)],
        },
        members: [
          { id: 'post', path: ['p', 'q'] },
          { id: 'bar', path: ['a', 'b'] },
        ],
      }),
      'bar',
    );
    expect(bar.ends[0].cuts[0]!.sawDepth).toBeCloseTo(56.33 + 34.6, 1);
    expect(degrees(bar.ends[0].cuts[0]!.offSquare)).toBeCloseTo(37.9, 9);
  });
});
