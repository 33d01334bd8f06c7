/**
 * A closed chain of places with balls round its stretches: where on it is something least?
 * Looks only into balls that can hold something better. In plain numbers, since an edit asks it some thousand times: places are lent
 * to who is asked, and not kept.
 */
import type { Vec3 } from '../geometry/vector.ts';

/** A closed chain: the last place is joined to the first. */
export interface Chain {
  /** x, y, z after one another. */
  readonly places: Float64Array;
}

export interface ChainTree extends Chain {
  /** x, y, z, radius after one another: round eight strokes each, then round eight of these each, and so on up to one round all. */
  readonly balls: Float64Array;
  /** Which ball is the first of each size, the smallest first; and how many there are. */
  readonly firsts: readonly number[];
}

/** The chain with its balls, eight in each. */
export function roundChain({ places }: Chain): ChainTree {
  const count = places.length / 3;
  const firsts = [0];
  let total = 0;
  let ofSize = count;
  do {
    ofSize = Math.ceil(ofSize / BRANCHES);
    total += ofSize;
    firsts.push(total);
  } while (ofSize > 1);
  const balls = new Float64Array(4 * total);
  for (let k = 0; k < firsts[1]!; k++)
    setRoundStrokes(balls, k, places, BRANCHES * k, Math.min(BRANCHES * (k + 1), count));
  for (let size = 1; size < firsts.length - 1; size++) {
    const [from, to] = [firsts[size - 1]!, firsts[size]!];
    for (let k = to; k < firsts[size + 1]!; k++) {
      const inner = from + BRANCHES * (k - to);
      setRoundBalls(balls, k, inner, Math.min(inner + BRANCHES, to));
    }
  }
  return { places, balls, firsts };
}

function setRoundStrokes(balls: Float64Array, ball: number, places: Float64Array, from: number, to: number): void {
  const count = places.length / 3;
  const middle = 3 * ((from + to) >> 1 < count ? (from + to) >> 1 : 0);
  const x = places[middle]!;
  const y = places[middle + 1]!;
  const z = places[middle + 2]!;
  let square = 0;
  for (let k = from; k <= to; k++) {
    const i = 3 * (k === count ? 0 : k);
    const u = places[i]! - x;
    const v = places[i + 1]! - y;
    const w = places[i + 2]! - z;
    const each = u * u + v * v + w * w;
    if (each > square) square = each;
  }
  setBall(balls, ball, x, y, z, Math.sqrt(square));
}

function setRoundBalls(balls: Float64Array, ball: number, from: number, to: number): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (let k = from; k < to; k++) {
    x += balls[4 * k]!;
    y += balls[4 * k + 1]!;
    z += balls[4 * k + 2]!;
  }
  x /= to - from;
  y /= to - from;
  z /= to - from;
  let radius = 0;
  for (let k = from; k < to; k++) radius = Math.max(radius, away(balls, k, x, y, z) + balls[4 * k + 3]!);
  setBall(balls, ball, x, y, z, radius);
}

function setBall(balls: Float64Array, ball: number, x: number, y: number, z: number, radius: number): void {
  balls[4 * ball] = x;
  balls[4 * ball + 1] = y;
  balls[4 * ball + 2] = z;
  balls[4 * ball + 3] = radius;
}

/** From a ball's middle to a place, mm. */
export function away(balls: Float64Array, ball: number, x: number, y: number, z: number): number {
  const u = balls[4 * ball]! - x;
  const v = balls[4 * ball + 1]! - y;
  const w = balls[4 * ball + 2]! - z;
  return Math.sqrt(u * u + v * v + w * w);
}

/** What is asked at a place, which is lent: a value there, NaN where there is none, and a floor under it that changes by 1 a mm at most. */
export interface Probe {
  readonly value: (p: Vec3) => number;
  readonly floor: (p: Vec3) => number;
}

/** A place of a chain with the least value. */
export interface LeastOnChain {
  readonly value: number;
  readonly at: Vec3;
}

/** Balls and strokes in a ball. */
export const BRANCHES = 8;

/** How hopeful each of the eight balls in a ball is, by how large that is: scratch. */
export const HOPES = Array.from({ length: 24 }, () => new Float64Array(BRANCHES));

/** Which of the first so many is least: its place among them. */
export function mostHopeful(hopes: Float64Array, count: number): number {
  let which = 0;
  for (let i = 1; i < count; i++) if (hopes[i]! < hopes[which]!) which = i;
  return which;
}

/** Where on the chain the value is least, if it is less than `below`; else null. Between its places the least is closed in on. */
export function leastOnChain(chain: ChainTree, { value, floor }: Probe, below: number): LeastOnChain | null {
  const { places, balls, firsts } = chain;
  const count = places.length / 3;
  const p: [number, number, number] = [0, 0, 0];
  let least = below;
  let stroke = -1;
  const under = (ball: number): number => {
    p[0] = balls[4 * ball]!;
    p[1] = balls[4 * ball + 1]!;
    p[2] = balls[4 * ball + 2]!;
    return floor(p) - balls[4 * ball + 3]!;
  };
  const look = (ball: number, size: number): void => {
    const within = BRANCHES * (ball - firsts[size]!);
    if (size === 0) {
      for (let k = within; k < within + BRANCHES && k < count; k++) {
        setPlace(p, places, k);
        const here = value(p);
        if (!(here < least)) continue;
        least = here;
        stroke = k;
      }
      return;
    }
    const from = firsts[size - 1]! + within;
    const inner = Math.min(BRANCHES, firsts[size]! - from);
    const hopes = HOPES[size]!;
    for (let i = 0; i < inner; i++) hopes[i] = under(from + i);
    for (let which = mostHopeful(hopes, inner); hopes[which]! < least; which = mostHopeful(hopes, inner)) {
      hopes[which] = Infinity;
      look(from + which, size - 1);
    }
  };
  const top = firsts.length - 2;
  if (under(firsts[top]!) < least) look(firsts[top]!, top);
  return stroke < 0 ? null : closedIn(places, stroke, value, least);
}

function setPlace(p: [number, number, number], places: Float64Array, k: number): void {
  p[0] = places[3 * k]!;
  p[1] = places[3 * k + 1]!;
  p[2] = places[3 * k + 2]!;
}

/** A convex function of a place, which is lent: its value, and its slope (a subgradient) to read until it is asked again. */
export interface ConvexProbe {
  readonly value: (p: Vec3) => number;
  readonly slope: () => Vec3;
}

/**
 * As leastOnChain, of a convex function: such a one lies nowhere under the plane that touches it at a place, so that each look is a floor
 * under all the others, and a few looks are enough where the function is nearly even along the chain. Needs no balls.
 */
export function leastOfConvex({ places }: Chain, { value, slope }: ConvexProbe, below: number): LeastOnChain | null {
  const count = places.length / 3;
  const floors = new Float64Array(count).fill(-Infinity);
  const p: [number, number, number] = [0, 0, 0];
  let least = below;
  let stroke = -1;
  for (let next = 0; next >= 0;) {
    setPlace(p, places, next);
    const here = value(p);
    if (here < least) {
      least = here;
      stroke = next;
    }
    const [x, y, z] = slope();
    const base = here - (x * p[0] + y * p[1] + z * p[2]);
    floors[next] = Infinity;
    next = -1;
    let hope = least;
    for (let k = 0; k < count; k++) {
      const under = base + x * places[3 * k]! + y * places[3 * k + 1]! + z * places[3 * k + 2]!;
      if (under > floors[k]!) floors[k] = under;
      if (floors[k]! >= hope) continue;
      hope = floors[k]!;
      next = k;
    }
  }
  return stroke < 0 ? null : closedIn(places, stroke, value, least);
}

/** Steps of the search along a stroke: each leaves 0.62 of it. */
const STEPS = 10;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** On from the place of the chain with the least value along the two strokes that meet there. */
function closedIn(places: Float64Array, stroke: number, value: Probe['value'], least: number): LeastOnChain {
  const count = places.length / 3;
  const at: [number, number, number] = [0, 0, 0];
  setPlace(at, places, stroke);
  let best: LeastOnChain = { value: least, at };
  for (const k of [stroke, (stroke + count - 1) % count]) best = leastOnStroke(places, k, value, best);
  return best;
}

function leastOnStroke(places: Float64Array, k: number, value: Probe['value'], best: LeastOnChain): LeastOnChain {
  setStroke(places, k, stroke);
  const [x, y, z, u, v, w] = stroke;
  const p: [number, number, number] = [0, 0, 0];
  let least = best.value;
  let nearest = -1;
  const look = (share: number): number => {
    p[0] = x! + share * u!;
    p[1] = y! + share * v!;
    p[2] = z! + share * w!;
    const here = value(p);
    if (here < least) {
      least = here;
      nearest = share;
    }
    return here;
  };
  let [low, high] = [0, 1];
  let [a, b] = [1 - GOLDEN, GOLDEN];
  let [atA, atB] = [look(a), look(b)];
  for (let step = 1; step < STEPS; step++) {
    if (atA < atB) {
      high = b;
      b = a;
      atB = atA;
      a = high - GOLDEN * (high - low);
      atA = look(a);
    } else {
      low = a;
      a = b;
      atA = atB;
      b = low + GOLDEN * (high - low);
      atB = look(b);
    }
  }
  return nearest < 0 ? best : { value: least, at: [x! + nearest * u!, y! + nearest * v!, z! + nearest * w!] };
}

/** Where a stroke begins and the way to its end: scratch. */
const stroke = new Float64Array(6);

/** Sets `into` to where stroke k of a chain begins and the way to its end, mm. */
export function setStroke(places: Float64Array, k: number, into: Float64Array): void {
  const [from, to] = [3 * k, 3 * k + 3 < places.length ? 3 * k + 3 : 0];
  for (let axis = 0; axis < 3; axis++) {
    into[axis] = places[from + axis]!;
    into[3 + axis] = places[to + axis]! - places[from + axis]!;
  }
}
