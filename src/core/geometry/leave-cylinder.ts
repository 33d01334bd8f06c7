/**
 * Where parallel lines lie within a cylinder, and leave it: closed form (docs/maths/cope.md). In the plane square to the cylinder's axis it is
 * a circle, and every line runs along `ahead` there, at the distance `aside` from its middle.
 */
import { keepNearest, keepPassed, type Bundle, type Fan, type Leaving } from './fan.ts';
import { ANGLE_ROUNDING, ROUNDING } from './tolerance.ts';
import { addScaled, cross, dot, length, rejectFrom, scale, subtract, type Vec3 } from './vector.ts';

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

/** A cylinder that the lines run along: a line is within it all the way from one end to the other, or nowhere. */
export interface AlongMet {
  readonly kind: 'along';
  readonly radius: number;
  /** Square to the axis. */
  readonly start: Vec3;
  readonly cos: Vec3;
  readonly sin: Vec3;
  /** Its ends, mm along the lines from their origin. */
  readonly low: number;
  readonly high: number;
}

/** The cylinder about `anchor` + t `axis`, t from `low` to `high`, as these lines at distance `rho` from their axis meet it. */
export function cylinderMet(
  anchor: Vec3,
  axis: Vec3,
  low: number,
  high: number,
  radius: number,
  { origin, direction, reference }: Bundle,
  rho: number,
): CylinderMet | AlongMet {
  const side = cross(direction, reference);
  const cosine = dot(direction, axis);
  const across = addScaled(direction, axis, -cosine);
  const sine = length(across);
  const start = subtract(origin, anchor);
  if (sine < ANGLE_ROUNDING) {
    const from = dot(start, direction);
    const [one, other] = cosine > 0 ? [low, high] : [-high, -low];
    return {
      kind: 'along',
      radius,
      start: rejectFrom(start, direction),
      cos: scale(reference, rho),
      sin: scale(side, rho),
      low: one - ROUNDING - from,
      high: other + ROUNDING - from,
    };
  }
  // Unit vectors square to the axis: `ahead` in the lines' own plane with it, `off` square to both.
  const ahead = scale(across, 1 / sine);
  const off = cross(ahead, axis);
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
  const { cosines, sines } = fan;
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
    const within = (2 * root) / sine;
    let entered = s - within;
    if (bounded) {
      const along = startAlong + c * cosAlong + n * sinAlong + s * cosine;
      const before = along - within * cosine;
      // It comes out of the piece beside, and who knows since when it is within that.
      if (before < low || before > high) entered = -Infinity;
      if (along < low || along > high) {
        if (along > high ? before <= high : before >= low)
          keepPassed(fan, k, s - (along - (along > high ? high : low)) / cosine, entered);
        continue;
      }
    }
    keepNearest(fan, k, s, entered, surface);
  }
}

/** The same against one endless cylinder alone, which no line leaves twice. */
export function leaveEndless(met: CylinderMet, { cosines, sines, nearest, by }: Fan, surface: number): void {
  const { radius, sine, startAhead, cosAhead, sinAhead, startAside, cosAside, sinAside } = met;
  const graze = -2 * radius * ROUNDING;
  for (let k = 0; k < cosines.length; k++) {
    const c = cosines[k]!;
    const n = sines[k]!;
    const aside = startAside + c * cosAside + n * sinAside;
    const square = radius * radius - aside * aside;
    by[k] = surface;
    nearest[k] =
      square < graze ? NaN : ((square > 0 ? Math.sqrt(square) : 0) - (startAhead + c * cosAhead + n * sinAhead)) / sine;
  }
}

/** The stretch of the line of this cosine and sine of phi within the cylinder, a touch counted; null where it passes by. */
export function withinCylinder(
  met: CylinderMet | AlongMet,
  c: number,
  n: number,
): readonly [from: number, to: number] | null {
  if (met.kind === 'along') {
    const off = addScaled(addScaled(met.start, met.cos, c), met.sin, n);
    return length(off) <= met.radius + ROUNDING ? [met.low, met.high] : null;
  }
  const { radius, sine, cosine, low, high } = met;
  const aside = met.startAside + c * met.cosAside + n * met.sinAside;
  const square = radius * radius - aside * aside;
  if (square < -2 * radius * ROUNDING) return null;
  const root = Math.sqrt(Math.max(0, square));
  const middle = -(met.startAhead + c * met.cosAhead + n * met.sinAhead) / sine;
  let [from, to] = [middle - root / sine, middle + root / sine];
  const along = met.startAlong + c * met.cosAlong + n * met.sinAlong;
  if (cosine === 0) return along < low || along > high ? null : [from, to];
  const [one, other] = [(low - along) / cosine, (high - along) / cosine];
  from = Math.max(from, Math.min(one, other));
  to = Math.min(to, Math.max(one, other));
  return from <= to ? [from, to] : null;
}

/**
 * How the cylinder lies where the line of this cosine and sine of phi leaves it, at s. One that runs along it leaves it only at its end
 * and on its surface, where the bend that follows turns away from the line: its normal is square to the line there.
 */
export function cylinderLeft(met: CylinderMet | AlongMet, c: number, n: number, s: number): Leaving {
  if (met.kind === 'along') {
    const off = addScaled(addScaled(met.start, met.cos, c), met.sin, n);
    const turned = addScaled(scale(met.sin, c), met.cos, -n);
    return { s, ahead: 0, around: dot(off, turned) / length(off), half: (met.high - met.low) / 2 };
  }
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
