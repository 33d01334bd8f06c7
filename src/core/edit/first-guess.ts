/**
 * Where a point is thought to be that was just named by a measurement: the adjustment begins there, and nobody is asked for coordinates. The side
 * of the car is in its name; what is read along an axis is that coordinate; else it is near the point that it was measured from.
 */
import { ORIGIN, type Vec3 } from '../geometry/vector.ts';
import { toRadians } from '../geometry/angle.ts';
import { sideInName } from '../survey/point-pairs.ts';
import { COORDINATE_OF, type Way } from '../survey/ways.ts';

/** mm. Half of what a car is wide inside, about: of a point of which nothing but its side is known. */
const ASIDE = 500;

/** mm. How far from one another two points are between which a level is laid, about. */
const APART = 500;

/** What was read, and the place of the other point, null where there is none; `isFrom`: the new point is the one measured from. */
export interface ReadAt {
  readonly way: Way;
  /** mm, or degrees of a slope. */
  readonly value: number;
  readonly other: Vec3 | null;
  readonly isFrom: boolean;
}

/** mm, car axes. */
export function firstGuess(name: string, { way, value, other, isFrom }: ReadAt): Vec3 {
  const [x, y, z] = other ?? ORIGIN;
  const side = sideInName(name);
  const aside = side === null ? y : side * (Math.abs(y) || ASIDE);
  const sign = isFrom ? -1 : 1;
  switch (way) {
    case 'station':
    case 'offset':
    case 'height':
    case 'width':
      return withRead([x, aside, z], way, value, side ?? 1);
    case 'level':
      return [x, aside, z + sign * value];
    case 'plumb':
      return [x, y, z];
    case 'slope': {
      const angle = toRadians(value);
      return [x + sign * APART * Math.cos(angle), aside, z + sign * APART * Math.sin(angle)];
    }
    case 'distance': {
      const across = Math.max(-value, Math.min(value, aside - y));
      return [x, y + across, z + Math.sqrt(value * value - across * across)];
    }
  }
}

/** The place with what was read of it: a coordinate, or the width over it on its side. */
export function withRead(
  [x, y, z]: Vec3,
  way: 'station' | 'offset' | 'height' | 'width',
  value: number,
  side: 1 | -1,
): Vec3 {
  if (way === 'width') return [x, (side * value) / 2, z];
  const axis = COORDINATE_OF[way];
  return axis === 'x' ? [value, y, z] : axis === 'y' ? [x, value, z] : [x, y, value];
}
