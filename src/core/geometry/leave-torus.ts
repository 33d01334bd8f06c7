/**
 * Where parallel lines leave a sector of a torus: one quartic a line (docs/maths/cope.md). Axes at the torus's centre: x to
 * where the sector starts, y along its first tangent, z its normal.
 */
import { risingRoots } from '../numerics/quartic.ts';
import { keepNearest, type Bundle, type Fan, type Leaving } from './fan.ts';
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
}

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
  };
}

const roots = new Float64Array(2);

/** `near` only saves steps where it lies near the first line's crossing; NaN where none is known. */
export function leaveTorus(met: TorusMet, fan: Fan, surface: number, near: number): void {
  const { ring, radius, cosEnd, sinEnd } = met;
  const [ux, uy, uz] = met.direction;
  const [ox, oy, oz] = met.start;
  const [cx, cy, cz] = met.cos;
  const [sx, sy, sz] = met.sin;
  const { cosines, sines, nearest, by } = fan;
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
    if (outermost < 0 || !reachesWedge(nearest[k]!, x, y, ux, uy, sinEnd, cosEnd, shift)) continue;
    const m = squared + ring * ring - radius * radius;
    const found = risingRoots(
      2 * m - 4 * ring * ring * (1 - uz * uz),
      8 * ring * ring * z * uz,
      m * m - 4 * ring * ring * (squared - z * z),
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
      keepNearest(nearest, by, k, neighbour, surface);
    }
  }
}

/**
 * False if the line has no part between the sector's two end planes, or that part lies farther from the origin than the
 * crossing it already has, at `nearest`.
 */
function reachesWedge(
  nearest: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  sinEnd: number,
  cosEnd: number,
  shift: number,
): boolean {
  // Inside: y >= 0 and x sinEnd - y cosEnd >= 0, each linear along the line.
  const startValue = y + ROUNDING;
  const endValue = x * sinEnd - y * cosEnd + ROUNDING;
  const endRate = ux * sinEnd - uy * cosEnd;
  if ((uy === 0 && startValue < 0) || (endRate === 0 && endValue < 0)) return false;
  let low = -Infinity;
  let high = Infinity;
  if (uy > 0) low = -startValue / uy;
  else if (uy < 0) high = -startValue / uy;
  if (endRate > 0) low = Math.max(low, -endValue / endRate);
  else if (endRate < 0) high = Math.min(high, -endValue / endRate);
  if (low > high) return false;
  const soonest = Math.max(low - shift, shift - high, 0);
  return !(Math.abs(nearest) <= soonest);
}

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
