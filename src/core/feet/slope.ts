/**
 * How a plate is turned, as a level shows it: which way it faces, and its lean about that. A plate that faces up falls forward by a degrees
 * where its normal leans forward by that in the upright plane along the car: a level laid along the plate there reads a, and one laid across
 * reads the other lean. The normal is then the way it faces + tan(a) of one axis + tan(b) of the other, of any length.
 */
import { toDegrees, toRadians, type Degrees } from '../geometry/angle.ts';
import type { Vec3 } from '../geometry/vector.ts';

/** The ways that a plate may face, by the car. */
export const FACES = ['up', 'down', 'forward', 'back', 'left', 'right'] as const;
export type Face = (typeof FACES)[number];

/** The axis that it faces along, the sense, and the two axes that it may lean towards: of the car's, 0 forward, 1 left, 2 up. */
const FRAMES: Readonly<Record<Face, { axis: 0 | 1 | 2; sense: 1 | -1; towards: readonly [0 | 1 | 2, 0 | 1 | 2] }>> = {
  up: { axis: 2, sense: 1, towards: [0, 1] },
  down: { axis: 2, sense: -1, towards: [0, 1] },
  forward: { axis: 0, sense: 1, towards: [2, 1] },
  back: { axis: 0, sense: -1, towards: [2, 1] },
  left: { axis: 1, sense: 1, towards: [0, 2] },
  right: { axis: 1, sense: -1, towards: [0, 2] },
};

/** What a way of facing means: see the head of the file. */
export const frameOf = (face: Face): (typeof FRAMES)[Face] => FRAMES[face];

export interface Slope {
  readonly face: Face;
  /** Degrees towards each of its two axes, (-90, 90). */
  readonly leans: readonly [Degrees, Degrees];
}

/** The share of the normal that has to point up, or down, for a plate to count as lying that way: 60 degrees off level. */
const LYING = 0.5;

/** The most that a plate is leaned by hand: beyond it faces another way. */
export const GREATEST_LEAN: Degrees = 60;

/** Of a normal of any length but 0. */
export function slopeOf(normal: Vec3): Slope {
  const face = faceOf(normal);
  const { axis, towards } = FRAMES[face];
  const out = Math.abs(normal[axis]);
  // Never minus nothing.
  const lean = (to: 0 | 1 | 2): Degrees => toDegrees(Math.atan2(normal[to], out)) + 0;
  return { face, leans: [lean(towards[0]), lean(towards[1])] };
}

function faceOf(normal: Vec3): Face {
  const [x, y, z] = normal;
  if (Math.abs(z) >= LYING * Math.hypot(x, y, z)) return z > 0 ? 'up' : 'down';
  if (Math.abs(x) >= Math.abs(y)) return x > 0 ? 'forward' : 'back';
  return y > 0 ? 'left' : 'right';
}

/** The normal with one of the leans changed, 0 or 1; the other stays to the last bit. Degrees, less than 90 either way. */
export function leaned(normal: Vec3, which: 0 | 1, lean: Degrees): Vec3 {
  const { axis, towards } = FRAMES[faceOf(normal)];
  const to = towards[which];
  return normal.with(to, Math.abs(normal[axis]) * Math.tan(toRadians(lean))) as unknown as Vec3;
}

/** Square that way, no lean. */
export function facing(face: Face): Vec3 {
  const { axis, sense } = FRAMES[face];
  return [0, 0, 0].with(axis, sense) as unknown as Vec3;
}
