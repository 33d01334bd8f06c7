/**
 * Where on a rim is something least? Looks only into balls that can hold something better. In plain numbers, since an edit asks it some thousand
 * times: places are lent to who is asked, and not kept.
 */
import type { Vec3 } from '../geometry/vector.ts';
import { BRANCHES, HOPES, leafOf, mostHopeful, setStroke, type Chain } from './chain.ts';

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

/** Where on the chain the value is least, if it is less than `below`; else null. Between its places the least is closed in on. */
export function leastOnChain(chain: Chain, { value, floor }: Probe, below: number): LeastOnChain | null {
  const { balls, firsts } = chain;
  const p: [number, number, number] = [0, 0, 0];
  let least = below;
  let [nearest, stroke] = [-1, -1];
  const underBall = (ball: number): number => {
    p[0] = balls[4 * ball]!;
    p[1] = balls[4 * ball + 1]!;
    p[2] = balls[4 * ball + 2]!;
    return floor(p) - balls[4 * ball + 3]!;
  };
  const look = (ball: number, size: number): void => {
    if (size === 0) {
      const { places } = leafOf(chain, ball);
      // So far on from a place that is known to be no better nothing can be.
      let spare = 0;
      for (let i = 0; 3 * i + 3 < places.length; i++) {
        if (i > 0) spare -= strokeLength(places, i - 1);
        if (spare > 0) continue;
        setPlace(p, places, i);
        const under = floor(p);
        spare = under - least;
        if (spare >= 0) continue;
        const here = value === floor ? under : value(p);
        if (!(here < least)) continue;
        least = here;
        [nearest, stroke] = [ball, i];
      }
      return;
    }
    const from = firsts[size - 1]! + BRANCHES * (ball - firsts[size]!);
    const inner = Math.min(BRANCHES, firsts[size]! - from);
    const hopes = HOPES[size]!;
    for (let i = 0; i < inner; i++) hopes[i] = underBall(from + i);
    for (let which = mostHopeful(hopes, inner); hopes[which]! < least; which = mostHopeful(hopes, inner)) {
      hopes[which] = Infinity;
      look(from + which, size - 1);
    }
  };
  const top = firsts.length - 2;
  if (underBall(firsts[top]!) < least) look(firsts[top]!, top);
  return stroke < 0 ? null : closedIn(chain, nearest, stroke, value, least);
}

function setPlace(p: [number, number, number], places: readonly number[], i: number): void {
  p[0] = places[3 * i]!;
  p[1] = places[3 * i + 1]!;
  p[2] = places[3 * i + 2]!;
}

function strokeLength(places: readonly number[], i: number): number {
  const x = places[3 * i + 3]! - places[3 * i]!;
  const y = places[3 * i + 4]! - places[3 * i + 1]!;
  const z = places[3 * i + 5]! - places[3 * i + 2]!;
  return Math.sqrt(x * x + y * y + z * z);
}

/** Steps of the search along a stroke: each leaves 0.62 of it. */
const STEPS = 10;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** On from the place of the chain with the least value, where a stroke of a leaf begins, along the two strokes that meet there. */
function closedIn(chain: Chain, leaf: number, i: number, value: Probe['value'], least: number): LeastOnChain {
  const here = leafOf(chain, leaf);
  const at: [number, number, number] = [0, 0, 0];
  setPlace(at, here.places, i);
  setStroke(here, i, stroke);
  const best = leastOnStroke(at, [stroke[3]!, stroke[4]!, stroke[5]!], value, { value: least, at });
  if (i > 0) setStroke(here, i - 1, stroke);
  else {
    const before = leafOf(chain, (leaf > 0 ? leaf : chain.firsts[1]!) - 1);
    setStroke(before, before.places.length / 3 - 2, stroke);
  }
  return leastOnStroke(at, [stroke[0]!, stroke[1]!, stroke[2]!], value, best);
}

function leastOnStroke([x, y, z]: Vec3, to: Vec3, value: Probe['value'], best: LeastOnChain): LeastOnChain {
  const [u, v, w] = [to[0] - x, to[1] - y, to[2] - z];
  const p: [number, number, number] = [0, 0, 0];
  let least = best.value;
  let nearest = -1;
  const look = (share: number): number => {
    p[0] = x + share * u;
    p[1] = y + share * v;
    p[2] = z + share * w;
    const here = value(p);
    if (here < least) {
      least = here;
      nearest = share;
    }
    // Where there is none, back to where there is.
    return Number.isNaN(here) ? Infinity : here;
  };
  let [low, high] = [0, 1];
  let [a, b] = [1 - GOLDEN, GOLDEN];
  let [atA, atB] = [look(a), look(b)];
  for (let step = 1; step < STEPS; step++) {
    if (atA <= atB) {
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
  return nearest < 0 ? best : { value: least, at: [x + nearest * u, y + nearest * v, z + nearest * w] };
}

/** Scratch. */
const stroke = new Float64Array(6);
