/**
 * A closed chain of places with balls round its stretches: where on it is something least, and where do two chains come nearest?
 * Looks only into balls that can hold something better.
 */
import { addScaled, type Vec3 } from '../geometry/vector.ts';

/** A ball round the strokes from number `from` up to `to`; within it smaller balls, or the strokes themselves. */
interface Ball {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly radius: number;
  readonly within: readonly Ball[];
}

export interface ChainTree {
  /** x, y, z after one another; the last is joined to the first. */
  readonly places: Float64Array;
  readonly ball: Ball;
}

const BRANCHES = 8;

/** The chain with its balls, eight in each. */
export function roundChain(places: Float64Array): ChainTree {
  const count = places.length / 3;
  let balls: Ball[] = [];
  for (let from = 0; from < count; from += BRANCHES)
    balls.push(ballOfStrokes(places, from, Math.min(from + BRANCHES, count)));
  while (balls.length > 1) {
    const larger: Ball[] = [];
    for (let i = 0; i < balls.length; i += BRANCHES) larger.push(ballOfBalls(balls.slice(i, i + BRANCHES)));
    balls = larger;
  }
  return { places, ball: balls[0]! };
}

function ballOfStrokes(places: Float64Array, from: number, to: number): Ball {
  const count = places.length / 3;
  const middle = 3 * ((from + to) >> 1 < count ? (from + to) >> 1 : 0);
  const [x, y, z] = [places[middle]!, places[middle + 1]!, places[middle + 2]!];
  let square = 0;
  for (let k = from; k <= to; k++) {
    const i = 3 * (k === count ? 0 : k);
    const [u, v, w] = [places[i]! - x, places[i + 1]! - y, places[i + 2]! - z];
    square = Math.max(square, u * u + v * v + w * w);
  }
  return { from, to, x, y, z, radius: Math.sqrt(square), within: [] };
}

function ballOfBalls(within: readonly Ball[]): Ball {
  let [x, y, z] = [0, 0, 0];
  for (const ball of within) {
    x += ball.x / within.length;
    y += ball.y / within.length;
    z += ball.z / within.length;
  }
  const reach = (ball: Ball): number => Math.hypot(ball.x - x, ball.y - y, ball.z - z) + ball.radius;
  const radius = within.reduce((most, ball) => Math.max(most, reach(ball)), 0);
  return { from: within[0]!.from, to: within.at(-1)!.to, x, y, z, radius, within };
}

/** What is asked at a place: a value there, NaN where there is none, and a floor under it that changes by 1 a mm at most. */
export interface Probe {
  readonly value: (p: Vec3) => number;
  readonly floor: (p: Vec3) => number;
}

/** Steps of the search along a stroke: each leaves 0.62 of it. */
const STEPS = 10;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Where on the chain the value is least, if it is less than `below`; else null. Between its places the least is closed in on. */
export function leastOnChain(
  { places, ball }: ChainTree,
  { value, floor }: Probe,
  below: number,
): { value: number; at: Vec3 } | null {
  let best: { value: number; at: Vec3 } | null = null;
  let least = below;
  let stroke = -1;
  const under = (each: Ball): number => floor([each.x, each.y, each.z]) - each.radius;
  const look = (each: Ball, hope: number): void => {
    if (hope >= least) return;
    if (each.within.length > 0) {
      // The most hopeful first.
      const floors = each.within.map((inner) => ({ inner, least: under(inner) }));
      for (const next of floors.toSorted((p, q) => p.least - q.least)) look(next.inner, next.least);
      return;
    }
    for (let k = each.from; k < each.to; k++) {
      const at: Vec3 = [places[3 * k]!, places[3 * k + 1]!, places[3 * k + 2]!];
      const here = value(at);
      if (!(here < least)) continue;
      best = { value: here, at };
      least = here;
      stroke = k;
    }
  };
  look(ball, under(ball));
  if (best === null) return null;
  const count = places.length / 3;
  for (const k of [stroke, (stroke + count - 1) % count])
    best = leastOnStroke(placeOf(places, k), placeOf(places, (k + 1) % count), value, best);
  return best;
}

const placeOf = (places: Float64Array, k: number): Vec3 => [places[3 * k]!, places[3 * k + 1]!, places[3 * k + 2]!];

function leastOnStroke(
  from: Vec3,
  to: Vec3,
  value: Probe['value'],
  best: { value: number; at: Vec3 },
): { value: number; at: Vec3 } {
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
  const place = (share: number): Vec3 => addScaled(from, way, share);
  let [low, high] = [0, 1];
  let [a, b] = [1 - GOLDEN, GOLDEN];
  let [atA, atB] = [value(place(a)), value(place(b))];
  for (let step = 0; step < STEPS; step++) {
    if (atA < best.value) best = { value: atA, at: place(a) };
    if (atB < best.value) best = { value: atB, at: place(b) };
    if (atA < atB) {
      [high, b, atB] = [b, a, atA];
      a = high - GOLDEN * (high - low);
      atA = value(place(a));
    } else {
      [low, a, atA] = [a, b, atB];
      b = low + GOLDEN * (high - low);
      atB = value(place(b));
    }
  }
  return best;
}

/** Where two chains come nearest to one another, if nearer than `below` mm; else null. */
export function nearestOfChains(
  a: ChainTree,
  b: ChainTree,
  below: number,
): { distance: number; onA: Vec3; onB: Vec3 } | null {
  let least = below;
  let pair: readonly [number, number] | null = null;
  const apart = (p: Ball, q: Ball): number => Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z) - p.radius - q.radius;
  const look = (p: Ball, q: Ball, hope: number): void => {
    if (hope >= least) return;
    const [isP, isQ] = [p.within.length > 0, q.within.length > 0];
    if (!isP && !isQ) {
      strokes(p, q);
      return;
    }
    const intoP = isP && (!isQ || p.radius >= q.radius);
    const next = (intoP ? p : q).within.map((inner) => ({
      inner,
      hope: intoP ? apart(inner, q) : apart(p, inner),
    }));
    for (const each of next.toSorted((one, other) => one.hope - other.hope))
      if (intoP) look(each.inner, q, each.hope);
      else look(p, each.inner, each.hope);
  };
  const strokes = (p: Ball, q: Ball): void => {
    for (let i = p.from; i < p.to; i++) {
      setStroke(a.places, i, first);
      const [x, y, z] = [
        first[0]! + first[3]! / 2 - q.x,
        first[1]! + first[4]! / 2 - q.y,
        first[2]! + first[5]! / 2 - q.z,
      ];
      const half = Math.sqrt(first[3]! ** 2 + first[4]! ** 2 + first[5]! ** 2) / 2;
      if (Math.sqrt(x * x + y * y + z * z) - half - q.radius >= least) continue;
      for (let k = q.from; k < q.to; k++) {
        setStroke(b.places, k, second);
        const between = distanceOfStrokes();
        if (between < least) [least, pair] = [between, [i, k]];
      }
    }
  };
  look(a.ball, b.ball, apart(a.ball, b.ball));
  if (pair === null) return null;
  setStroke(a.places, pair[0], first);
  setStroke(b.places, pair[1], second);
  const distance = distanceOfStrokes();
  return { distance, onA: onStroke(first, shareA), onB: onStroke(second, shareB) };
}

/** Two strokes, each where it begins and the way to its end: scratch. And the shares of the way at which they are nearest. */
const first = new Float64Array(6);
const second = new Float64Array(6);
let shareA = 0;
let shareB = 0;

function setStroke(places: Float64Array, k: number, stroke: Float64Array): void {
  const [from, to] = [3 * k, 3 * k + 3 < places.length ? 3 * k + 3 : 0];
  for (let axis = 0; axis < 3; axis++) {
    stroke[axis] = places[from + axis]!;
    stroke[3 + axis] = places[to + axis]! - places[from + axis]!;
  }
}

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
