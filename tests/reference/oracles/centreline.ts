/**
 * A bent tube's centreline from its sharp corners, by a route of its own: the centre of each bend is found on the
 * bisector of the corner, and the tangents by dropping squares from it onto the legs (the program goes by the set-back
 * R tan(t/2)). The end straights are prolonged without end, as the contract says a cutter is.
 */
import { along, difference, inner, size, square, sum, times, unit, type Triple } from './space.ts';

export interface Straight {
  readonly kind: 'straight';
  readonly from: Triple;
  readonly direction: Triple;
  /** Infinite on the first and the last; those begin (or end) beyond every place. */
  readonly length: number;
  /** True on the first: it runs backwards from `from` without end too. */
  readonly openBehind: boolean;
}

export interface Bow {
  readonly kind: 'bow';
  readonly centre: Triple;
  /** Unit vectors: from the centre to the bend's start, and the direction of travel there. */
  readonly toStart: Triple;
  readonly travel: Triple;
  readonly radius: number;
  readonly angle: number;
}

export interface Cutter {
  readonly parts: readonly (Straight | Bow)[];
  /** Outer radius of the tube. */
  readonly radius: number;
}

/** One bend at the corner `at`, between the legs to `before` and `after`. */
export function bowAt(before: Triple, at: Triple, after: Triple, radius: number): Bow {
  const arriving = unit(difference(at, before));
  const leaving = unit(difference(after, at));
  const inward = unit(difference(leaving, arriving));
  const centre = along(at, inward, radius / Math.sqrt(1 - inner(inward, leaving) ** 2));
  const start = along(at, arriving, inner(difference(centre, at), arriving));
  const end = along(at, leaving, inner(difference(centre, at), leaving));
  const toStart = unit(difference(start, centre));
  const toEnd = unit(difference(end, centre));
  return {
    kind: 'bow',
    centre,
    toStart,
    travel: arriving,
    radius,
    angle: Math.atan2(inner(toEnd, arriving), inner(toEnd, toStart)),
  };
}

export function placeOnBow(bow: Bow, angle: number): { at: Triple; direction: Triple } {
  const outwards = sum(times(Math.cos(angle), bow.toStart), times(Math.sin(angle), bow.travel));
  const direction = sum(times(-Math.sin(angle), bow.toStart), times(Math.cos(angle), bow.travel));
  return { at: along(bow.centre, outwards, bow.radius), direction };
}

/** The solid that a run cuts with: its centreline through `corners`, every inner corner rounded to `bendRadius`. */
export function cutterThrough(corners: readonly Triple[], bendRadius: number, radius: number): Cutter {
  const bows = corners.slice(1, -1).map((corner, i) => bowAt(corners[i]!, corner, corners[i + 2]!, bendRadius));
  const parts: (Straight | Bow)[] = [];
  let from = corners[0]!;
  bows.forEach((bow, i) => {
    const start = placeOnBow(bow, 0).at;
    parts.push(
      { kind: 'straight', from, direction: bow.travel, length: size(difference(start, from)), openBehind: i === 0 },
      bow,
    );
    from = placeOnBow(bow, bow.angle).at;
  });
  const last = unit(difference(corners.at(-1)!, corners.at(-2)!));
  parts.push({ kind: 'straight', from, direction: last, length: Infinity, openBehind: bows.length === 0 });
  return { parts, radius };
}

/** Developed length of the tube between its first and last corner. */
export function developed(corners: readonly Triple[], bendRadius: number): number {
  const parts = cutterThrough(corners, bendRadius, 1).parts;
  const last = parts.at(-1) as Straight;
  const tail = size(difference(corners.at(-1)!, last.from));
  return parts
    .slice(0, -1)
    .reduce((total, part) => total + (part.kind === 'bow' ? part.radius * part.angle : part.length), tail);
}

/** Place and direction of travel at a developed length from the first corner. */
export const placeAlong = (corners: readonly Triple[], bendRadius: number, distance: number): Step =>
  walkOf(corners, bendRadius)(distance);

export interface Step {
  readonly at: Triple;
  readonly direction: Triple;
}

/** The same for many places of one tube. */
export function walkOf(corners: readonly Triple[], bendRadius: number): (distance: number) => Step {
  const { parts } = cutterThrough(corners, bendRadius, 1);
  return (distance) => {
    let left = distance;
    for (const part of parts) {
      const length = part.kind === 'bow' ? part.radius * part.angle : part.length;
      if (left <= length) {
        return part.kind === 'bow'
          ? placeOnBow(part, left / part.radius)
          : { at: along(part.from, part.direction, left), direction: part.direction };
      }
      left -= length;
    }
    throw new RangeError('beyond the end');
  };
}

/** Distance from a point to the prolonged centreline. */
export function distanceToCentreline(cutter: Cutter, p: Triple): number {
  let least = Infinity;
  for (const part of cutter.parts)
    least = Math.min(least, part.kind === 'bow' ? distanceToBow(part, p) : distanceToStraight(part, p));
  return least;
}

/** The next two are asked for thousands of places on a line, so they are written out in numbers: no list is made on the way. */
function distanceToStraight({ from, direction, length, openBehind }: Straight, p: Triple): number {
  const [x, y, z] = [p[0] - from[0], p[1] - from[1], p[2] - from[2]];
  const reach = Math.min(x * direction[0] + y * direction[1] + z * direction[2], length);
  const s = openBehind ? reach : Math.max(0, reach);
  const [u, v, w] = [x - s * direction[0], y - s * direction[1], z - s * direction[2]];
  return Math.sqrt(u * u + v * v + w * w);
}

function distanceToBow({ centre, toStart, travel, radius, angle }: Bow, p: Triple): number {
  const [dx, dy, dz] = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
  const x = dx * toStart[0] + dy * toStart[1] + dz * toStart[2];
  const y = dx * travel[0] + dy * travel[1] + dz * travel[2];
  const turned = Math.atan2(y, x);
  // Beyond its ends the straights on either side are nearer, or the end itself is, which is on them.
  if (turned < 0 || turned > angle) return Infinity;
  const height =
    dx * (toStart[1] * travel[2] - toStart[2] * travel[1]) +
    dy * (toStart[2] * travel[0] - toStart[0] * travel[2]) +
    dz * (toStart[0] * travel[1] - toStart[1] * travel[0]);
  const off = Math.sqrt(x * x + y * y) - radius;
  return Math.sqrt(off * off + height * height);
}

/** How far a point is from the prolonged centreline, and which way that runs where it comes nearest. */
export function nearestOfCentreline(cutter: Cutter, p: Triple): { distance: number; direction: Triple } {
  let best = { distance: Infinity, direction: p };
  for (const part of cutter.parts) {
    const distance = part.kind === 'bow' ? distanceToBow(part, p) : distanceToStraight(part, p);
    if (distance >= best.distance) continue;
    const d = part.kind === 'bow' ? difference(p, part.centre) : p;
    best = {
      distance,
      direction:
        part.kind === 'bow'
          ? placeOnBow(part, Math.atan2(inner(d, part.travel), inner(d, part.toStart))).direction
          : part.direction,
    };
  }
  return best;
}

/** The part of v square to u on the side where v runs with u: the acute side of a joint. */
export function acuteSide(u: Triple, v: Triple): Triple {
  return unit(square(inner(u, v) < 0 ? times(-1, v) : v, u));
}
