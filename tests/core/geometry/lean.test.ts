/** Directions as a level shows them: by tangents and table values worked out by hand, and there and back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leaning, offLevel, offPlumb, sloping } from '../../../src/core/geometry/lean.ts';
import { angleBetween } from '../../../src/core/geometry/angle.ts';
import type { Vec3 } from '../../../src/core/geometry/vector.ts';
import { fixed } from '../../laws/frames.ts';

describe('a direction', () => {
  it('off plumb is what is seen from the side and from the front', () => {
    // 3-4-5: down 4, forward 3 seen from the side.
    expect(offPlumb([3, 0, -4])).toEqual({ down: true, forward: expect.closeTo(36.8698976, 6), left: 0 });
    // Down 1, to the right 1: 45 degrees seen from the front, whatever it goes forward.
    expect(offPlumb([0.5, -1, -1])).toEqual({
      down: true,
      forward: expect.closeTo(26.5650512, 6),
      left: expect.closeTo(-45, 10),
    });
    expect(offPlumb([0, 0.2419, -0.9703])!.left).toBeCloseTo(14, 2);
    expect(offPlumb([1, 2, 0])).toBeNull();
    expect(offPlumb([0, 0, 7])).toEqual({ down: false, forward: 0, left: 0 });
  });

  it('off level has its own slope, and heads one way seen from above', () => {
    expect(offLevel([3, 0, -4])).toEqual({ slope: expect.closeTo(-53.1301024, 6), heading: 0 });
    // 3-4-5 in plan, 12 up: 5-12-13.
    expect(offLevel([3, 4, 12])).toEqual({
      slope: expect.closeTo(67.3801351, 6),
      heading: expect.closeTo(53.1301024, 6),
    });
    expect(offLevel([-1, -0, 0])).toEqual({ slope: 0, heading: 180 });
    expect(offLevel([0, 0, -2])).toEqual({ slope: -90, heading: 0 });
  });

  it('comes back from both', () => {
    const part = fc.integer({ min: -1000, max: 1000 });
    fc.assert(
      fc.property(part, part, part, (x, y, z) => {
        if (x === 0 && y === 0 && z === 0) return;
        const direction: Vec3 = [x, y, z];
        expect(angleBetween(sloping(offLevel(direction)), direction)).toBeLessThan(1e-12);
        const leans = offPlumb(direction);
        if (leans !== null) expect(angleBetween(leaning(leans), direction)).toBeLessThan(1e-12);
      }),
      fixed(500),
    );
  });

  it('does not lean off plumb by 90 degrees or more', () => {
    expect(leaning({ down: true, forward: 90, left: 0 })).toEqual([NaN, NaN, NaN]);
  });
});
