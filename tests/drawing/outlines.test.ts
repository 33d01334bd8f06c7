/** Hidden lines against what is known of two rods by hand: lengths and places in the plane of the view. */
import { describe, expect, it } from 'vitest';
import { seenOutlines, type Outline } from '../../src/drawing/outlines.ts';
import { FRONT, ISOMETRIC, ISOMETRIC_RIGHT, SIDE, TOP } from '../../src/drawing/projection.ts';
import { cross, dot } from '../../src/core/geometry/vector.ts';
import { demoText } from '../command-line.ts';
import { derivedFrom } from '../exports/jobs.ts';

type Place = readonly [number, number, number];

/** Straight tubes of 40 mm, ends square, each from place to place. */
function tubes(...lines: readonly (readonly [Place, Place])[]) {
  const nodes = lines.flatMap(([from, to], i) => [
    { id: `a${i}`, at: { kind: 'fixed', position: from } },
    { id: `b${i}`, at: { kind: 'fixed', position: to } },
  ]);
  const members = lines.map((_, i) => ({
    id: `t${i}`,
    path: [`a${i}`, `b${i}`],
    section: 's',
    ends: [{ fit: 'square' }, { fit: 'square' }],
  }));
  const sections = [{ id: 's', outerDiameter: 40, wall: 3 }];
  return derivedFrom(JSON.stringify({ format: 'cagewright/job', version: 1, name: 'rods', sections, nodes, members }))
    .tubes;
}

const edges = (outlines: readonly Outline[], tube: number) =>
  outlines.filter((one) => one.tube === tube && one.kind === 'edge');

const lengthOf = ({ places }: Outline): number =>
  places.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - places[i]!.x, y - places[i]!.y), 0);

const total = (outlines: readonly Outline[]): number => outlines.reduce((sum, one) => sum + lengthOf(one), 0);

describe('views', () => {
  it('are right-handed and square, the side from the car’s left with its front on the left, the top over it', () => {
    for (const { right, up, toEye } of [FRONT, SIDE, TOP, ISOMETRIC, ISOMETRIC_RIGHT]) {
      expect(dot(right, up)).toBeCloseTo(0, 12);
      cross(right, up).forEach((value, i) => expect(value).toBeCloseTo(toEye[i]!, 12));
    }
    // ISO 8855: x forward, y left, z up.
    expect(SIDE.toEye.map(Math.abs)).toEqual([0, 1, 0]);
    expect([SIDE.toEye[1], FRONT.toEye[0], TOP.toEye[2]]).toEqual([1, 1, 1]);
    expect(SIDE.right).toEqual(TOP.right);
    // In an isometric view the three axes are as long as each other: the square root of 2/3.
    for (const axis of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const)
      expect(Math.hypot(dot(axis, ISOMETRIC.right), dot(axis, ISOMETRIC.up))).toBeCloseTo(Math.sqrt(2 / 3), 12);
  });
});

describe('hidden lines', () => {
  // Both across the view from the left; the second runs upright, 300 mm nearer to the eye.
  const crossing = tubes(
    [
      [-500, 0, 0],
      [500, 0, 0],
    ],
    [
      [0, 300, -500],
      [0, 300, 500],
    ],
  );

  it('a nearer tube that crosses takes its own width out of both edges of the farther', () => {
    const outlines = seenOutlines(crossing, SIDE);
    const far = edges(outlines, 0);
    expect(far).toHaveLength(4);
    expect(total(far)).toBeCloseTo(2 * (1000 - 40), 0);
    for (const { places } of far) for (const { x } of places) expect(Math.abs(x)).toBeGreaterThanOrEqual(20 - 0.3);
    const near = edges(outlines, 1);
    expect(near).toHaveLength(2);
    expect(total(near)).toBeCloseTo(2000, 6);
  });

  it('what lies nearer depends on the side one looks from', () => {
    const fromBehind = { ...SIDE, right: [1, 0, 0] as const, toEye: [0, -1, 0] as const };
    const outlines = seenOutlines(crossing, fromBehind);
    expect(total(edges(outlines, 0))).toBeCloseTo(2000, 6);
    expect(total(edges(outlines, 1))).toBeCloseTo(2 * (1000 - 40), 0);
  });

  it('a tube straight behind another of its size does not show its ends', () => {
    const outlines = seenOutlines(
      tubes(
        [
          [-100, 0, 0],
          [100, 0, 0],
        ],
        [
          [-300, 300, 0],
          [300, 300, 0],
        ],
      ),
      SIDE,
    );
    // Its extremes lie exactly behind the nearer tube's edge, where sight only grazes: a hair of each end is left.
    const cuts = outlines.filter(({ tube, kind }) => tube === 0 && kind === 'cut');
    expect(total(cuts)).toBeLessThan(4);
  });

  it('a tube that points at the eye is a circle', () => {
    const [tube] = seenOutlines(
      tubes([
        [0, -100, 0],
        [0, 100, 0],
      ]),
      SIDE,
    ).filter(({ kind }) => kind === 'cut');
    expect(lengthOf(tube!)).toBeCloseTo(Math.PI * 40, 0);
  });

  it('shows every tube of the demo in the isometric view, within its own outline', () => {
    const { tubes: demo } = derivedFrom(demoText());
    const outlines = seenOutlines(demo, ISOMETRIC);
    expect(new Set(outlines.map(({ tube }) => tube)).size).toBe(demo.length);
    for (const { places } of outlines) for (const { x, y } of places) expect(Number.isFinite(x + y)).toBe(true);
  });
});
