/**
 * A rigid tube held as well as can be: the middle between its ends where the middle between their places is, the line between its ends
 * along the line between these, so that what it lacks in length is shared; turned about that line until its corners come nearest to
 * theirs (least squares, in closed form). A straight one is not turned.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  interpolate,
  normalize,
  rejectFrom,
  rotateAbout,
  scale,
  subtract,
  X_AXIS,
  Y_AXIS,
  Z_AXIS,
  type Vec3,
} from '../geometry/vector.ts';
import type { Motion } from './shape.ts';

/** A place of the tube, and where it is to come. */
export type Pair = readonly [is: Vec3, wanted: Vec3];

/** The motion that brings end A and end B, and after them the corners, to their places. */
export function bestMotion([isA, wantedA]: Pair, [isB, wantedB]: Pair, corners: readonly Pair[]): Motion {
  const [from, to] = [interpolate(isA, isB, 0.5), interpolate(wantedA, wantedB, 0.5)];
  // Both ends at one place: no line between them, and it is only shifted.
  const isRing = distance(isA, isB) <= ROUNDING || distance(wantedA, wantedB) <= ROUNDING;
  if (isRing) return { turn: (v) => v, place: (place) => add(to, subtract(place, from)) };
  const [along, wanted] = [normalize(subtract(isB, isA)), normalize(subtract(wantedB, wantedA))];
  // The least turn that takes one direction to the other.
  const axis = cross(along, wanted);
  const cosine = dot(along, wanted);
  const tilted = (v: Vec3): Vec3 =>
    add(add(scale(v, cosine), cross(axis, v)), scale(axis, dot(axis, v) / (1 + cosine)));
  let [sine, straight] = [0, 0];
  for (const [is, aim] of corners) {
    const aside = rejectFrom(tilted(subtract(is, from)), wanted);
    const aimed = rejectFrom(subtract(aim, to), wanted);
    sine += dot(wanted, cross(aside, aimed));
    straight += dot(aside, aimed);
  }
  const twist = Math.hypot(sine, straight) > ROUNDING ? Math.atan2(sine, straight) : 0;
  const [x, y, z] = [X_AXIS, Y_AXIS, Z_AXIS].map((v) => rotateAbout(tilted(v), wanted, twist)) as [Vec3, Vec3, Vec3];
  const turn = (v: Vec3): Vec3 => addScaled(addScaled(scale(x, v[0]), y, v[1]), z, v[2]);
  return { turn, place: (place) => add(to, turn(subtract(place, from))) };
}
