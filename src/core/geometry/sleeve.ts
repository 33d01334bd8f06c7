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
import type { ArcPiece, Path, Piece } from './path.ts';
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

export const COSINES = Float64Array.from({ length: GENERATORS }, (_, k) => Math.cos((k * Math.PI) / 180));
export const SINES = Float64Array.from({ length: GENERATORS }, (_, k) => Math.sin((k * Math.PI) / 180));

/** Where a bundle of generators starts from: unit vectors, reference square to direction. */
export interface Bundle {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly reference: Vec3;
}

export interface Sleeve {
  readonly path: Path;
  readonly radius: number;
  /** How far from the origin, mm, the lines meet the sleeve at this place of it; see dropElsewhere. */
  readonly reach: number;
}

export interface Trim {
  /** For each generator, mm from the origin along the direction; NaN where it leaves none of the sleeves. */
  readonly trim: Float64Array;
  /** For each sleeve, whether any generator leaves it. */
  readonly reached: readonly boolean[];
}

/**
 * On each generator of radius `rho`, of every sleeve the leaving crossing nearest the origin, and of these the one
 * farthest along the direction: every sleeve takes away what lies before it. Generators parallel to a straight piece
 * never leave it.
 */
export function trimBySleeves(sleeves: readonly Sleeve[], bundle: Bundle, rho: number): Trim {
  const trim = new Float64Array(GENERATORS).fill(NaN);
  const reached = sleeves.map((sleeve) => {
    leavingCrossings(sleeve, bundle, rho);
    if (anyBeyond(sleeve.reach)) dropElsewhere(sleeve, bundle, rho);
    let any = false;
    for (let k = 0; k < GENERATORS; k++) {
      const s = nearest[k]!;
      if (Number.isNaN(s)) continue;
      any = true;
      if (!(trim[k]! >= s)) trim[k] = s;
    }
    return any;
  });
  return { trim, reached };
}

function anyBeyond(reach: number): boolean {
  for (let k = 0; k < GENERATORS; k++) if (Math.abs(nearest[k]!) > reach) return true;
  return false;
}

/**
 * Takes out the crossings at another place of the sleeve: those that lie beyond its reach while the line neither enters
 * it within reach nor runs inside it past the origin. The lines enter where they leave when they are followed backwards.
 */
function dropElsewhere(sleeve: Sleeve, bundle: Bundle, rho: number): void {
  const leaving = nearest.slice();
  leavingCrossings(sleeve, { ...bundle, direction: scale(bundle.direction, -1) }, rho);
  const entering = nearest.slice();
  for (let k = 0; k < GENERATORS; k++) {
    const out = leaving[k]!;
    // Backwards, s changes sign and phi runs the other way about.
    const into = -entering[(GENERATORS - k) % GENERATORS]!;
    const here = Math.abs(out) <= sleeve.reach || Math.abs(into) <= sleeve.reach || (into < 0 && out > 0);
    nearest[k] = here ? out : NaN;
  }
}

/** Scratch of one sleeve's crossings: a derivation makes hundreds, and an array for each is most of its garbage. */
const nearest = new Float64Array(GENERATORS);

/** Writes the leaving crossing nearest the origin on each generator into `nearest`, NaN where there is none. */
function leavingCrossings({ path, radius }: Sleeve, bundle: Bundle, rho: number): void {
  nearest.fill(NaN);
  const first = path.pieces[0]!;
  const last = path.pieces[path.pieces.length - 1]!;
  // A path that begins or ends with an arc (its end straight is zero, or negative) is prolonged from the arc's tangent.
  if (first.kind === 'arc') leaveCylinder(first.from, first.startTangent, -Infinity, 0, radius, bundle, rho);
  if (last.kind === 'arc') leaveCylinder(last.to, last.endTangent, 0, Infinity, radius, bundle, rho);
  for (const piece of path.pieces) {
    if (piece.kind === 'arc') continue;
    const from = piece === first ? -Infinity : 0;
    const to = piece === last ? Infinity : piece.length;
    if (from < 0 || to === Infinity || mayMatter(piece, radius, bundle, rho)) {
      leaveCylinder(piece.from, piece.startTangent, from, to, radius, bundle, rho);
    }
  }
  // Arcs last: where every generator has left nearer by than an arc can be, its quartics need not be solved.
  for (const piece of path.pieces) {
    if (piece.kind === 'arc' && mayMatter(piece, radius, bundle, rho)) leaveTorus(piece, radius, bundle, rho);
  }
}

/**
 * False only if the bundle passes clear of the ball round the piece, or every generator already has a crossing nearer than
 * that ball. A piece of less than half a turn lies in the ball on its chord.
 */
function mayMatter({ from, to }: Piece, radius: number, { origin, direction }: Bundle, rho: number): boolean {
  const middle = subtract(interpolate(from, to, 0.5), origin);
  const ball = distance(from, to) / 2 + radius + ROUNDING;
  if (length(rejectFrom(middle, direction)) > ball + rho) return false;
  const soonest = Math.abs(dot(middle, direction)) - ball;
  for (let k = 0; k < GENERATORS; k++) if (!(Math.abs(nearest[k]!) <= soonest)) return true;
  return false;
}

function keepNearest(k: number, s: number): void {
  if (!(Math.abs(nearest[k]!) <= Math.abs(s))) nearest[k] = s;
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
    if (along >= low - ROUNDING && along <= high + ROUNDING) keepNearest(k, s);
  }
}

const roots = new Float64Array(2);

function leaveTorus(arc: ArcPiece, radius: number, { origin, direction, reference }: Bundle, rho: number): void {
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
  let neighbour = NaN;
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
    const outermost = (big + radius) * (big + radius) - squared;
    if (outermost < 0 || !reachesWedge(k, x, y, ux, uy, sinEnd, cosEnd, shift)) continue;
    const m = squared + big * big - radius * radius;
    const found = risingRoots(
      2 * m - 4 * big * big * (1 - uz * uz),
      8 * big * big * z * uz,
      m * m - 4 * big * big * (squared - z * z),
      touch,
      Math.sqrt(outermost) + ROUNDING,
      neighbour + shift,
      roots,
    );
    for (let r = 0; r < found; r++) {
      const px = x + roots[r]! * ux;
      const py = y + roots[r]! * uy;
      if (py < -ROUNDING || py * cosEnd - px * sinEnd > ROUNDING) continue;
      neighbour = roots[r]! - shift;
      keepNearest(k, neighbour);
    }
  }
}

/**
 * False if the line has no part between the arc's two end planes, or that part lies farther from the origin than the
 * crossing it already has.
 */
function reachesWedge(
  k: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  sinEnd: number,
  cosEnd: number,
  shift: number,
): boolean {
  // Inside: y >= 0 and x sinEnd - y cosEnd >= 0, each linear along the line.
  let low = -Infinity;
  let high = Infinity;
  const rates = [uy, ux * sinEnd - uy * cosEnd];
  const values = [y, x * sinEnd - y * cosEnd];
  for (let plane = 0; plane < 2; plane++) {
    const rate = rates[plane]!;
    const value = values[plane]! + ROUNDING;
    if (rate > 0) low = Math.max(low, -value / rate);
    else if (rate < 0) high = Math.min(high, -value / rate);
    else if (value < 0) return false;
  }
  if (low > high) return false;
  const soonest = Math.max(low - shift, shift - high, 0);
  return !(Math.abs(nearest[k]!) <= soonest);
}
