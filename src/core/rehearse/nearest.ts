/**
 * Least distances from a straight segment to a plane, a box, an upright cylinder and another segment.
 *
 * Along a segment the distance to a convex solid is convex, so its least is where the slope of its square changes
 * sign: for a box that square is made of pieces of parabolas and Newton's steps end on it; for the cylinder they close
 * in on it. Both are kept between two places where the slope has opposite signs, and the answer is what the slopes
 * there leave open at most, ROUNDING taken off: never more than the true distance. Inside a solid it is 0, but a
 * plane's is signed. Plain numbers in scratch, since a search asks this a hundred thousand times.
 */
import { distanceOfStrokes, shares } from '../geometry/strokes.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { dot, type Vec3 } from '../geometry/vector.ts';
import type { Solid } from './types.ts';

/** Ends of the segment that is asked about: ax, ay, az, bx, by, bz; mm. */
export const segment = new Float64Array(6);
/** Where on it the last answer was, 0 at its first end to 1. */
export let nearestShare = 0;

/** mm, of `segment` to the solid. */
export function distanceTo({ shape }: Solid): number {
  switch (shape.kind) {
    case 'plane':
      return distanceToPlane(shape.point, shape.normal);
    case 'box':
      return distanceToBox(shape.centre, shape.half, shape.axes);
    case 'cylinder':
      return distanceToCylinder(shape.centre, shape.radius, shape.halfHeight);
  }
}

function distanceToPlane(point: Vec3, [nx, ny, nz]: Vec3): number {
  const level = nx * point[0] + ny * point[1] + nz * point[2];
  const a = nx * segment[0]! + ny * segment[1]! + nz * segment[2]! - level;
  const b = nx * segment[3]! + ny * segment[4]! + nz * segment[5]! - level;
  nearestShare = a <= b ? 0 : 1;
  return Math.min(a, b);
}

/** The segment in the solid's own axes: start and run along each. */
const start = new Float64Array(3);
const run = new Float64Array(3);
/** Of half the squared distance at the share last asked for: itself, its slope, its slope's slope; per share. */
let half = 0;
let slope = 0;
let bend = 0;

function distanceToBox(centre: Vec3, size: Vec3, axes: readonly [Vec3, Vec3, Vec3]): number {
  for (let k = 0; k < 3; k++) {
    const [x, y, z] = axes[k]!;
    start[k] = x * segment[0]! + y * segment[1]! + z * segment[2]! - dot(centre, axes[k]!);
    run[k] = x * (segment[3]! - segment[0]!) + y * (segment[4]! - segment[1]!) + z * (segment[5]! - segment[2]!);
  }
  return leastOf((share) => {
    half = slope = bend = 0;
    for (let k = 0; k < 3; k++) {
      const place = start[k]! + share * run[k]!;
      const over = Math.abs(place) - size[k]!;
      if (over <= 0) continue;
      half += (over * over) / 2;
      slope += place < 0 ? -over * run[k]! : over * run[k]!;
      bend += run[k]! * run[k]!;
    }
  });
}

function distanceToCylinder([cx, cy, cz]: Vec3, radius: number, halfHeight: number): number {
  const [x, y, z] = [segment[0]! - cx, segment[1]! - cy, segment[2]! - cz];
  const [u, v, w] = [segment[3]! - segment[0]!, segment[4]! - segment[1]!, segment[5]! - segment[2]!];
  return leastOf((share) => {
    half = slope = bend = 0;
    const [px, py, pz] = [x + share * u, y + share * v, z + share * w];
    const rho = Math.sqrt(px * px + py * py);
    const out = rho - radius;
    if (out > 0) {
      const rate = (px * u + py * v) / rho;
      half += (out * out) / 2;
      slope += out * rate;
      bend += rate * rate + (out / rho) * (u * u + v * v - rate * rate);
    }
    const over = Math.abs(pz) - halfHeight;
    if (over > 0) {
      half += (over * over) / 2;
      slope += pz < 0 ? -over * w : over * w;
      bend += w * w;
    }
  });
}

const STEPS = 60;

/** Least distance, where `at` sets half its square and the slopes of that for a share of the segment. */
function leastOf(at: (share: number) => void): number {
  at(0);
  nearestShare = 0;
  if (slope >= 0) return Math.sqrt(2 * half);
  let [lowHalf, lowSlope] = [half, slope];
  at(1);
  nearestShare = 1;
  if (slope <= 0) return Math.sqrt(2 * half);
  let low = 0;
  let high = 1;
  let [highHalf, highSlope] = [half, slope];
  let share = 0.5;
  for (let step = 0; step < STEPS; step++) {
    at(share);
    nearestShare = share;
    if (slope === 0) return Math.sqrt(2 * half);
    if (slope < 0) [low, lowHalf, lowSlope] = [share, half, slope];
    else [high, highHalf, highSlope] = [share, half, slope];
    // The tangents at both sides bound the least from below.
    const least = Math.max(lowHalf + lowSlope * (high - low), highHalf - highSlope * (high - low), 0);
    const most = Math.sqrt(2 * half);
    if (most - Math.sqrt(2 * least) <= ROUNDING) return Math.max(0, most - ROUNDING);
    const newton = share - slope / bend;
    share = newton > low && newton < high ? newton : (low + high) / 2;
  }
  return Math.sqrt(2 * Math.max(lowHalf + lowSlope * (high - low), highHalf - highSlope * (high - low), 0));
}

/** The second segment, where the distance between two is asked for. */
export const other = new Float64Array(6);

/** mm, of `segment` to `other`. */
export function distanceBetween(): number {
  const between = distanceOfStrokes(segment, other);
  nearestShare = shares.first;
  return between;
}
