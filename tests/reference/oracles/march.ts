/**
 * Trim along a generator line by search alone, with no equation of the crossing: a point is inside the run when it is
 * nearer to the run's centreline than the run's radius. That depth changes by at most 1 mm a millimetre along the line,
 * so an interval whose middle is deeper (or farther) than half its width holds no crossing; the others are halved, from
 * the node outwards, and a crossing is closed in by bisection to the last digit.
 */
import { distanceToCentreline, type Cutter } from './centreline.ts';
import { along, around, type Triple } from './space.ts';

/** Everything that a program could be asked about one end: the node, the way into the tube, phi = 0, and the cutters. */
export interface End {
  readonly node: Triple;
  readonly direction: Triple;
  readonly reference: Triple;
  /** Radius of the surface on which the lines run: the outside of the branch, or its bore. */
  readonly radius: number;
  readonly cutters: readonly Cutter[];
}

const FARTHEST = 1e6;
const FINEST = 1e-5;
/**
 * A line that comes this near without going in touches: equal tubes do, along two lines, and a touch counts. One that
 * touches the surface from within does not leave. Which it is shows `PAST` the place.
 */
const TOUCH = 2e-12;
const PAST = 1e-3;

export const generatorStart = (end: End, degrees: number): Triple =>
  along(end.node, around(end.direction, end.reference, degrees), end.radius);

/** The leaving crossing nearest to the node with one cutter; null where there is none. */
export function crossingWith(end: End, cutter: Cutter, degrees: number): number | null {
  const start = generatorStart(end, degrees);
  const outside = (s: number): number => distanceToCentreline(cutter, along(start, end.direction, s)) - cutter.radius;
  const ahead = firstLeaving(outside, 0, FARTHEST, 1);
  const behind = firstLeaving(outside, -FARTHEST, 0, -1);
  return ahead === null || (behind !== null && -behind < ahead) ? behind : ahead;
}

/** The trim at one line: of all cutters the largest; null where none reaches. */
export function trimByMarch(end: End, degrees: number): number | null {
  const reached = end.cutters.map((cutter) => crossingWith(end, cutter, degrees)).filter((s) => s !== null);
  return reached.length === 0 ? null : Math.max(...reached);
}

/** The leaving crossing in [a, b] that is met first when going up (1) or down (-1). */
function firstLeaving(outside: (s: number) => number, a: number, b: number, way: 1 | -1): number | null {
  const open: [number, number][] = [[a, b]];
  while (open.length > 0) {
    const [from, to] = open.pop()!;
    const middle = (from + to) / 2;
    const value = outside(middle);
    if (Math.abs(value) > (to - from) / 2) continue;
    if (to - from < FINEST) {
      if (Math.abs(value) < TOUCH) {
        if (outside(to + PAST) > 0) return middle;
      } else if (outside(from) < 0 && outside(to) >= 0) return bisect(outside, from, to);
      continue;
    }
    open.push(
      ...((way > 0
        ? [
            [middle, to],
            [from, middle],
          ]
        : [
            [from, middle],
            [middle, to],
          ]) as [number, number][]),
    );
  }
  return null;
}

function bisect(outside: (s: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (outside(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}
