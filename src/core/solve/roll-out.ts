/**
 * A tube laid out from what is done at the machine: straights, rotations, angles, radii. The other way round from the
 * centreline: numbers in, places out.
 */
import type { Radians } from '../geometry/angle.ts';
import { addScaled, cross, normalize, rotateAbout, scale, type Vec3 } from '../geometry/vector.ts';

export interface RolledBend {
  /** Tangent to tangent before this bend, mm; may be negative. */
  readonly straight: number;
  /** Turn of the bend plane from that of the bend before, right-hand about the feed. */
  readonly rotation: Radians;
  readonly angle: Radians;
  readonly radius: number;
}

/** Where the tube begins: unit vectors, normal square to direction, the plane that rotation 0 of the first bend lies in. */
export interface RollStart {
  readonly position: Vec3;
  readonly direction: Vec3;
  readonly normal: Vec3;
}

/** Where the tube is after each bend's second tangent, and at its end after `tail` mm more. */
export function rollOut(start: RollStart, bends: readonly RolledBend[], tail: number): readonly RollStart[] {
  const places: RollStart[] = [];
  let { position, direction, normal } = start;
  for (const bend of bends) {
    normal = normalize(rotateAbout(normal, direction, bend.rotation));
    position = addScaled(position, direction, bend.straight);
    const towards = cross(normal, direction);
    const centre = addScaled(position, towards, bend.radius);
    position = addScaled(centre, rotateAbout(scale(towards, -1), normal, bend.angle), bend.radius);
    direction = normalize(rotateAbout(direction, normal, bend.angle));
    places.push({ position, direction, normal });
  }
  places.push({ position: addScaled(position, direction, tail), direction, normal });
  return places;
}
