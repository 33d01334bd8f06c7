/**
 * Angles. Radians inside the core, degrees in files and on screen. The two are flavoured types: a plain number fits
 * either, but one is not accepted where the other is asked for.
 */
import { cross, dot, length, type Vec3 } from './vector.ts';

export type Radians = number & { readonly unit?: 'radians' };
export type Degrees = number & { readonly unit?: 'degrees' };

/** Between the two, exact but for rounding. */
export const toDegrees = (angle: Radians): Degrees => (angle * 180) / Math.PI;
export const toRadians = (angle: Degrees): Radians => (angle * Math.PI) / 180;

/** Angle between two directions, 0..pi. atan2 of cross and dot: exact near 0 and pi, where acos loses half its digits. */
export const angleBetween = (a: Vec3, b: Vec3): Radians => Math.atan2(length(cross(a, b)), dot(a, b));

/**
 * Signed angle that turns a onto b, right-hand positive about the unit vector `axis`; a and b square to it.
 * In (-pi, pi].
 */
export function signedAngle(a: Vec3, b: Vec3, axis: Vec3): Radians {
  return wrapHalfTurn(Math.atan2(dot(cross(a, b), axis), dot(a, b)));
}

/** Radians: what adding whole turns leaves over. */
const PAST_HALF = 1e-12;

/** The same direction, in (-pi, pi]; rounding that lands just past half a turn counts as half a turn. */
export function wrapHalfTurn(angle: Radians): Radians {
  const turns = angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
  return turns <= -Math.PI + PAST_HALF ? Math.PI : turns;
}
