/** The bender's room from above, against outlines found by hand. */
import { describe, expect, it } from 'vitest';
import type { Bender } from '../../../src/core/job/kinds/bender.ts';
import { footprint, heights, planFrame, wallLine, type BoxObstacle } from '../../../src/ui/frame/bender-plan.ts';

const box = (given: Partial<BoxObstacle>): BoxObstacle => ({
  name: 'Bench',
  kind: 'box',
  centre: [1000, -500, 450],
  size: [400, 200, 900],
  rotation: [0, 0, 0],
  ...given,
});

const wall = (point: readonly [number, number, number], normal: readonly [number, number, number]) =>
  ({ name: 'Wall', kind: 'plane', point, normal }) as const;

describe('what stands round the bender, from above', () => {
  it('draws an upright box as its four corners, anticlockwise', () => {
    expect(footprint(box({}))).toEqual([
      [800, -600],
      [1200, -600],
      [1200, -400],
      [800, -400],
    ]);
    expect(heights(box({}))).toEqual([0, 900]);
  });

  it('turns it with its rotation: a cube on its edge is as wide as its diagonal', () => {
    const cube = box({ centre: [0, 0, 0], size: [100, 100, 100], rotation: [0, 0, 45] });
    const reach = Math.max(...footprint(cube).map(([x]) => x));
    expect(reach).toBeCloseTo(50 * Math.SQRT2, 9);
    const tipped = heights(box({ centre: [0, 0, 70], size: [100, 100, 100], rotation: [45, 0, 0] }));
    expect(tipped[0]).toBeCloseTo(70 - 50 * Math.SQRT2, 9);
    expect(tipped[1]).toBeCloseTo(70 + 50 * Math.SQRT2, 9);
  });

  it('draws a wall where it cuts the bend plane, and a level one not at all', () => {
    const upright = wallLine(wall([0, 1500, 0], [0, -1, 0]), 1000)!;
    expect(upright.at[1]).toBeCloseTo(1500, 9);
    expect(Math.abs(upright.along[0])).toBe(1);
    // A roof slope of 45 degrees that reaches the floor at y = 2000 stands at y = 1000 when it is 1000 high.
    expect(wallLine(wall([0, 2000, 0], [0, -1, -1]), 1000)!.at[1]).toBeCloseTo(1000, 9);
    expect(wallLine(wall([0, 0, 700], [0, 0, 1]), 1000)).toBeNull();
  });

  it('shows the die on the side that it bends to, and all that stands in the room', () => {
    const bender: Bender = {
      turns: 'right',
      bendLies: 'beyond',
      planeHeight: 1000,
      rotationBy: 'level',
      levelStep: 0.1,
      wheelStep: 1,
      pullStep: 0.5,
      room: [box({}), wall([-2500, 0, 0], [1, 0, 0])],
    };
    const { left, right, bottom, top } = planFrame(bender, { centrelineRadius: 152.4 });
    expect(left).toBeLessThan(-2500);
    expect(right).toBeGreaterThan(1200);
    expect(bottom).toBeLessThan(-600);
    expect(-bottom).toBeGreaterThan(top);
  });
});
