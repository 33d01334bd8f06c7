/** Where two closed chains come nearest to one another, by the balls round their stretches: only two balls that can hold something nearer are looked into. */
import { distanceOfStrokes, shares } from '../geometry/strokes.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { away, BRANCHES, HOPES, leafOf, mostHopeful, setChord, setStroke, type Chain } from './chain.ts';

/** How far apart two chains are, mm, and a place on each. */
export interface NearestOfChains {
  readonly distance: number;
  readonly onA: Vec3;
  readonly onB: Vec3;
}

/** Where two chains come nearest to one another, if nearer than `below` mm; else null. */
export function nearestOfChains(a: Chain, b: Chain, below: number): NearestOfChains | null {
  let least = below;
  let nearest: NearestOfChains | null = null;
  const apart = (p: number, q: number): number =>
    away(a.balls, p, b.balls[4 * q]!, b.balls[4 * q + 1]!, b.balls[4 * q + 2]!) -
    a.balls[4 * p + 3]! -
    b.balls[4 * q + 3]!;
  const strokes = (p: number, q: number): void => {
    const [leaf, otherLeaf] = [leafOf(a, p), leafOf(b, q)];
    setChord(leaf, first);
    setChord(otherLeaf, second);
    if (distanceOfStrokes(first, second) - leaf.bulge - otherLeaf.bulge >= least) return;
    const [x, y, z, radius] = [b.balls[4 * q]!, b.balls[4 * q + 1]!, b.balls[4 * q + 2]!, b.balls[4 * q + 3]!];
    for (let i = 0; 3 * i + 3 < leaf.places.length; i++) {
      setStroke(leaf, i, first);
      const u = (first[0]! + first[3]!) / 2 - x;
      const v = (first[1]! + first[4]!) / 2 - y;
      const w = (first[2]! + first[5]!) / 2 - z;
      const half =
        Math.sqrt((first[3]! - first[0]!) ** 2 + (first[4]! - first[1]!) ** 2 + (first[5]! - first[2]!) ** 2) / 2;
      if (Math.sqrt(u * u + v * v + w * w) - half - radius >= least) continue;
      for (let k = 0; 3 * k + 3 < otherLeaf.places.length; k++) {
        setStroke(otherLeaf, k, second);
        const between = distanceOfStrokes(first, second);
        if (between >= least) continue;
        least = between;
        nearest = { distance: between, onA: onStroke(first, shares.first), onB: onStroke(second, shares.second) };
      }
    }
  };
  const look = (p: number, sizeA: number, q: number, sizeB: number): void => {
    if (sizeA === 0 && sizeB === 0) {
      strokes(p, q);
      return;
    }
    // Into the larger of the two.
    const isIntoA = sizeA > 0 && (sizeB === 0 || a.balls[4 * p + 3]! >= b.balls[4 * q + 3]!);
    const { firsts } = isIntoA ? a : b;
    const size = isIntoA ? sizeA : sizeB;
    const from = firsts[size - 1]! + BRANCHES * ((isIntoA ? p : q) - firsts[size]!);
    const inner = Math.min(BRANCHES, firsts[size]! - from);
    const hopes = HOPES[sizeA + sizeB]!;
    for (let i = 0; i < inner; i++) hopes[i] = isIntoA ? apart(from + i, q) : apart(p, from + i);
    for (let which = mostHopeful(hopes, inner); hopes[which]! < least; which = mostHopeful(hopes, inner)) {
      hopes[which] = Infinity;
      if (isIntoA) look(from + which, sizeA - 1, q, sizeB);
      else look(p, sizeA, from + which, sizeB - 1);
    }
  };
  const [topA, topB] = [a.firsts.length - 2, b.firsts.length - 2];
  if (apart(a.firsts[topA]!, b.firsts[topB]!) < least) look(a.firsts[topA]!, topA, b.firsts[topB]!, topB);
  return nearest;
}

/** Two strokes: scratch. */
const first = new Float64Array(6);
const second = new Float64Array(6);

const onStroke = (stroke: Float64Array, share: number): Vec3 => [
  stroke[0]! + share * (stroke[3]! - stroke[0]!),
  stroke[1]! + share * (stroke[4]! - stroke[1]!),
  stroke[2]! + share * (stroke[5]! - stroke[2]!),
];
