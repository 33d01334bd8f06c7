/**
 * What one would lay a car's axes by, before a person has said it: three points as nearly level as there are, far apart; the two pairs of left and right
 * farthest apart along the car; zero where it is now. Pairs go by their names here: a car that stands askew is not its own mirror image over the lines.
 */
import type { Point } from '../job/kinds/point.ts';
import type { PointId } from '../job/reference.ts';
import type { Datum } from './datum.ts';
import { namedAlike, sideInName } from './point-pairs.ts';

/** mm. Three points whose heights differ by more are not thought to be level. */
const LEVEL_WITHIN = 40;

/** No point: nobody has said which. */
export const NO_POINT: PointId = '';

/** `points`: those that come of measurements, where they are. What nothing suggests is NO_POINT. */
export function suggestedDatum(points: readonly Point[]): Datum {
  const pairs = namedPairs(points);
  const [rear, front] = [pairs[0], pairs.length > 1 ? pairs.at(-1) : undefined];
  // What there is left and right was made level; a wheel arch is where it is.
  const level = levelTrio(pairs.flat()) ?? levelTrio(points) ?? [NO_POINT, NO_POINT, NO_POINT];
  const zero = rear?.[0] ?? points[0];
  return {
    level,
    height: heightOf(points, level),
    centre: [
      rear === undefined ? [NO_POINT] : [rear[0].id, rear[1].id],
      front === undefined ? [NO_POINT] : [front[0].id, front[1].id],
    ],
    zero: zero?.id ?? NO_POINT,
    station: zero?.position[0] ?? 0,
  };
}

/** Left and right of the same name, the rearmost first. */
export function namedPairs(points: readonly Point[]): readonly (readonly [left: Point, right: Point])[] {
  return points
    .flatMap((left): (readonly [Point, Point])[] => {
      const right = sideInName(left.name) === 1 ? points.find((each) => namedAlike(left, each)) : undefined;
      return right === undefined ? [] : [[left, right]];
    })
    .toSorted(([a], [b]) => a.position[0] - b.position[0]);
}

/** mm: the mean of their heights, where they are. */
export function heightOf(points: readonly Point[], level: Datum['level']): number {
  const heights = level.flatMap((id) => points.find((each) => each.id === id)?.position[2] ?? []);
  return heights.length === 0 ? 0 : heights.reduce((sum, each) => sum + each, 0) / heights.length;
}

/** Of all threes that are nearly level the one that spans most, seen from above. */
function levelTrio(points: readonly Point[]): Datum['level'] | null {
  const low = points.toSorted((a, b) => a.position[2] - b.position[2]);
  let best: Datum['level'] | null = null;
  let most = 0;
  for (let i = 0; i < low.length; i++) {
    for (let k = i + 1; k < low.length; k++) {
      for (let m = k + 1; m < low.length && low[m]!.position[2] - low[i]!.position[2] <= LEVEL_WITHIN; m++) {
        const area = areaOf(low[i]!, low[k]!, low[m]!);
        if (area > most) [best, most] = [[low[i]!.id, low[k]!.id, low[m]!.id], area];
      }
    }
  }
  return best;
}

/** Seen from above, twice the area. */
const areaOf = (a: Point, b: Point, c: Point): number =>
  Math.abs(
    (b.position[0] - a.position[0]) * (c.position[1] - a.position[1]) -
      (c.position[0] - a.position[0]) * (b.position[1] - a.position[1]),
  );
