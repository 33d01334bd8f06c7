/**
 * Vectors in car axes (ISO 8855: x forward, y left, z up), millimetres, double precision.
 *
 * gl-matrix does the arithmetic; every call here hands it a plain array as the target, because the library's own
 * default is a 32-bit Float32Array, which loses the equal-tube tangent and the 0.001 mm that the trade file promises.
 */
import { vec3 } from 'gl-matrix';

export type Vec3 = readonly [number, number, number];

export type Axis = 'x' | 'y' | 'z';

/** Where each coordinate stands in a vector. */
export const AXIS_INDEX: Readonly<Record<Axis, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

/** Forward, left and up, and the datum. */
export const X_AXIS: Vec3 = [1, 0, 0];
export const Y_AXIS: Vec3 = [0, 1, 0];
export const Z_AXIS: Vec3 = [0, 0, 1];
export const ORIGIN: Vec3 = [0, 0, 0];

type Triple = [number, number, number];

/** a + b. */
export const add = (a: Vec3, b: Vec3): Vec3 => vec3.add([0, 0, 0], a, b) as Triple;

/** a − b. */
export const subtract = (a: Vec3, b: Vec3): Vec3 => vec3.subtract([0, 0, 0], a, b) as Triple;

/** k a. */
export const scale = (a: Vec3, k: number): Vec3 => vec3.scale([0, 0, 0], a, k) as Triple;

/** a + k b. */
export const addScaled = (a: Vec3, b: Vec3, k: number): Vec3 => vec3.scaleAndAdd([0, 0, 0], a, b, k) as Triple;

/** a · b. */
export const dot = (a: Vec3, b: Vec3): number => vec3.dot(a, b);

/** a × b, right-handed. */
export const cross = (a: Vec3, b: Vec3): Vec3 => vec3.cross([0, 0, 0], a, b) as Triple;

/** |a|. */
export const length = (a: Vec3): number => vec3.length(a);

/** |b − a|. */
export const distance = (a: Vec3, b: Vec3): number => vec3.distance(a, b);

/** Unit vector of a; the zero vector stays zero, so callers test lengths before they ask for a direction. */
export const normalize = (a: Vec3): Vec3 => vec3.normalize([0, 0, 0], a) as Triple;

/** a + t (b - a); t = 0 gives a. */
export const interpolate = (a: Vec3, b: Vec3, t: number): Vec3 => vec3.lerp([0, 0, 0], a, b, t) as Triple;

/** Part of a that is square to the unit vector `direction`. */
export const rejectFrom = (a: Vec3, direction: Vec3): Vec3 => addScaled(a, direction, -dot(a, direction));

/** Mirror image in the car's centre plane, y = 0. */
export const mirrored = (a: Vec3): Vec3 => [a[0], -a[1], a[2]];

/** a turned by `angle` radians, right-hand about the unit vector `axis` (Rodrigues' formula). */
export function rotateAbout(a: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const along = scale(axis, dot(axis, a) * (1 - c));
  return add(add(scale(a, c), scale(cross(axis, a), Math.sin(angle))), along);
}

/** To the last bit: for what was handed on unchanged. */
export const equal = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
