import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { declutter, type Wish } from '../../../src/view/labels/declutter.ts';

const bay = { width: 800, height: 600 };
const wish = (rank: number, ...places: [number, number][]): Wish => ({
  rank,
  width: 40,
  height: 20,
  places: places.map(([x, y]) => ({ x, y })),
});

describe('labels that share the bay', () => {
  it('gives the more wanted label the place, and the other its next one', () => {
    const [second, first] = declutter([wish(2, [100, 100], [100, 200]), wish(1, [110, 105])], bay);
    expect(first).toEqual({ x: 110, y: 105 });
    expect(second).toEqual({ x: 100, y: 200 });
  });

  it('leaves out what finds no place, or stands beyond the edge', () => {
    expect(declutter([wish(1, [100, 100]), wish(2, [105, 100]), wish(3, [5, 300])], bay)).toEqual([
      { x: 100, y: 100 },
      null,
      null,
    ]);
  });

  it('never lets two labels overlap, however many there are', () => {
    const place = fc.record({ x: fc.integer({ min: -50, max: 850 }), y: fc.integer({ min: -50, max: 650 }) });
    const wishes = fc.array(
      fc.record({
        rank: fc.integer({ min: 0, max: 5 }),
        width: fc.integer({ min: 10, max: 120 }),
        height: fc.integer({ min: 10, max: 40 }),
        places: fc.array(place, { minLength: 1, maxLength: 4 }),
      }),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(wishes, (all) => {
        const answers = declutter(all, bay);
        answers.forEach((a, i) =>
          answers.slice(i + 1).forEach((b, k) => {
            if (a === null || b === null) return;
            const [one, other] = [all[i]!, all[i + 1 + k]!];
            const apart =
              Math.abs(a.x - b.x) >= (one.width + other.width) / 2 ||
              Math.abs(a.y - b.y) >= (one.height + other.height) / 2;
            expect(apart).toBe(true);
          }),
        );
      }),
      { seed: 7, numRuns: 100 },
    );
  });
});
