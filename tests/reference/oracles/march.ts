/**
 * Trim along a generator line by search alone, with no equation of the crossing: a point is inside the run when it is
 * nearer to the run's centreline than the run's radius. That depth changes by at most 1 mm a millimetre along the line,
 * so an interval whose middle is deeper (or farther) than half its width holds no crossing; the others are halved, and a crossing is
 * closed in by bisection to the last digit. Of the stretches so found the one nearest the node counts, if the joint reaches it.
 */
import { distanceToCentreline, nearestOfCentreline, type Cutter } from './centreline.ts';
import { along, around, inner, type Triple } from './space.ts';

/** Everything that a program could be asked about one end: the node, the way into the tube, phi = 0, and the cutters. */
export interface End {
  readonly node: Triple;
  readonly direction: Triple;
  readonly reference: Triple;
  /** Radius of the surface on which the lines run: the outside of the branch, or its bore. */
  readonly radius: number;
  /** Outer radius of the branch, where `radius` is not that. */
  readonly outside?: number;
  readonly cutters: readonly Cutter[];
}

/** Part of a line that lies within a cutter, from where it enters to where it leaves; the same where it only touches. */
export interface Inside {
  readonly from: number;
  readonly to: number;
}

const FARTHEST = 1e6;
const FINEST = 1e-5;
/** A line that comes this near without going in touches: equal tubes do, along two lines, and a touch counts. */
const TOUCH = 2e-12;
/** A touch is found from both sides; no two stretches lie this near to each other. */
const ONE_PLACE = 1e-4;

export const generatorStart = (end: End, degrees: number): Triple =>
  along(end.node, around(end.direction, end.reference, degrees), end.radius);

/** All stretches of a line within a cutter, between `low` and `high` mm from the node, ascending. */
export function insideOf(end: End, cutter: Cutter, degrees: number, low = -FARTHEST, high = FARTHEST): Inside[] {
  const start = generatorStart(end, degrees);
  const outside = (s: number): number => distanceToCentreline(cutter, along(start, end.direction, s)) - cutter.radius;
  const found: { from: number; to: number }[] = [];
  let entered = outside(low) < 0 ? low : null;
  const touched = (from: number, to: number): void => {
    const last = found.at(-1);
    if (last !== undefined && from - last.to < ONE_PLACE) last.to = to;
    else found.push({ from, to });
  };
  const open: [number, number][] = [[low, high]];
  while (open.length > 0) {
    const [from, to] = open.pop()!;
    const middle = (from + to) / 2;
    const value = outside(middle);
    if (Math.abs(value) > (to - from) / 2) continue;
    if (to - from >= FINEST) {
      open.push([middle, to], [from, middle]);
      continue;
    }
    const [before, after] = [outside(from) < 0, outside(to) < 0];
    if (before !== after) {
      const at = bisect(outside, from, to, before);
      if (after) entered = at;
      else {
        touched(entered!, at);
        entered = null;
      }
    } else if (!before && Math.abs(value) < TOUCH) touched(middle, middle);
  }
  if (entered !== null) touched(entered, high);
  return found;
}

/** Where one cutter trims a line: the far end of the stretch nearest the node, if no farther than the joint reaches; else null. */
export function crossingWith(end: End, cutter: Cutter, degrees: number): number | null {
  const away = ({ from, to }: Inside): number => (from <= 0 && to >= 0 ? 0 : Math.min(Math.abs(from), Math.abs(to)));
  const nearest = insideOf(end, cutter, degrees).toSorted((a, b) => away(a) - away(b))[0];
  return nearest !== undefined && away(nearest) <= reachOf(end, cutter) ? nearest.to : null;
}

/** (ra cos al + rb + d) / sin al. */
function reachOf(end: End, cutter: Cutter): number {
  const { distance, direction } = nearestOfCentreline(cutter, end.node);
  const cosine = Math.min(1, Math.abs(inner(direction, end.direction)));
  return ((end.outside ?? end.radius) * cosine + cutter.radius + distance) / Math.sqrt(1 - cosine * cosine);
}

/** The trim at one line: of all cutters the largest; null where none reaches. */
export function trimByMarch(end: End, degrees: number): number | null {
  const reached = end.cutters.map((cutter) => crossingWith(end, cutter, degrees)).filter((s) => s !== null);
  return reached.length === 0 ? null : Math.max(...reached);
}

function bisect(outside: (s: number) => number, from: number, to: number, insideFirst: boolean): number {
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    // No number lies between the two.
    if (middle === low || middle === high) break;
    if (outside(middle) < 0 === insideFirst) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
