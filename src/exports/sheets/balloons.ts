/**
 * Where the numbers of the tubes stand on a view: on the tube itself where there is room, else beside it on a leader. A number never
 * covers another; of the free places the one that covers the fewest lines and needs the shortest leader is taken.
 */
import type { Place2 } from '../../drawing/types.ts';
import { around } from '../../drawing/ink.ts';

export interface Balloon {
  readonly number: number;
  readonly centre: Place2;
  /** On the tube; the leader runs to it. */
  readonly foot: Place2;
}

export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Places at which a tube is seen, on paper. */
export interface Candidate {
  readonly number: number;
  readonly feet: readonly Place2[];
}

export const BALLOON = 3.1;
/** mm between two balloons. */
const APART = 0.5;
const REACHES = [0, 6, 9, 13, 18, 24, 32];
const DIRECTIONS = 16;

/** Null for a number that finds no place. `seen` are places along all lines of the drawing. */
export function placeBalloons(
  candidates: readonly Candidate[],
  seen: readonly Place2[],
  space: Bounds,
): ReadonlyMap<number, Balloon | null> {
  const placed: Balloon[] = [];
  const crowd = crowding(seen);
  const answer = new Map<number, Balloon | null>();
  // Those that are seen at few places choose first.
  for (const { number, feet } of candidates.toSorted((a, b) => a.feet.length - b.feet.length)) {
    const balloon = bestPlace(number, feet, placed, crowd, space);
    if (balloon !== null) placed.push(balloon);
    answer.set(number, balloon);
  }
  return answer;
}

function bestPlace(
  number: number,
  feet: readonly Place2[],
  placed: readonly Balloon[],
  crowd: (centre: Place2) => number,
  space: Bounds,
): Balloon | null {
  let best: { balloon: Balloon; cost: number } | null = null;
  for (const reach of REACHES) {
    // Nothing farther off can be better than this.
    if (best !== null && best.cost <= reach) break;
    for (const [i, foot] of feet.entries()) {
      const count = reach === 0 ? 1 : DIRECTIONS;
      const offMiddle = Math.abs(i / Math.max(1, feet.length - 1) - 0.5);
      for (let k = 0; k < count; k++) {
        const centre = around(foot, reach, (2 * Math.PI * (k + 0.5)) / count);
        if (!isInside(centre, space) || placed.some((other) => isInTheWay(centre, foot, other))) continue;
        const cost = reach + 2 * offMiddle + 0.35 * crowd(centre);
        if (best === null || cost < best.cost) best = { balloon: { number, centre, foot }, cost };
      }
    }
  }
  return best?.balloon ?? null;
}

const isInside = ({ x, y }: Place2, { left, right, low, high }: Bounds): boolean =>
  x - BALLOON >= left && x + BALLOON <= right && y - BALLOON >= low && y + BALLOON <= high;

/** Balloons do not touch, and no leader runs through a balloon. */
function isInTheWay(centre: Place2, foot: Place2, other: Balloon): boolean {
  const apart = (a: Place2, b: Place2): number => Math.hypot(a.x - b.x, a.y - b.y);
  return (
    apart(centre, other.centre) < 2 * BALLOON + APART ||
    fromSegment(other.centre, centre, foot) < BALLOON + APART ||
    fromSegment(centre, other.centre, other.foot) < BALLOON + APART
  );
}

function fromSegment(place: Place2, from: Place2, to: Place2): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((place.x - from.x) * dx + (place.y - from.y) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(from.x + t * dx - place.x, from.y + t * dy - place.y);
}

/** How many places of the drawing's lines a balloon there would cover. */
function crowding(seen: readonly Place2[]): (centre: Place2) => number {
  const cells = new Map<string, Place2[]>();
  const cell = (value: number): number => Math.floor(value / BALLOON);
  for (const place of seen) {
    const key = `${cell(place.x)},${cell(place.y)}`;
    const held = cells.get(key);
    if (held === undefined) cells.set(key, [place]);
    else held.push(place);
  }
  return ({ x, y }) => {
    let count = 0;
    for (let i = cell(x) - 1; i <= cell(x) + 1; i++)
      for (let k = cell(y) - 1; k <= cell(y) + 1; k++)
        for (const place of cells.get(`${i},${k}`) ?? []) if (Math.hypot(place.x - x, place.y - y) < BALLOON) count++;
    return count;
  };
}
