/**
 * A coped tube as a filled solid, from what the fabrication file says of it (corners, bend radius, profiles, tips) and by searching alone: its
 * outside in sampled places, and how deep a place lies in it. Nearest and deepest are looked for among the samples and from the best of
 * them on by small random steps along both surfaces, so they are never nearer, or deeper, than the truth.
 */
import { cutterThrough, developed, distanceToCentreline, walkOf, type Cutter, type Step } from './centreline.ts';
import { trimByMarch, type End } from './march.ts';
import type { Draw } from './seeded.ts';
import {
  along,
  anySquare,
  around,
  difference,
  inner,
  outer,
  size,
  square,
  sum,
  times,
  unit,
  type Triple,
} from './space.ts';

export interface CopedEnd extends End {
  readonly profile: readonly (number | null)[];
  readonly tip: number;
  /** Square to `direction` for a square end; null for a cope. */
  readonly plane: Triple | null;
}

export interface Coped {
  readonly corners: readonly Triple[];
  readonly bendRadius: number;
  readonly radius: number;
  readonly ends: readonly [CopedEnd, CopedEnd];
}

/** On the wall: developed length from end A's node and degrees about it; on a flat end: its number, and where across. */
type Spot = readonly ['wall', number, number] | readonly ['face', 0 | 1, number, number];

/** Between two degrees of which only one is reached it is searched for anew: there the wall ends in a step. */
const trimOf = (end: CopedEnd, phi: number): number => {
  const { profile, tip } = end;
  const turned = ((phi % 360) + 360) % 360;
  const k = Math.floor(turned) % 360;
  const [a, b] = [profile[k]!, profile[(k + 1) % 360]!];
  if ((a === null) !== (b === null)) return trimByMarch(end, turned) ?? tip;
  return a === null ? tip : a + (turned - Math.floor(turned)) * (b - a);
};

const phiOf = ({ direction, reference }: CopedEnd, towards: Triple): number =>
  (Math.atan2(inner(towards, outer(direction, reference)), inner(towards, reference)) * 180) / Math.PI;

export class CopedSolid {
  readonly coped: Coped;
  readonly length: number;
  readonly axis: Cutter;
  private readonly walk: (distance: number) => Step;
  constructor(coped: Coped) {
    this.coped = coped;
    this.length = developed(coped.corners, coped.bendRadius);
    this.axis = cutterThrough(coped.corners, coped.bendRadius, coped.radius);
    this.walk = walkOf(coped.corners, coped.bendRadius);
  }

  /** The centreline's place, its way, and a direction square to it. */
  private frame(t: number): { at: Triple; way: Triple; side: Triple } {
    const kept = Math.min(Math.max(t, 0), this.length - 1e-9);
    const { at, direction } = this.walk(kept);
    return { at: along(at, direction, t - kept), way: direction, side: anySquare(direction) };
  }

  /** Where a spot lies; a spot of the wall that is cut away is taken where its line's wall begins. */
  place(spot: Spot): Triple {
    if (spot[0] === 'face') {
      const end = this.coped.ends[spot[1]];
      const u = end.direction;
      const [x, y] = [end.reference, outer(u, end.reference)];
      const flat = sum(times(spot[2], x), times(spot[3], y));
      const s = end.plane === null ? end.tip : -inner(flat, end.plane) / inner(u, end.plane);
      return sum(along(end.node, u, s), flat);
    }
    let t = spot[1];
    const { radius, ends } = this.coped;
    const turn = (at: number) => {
      const { way, side } = this.frame(at);
      return around(way, side, spot[2]);
    };
    const first = trimOf(ends[0], phiOf(ends[0], turn(t)));
    if (t < first) t = first;
    const last = trimOf(ends[1], phiOf(ends[1], turn(t)));
    if (this.length - t < last) t = this.length - last;
    return along(this.frame(t).at, turn(t), radius);
  }

  /** Spots over all that is not farther than `reach` from where `near` says. */
  spots(step: number, near: (p: Triple) => boolean): Spot[] {
    const { radius, ends } = this.coped;
    const found: Spot[] = [];
    const keep = (spot: Spot): void => {
      if (near(this.place(spot))) found.push(spot);
    };
    const about = Math.max(3, (step / radius) * (180 / Math.PI));
    for (let t = ends[0].tip; t <= this.length - ends[1].tip; t += step)
      for (let phi = 0; phi < 360; phi += about) keep(['wall', t, phi]);
    for (let phi = 0; phi < 360; phi += 1) {
      keep(['wall', -Infinity, phi].map((x) => (x === -Infinity ? ends[0].tip - 1 : x)) as unknown as Spot);
      keep(['wall', this.length - ends[1].tip + 1, phi]);
    }
    for (const which of [0, 1] as const) {
      if (ends[which].cutters.length > 0) continue;
      for (let x = -radius; x <= radius; x += step)
        for (let y = -radius; y <= radius; y += step) if (x * x + y * y <= radius * radius) keep(['face', which, x, y]);
    }
    return found;
  }

  /** A spot a random step away. */
  private beside(spot: Spot, step: number, draw: Draw): Spot {
    const { radius } = this.coped;
    const turn = (step / radius) * (180 / Math.PI);
    if (spot[0] === 'wall') return ['wall', spot[1] + draw.between(-step, step), spot[2] + draw.between(-turn, turn)];
    const [x, y] = [spot[2] + draw.between(-step, step), spot[3] + draw.between(-step, step)];
    const out = Math.max(1, Math.hypot(x, y) / radius);
    return ['face', spot[1], x / out, y / out];
  }

  /** Signed distance to the outside: negative within, exact there; outside it only says so. */
  depth(p: Triple): number {
    const { radius, ends } = this.coped;
    let value = distanceToCentreline(this.axis, p) - radius;
    if (value >= 0) return value;
    for (const end of ends) {
      const from = difference(p, end.node);
      const s = inner(from, end.direction);
      const throat = Math.max(...end.profile.map((each) => each ?? end.tip));
      if (s > throat + 2 * radius || size(square(from, end.direction)) > 1.5 * radius) continue;
      if (end.cutters.length === 0) {
        const into = unit(end.plane ?? end.direction);
        const off = inner(from, into) * Math.sign(inner(into, end.direction));
        value = Math.max(value, -off);
        continue;
      }
      value = Math.max(value, end.tip - s);
      for (const cutter of end.cutters) {
        value = Math.max(value, cutter.radius - distanceToCentreline(cutter, p));
        // A place from which the line leads into the cutter has the cut ahead of it.
        for (let ahead = 0; s + ahead < throat + 1; ahead += 0.5)
          if (distanceToCentreline(cutter, along(p, end.direction, ahead)) < cutter.radius - 1e-3)
            return Math.max(value, 0);
      }
    }
    return value;
  }

  /** From the samples `from` on: the spot that is the least by `value`. */
  descend(from: Spot, step: number, value: (p: Triple) => number, draw: Draw): { value: number; spot: Spot } {
    let best = { value: value(this.place(from)), spot: from };
    for (let size = step, missed = 0; size > 1e-4;) {
      const spot = this.beside(best.spot, size, draw);
      const here = value(this.place(spot));
      if (here < best.value) {
        best = { value: here, spot };
        missed = 0;
      } else if (++missed > 24) {
        missed = 0;
        size /= 2;
      }
    }
    return best;
  }
}

const STEP = 4;

/** The least distance between two outsides that do not run into each other, at most `within`. */
export function leastDistance(a: CopedSolid, b: CopedSolid, within: number, draw: Draw): number {
  const nearTo = (solid: CopedSolid) => (p: Triple) =>
    distanceToCentreline(solid.axis, p) - solid.coped.radius < within + STEP;
  const [ofA, ofB] = [a.spots(STEP, nearTo(b)), b.spots(STEP, nearTo(a))];
  if (ofA.length === 0 || ofB.length === 0) return Infinity;
  const placesB = ofB.map((spot) => b.place(spot));
  const pairs = ofA.map((spot) => {
    const p = a.place(spot);
    let least = Infinity;
    let other = 0;
    placesB.forEach((q, i) => {
      const apart = (p[0] - q[0]) ** 2 + (p[1] - q[1]) ** 2 + (p[2] - q[2]) ** 2;
      if (apart < least) [least, other] = [apart, i];
    });
    return { spot, other, apart: Math.sqrt(least) };
  });
  pairs.sort((one, two) => one.apart - two.apart);
  let least = Infinity;
  for (const { spot, other } of apartFrom(pairs, (each) => a.place(each.spot), 6)) {
    let [onA, onB] = [spot, ofB[other]!];
    // In turn on either, and on both at once.
    let step = STEP;
    let value = size(difference(a.place(onA), b.place(onB)));
    for (let missed = 0; step > 1e-3;) {
      const [nextA, nextB] = [a['beside'](onA, step, draw), b['beside'](onB, step, draw)];
      const tries: [Spot, Spot][] = [
        [nextA, onB],
        [onA, nextB],
        [nextA, nextB],
      ];
      let better = false;
      for (const [p, q] of tries) {
        const here = size(difference(a.place(p), b.place(q)));
        if (here < value) [value, onA, onB, better] = [here, p, q, true];
      }
      if (better) missed = 0;
      else if (++missed > 20) [missed, step] = [0, step / 2];
    }
    least = Math.min(least, value);
  }
  return least;
}

/** The deepest place of either in the other, 0 or negative: how far they run into each other. */
export function deepest(a: CopedSolid, b: CopedSolid, draw: Draw): number {
  let least = 0;
  for (const [one, other] of [
    [a, b],
    [b, a],
  ] as const) {
    const depth = (p: Triple): number => other.depth(p);
    const near = (p: Triple): boolean => distanceToCentreline(other.axis, p) < other.coped.radius + STEP;
    const spots = one.spots(STEP / 2, near).map((spot) => ({ spot, value: depth(one.place(spot)) }));
    spots.sort((p, q) => p.value - q.value);
    for (const { spot } of apartFrom(spots, (each) => one.place(each.spot), 4))
      least = Math.min(least, one.descend(spot, STEP, depth, draw).value);
  }
  return least;
}

/** The first so many that lie some way from one another. */
function apartFrom<T>(sorted: readonly T[], placeOf: (one: T) => Triple, most: number): T[] {
  const kept: { one: T; at: Triple }[] = [];
  for (const one of sorted) {
    if (kept.length === most) break;
    const at = placeOf(one);
    if (kept.every((each) => size(difference(each.at, at)) > 2 * STEP)) kept.push({ one, at });
  }
  return kept.map(({ one }) => one);
}

/** A box by its middle, half sizes and axes. */
export interface Block {
  readonly centre: Triple;
  readonly half: Triple;
  readonly axes: readonly [Triple, Triple, Triple];
}

/** Signed distance to a box, negative within. */
export const depthInBlock = ({ centre, half, axes }: Block, p: Triple): number => {
  const beyond = axes.map((axis, i) => Math.abs(inner(difference(p, centre), axis)) - half[i]!);
  return Math.min(Math.max(...beyond), 0) + Math.hypot(...beyond.map((each) => Math.max(each, 0)));
};

/** The least distance between a tube's outside and a box, negative where one is inside the other: the deepest place of either's outside. */
export function nearestToBox(tube: CopedSolid, block: Block, draw: Draw): number {
  const off = (p: Triple): number => depthInBlock(block, p);
  const spots = tube.spots(STEP, () => true).map((spot) => ({ spot, value: off(tube.place(spot)) }));
  spots.sort((one, other) => one.value - other.value);
  let least = Infinity;
  for (const { spot } of apartFrom(spots.slice(0, 2000), (each) => tube.place(each.spot), 8))
    least = Math.min(least, tube.descend(spot, STEP, off, draw).value);
  if (least > STEP) return least;
  // The other way round: places of the box's faces, as deep as they lie in the tube.
  const onFace = (axis: number, side: number, u: number, v: number): Triple => {
    const at = [0, 0, 0];
    at[axis] = side * block.half[axis]!;
    at[(axis + 1) % 3] = u * block.half[(axis + 1) % 3]!;
    at[(axis + 2) % 3] = v * block.half[(axis + 2) % 3]!;
    return at.reduce<Triple>((p, each, i) => along(p, block.axes[i]!, each), block.centre);
  };
  const kept = (share: number): number => Math.min(1, Math.max(-1, share));
  for (const axis of [0, 1, 2]) {
    for (const side of [-1, 1]) {
      const [forU, forV] = [STEP / block.half[(axis + 1) % 3]!, STEP / block.half[(axis + 2) % 3]!];
      let best = { value: 0, u: 0, v: 0 };
      for (let u = -1; u <= 1; u += forU) {
        for (let v = -1; v <= 1; v += forV) {
          const value = tube.depth(onFace(axis, side, u, v));
          if (value < best.value) best = { value, u, v };
        }
      }
      for (let step = 1, missed = 0; step > 1e-4;) {
        const u = kept(best.u + draw.between(-step, step) * forU);
        const v = kept(best.v + draw.between(-step, step) * forV);
        const value = tube.depth(onFace(axis, side, u, v));
        if (value < best.value) {
          best = { value, u, v };
          missed = 0;
        } else if (++missed > 24) [missed, step] = [0, step / 2];
      }
      least = Math.min(least, best.value < 0 ? best.value : Infinity);
    }
  }
  return least;
}
