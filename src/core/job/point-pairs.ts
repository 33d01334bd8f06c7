/**
 * Which measured points are a pair, one on either side of the car, and how unlike the two are. The left one has y above 0, the right one
 * below; how they are named decides nothing of that. Two are a pair where the right one lies within NEAR of the mirror image of the left in
 * y = 0 and each is the nearest to the other that it may be paired with. Where names tell (a word for the side in both), they have to
 * be alike but for it, and such pairs come before those by place alone. What is left over says why.
 */
import { distance, length, mirrored, type Vec3 } from '../geometry/vector.ts';
import { remembered } from '../remembered.ts';
import type { Point } from './kinds/point.ts';
import type { PointId } from './reference.ts';

/** mm. From a point to the mirror image of its pair: bodies are less unlike than that, and corners of one body stand further apart. */
export const NEAR = 30;

export interface PointPair {
  readonly left: Point;
  readonly right: Point;
  /** How far the right one is from the mirror image of the left, mm: forward, outward from the centre plane, up. */
  readonly differs: Vec3;
  /** The same as one length, mm. */
  readonly off: number;
}

/** A point without a pair. */
export type Alone =
  /** Its own mirror image is within NEAR: it stands on the centre plane and wants no pair. */
  | { readonly why: 'centre' | 'none-near'; readonly point: Point }
  /** `named` is called alike but for the side: it lies on the same side of the car, or `off` mm from the mirror image. */
  | { readonly why: 'same-side' | 'too-far'; readonly point: Point; readonly named: Point; readonly off: number };

export interface PointPairs {
  /** The most unlike first. */
  readonly pairs: readonly PointPair[];
  /** In the order of the job. */
  readonly alone: readonly Alone[];
  /** The mean of what the pairs differ by; null without a pair. */
  readonly mean: Vec3 | null;
  /** The pair of each point that has one. */
  readonly of: ReadonlyMap<PointId, PointPair>;
}

/** The pairs among these points. */
export const pairsOfPoints = remembered((points: readonly Point[]): PointPairs => {
  const telling = new Map(points.map((point) => [point, tellingOf(point.name)] as const));
  const [left, right] = [
    points.filter(({ position }) => position[1] > 0),
    points.filter(({ position }) => position[1] < 0),
  ];
  const isNamed = (a: Point, b: Point): boolean => namedAlike(telling.get(a)!, telling.get(b)!);
  const mayBe = (a: Point, b: Point): boolean =>
    isNamed(a, b) || telling.get(a)!.side === null || telling.get(b)!.side === null;
  const close = closeTogether(left, right);
  const pairs: PointPair[] = [];
  const paired = new Set<Point>();
  for (const allowed of [isNamed, mayBe]) {
    const open = close.filter(([a, b]) => !paired.has(a) && !paired.has(b) && allowed(a, b));
    for (const [a, b] of mutuallyNearest(open)) {
      pairs.push(pairOf(a, b));
      paired.add(a).add(b);
    }
  }
  pairs.sort((one, other) => other.off - one.off);
  const rest = points.filter((point) => !paired.has(point));
  return {
    pairs,
    alone: rest.map((point) => aloneFor(point, rest, isNamed)),
    mean: meanOf(pairs.map(({ differs }) => differs)),
    of: new Map(pairs.flatMap((pair) => [[pair.left.id, pair] as const, [pair.right.id, pair] as const])),
  };
});

function pairOf(left: Point, right: Point): PointPair {
  const [a, b] = [left.position, right.position];
  const differs: Vec3 = [b[0] - a[0], 0 - b[1] - a[1], b[2] - a[2]];
  return { left, right, differs, off: length(differs) };
}

function aloneFor(point: Point, rest: readonly Point[], isNamed: (a: Point, b: Point) => boolean): Alone {
  const { position } = point;
  const off = (other: Point): number => distance(position, mirrored(other.position));
  const named = rest.filter((other) => other !== point && isNamed(point, other)).toSorted((a, b) => off(a) - off(b))[0];
  if (named !== undefined) {
    const isSameSide = Math.sign(named.position[1]) === Math.sign(position[1]);
    return { why: isSameSide ? 'same-side' : 'too-far', point, named, off: off(named) };
  }
  return { why: off(point) <= NEAR ? 'centre' : 'none-near', point };
}

function meanOf(all: readonly Vec3[]): Vec3 | null {
  if (all.length === 0) return null;
  const mean = (axis: 0 | 1 | 2): number => all.reduce((sum, each) => sum + each[axis], 0) / all.length;
  return [mean(0), mean(1), mean(2)];
}

type Near = readonly [left: Point, right: Point, off: number];

/** Of points on either side those that lie within NEAR of each other's mirror image; both lists gone through along the car. */
function closeTogether(left: readonly Point[], right: readonly Point[]): readonly Near[] {
  const along = (a: Point, b: Point): number => a.position[0] - b.position[0];
  const others = right.toSorted(along);
  const close: Near[] = [];
  let first = 0;
  for (const one of left.toSorted(along)) {
    while (first < others.length && others[first]!.position[0] < one.position[0] - NEAR) first += 1;
    for (let at = first; at < others.length && others[at]!.position[0] <= one.position[0] + NEAR; at++) {
      const off = distance(mirrored(one.position), others[at]!.position);
      if (off <= NEAR) close.push([one, others[at]!, off]);
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

/** The side that a name tells, and the name without it; null where it tells none, or both. */
interface Telling {
  readonly side: 'left' | 'right' | null;
  readonly stem: string;
}

const SIDES: Readonly<Record<string, 'left' | 'right'>> = {
  left: 'left',
  l: 'left',
  lh: 'left',
  right: 'right',
  r: 'right',
  rh: 'right',
};

function tellingOf(name: string): Telling {
  const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const sides = words.filter((word) => Object.hasOwn(SIDES, word));
  if (sides.length !== 1) return { side: null, stem: '' };
  return { side: SIDES[sides[0]!]!, stem: words.filter((word) => word !== sides[0]).join(' ') };
}

const namedAlike = (a: Telling, b: Telling): boolean =>
  a.side !== null && b.side !== null && a.side !== b.side && a.stem === b.stem;
