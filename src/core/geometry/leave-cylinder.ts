/**
 * Where parallel lines leave a cylinder: closed form (docs/maths/cope.md). In the plane square to the cylinder's axis it is
 * a circle, and every line runs along `ahead` there, at the distance `aside` from its middle.
 */
import { keepNearest, type Bundle, type Fan, type Leaving } from './fan.ts';
import { ANGLE_ROUNDING, ROUNDING } from './tolerance.ts';
import { addScaled, cross, dot, length, scale, subtract, type Vec3 } from './vector.ts';

/** A cylinder as the lines of one bundle meet it: each of these is start + cos phi * cos + sin phi * sin. */
export interface CylinderMet {
  readonly kind: 'cylinder';
  readonly radius: number;
  /** Of the angle between lines and axis. */
  readonly sine: number;
  readonly cosine: number;
  readonly startAhead: number;
  readonly cosAhead: number;
  readonly sinAhead: number;
  readonly startAside: number;
  readonly cosAside: number;
  readonly sinAside: number;
  readonly startAlong: number;
  readonly cosAlong: number;
  readonly sinAlong: number;
  readonly low: number;
  readonly high: number;
}

/** The cylinder about `anchor` + t `axis`, t from `low` to `high`; null where the lines run along it and never leave. */
export function cylinderMet(
  anchor: Vec3,
  axis: Vec3,
  low: number,
  high: number,
  radius: number,
  { origin, direction, reference }: Bundle,
  rho: number,
): CylinderMet | null {
  const side = cross(direction, reference);
  const cosine = dot(direction, axis);
  const across = addScaled(direction, axis, -cosine);
  const sine = length(across);
  if (sine < ANGLE_ROUNDING) return null;
  // Unit vectors square to the axis: `ahead` in the lines' own plane with it, `off` square to both.
  const ahead = scale(across, 1 / sine);
  const off = cross(ahead, axis);
  const start = subtract(origin, anchor);
  return {
    kind: 'cylinder',
    radius,
    sine,
    cosine,
    startAhead: dot(start, ahead),
    cosAhead: rho * dot(reference, ahead),
    sinAhead: rho * dot(side, ahead),
    startAside: dot(start, off),
    cosAside: rho * dot(reference, off),
    sinAside: rho * dot(side, off),
    startAlong: dot(start, axis),
    cosAlong: rho * dot(reference, axis),
    sinAlong: rho * dot(side, axis),
    low: low - ROUNDING,
    high: high + ROUNDING,
  };
}

/** A line that passes outside by no more than ROUNDING counts as touching: equal tubes touch on two lines. */
export function leaveCylinder(met: CylinderMet, fan: Fan, surface: number): void {
  const { radius, sine, cosine, low, high } = met;
  const { startAhead, cosAhead, sinAhead, startAside, cosAside, sinAside, startAlong, cosAlong, sinAlong } = met;
  const { cosines, sines, nearest, by } = fan;
  const bounded = low > -Infinity || high < Infinity;
  const graze = -2 * radius * ROUNDING;
  for (let k = 0; k < cosines.length; k++) {
    const c = cosines[k]!;
    const n = sines[k]!;
    const aside = startAside + c * cosAside + n * sinAside;
    const square = radius * radius - aside * aside;
    if (square < graze) continue;
    const root = square > 0 ? Math.sqrt(square) : 0;
    const s = (root - (startAhead + c * cosAhead + n * sinAhead)) / sine;
    if (bounded) {
      const along = startAlong + c * cosAlong + n * sinAlong + s * cosine;
      if (along < low || along > high) continue;
    }
    keepNearest(nearest, by, k, s, surface);
  }
}

/** How the cylinder lies where the line of this cosine and sine of phi leaves it, at s. */
export function cylinderLeft(met: CylinderMet, c: number, n: number, s: number): Leaving {
  const { radius, sine, startAside, cosAside, sinAside, cosAhead, sinAhead } = met;
  const aside = startAside + c * cosAside + n * sinAside;
  const root = Math.sqrt(Math.max(0, radius * radius - aside * aside));
  return {
    s,
    ahead: (root * sine) / radius,
    around: (aside * (c * sinAside - n * cosAside) + root * (c * sinAhead - n * cosAhead)) / radius,
    half: root / sine,
  };
}
