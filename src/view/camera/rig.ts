/**
 * Where the bay is seen from, and how that is moved. The view is orthographic, as a drawing is: equal lengths in one
 * plane read equal on the screen, and a standard view is a true elevation.
 */
import { ANGLE_ROUNDING } from '../../core/geometry/tolerance.ts';
import { add, addScaled, cross, dot, scale, subtract, type Vec3 } from '../../core/geometry/vector.ts';

export interface Rig {
  /** The place in the middle of the bay, car axes, mm. */
  readonly target: Vec3;
  /** Direction from the target to the eye: about z from forward, and above the floor; radians. */
  readonly yaw: number;
  readonly pitch: number;
  /** Height of the bay in mm at the car. */
  readonly span: number;
}

/** The screen's own axes in car axes: unit vectors to the right, up, and towards the eye. */
export interface ScreenAxes {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly toEye: Vec3;
}

/** Room round what is fitted. */
const MARGIN = 1.1;

const LEAST_SPAN = 20;
const GREATEST_SPAN = 40_000;
const QUARTER = Math.PI / 2;

export function screenAxes({ yaw, pitch }: Rig): ScreenAxes {
  const toEye: Vec3 = [Math.cos(pitch) * Math.cos(yaw), Math.cos(pitch) * Math.sin(yaw), Math.sin(pitch)];
  const up: Vec3 = [-Math.sin(pitch) * Math.cos(yaw), -Math.sin(pitch) * Math.sin(yaw), Math.cos(pitch)];
  return { right: cross(up, toEye), up, toEye };
}

const clamp = (value: number, least: number, greatest: number): number => Math.min(greatest, Math.max(least, value));

/** Turns about a place, which stays where it is on the screen; the poles are reached but not passed. */
export function orbit(rig: Rig, yaw: number, pitch: number, about: Vec3 = rig.target): Rig {
  const turned = { ...rig, yaw: rig.yaw + yaw, pitch: clamp(rig.pitch + pitch, -QUARTER, QUARTER) };
  const [before, after] = [screenAxes(rig), screenAxes(turned)];
  const off = subtract(rig.target, about);
  return {
    ...turned,
    target: AXES.reduce<Vec3>((target, axis) => addScaled(target, after[axis], dot(off, before[axis])), about),
  };
}
const AXES = ['right', 'up', 'toEye'] as const;

/** Moves what is seen by so many mm to the right and up on the screen. */
export function pan(rig: Rig, right: number, up: number): Rig {
  const axes = screenAxes(rig);
  return { ...rig, target: addScaled(addScaled(rig.target, axes.right, -right), axes.up, -up) };
}

/** Zooms by a factor (below 1 is closer); the place so many mm right of and above the middle stays where it is. */
export function zoom(rig: Rig, factor: number, right = 0, up = 0): Rig {
  const span = clamp(rig.span * factor, LEAST_SPAN, GREATEST_SPAN);
  const kept = 1 - span / rig.span;
  return { ...pan(rig, -right * kept, -up * kept), span };
}

/** Looks along -`toEye`; straight down or up keeps the yaw it had. */
export function lookFrom(rig: Rig, toEye: Vec3): Rig {
  const level = Math.hypot(toEye[0], toEye[1]);
  return {
    ...rig,
    yaw: level > ANGLE_ROUNDING ? Math.atan2(toEye[1], toEye[0]) : rig.yaw,
    pitch: Math.atan2(toEye[2], level),
  };
}

/** The bay in pixels, and how much of its lower and of its upper edge is covered. */
export interface FitArea {
  readonly width: number;
  readonly height: number;
  readonly below: number;
  readonly above?: number;
}

/**
 * Brings all the points into the bay, clear of what covers its edges, with a margin; keeps the direction of view.
 * No points: the rig as it was. `leastSpan` keeps a single point from filling the bay.
 */
export function fitPoints(
  rig: Rig,
  points: readonly Vec3[],
  { width, height, below, above = 0 }: FitArea,
  leastSpan = 300,
): Rig {
  if (points.length === 0) return rig;
  const { right, up, toEye } = screenAxes(rig);
  const extent = (axis: Vec3): { middle: number; size: number } => {
    let [least, greatest] = [Infinity, -Infinity];
    for (const point of points) {
      const along = dot(point, axis);
      least = Math.min(least, along);
      greatest = Math.max(greatest, along);
    }
    return { middle: (least + greatest) / 2, size: greatest - least };
  };
  const across = extent(right);
  const high = extent(up);
  const deep = extent(toEye);
  const free = Math.max(height - below - above, height / 2);
  const covered = height - free;
  const mmPerPixel = clamp(
    MARGIN * Math.max(high.size / free, across.size / width),
    leastSpan / height,
    GREATEST_SPAN / height,
  );
  // The middle of the free part lies above the bay's own middle by half of what is covered more below than above.
  const lifted = covered === 0 ? 0 : (covered * (below - above)) / (below + above) / 2;
  const middle = high.middle - lifted * mmPerPixel;
  const target = add(add(scale(right, across.middle), scale(up, middle)), scale(toEye, deep.middle));
  return { ...rig, target, span: mmPerPixel * height };
}

/** Between two rigs; t = 0 gives a. Turns the shorter way round. */
export function blendRigs(a: Rig, b: Rig, t: number): Rig {
  const turn = Math.atan2(Math.sin(b.yaw - a.yaw), Math.cos(b.yaw - a.yaw));
  return {
    target: addScaled(a.target, addScaled(b.target, a.target, -1), t),
    yaw: a.yaw + turn * t,
    pitch: a.pitch + (b.pitch - a.pitch) * t,
    span: a.span * (b.span / a.span) ** t,
  };
}
