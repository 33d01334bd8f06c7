import { describe, expect, it } from 'vitest';
import { add, scale, type Vec3 } from '../../../src/core/geometry/vector.ts';
import { projectionOf } from '../../../src/view/camera/projection.ts';
import { BAR, displacement, isUsable, pickGrip, PLATE, type Grip } from '../../../src/view/gizmo/grips.ts';
import { snapValue, stepOf } from '../../../src/view/gizmo/snap.ts';

const view = projectionOf({ target: [200, 0, 500], yaw: 0.9, pitch: 0.5, span: 1800 }, 1000, 700);
const place: Vec3 = [300, -200, 450];
const bar = (key: string, direction: Vec3, bothWays = false): Grip => ({
  key,
  kind: 'bar',
  along: [direction],
  bothWays,
});
const grips: Grip[] = [
  bar('x', [1, 0, 0]),
  bar('y', [0, 1, 0]),
  bar('z', [0, 0, 1]),
  {
    key: 'xy',
    kind: 'plate',
    along: [
      [1, 0, 0],
      [0, 1, 0],
    ],
    bothWays: false,
  },
];

/** The pixel of the place so many pixels along directions from the node. */
const pixelOf = (step: Vec3) => view.toScreen(add(place, scale(step, 1 / view.pixelsPerMm)));

describe('handles of a node', () => {
  it('move the node so that it stays under the pointer', () => {
    for (const grip of grips) {
      const wanted = grip.along.reduce<Vec3>(
        (sum, direction, i) => add(sum, scale(direction, [120, -75][i]!)),
        [0, 0, 0],
      );
      const [from, to] = [view.toScreen(place), view.toScreen(add(place, wanted))];
      const moved = displacement(grip, view, to.x - from.x, to.y - from.y);
      moved.forEach((mm, axis) => expect(mm).toBeCloseTo(wanted[axis]!, 9));
    }
  });

  it('move only along their own axis, whatever the pointer does', () => {
    const [x, y, z] = displacement(grips[1]!, view, 37, -81);
    expect(x).toBe(0);
    expect(z).toBe(0);
    expect(y).not.toBe(0);
  });

  it('are hit at their ends and middles, and nowhere near the node itself', () => {
    const at = (step: Vec3): string | undefined => {
      const { x, y } = pixelOf(step);
      return pickGrip(grips, place, view, x, y, 4)?.key;
    };
    expect(at([BAR.to, 0, 0])).toBe('x');
    expect(at([0, (BAR.from + BAR.to) / 2, 0])).toBe('y');
    expect(at([0, 0, BAR.to])).toBe('z');
    const middle = (PLATE.from + PLATE.to) / 2;
    expect(at([middle, middle, 0])).toBe('xy');
    expect(at([0, 0, 0])).toBeUndefined();
    expect(at([0, 0, -BAR.to])).toBeUndefined();
  });

  it('of a sliding node are hit on both sides', () => {
    const slide = [bar('line', [0, 0, 1], true)];
    for (const sense of [1, -1]) {
      const { x, y } = pixelOf([0, 0, sense * BAR.to]);
      expect(pickGrip(slide, place, view, x, y, 4)?.key).toBe('line');
    }
  });

  it('are put away where a drag could not be read', () => {
    const front = projectionOf({ target: [0, 0, 0], yaw: 0, pitch: 0, span: 1000 }, 800, 600);
    expect(grips.filter((grip) => isUsable(grip, front)).map(({ key }) => key)).toEqual(['y', 'z']);
  });
});

describe('snapping', () => {
  it('goes to whole steps from its zero', () => {
    expect(snapValue(103.4, 1, 0, [], 0).value).toBe(103);
    expect(snapValue(103.4, 25.4, 100, [], 0).value).toBe(100);
    expect(stepOf('in', false)).toBe(3.175);
    expect(stepOf('mm', true)).toBe(0.1);
  });

  it('takes over the nearest coordinate in reach and says whose it is', () => {
    const neighbours = [
      { value: 106, name: 'Sill' },
      { value: 101, name: 'Tower' },
    ];
    expect(snapValue(103, 1, 0, neighbours, 5)).toEqual({ value: 101, to: 'Tower' });
    expect(snapValue(103, 1, 0, neighbours, 1)).toEqual({ value: 103, to: null });
  });
});
