/**
 * The surface at a fixed radius round a path, its end straights prolonged without limit: cylinders joined to sectors of
 * tori. And the crossings of a bundle of parallel lines, the generators of a second cylinder, with it.
 *
 * A generator is  origin + rho (cos phi reference + sin phi (direction x reference)) + s direction,  phi = 0, 1 ... 359
 * degrees. A crossing counts where the line LEAVES the surface as s grows; of those the one nearest s = 0. Straight
 * pieces are closed form, arcs one quartic a line (docs/maths/cope.md). Neighbouring pieces share the plane square to the
 * path between them; each owns its side and ROUNDING beyond, so that no crossing is lost in the joint.
 */
import { risingRoots } from '../numerics/quartic.ts';
import type { ArcPiece, Path } from './path.ts';
import { ANGLE_ROUNDING, ROUNDING } from './tolerance.ts';
import {
  addScaled,
  cross,
  distance,
  dot,
  interpolate,
  length,
  rejectFrom,
  scale,
  subtract,
  type Vec3,
} from './vector.ts';

/** Generators are counted in whole degrees. */
export const GENERATORS = 360;

const COSINES = Float64Array.from({ length: GENERATORS }, (_, k) => Math.cos((k * Math.PI) / 180));
const SINES = Float64Array.from({ length: GENERATORS }, (_, k) => Math.sin((k * Math.PI) / 180));

/** Where a bundle of generators starts from: unit vectors, reference square to direction. */
export interface Bundle {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly reference: Vec3;
}

/**
 * s of the leaving crossing nearest the origin on each generator of radius `rho`, mm; NaN on a generator that never
 * leaves the sleeve of radius `radius` round `path`. Generators parallel to a straight piece never leave it.
 */
export function leavingCrossings(path: Path, radius: number, bundle: Bundle, rho: number): Float64Array {
  const nearest = new Float64Array(GENERATORS).fill(NaN);
  const first = path.pieces[0]!;
  const last = path.pieces[path.pieces.length - 1]!;
  for (const piece of path.pieces) {
    if (piece.kind === 'arc') {
      if (mayMeet(piece.from, piece.to, radius, bundle, rho)) leaveTorus(piece, radius, bundle, rho, nearest);
      continue;
    }
    const from = piece === first ? -Infinity : 0;
    const to = piece === last ? Infinity : piece.length;
    if (from < 0 || to === Infinity || mayMeet(piece.from, piece.to, radius, bundle, rho)) {
      leaveCylinder(piece.from, piece.startTangent, from, to, radius, bundle, rho, nearest);
    }
  }
  // A path that begins or ends with an arc (its end straight is zero, or negative) is prolonged from the arc's tangent.
  if (first.kind === 'arc') leaveCylinder(first.from, first.startTangent, -Infinity, 0, radius, bundle, rho, nearest);
  if (last.kind === 'arc') leaveCylinder(last.to, last.endTangent, 0, Infinity, radius, bundle, rho, nearest);
  return nearest;
}

/** False only if the bundle passes clear of the ball round the piece: an arc of less than half a turn lies in the ball on its chord. */
function mayMeet(from: Vec3, to: Vec3, radius: number, bundle: Bundle, rho: number): boolean {
  const middle = subtract(interpolate(from, to, 0.5), bundle.origin);
  return length(rejectFrom(middle, bundle.direction)) <= distance(from, to) / 2 + radius + rho + ROUNDING;
}

function keepNearest(nearest: Float64Array, k: number, s: number): void {
  const held = nearest[k]!;
  if (!(Math.abs(held) <= Math.abs(s))) nearest[k] = s;
}

/** Cylinder about `anchor` + t `axis`, t from `low` to `high`. */
function leaveCylinder(
  anchor: Vec3,
  axis: Vec3,
  low: number,
  high: number,
  radius: number,
  { origin, direction, reference }: Bundle,
  rho: number,
  nearest: Float64Array,
): void {
  const side = cross(direction, reference);
  const cosine = dot(direction, axis);
  const across = addScaled(direction, axis, -cosine);
  const sine = length(across);
  if (sine < ANGLE_ROUNDING) return;
  // Unit vectors square to the axis: `ahead` in the lines' own plane with it, `off` square to both.
  const ahead = scale(across, 1 / sine);
  const off = cross(ahead, axis);
  const start = subtract(origin, anchor);
  const [startAhead, startOff, startAlong] = [dot(start, ahead), dot(start, off), dot(start, axis)];
  const [cosAhead, cosOff, cosAlong] = [
    rho * dot(reference, ahead),
    rho * dot(reference, off),
    rho * dot(reference, axis),
  ];
  const [sinAhead, sinOff, sinAlong] = [rho * dot(side, ahead), rho * dot(side, off), rho * dot(side, axis)];
  const graze = -2 * radius * ROUNDING;
  for (let k = 0; k < GENERATORS; k++) {
    const c = COSINES[k]!;
    const n = SINES[k]!;
    const aside = startOff + c * cosOff + n * sinOff;
    const square = radius * radius - aside * aside;
    if (square < graze) continue;
    const root = square > 0 ? Math.sqrt(square) : 0;
    const s = (root - (startAhead + c * cosAhead + n * sinAhead)) / sine;
    const along = startAlong + c * cosAlong + n * sinAlong + s * cosine;
    if (along >= low - ROUNDING && along <= high + ROUNDING) keepNearest(nearest, k, s);
  }
}

const roots = new Float64Array(2);

function leaveTorus(
  arc: ArcPiece,
  radius: number,
  { origin, direction, reference }: Bundle,
  rho: number,
  nearest: Float64Array,
): void {
  const side = cross(direction, reference);
  // Axes at the arc's centre: x to where it starts, y along its first tangent, z its normal.
  const xAxis = scale(subtract(arc.from, arc.centre), 1 / arc.radius);
  const start = subtract(origin, arc.centre);
  const [ux, uy, uz] = [dot(direction, xAxis), dot(direction, arc.startTangent), dot(direction, arc.normal)];
  const [ox, oy, oz] = [dot(start, xAxis), dot(start, arc.startTangent), dot(start, arc.normal)];
  const [cx, cy, cz] = [
    rho * dot(reference, xAxis),
    rho * dot(reference, arc.startTangent),
    rho * dot(reference, arc.normal),
  ];
  const [sx, sy, sz] = [rho * dot(side, xAxis), rho * dot(side, arc.startTangent), rho * dot(side, arc.normal)];
  const big = arc.radius;
  const [cosEnd, sinEnd] = [Math.cos(arc.angle), Math.sin(arc.angle)];
  // The quartic is about 4 R^2 (distance^2 - radius^2) near the surface.
  const touch = 8 * big * big * radius * ROUNDING;
  for (let k = 0; k < GENERATORS; k++) {
    const c = COSINES[k]!;
    const n = SINES[k]!;
    let x = ox + c * cx + n * sx;
    let y = oy + c * cy + n * sy;
    let z = oz + c * cz + n * sz;
    // Count s from the line's point nearest the centre: the quartic then has no cubic term and its numbers stay small.
    const shift = x * ux + y * uy + z * uz;
    x -= shift * ux;
    y -= shift * uy;
    z -= shift * uz;
    const squared = x * x + y * y + z * z;
    if (squared > (big + radius) ** 2 + touch) continue;
    const m = squared + big * big - radius * radius;
    const found = risingRoots(
      2 * m - 4 * big * big * (1 - uz * uz),
      8 * big * big * z * uz,
      m * m - 4 * big * big * (squared - z * z),
      touch,
      roots,
    );
    for (let r = 0; r < found; r++) {
      const px = x + roots[r]! * ux;
      const py = y + roots[r]! * uy;
      if (py >= -ROUNDING && py * cosEnd - px * sinEnd <= ROUNDING) keepNearest(nearest, k, roots[r]! - shift);
    }
  }
}
