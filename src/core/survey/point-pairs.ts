/**
 * Which measured points are a pair, one on either side of the car, and how unlike the two are. The left one has y above 0, the right one
 * below; how they are named decides nothing of that. Two are a pair where the right one lies within PAIR_NEAR of the mirror image of the left in
 * y = 0 and each is the nearest to the other that it may be paired with. Where names tell (a word for the side in both), they have to
 * be alike but for it, and such pairs come before those by place alone. What is left over: unpaired.ts.
 */
import { PAIR_NEAR } from '../geometry/tolerance.ts';
import { distance, length, mirrored, type Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { Point } from '../job/kinds/point.ts';
import type { PointId } from '../job/reference.ts';

export interface PointPair {
  readonly left: Point;
  readonly right: Point;
  /** How far the right one is from the mirror image of the left, mm: forward, outward from the centre plane, up. */
  readonly differs: Vec3;
  /** The same as one length, mm. */
  readonly off: number;
}

export interface PointPairs {
  /** The most unlike first. */
  readonly pairs: readonly PointPair[];
  /** The pair of each point that has one. */
  readonly of: ReadonlyMap<PointId, PointPair>;
}

/** The pairs among these points. */
export const pairsOfPoints = remembered((points: readonly Point[]): PointPairs => {
  const [left, right] = [
    points.filter(({ position }) => position[1] > 0),
    points.filter(({ position }) => position[1] < 0),
  ];
  const mayBe = (a: Point, b: Point): boolean => namedAlike(a, b) || tellingOf(a) === null || tellingOf(b) === null;
  const close = closeTogether(left, right);
  const pairs: PointPair[] = [];
  const paired = new Set<Point>();
  for (const allowed of [namedAlike, mayBe]) {
    const open = close.filter(([a, b]) => !paired.has(a) && !paired.has(b) && allowed(a, b));
    for (const [a, b] of mutuallyNearest(open)) {
      pairs.push(pairOf(a, b));
      paired.add(a).add(b);
    }
  }
  pairs.sort((one, other) => other.off - one.off);
  return {
    pairs,
    of: new Map(pairs.flatMap((pair) => [[pair.left.id, pair] as const, [pair.right.id, pair] as const])),
  };
});

function pairOf(left: Point, right: Point): PointPair {
  const [a, b] = [left.position, right.position];
  const differs: Vec3 = [b[0] - a[0], 0 - b[1] - a[1], b[2] - a[2]];
  return { left, right, differs, off: length(differs) };
}

type Near = readonly [left: Point, right: Point, off: number];

/** Of points on either side those that lie within PAIR_NEAR of each other's mirror image; both lists gone through along the car. */
function closeTogether(left: readonly Point[], right: readonly Point[]): readonly Near[] {
  const along = (a: Point, b: Point): number => a.position[0] - b.position[0];
  const others = right.toSorted(along);
  const close: Near[] = [];
  let first = 0;
  for (const one of left.toSorted(along)) {
    while (first < others.length && others[first]!.position[0] < one.position[0] - PAIR_NEAR) first += 1;
    for (let at = first; at < others.length && others[at]!.position[0] <= one.position[0] + PAIR_NEAR; at++) {
      const off = distance(mirrored(one.position), others[at]!.position);
      if (off <= PAIR_NEAR) close.push([one, others[at]!, off]);
    }
  }
  return close;
}

function mutuallyNearest(close: readonly Near[]): readonly Near[] {
  const best = new Map<Point, Near>();
  for (const near of close) {
    for (const point of [near[0], near[1]]) {
      const before = best.get(point);
      if (before === undefined || near[2] < before[2]) best.set(point, near);
    }
  }
  return close.filter((near) => best.get(near[0]) === near && best.get(near[1]) === near);
}

/** The side that the point's name tells, and the name without it; null where it tells none, or several. */
const tellingOf = remembered(({ name }: Point): { readonly isLeft: boolean; readonly stem: string } | null => {
  const side = sideInName(name);
  if (side === null) return null;
  return {
    isLeft: side === 1,
    stem: wordsOf(name)
      .filter((word) => !SIDE.test(word))
      .join(' '),
  };
});

const SIDE = /^(?:l|r|lh|rh|left|right)$/u;

const wordsOf = (name: string): readonly string[] => name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];

/** 1 where a name tells the left side of the car, -1 the right; null where it tells none, or several. */
export function sideInName(name: string): 1 | -1 | null {
  const [side, another] = wordsOf(name).filter((word) => SIDE.test(word));
  if (side === undefined || another !== undefined) return null;
  return side.startsWith('l') ? 1 : -1;
}

/** Whether both names tell a side, each the other one, and are alike but for it. */
export function namedAlike(one: Point, other: Point): boolean {
  const [a, b] = [tellingOf(one), tellingOf(other)];
  return a !== null && b !== null && a.isLeft !== b.isLeft && a.stem === b.stem;
}
