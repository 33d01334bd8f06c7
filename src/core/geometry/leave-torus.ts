/**
 * Where parallel lines lie within a sector of a torus, and leave it: one quartic a line (docs/maths/cope.md). Axes at the torus's centre: x to
 * where the sector starts, y along its first tangent, z its normal.
 */
import type { Radians } from './angle.ts';
import { risingRoots, stretchesBelow, turns } from '../numerics/quartic.ts';
import { keepNearest, keepPassed, linesAt, type Bundle, type Fan, type Leaving, type Touched } from './fan.ts';
import type { ArcPiece } from './path.ts';
import { ROUNDING } from './tolerance.ts';
import { cross, dot, scale, subtract, type Vec3 } from './vector.ts';

/** A sector of a torus as the lines of one bundle meet it: a line's start is start + cos phi * cos + sin phi * sin. */
export interface TorusMet {
  readonly kind: 'torus';
  readonly ring: number;
  readonly radius: number;
  readonly cosEnd: number;
  readonly sinEnd: number;
  /** The lines' direction, and their starts, in the torus's axes. */
  readonly direction: Vec3;
  readonly start: Vec3;
  readonly cos: Vec3;
  readonly sin: Vec3;
  /** What the quartic changes by at most from a degree to the next on or about the surface. */
  readonly degree: number;
}

/** Half as much again as the steepest place of a torus whose ring is four times its radius. */
const STEEPEST = 2;
/** A line may touch so much farther from its start than its crossing lies, mm, and yet be nearer a degree on. */
const FARTHER = 10;
/** Where a line touches is sought a degree and a little from the line that nearly does, radians. */
const TOUCHED_WITHIN = 1.2 * (Math.PI / 180);
/** Towards a line that touches twice nearly in one place each step goes half the way. */
const MOST_STEPS = 16;

/** The torus of an arc, in axes of its own, with these lines at distance `rho` from their axis, mm. */
export function torusMet(
  arc: ArcPiece,
  radius: number,
  { origin, direction, reference }: Bundle,
  rho: number,
): TorusMet {
  const xAxis = scale(subtract(arc.from, arc.centre), 1 / arc.radius);
  const inAxes = (v: Vec3): Vec3 => [dot(v, xAxis), dot(v, arc.startTangent), dot(v, arc.normal)];
  return {
    kind: 'torus',
    ring: arc.radius,
    radius,
    cosEnd: Math.cos(arc.angle),
    sinEnd: Math.sin(arc.angle),
    direction: inAxes(direction),
    start: inAxes(subtract(origin, arc.centre)),
    cos: inAxes(scale(reference, rho)),
    sin: inAxes(scale(cross(direction, reference), rho)),
    degree: STEEPEST * 8 * arc.radius * arc.radius * radius * rho * (Math.PI / 180),
  };
}

const roots = new Float64Array(4);

/** `near` only saves steps where it lies near the first line's crossing; NaN where none is known. */
export const leaveTorus = (met: TorusMet, fan: Fan, surface: number, near: number): void =>
  crossTorus(met, fan, surface, near, null);

const ONE = linesAt([0]);

/** The stretches of the line of this cosine and sine of phi within the sector, touches counted: 0 to 2 pairs [from, to]. */
export function withinTorus(met: TorusMet, c: number, n: number): (readonly [from: number, to: number])[] {
  const within: (readonly [number, number])[] = [];
  ONE.nearest[0] = NaN;
  ONE.cosines[0] = c;
  ONE.sines[0] = n;
  crossTorus(met, ONE, 0, NaN, within);
  return within;
}

/** Notes in the fan where its lines leave, or, if asked for, in `within` where they are inside. */
function crossTorus(
  met: TorusMet,
  fan: Fan,
  surface: number,
  near: number,
  within: (readonly [number, number])[] | null,
): void {
  const { ring, radius, cosEnd, sinEnd, degree } = met;
  const [ux, uy, uz] = met.direction;
  const [ox, oy, oz] = met.start;
  const [cx, cy, cz] = met.cos;
  const [sx, sy, sz] = met.sin;
  const { cosines, sines, nearest, grazes } = fan;
  // The quartic is about 4 R^2 (distance^2 - radius^2) near the surface.
  const touch = 8 * ring * ring * radius * ROUNDING;
  let neighbour = near;
  for (let k = 0; k < cosines.length; k++) {
    const c = cosines[k]!;
    const n = sines[k]!;
    let x = ox + c * cx + n * sx;
    let y = oy + c * cy + n * sy;
    let z = oz + c * cz + n * sz;
    // Count s from the line's point nearest the centre: the quartic then has no cubic term and its numbers stay small.
    const shift = x * ux + y * uy + z * uz;
    x -= shift * ux;
    y -= shift * uy;
    z -= shift * uz;
    const squared = x * x + y * y + z * z;
    const outermost = (ring + radius) * (ring + radius) - squared;
    if (outermost < 0) continue;
    // Between the sector's end planes: y >= 0 and x sinEnd - y cosEnd >= 0, each linear along the line.
    const startValue = y + ROUNDING;
    const endValue = x * sinEnd - y * cosEnd + ROUNDING;
    const endRate = ux * sinEnd - uy * cosEnd;
    if ((uy === 0 && startValue < 0) || (endRate === 0 && endValue < 0)) continue;
    let low = -Infinity;
    let high = Infinity;
    if (uy > 0) low = -startValue / uy;
    else if (uy < 0) high = -startValue / uy;
    if (endRate > 0) low = Math.max(low, -endValue / endRate);
    else if (endRate < 0) high = Math.min(high, -endValue / endRate);
    const held = nearest[k]!;
    if (low > high || Math.abs(held) <= Math.max(low - shift, shift - high, 0)) continue;
    const m = squared + ring * ring - radius * radius;
    const p = 2 * m - 4 * ring * ring * (1 - uz * uz);
    const q = 8 * ring * ring * z * uz;
    const rest = m * m - 4 * ring * ring * (squared - z * z);
    const far = Math.sqrt(outermost) + ROUNDING;
    if (within !== null) {
      const pairs = stretchesBelow(p, q, rest, touch, far, roots);
      for (let r = 0; r < pairs; r++) {
        const [from, to] = [Math.max(roots[2 * r]!, low), Math.min(roots[2 * r + 1]!, high)];
        if (from <= to) within.push([from - shift, to - shift]);
      }
      continue;
    }
    const found = risingRoots(p, q, rest, touch, far, neighbour + shift, roots);
    for (let r = 0; r < found; r++) {
      const root = roots[r]!;
      if (root < low) continue;
      const at = Math.abs(nearest[k]!) + shift;
      const entered = isOutsideTill(Math.max(at, low), root, p, q, rest) ? at - shift : -Infinity;
      if (root <= high) {
        neighbour = root - shift;
        keepNearest(fan, k, neighbour, entered, surface);
      } else if (((high * high + p) * high + q) * high + rest <= 0) keepPassed(fan, k, high - shift, entered);
    }
    if (grazes === null) continue;
    for (let t = 0; t < 3; t++) {
      const turn = turns[t]!;
      if (Math.abs(((turn * turn + p) * turn + q) * turn + rest) < degree)
        grazes.push({ line: k, surface, s: turn - shift });
    }
  }
}

/**
 * Whether the stretch that ends at this rising root has surely not begun at s: that lies before the root's own dip, and the line is
 * outside there, or even before the turn that comes before. Of an s that is NaN nothing is sure.
 */
function isOutsideTill(s: number, root: number, p: number, q: number, rest: number): boolean {
  const last = turns[2]! <= root;
  const dip = last ? turns[2]! : turns[0]!;
  return s < dip && ((last && s < turns[1]!) || ((s * s + p) * s + q) * s + rest > 0);
}

/** Whether the line touches so near that a degree on it may count, where the line's own trim is `trim`. */
export const mayCount = (trim: number, touched: number): boolean => !(Math.abs(touched) > Math.abs(trim) + FARTHER);

/** How the torus lies where the line of this cosine and sine of phi leaves it, at s. */
export function torusLeft(met: TorusMet, c: number, n: number, s: number): Leaving {
  const { ring, radius, direction, start, cos, sin } = met;
  const [ux, uy, uz] = direction;
  const x = start[0] + c * cos[0] + n * sin[0] + s * ux;
  const y = start[1] + c * cos[1] + n * sin[1] + s * uy;
  const z = start[2] + c * cos[2] + n * sin[2] + s * uz;
  // Half the gradient of what is left of the quartic when it is divided by 2: its direction alone counts.
  const bulk = x * x + y * y + z * z + ring * ring - radius * radius;
  const flat = bulk - 2 * ring * ring;
  const [gx, gy, gz] = [flat * x, flat * y, bulk * z];
  const steep = Math.hypot(gx, gy, gz);
  const along = gx * ux + gy * uy + gz * uz;
  const around = gx * (c * sin[0] - n * cos[0]) + gy * (c * sin[1] - n * cos[1]) + gz * (c * sin[2] - n * cos[2]);
  const fromCentre = x * ux + y * uy + z * uz;
  const curved = bulk - 2 * ring * ring * (1 - uz * uz) + 2 * fromCentre * fromCentre;
  return { s, ahead: along / steep, around: around / steep, half: curved > 0 ? along / curved : Infinity };
}

/**
 * The phi at which a line only touches the torus, from a place near it by Newton's steps: there the quartic and its slope along
 * the line are both 0. Null where none lies about a degree from there.
 */
export function torusTouched(met: TorusMet, from: Radians, at: number): Touched | null {
  const { ring, radius, direction, start, cos, sin } = met;
  const [ux, uy, uz] = direction;
  const flat = 4 * ring * ring;
  const touch = 2 * flat * radius * ROUNDING;
  let [phi, s] = [from, at];
  for (let step = 0; step < MOST_STEPS; step++) {
    const [c, n] = [Math.cos(phi), Math.sin(phi)];
    const px = start[0] + c * cos[0] + n * sin[0] + s * ux;
    const py = start[1] + c * cos[1] + n * sin[1] + s * uy;
    const pz = start[2] + c * cos[2] + n * sin[2] + s * uz;
    const [tx, ty, tz] = [c * sin[0] - n * cos[0], c * sin[1] - n * cos[1], c * sin[2] - n * cos[2]];
    const bulk = px * px + py * py + pz * pz + ring * ring - radius * radius;
    const along = px * ux + py * uy + pz * uz;
    const aside = px * tx + py * ty + pz * tz;
    const value = bulk * bulk - flat * (px * px + py * py);
    const slope = 4 * bulk * along - 2 * flat * (px * ux + py * uy);
    const turn = 4 * bulk * aside - 2 * flat * (px * tx + py * ty);
    const slopeBends = 8 * along * along + 4 * bulk - 2 * flat * (ux * ux + uy * uy);
    const slopeTurns = 8 * along * aside - 2 * flat * (ux * tx + uy * ty);
    const scale = slope * slopeTurns - turn * slopeBends;
    if (Math.abs(value) <= touch && Math.abs(slope) <= touch) return { phi, s };
    const [ds, turned] = [(turn * slope - value * slopeTurns) / scale, (value * slopeBends - slope * slope) / scale];
    phi += turned;
    s += ds;
    if (!(Math.abs(phi - from) < TOUCHED_WITHIN)) return null;
  }
  return null;
}
