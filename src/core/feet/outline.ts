/**
 * Where a tube's outline stands on a plane that cuts it: an ellipse. Places on the plane are [along, across], mm. The half axes are r across
 * the lean and r / cos(lean) with it, r the tube's outer radius and the lean counted from square to the plane (a plane cuts a round cylinder
 * in an ellipse).
 */
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { dot, type Vec3 } from '../geometry/vector.ts';

export type OnPlate = readonly [along: number, across: number];

export interface Outline {
  readonly centre: OnPlate;
  /** The longer first. */
  readonly half: readonly [number, number];
  /** Unit, the way in which the longer axis runs: as the tube leans. Of an upright tube along the plate. */
  readonly lean: OnPlate;
}

/** The plane's axes and the way up from it, unit vectors, square to one another. */
export interface PlateAxes {
  readonly along: Vec3;
  readonly across: Vec3;
  readonly normal: Vec3;
}

/**
 * Of a tube of this outer radius that leaves the place below the plane's origin, `height` under it, along the unit `direction`; mm. Null where
 * it runs along the plane or comes from below it.
 */
export function outlineOn(
  { along, across, normal }: PlateAxes,
  height: number,
  direction: Vec3,
  radius: number,
): Outline | null {
  const up = dot(direction, normal);
  if (up <= ANGLE_ROUNDING) return null;
  const [a, c] = [dot(direction, along), dot(direction, across)];
  const aside = Math.hypot(a, c);
  return {
    centre: [(a * height) / up, (c * height) / up],
    half: [radius / up, radius],
    lean: aside <= ANGLE_ROUNDING ? [1, 0] : [a / aside, c / aside],
  };
}

/** How far it reaches from the plane's origin along each axis: least and greatest, mm. */
export function reachOf({
  centre,
  half,
  lean,
}: Outline): readonly [along: readonly [number, number], across: readonly [number, number]] {
  const span = (axis: 0 | 1): readonly [number, number] => {
    const off = Math.hypot(half[0] * lean[axis], half[1] * lean[axis === 0 ? 1 : 0]);
    return [centre[axis] - off, centre[axis] + off];
  };
  return [span(0), span(1)];
}

/**
 * From the outline to a place of the plane, mm; below zero inside it. The nearest place of an ellipse has its normal through the given one:
 * x = a^2 p / (t + a^2), y = b^2 q / (t + b^2) with the one root t > -b^2 of (a p / (t + a^2))^2 + (b q / (t + b^2))^2 = 1, which falls all
 * the way and is halved in on (Eberly, Distance from a Point to an Ellipse).
 */
export function distanceFrom({ centre, half: [a, b], lean }: Outline, place: OnPlate): number {
  const [x, y] = [place[0] - centre[0], place[1] - centre[1]];
  const [p, q] = [Math.abs(x * lean[0] + y * lean[1]), Math.abs(y * lean[0] - x * lean[1])];
  const inside = (p / a) ** 2 + (q / b) ** 2 < 1;
  const [nearX, nearY] = nearestOf(a, b, p, q);
  const off = Math.hypot(p - nearX, q - nearY);
  return inside ? -off : off;
}

/** Of the quarter with both coordinates at or above zero. */
function nearestOf(a: number, b: number, p: number, q: number): readonly [number, number] {
  if (q === 0) {
    // On the long axis: the two nearest stand aside of it as long as the place lies between the centres of curvature of its ends.
    const ends = (a * a - b * b) / a;
    if (p >= ends) return [a, 0];
    const x = (a * p) / ends;
    return [x, b * Math.sqrt(1 - (x / a) ** 2)];
  }
  let low = -b * b + b * q;
  let high = -b * b + Math.hypot(a * p, b * q);
  for (;;) {
    const t = (low + high) / 2;
    if (t <= low || t >= high) return [(a * a * p) / (t + a * a), (b * b * q) / (t + b * b)];
    const over = ((a * p) / (t + a * a)) ** 2 + ((b * q) / (t + b * b)) ** 2 > 1;
    if (over) low = t;
    else high = t;
  }
}
