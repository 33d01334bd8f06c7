/** Where two closed chains come nearest to one another, by the balls round their stretches: only two balls that can hold something nearer are looked into. */
import type { Vec3 } from '../geometry/vector.ts';
import { away, BRANCHES, HOPES, mostHopeful, setStroke, type ChainTree } from './chain.ts';

/** Where two chains come nearest to one another, if nearer than `below` mm; else null. */
export function nearestOfChains(
  a: ChainTree,
  b: ChainTree,
  below: number,
): { distance: number; onA: Vec3; onB: Vec3 } | null {
  let least = below;
  let [nearestA, nearestB] = [-1, -1];
  const apart = (p: number, q: number): number =>
    away(a.balls, p, b.balls[4 * q]!, b.balls[4 * q + 1]!, b.balls[4 * q + 2]!) -
    a.balls[4 * p + 3]! -
    b.balls[4 * q + 3]!;
  const strokes = (p: number, q: number): void => {
    const [count, otherCount] = [a.places.length / 3, b.places.length / 3];
    const [x, y, z, radius] = [b.balls[4 * q]!, b.balls[4 * q + 1]!, b.balls[4 * q + 2]!, b.balls[4 * q + 3]!];
    for (let i = BRANCHES * p; i < BRANCHES * (p + 1) && i < count; i++) {
      setStroke(a.places, i, first);
      const u = first[0]! + first[3]! / 2 - x;
      const v = first[1]! + first[4]! / 2 - y;
      const w = first[2]! + first[5]! / 2 - z;
      const half = Math.sqrt(first[3]! ** 2 + first[4]! ** 2 + first[5]! ** 2) / 2;
      if (Math.sqrt(u * u + v * v + w * w) - half - radius >= least) continue;
      for (let k = BRANCHES * q; k < BRANCHES * (q + 1) && k < otherCount; k++) {
        setStroke(b.places, k, second);
        const between = distanceOfStrokes();
        if (between < least) [least, nearestA, nearestB] = [between, i, k];
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
  if (nearestA < 0) return null;
  setStroke(a.places, nearestA, first);
  setStroke(b.places, nearestB, second);
  const distance = distanceOfStrokes();
  return { distance, onA: onStroke(first, shareA), onB: onStroke(second, shareB) };
}

/** Two strokes, each where it begins and the way to its end: scratch. And the shares of the way at which they are nearest. */
const first = new Float64Array(6);
const second = new Float64Array(6);
let shareA = 0;
let shareB = 0;

const onStroke = (stroke: Float64Array, share: number): Vec3 => [
  stroke[0]! + share * stroke[3]!,
  stroke[1]! + share * stroke[4]!,
  stroke[2]! + share * stroke[5]!,
];

const clamped = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share);

/** The nearest places of the two strokes: of the lines through them where both lie on the strokes, else at an end of one. */
function distanceOfStrokes(): number {
  const [ux, uy, uz] = [first[3]!, first[4]!, first[5]!];
  const [vx, vy, vz] = [second[3]!, second[4]!, second[5]!];
  const [wx, wy, wz] = [first[0]! - second[0]!, first[1]! - second[1]!, first[2]! - second[2]!];
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const square = uu * vv - uv * uv;
  const s = square > 0 ? clamped((uv * vw - vv * uw) / square) : 0;
  shareB = vv > 0 ? clamped((uv * s + vw) / vv) : 0;
  shareA = uu > 0 ? clamped((uv * shareB - uw) / uu) : 0;
  const [x, y, z] = [wx + shareA * ux - shareB * vx, wy + shareA * uy - shareB * vy, wz + shareA * uz - shareB * vz];
  return Math.sqrt(x * x + y * y + z * z);
}
