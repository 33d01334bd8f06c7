/**
 * A direction as an angle finder or a level shows it, and back. Car axes: x forward, y left, z up.
 *
 * Off plumb: what one sees of it from the side and from the front, each against the plumb line in that view: tan of the angle is the way forward, or
 * to the left, over the way up or down. Off level: its own slope, which a level laid along it shows, and where it heads seen from above.
 * A level direction has no lean off plumb; a plumb one no heading, and none is made up: it heads forward.
 */
import { toDegrees, toRadians, type Degrees } from './angle.ts';
import { ANGLE_ROUNDING } from './tolerance.ts';
import { normalize, type Vec3 } from './vector.ts';

export interface OffPlumb {
  readonly down: boolean;
  /** Seen from the side: towards the front of the car, -90..90. */
  readonly forward: Degrees;
  /** Seen from the front: towards the left side of the car, -90..90. */
  readonly left: Degrees;
}

export interface OffLevel {
  /** Above level, -90..90. */
  readonly slope: Degrees;
  /** Seen from above: 0 forward, 90 to the left, -90 to the right, (-180, 180]. */
  readonly heading: Degrees;
}

/** How a direction of any length leans off plumb, degrees; null of a level one. */
export function offPlumb(direction: Vec3): OffPlumb | null {
  const [x, y, z] = normalize(direction);
  if (Math.abs(z) <= ANGLE_ROUNDING) return null;
  const up = Math.abs(z);
  return { down: z < 0, forward: toDegrees(Math.atan2(x, up)), left: toDegrees(Math.atan2(y, up)) };
}

/** The unit direction that leans so; NaN where a lean is 90 degrees or more. */
export function leaning({ down, forward, left }: OffPlumb): Vec3 {
  const [x, y] = [Math.tan(toRadians(forward)), Math.tan(toRadians(left))];
  return Math.max(Math.abs(forward), Math.abs(left)) < 90 ? normalize([x, y, down ? -1 : 1]) : [NaN, NaN, NaN];
}

/** The slope and the heading of a direction of any length, degrees. */
export function offLevel(direction: Vec3): OffLevel {
  const [x, y, z] = normalize(direction);
  const flat = Math.hypot(x, y);
  const heading = flat <= ANGLE_ROUNDING ? 0 : toDegrees(Math.atan2(y, x));
  return { slope: toDegrees(Math.atan2(z, flat)), heading: heading === -180 ? 180 : heading };
}

/** The unit direction of that slope and heading. */
export function sloping({ slope, heading }: OffLevel): Vec3 {
  const [s, h] = [toRadians(slope), toRadians(heading)];
  return [Math.cos(s) * Math.cos(h), Math.cos(s) * Math.sin(h), Math.sin(s)];
}
