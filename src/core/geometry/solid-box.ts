/**
 * A box turned in space, and the place of a piece of a path nearest to it.
 *
 * The signed distance g to a box (negative inside) is convex, and changes by at most 1 mm a mm. Along a straight line it
 * stays convex. Along an arc of radius R, counted in mm, it may bend down, but by no more than 1/R: g + s^2/(2R) is
 * convex. So the slope at the middle of a stretch of half-width w bounds g there from below by g - |g'| w - w^2/(2R), and
 * stretches that cannot hold the minimum are dropped: the answer is exact to CERTAINTY, not sampled
 * (docs/maths/clearance.md).
 */
import { mat3, quat, vec3 } from 'gl-matrix';
import type { Radians } from './angle.ts';
import type { Piece } from './path.ts';
import { scale, subtract, type Vec3 } from './vector.ts';

export interface SolidBox {
  readonly centre: Vec3;
  /** Half of the size along each of its own axes. */
  readonly half: Vec3;
  /** Its own axes as unit vectors. */
  readonly axes: readonly [Vec3, Vec3, Vec3];
}

/** A box of full `size` turned about the fixed x, then y, then z axis. */
export function boxFrame(centre: Vec3, size: Vec3, rotation: readonly [Radians, Radians, Radians]): SolidBox {
  const about = (axis: [number, number, number], angle: number) => quat.setAxisAngle([0, 0, 0, 1], axis, angle);
  const turn = quat.multiply(
    [0, 0, 0, 1],
    about([0, 0, 1], rotation[2]),
    quat.multiply([0, 0, 0, 1], about([0, 1, 0], rotation[1]), about([1, 0, 0], rotation[0])),
  );
  const matrix = mat3.fromQuat([1, 0, 0, 0, 1, 0, 0, 0, 1], turn);
  const axis = (unit: [number, number, number]) =>
    vec3.transformMat3([0, 0, 0], unit, matrix) as [number, number, number];
  return { centre, half: scale(size, 0.5), axes: [axis([1, 0, 0]), axis([0, 1, 0]), axis([0, 0, 1])] };
}

/** mm. The distance found is at most this much more than the least. */
const CERTAINTY = 1e-9;

/** Signed distance of a place to the box's surface, mm, negative inside, and its (sub)gradient, a unit vector in car axes. */
export function signedDistanceToBox(p: Vec3, box: SolidBox): { readonly distance: number; readonly gradient: Vec3 } {
  const { distance, gradient } = signedDistance(toOwnAxes(subtract(p, box.centre), box), box.half);
  return { distance, gradient: toCarAxes(gradient, box) };
}

/** The same distance alone, for a search that asks it some thousand times. */
export function distanceToBox(p: Vec3, { centre, half, axes: [a, b, c] }: SolidBox): number {
  const [x, y, z] = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
  const u = Math.abs(x * a[0] + y * a[1] + z * a[2]) - half[0];
  const v = Math.abs(x * b[0] + y * b[1] + z * b[2]) - half[1];
  const w = Math.abs(x * c[0] + y * c[1] + z * c[2]) - half[2];
  const most = Math.max(u, v, w);
  if (most <= 0) return most;
  const [ou, ov, ow] = [Math.max(u, 0), Math.max(v, 0), Math.max(w, 0)];
  return Math.sqrt(ou * ou + ov * ov + ow * ow);
}

/** A place of a piece, mm along it from its start, and its signed distance: negative in the box. */
export interface NearestOnPiece {
  readonly distance: number;
  readonly along: number;
}

/** The place of a piece nearest to the box, to CERTAINTY; of one that goes through it the deepest. */
export function nearestToBox(piece: Piece, box: SolidBox): NearestOnPiece {
  let best: NearestOnPiece = { distance: Infinity, along: 0 };
  const inOwn = (v: Vec3) => toOwnAxes(v, box);
  const arc = piece.kind === 'arc' ? piece : null;
  const curvature = arc === null ? 0 : 1 / arc.radius;
  const anchor = inOwn(subtract(arc === null ? piece.from : arc.centre, box.centre));
  const spoke = arc === null ? anchor : inOwn(subtract(arc.from, arc.centre));
  const travel = inOwn(piece.startTangent);
  const place: [number, number, number] = [0, 0, 0];
  const tangent: [number, number, number] = [0, 0, 0];
  const stretches = [piece.length / 2, piece.length / 2];
  while (stretches.length > 0) {
    const half = stretches.pop()!;
    const middle = stretches.pop()!;
    const [c, s] = arc === null ? [1, middle] : [Math.cos(middle / arc.radius), Math.sin(middle / arc.radius)];
    for (let axis = 0; axis < 3; axis++) {
      if (arc === null) {
        place[axis] = anchor[axis]! + s * travel[axis]!;
        tangent[axis] = travel[axis]!;
      } else {
        place[axis] = anchor[axis]! + c * spoke[axis]! + s * arc.radius * travel[axis]!;
        tangent[axis] = c * travel[axis]! - (s * spoke[axis]!) / arc.radius;
      }
    }
    const { distance, gradient } = signedDistance(place, box.half);
    if (distance < best.distance) best = { distance, along: middle };
    const slope = gradient[0] * tangent[0] + gradient[1] * tangent[1] + gradient[2] * tangent[2];
    const least = distance - Math.abs(slope) * half - (curvature * half * half) / 2;
    if (least >= best.distance - CERTAINTY) continue;
    const quarter = half / 2;
    // On a line the distance is convex, and the minimum downhill; an arc's far half may still hold it.
    if (arc === null) stretches.push(middle - Math.sign(slope) * quarter, quarter);
    else stretches.push(middle + Math.sign(slope) * quarter, quarter, middle - Math.sign(slope) * quarter, quarter);
  }
  return best;
}

/** Signed distance to the box's surface and its (sub)gradient, a unit vector; both in the box's own axes. */
function signedDistance(own: Vec3, half: Vec3): { distance: number; gradient: Vec3 } {
  const x = Math.abs(own[0]) - half[0];
  const y = Math.abs(own[1]) - half[1];
  const z = Math.abs(own[2]) - half[2];
  const [sx, sy, sz] = [own[0] < 0 ? -1 : 1, own[1] < 0 ? -1 : 1, own[2] < 0 ? -1 : 1];
  const [ox, oy, oz] = [Math.max(x, 0), Math.max(y, 0), Math.max(z, 0)];
  const distance = Math.sqrt(ox * ox + oy * oy + oz * oz);
  if (distance > 0) return { distance, gradient: [(sx * ox) / distance, (sy * oy) / distance, (sz * oz) / distance] };
  // Inside; or outside by so little that its square is nothing, and then the nearest face gives the way out as well.
  if (x >= y && x >= z) return { distance: x, gradient: [sx, 0, 0] };
  return y >= z ? { distance: y, gradient: [0, sy, 0] } : { distance: z, gradient: [0, 0, sz] };
}

const toOwnAxes = (v: Vec3, { axes: [a, b, c] }: SolidBox): Vec3 => [
  v[0] * a[0] + v[1] * a[1] + v[2] * a[2],
  v[0] * b[0] + v[1] * b[1] + v[2] * b[2],
  v[0] * c[0] + v[1] * c[1] + v[2] * c[2],
];

const toCarAxes = ([x, y, z]: Vec3, { axes: [a, b, c] }: SolidBox): Vec3 => [
  x * a[0] + y * b[0] + z * c[0],
  x * a[1] + y * b[1] + z * c[1],
  x * a[2] + y * b[2] + z * c[2],
];
