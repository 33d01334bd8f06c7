/** How unlike left and right are, drawn: each arrow as long as the difference times what is said, on a picture whose scale is read off it. */
import { expect, it } from 'vitest';
import { emptyJob } from '../../src/core/job/empty-job.ts';
import { pairsOfPoints } from '../../src/core/survey/point-pairs.ts';
import { toMeasure } from '../../src/core/survey/to-measure.ts';
import { timesEnlarged, unlikeSides } from '../../src/drawing/car/unlike.ts';
import { lettering } from '../../src/drawing/lettering.ts';
import type { Line, Picture } from '../../src/drawing/types.ts';
import { fonts } from '../exports/fonts.ts';

/** Right is ahead and wider by 6 and 8; then higher by 10; then its very image. */
const POINTS = [
  ['Floor at the hoop, left', [0, 600, 0]],
  ['Floor at the hoop, right', [6, -608, 0]],
  ['Rear tower, left', [-800, 480, 500]],
  ['Rear tower, right', [-800, -480, 510]],
  ['Roof rail at the hoop, left', [10, 520, 1100]],
  ['Roof rail at the hoop, right', [10, -520, 1100]],
].map(([name, position], i) => ({ id: `p${i}`, name: name as string, position: position as [number, number, number] }));

const { pairs } = pairsOfPoints(POINTS);

const arrows = ({ marks }: Picture): readonly Line[] =>
  marks.filter((mark): mark is Line => mark.kind === 'line' && mark.layer === 'asked' && mark.places.length === 2);

const vectorOf = ({ places: [tail, tip] }: Line): readonly [number, number] => [tip!.x - tail!.x, tip!.y - tail!.y];

it('is said in whole times, never longer than can be told from a car', () => {
  expect(pairs.map(({ off }) => off)).toEqual([10, 10, 0]);
  expect(timesEnlarged(pairs)).toBe(20);
  expect(timesEnlarged(pairs.slice(2))).toBe(100);
  expect(timesEnlarged([{ ...pairs[0]!, off: 300 }])).toBe(1);
});

it('points from the image of the left to the right', () => {
  const draw = (view: 'above' | 'behind') =>
    unlikeSides(
      { ...toMeasure({ ...emptyJob('mm'), points: POINTS }, null), view, width: 90, height: 60 },
      pairs,
      lettering(fonts),
    );
  const above = draw('above');
  // The dash-dotted cross: its upright line is the cross line, x = 0, and stands over the floor's place of the left.
  const [floor, ...others] = arrows(above).map(vectorOf);
  expect(others).toEqual([]);
  // Forward is right and outward on the right side down: 6 and 8.
  expect(floor![1] / floor![0]).toBeCloseTo(-8 / 6, 9);
  const dots = above.marks.filter((mark) => mark.kind === 'line' && mark.closed && mark.fill === 0.5);
  const middle = (mark: (typeof dots)[number]) => (mark as Line).places.reduce((sum, { x }) => sum + x, 0) / 48;
  const byX = dots.map(middle).toSorted((a, b) => a - b);
  // From the tower to the floor's place the car measures 800 along.
  const scale = (byX[1]! - byX[0]!) / 800;
  expect(Math.hypot(...floor!)).toBeCloseTo(scale * 10 * 20, 6);

  const behind = arrows(draw('behind')).map(vectorOf);
  expect(behind).toHaveLength(2);
  expect(behind.some(([x, y]) => Math.abs(x) < 1e-9 && y > 0)).toBe(true);
  expect(behind.some(([x, y]) => x > 0 && Math.abs(y) < 1e-9)).toBe(true);
});
