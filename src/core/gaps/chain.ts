/**
 * A rim as a closed chain of strokes with balls round its stretches. The balls are known by the trims; of the places only those in a
 * ball that is looked into are laid, since most searches see from the balls alone that a rim is too far away.
 */
import { COSINES, SINES } from '../geometry/sleeve.ts';
import type { OutsideEnd } from './outside.ts';
import { rimOf, type Rim } from './rim.ts';

export interface Chain {
  readonly end: OutsideEnd;
  readonly rim: Rim;
  /** x, y, z, radius after one another: round each leaf, then round eight of these each, and so on up to one round all. */
  readonly balls: number[];
  /** Which ball is the first of each size, the smallest first; and how many there are. */
  readonly firsts: readonly number[];
  /** Filled in when one asks. */
  readonly leaves: (Leaf | undefined)[];
}

/** Eight steps of a rim. */
export interface Leaf {
  /** Where its strokes begin and where the last ends: x, y, z after one another. */
  readonly places: readonly number[];
  /** mm: none of it lies farther than this from the straight between its two ends. */
  readonly bulge: number;
}

/** Steps of a rim in a leaf, and balls in a ball. */
export const BRANCHES = 8;

/** The rim's places in the car, a closed chain; once an end. */
export const chainOf = (end: OutsideEnd): Chain => (end.edge.chain ??= roundRim(end));

function roundRim(end: OutsideEnd): Chain {
  const rim = rimOf(end);
  const firsts = [0];
  let total = 0;
  let ofSize = rim.degrees.length;
  do {
    ofSize = Math.ceil(ofSize / BRANCHES);
    total += ofSize;
    firsts.push(total);
  } while (ofSize > 1);
  const balls: number[] = [];
  for (let leaf = 0; leaf < firsts[1]!; leaf++) setRoundLeaf(balls, leaf, end, rim);
  for (let size = 1; size < firsts.length - 1; size++) {
    const [from, to] = [firsts[size - 1]!, firsts[size]!];
    for (let k = to; k < firsts[size + 1]!; k++) {
      const inner = from + BRANCHES * (k - to);
      setRoundBalls(balls, k, inner, Math.min(inner + BRANCHES, to));
    }
  }
  return { end, rim, balls, firsts, leaves: [] };
}

/** A part of a cylinder lies no farther from a place in its middle than half its length, and the way round, squared and added. */
function setRoundLeaf(balls: number[], leaf: number, end: OutsideEnd, { degrees, trims }: Rim): void {
  const {
    origin,
    axes: [u, c, s],
    radius,
  } = end;
  const from = BRANCHES * leaf;
  const to = Math.min(from + BRANCHES, degrees.length);
  let low = Infinity;
  let high = -Infinity;
  for (let k = from; k <= to; k++) {
    const trim = trims[k < degrees.length ? k : 0]!;
    if (trim < low) low = trim;
    if (trim > high) high = trim;
  }
  const first = degrees[from]!;
  const last = to < degrees.length ? degrees[to]! : 360;
  const middle = Math.floor((first + last) / 2);
  const round = (radius * Math.max(middle - first, last - middle) * Math.PI) / 180;
  const half = (high - low) / 2;
  const along = low + half;
  const x = radius * COSINES[middle]!;
  const y = radius * SINES[middle]!;
  setBall(
    balls,
    leaf,
    origin[0] + along * u[0] + x * c[0] + y * s[0],
    origin[1] + along * u[1] + x * c[1] + y * s[1],
    origin[2] + along * u[2] + x * c[2] + y * s[2],
    Math.sqrt(half * half + round * round),
  );
}

function setRoundBalls(balls: number[], ball: number, from: number, to: number): void {
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

function setBall(balls: number[], ball: number, x: number, y: number, z: number, radius: number): void {
  balls[4 * ball] = x;
  balls[4 * ball + 1] = y;
  balls[4 * ball + 2] = z;
  balls[4 * ball + 3] = radius;
}

/** From a ball's middle to a place, mm. */
export function away(balls: number[], ball: number, x: number, y: number, z: number): number {
  const u = balls[4 * ball]! - x;
  const v = balls[4 * ball + 1]! - y;
  const w = balls[4 * ball + 2]! - z;
  return Math.sqrt(u * u + v * v + w * w);
}

/** mm. Strokes of a chain are no longer than this along the tube: between their ends nothing is looked at before the least is closed in on. */
const STROKE = 1;

/** One of a rim's leaves; laid when it is asked for first. */
export function leafOf({ end, rim, leaves }: Chain, leaf: number): Leaf {
  return (leaves[leaf] ??= laidOut(end, rim, leaf));
}

function laidOut({ origin, axes: [u, c, s], radius }: OutsideEnd, { degrees, trims }: Rim, leaf: number): Leaf {
  const from = BRANCHES * leaf;
  const to = Math.min(from + BRANCHES, degrees.length);
  const places: number[] = [];
  const lay = (degree: number, along: number): void => {
    const whole = degree | 0;
    const phi = (degree * Math.PI) / 180;
    const x = radius * (whole === degree ? COSINES[whole]! : Math.cos(phi));
    const y = radius * (whole === degree ? SINES[whole]! : Math.sin(phi));
    places.push(
      origin[0] + along * u[0] + x * c[0] + y * s[0],
      origin[1] + along * u[1] + x * c[1] + y * s[1],
      origin[2] + along * u[2] + x * c[2] + y * s[2],
    );
  };
  for (let k = from; k < to; k++) {
    const isLast = k + 1 === degrees.length;
    const width = (isLast ? 360 : degrees[k + 1]!) - degrees[k]!;
    const rise = trims[isLast ? 0 : k + 1]! - trims[k]!;
    const parts = Math.max(1, Math.ceil(Math.abs(rise) / STROKE));
    for (let part = 0; part < parts; part++)
      lay(degrees[k]! + (part / parts) * width, trims[k]! + (part / parts) * rise);
  }
  const next = to < degrees.length ? to : 0;
  lay(degrees[next]!, trims[next]!);
  return { places, bulge: bulgeOf(places) };
}

function bulgeOf(places: readonly number[]): number {
  const last = places.length - 3;
  const [u, v, w] = [places[last]! - places[0]!, places[last + 1]! - places[1]!, places[last + 2]! - places[2]!];
  const square = u * u + v * v + w * w;
  let most = 0;
  for (let i = 3; i < last; i += 3) {
    const x = places[i]! - places[0]!;
    const y = places[i + 1]! - places[1]!;
    const z = places[i + 2]! - places[2]!;
    const along = square > 0 ? Math.min(Math.max((x * u + y * v + z * w) / square, 0), 1) : 0;
    most = Math.max(most, (x - along * u) ** 2 + (y - along * v) ** 2 + (z - along * w) ** 2);
  }
  return Math.sqrt(most);
}

/** Sets `into` to where stroke i of a leaf begins and ends. */
export function setStroke({ places }: Leaf, i: number, into: Float64Array): void {
  for (let axis = 0; axis < 6; axis++) into[axis] = places[3 * i + axis]!;
}

/** Sets `into` to the two ends of a leaf. */
export function setChord({ places }: Leaf, into: Float64Array): void {
  const last = places.length - 3;
  for (let axis = 0; axis < 3; axis++) {
    into[axis] = places[axis]!;
    into[3 + axis] = places[last + axis]!;
  }
}

/** How hopeful each of the eight balls in a ball is, by how large that is: scratch. */
export const HOPES = Array.from({ length: 24 }, () => new Float64Array(BRANCHES));

/** Which of the first so many is least: its place among them. */
export function mostHopeful(hopes: Float64Array, count: number): number {
  let which = 0;
  for (let i = 1; i < count; i++) if (hopes[i]! < hopes[which]!) which = i;
  return which;
}
