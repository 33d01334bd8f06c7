/**
 * A box turned in space, and the place of a path nearest to it.
 *
 * The signed distance g to a box (negative inside) is convex, and changes by at most 1 mm a mm. Along a straight line it
 * stays convex. Along an arc of radius R, counted in mm, it may bend down, but by no more than 1/R: g + s^2/(2R) is
 * convex. So the slope at the middle of a stretch of half-width w bounds g there from below by g - |g'| w - w^2/(2R), and
 * stretches that cannot hold the minimum are dropped: the answer is exact to CERTAINTY, not sampled
 * (docs/maths/clearance.md).
 */
import { mat3, quat, vec3 } from 'gl-matrix';
import type { Radians } from './angle.ts';
import type { Path, Piece } from './path.ts';
import { add, addScaled, dot, rotateAbout, scale, subtract, type Vec3 } from './vector.ts';

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

export interface NearestToBox {
  /** Signed: negative when the path goes through the box, by how deep it goes. */
  readonly distance: number;
  /** The place on the path, and the nearest point of the box's surface. */
  readonly point: Vec3;
  readonly onBox: Vec3;
}

export function nearestToBox(path: Path, box: SolidBox): NearestToBox {
  let best: { distance: number; point: Vec3 } = { distance: Infinity, point: path.pieces[0]!.from };
  for (const piece of path.pieces) best = nearestOfPiece(piece, box, best);
  return { ...best, onBox: surfacePoint(best.point, box) };
}

function nearestOfPiece(piece: Piece, box: SolidBox, best: { distance: number; point: Vec3 }) {
  const curvature = piece.kind === 'arc' ? 1 / piece.radius : 0;
  const stretches = [{ middle: piece.length / 2, half: piece.length / 2 }];
  while (stretches.length > 0) {
    const { middle, half } = stretches.pop()!;
    const { point, tangent } = along(piece, middle);
    const { distance, gradient } = signedDistance(point, box);
    if (distance < best.distance) best = { distance, point };
    const slope = dot(gradient, tangent);
    const least = distance - Math.abs(slope) * half - (curvature * half * half) / 2;
    if (least >= best.distance - CERTAINTY) continue;
    if (curvature === 0 && slope !== 0) {
      // Convex: the minimum is downhill.
      stretches.push({ middle: middle - Math.sign(slope) * (half / 2), half: half / 2 });
    } else {
      stretches.push({ middle: middle + half / 2, half: half / 2 }, { middle: middle - half / 2, half: half / 2 });
    }
  }
  return best;
}

function along(piece: Piece, at: number): { point: Vec3; tangent: Vec3 } {
  if (piece.kind === 'line')
    return { point: addScaled(piece.from, piece.startTangent, at), tangent: piece.startTangent };
  const turned = at / piece.radius;
  return {
    point: add(piece.centre, rotateAbout(subtract(piece.from, piece.centre), piece.normal, turned)),
    tangent: rotateAbout(piece.startTangent, piece.normal, turned),
  };
}

/** Signed distance to the box's surface and its (sub)gradient, a unit vector in car axes. */
function signedDistance(p: Vec3, box: SolidBox): { distance: number; gradient: Vec3 } {
  const own = toOwnAxes(p, box);
  const beyond: [number, number, number] = [0, 0, 0];
  let deepest = 0;
  for (let axis = 0; axis < 3; axis++) {
    beyond[axis] = Math.abs(own[axis]!) - box.half[axis]!;
    if (beyond[axis]! > beyond[deepest]!) deepest = axis;
  }
  if (beyond[deepest]! <= 0) {
    return { distance: beyond[deepest]!, gradient: scale(box.axes[deepest]!, own[deepest]! < 0 ? -1 : 1) };
  }
  const outside = beyond.map((value, axis) => Math.max(value, 0) * (own[axis]! < 0 ? -1 : 1));
  const distance = Math.hypot(...outside);
  return {
    distance,
    gradient: toCarAxes([outside[0]! / distance, outside[1]! / distance, outside[2]! / distance], box),
  };
}

const toOwnAxes = (p: Vec3, { centre, axes }: SolidBox): Vec3 => {
  const from = subtract(p, centre);
  return [dot(from, axes[0]), dot(from, axes[1]), dot(from, axes[2])];
};

const toCarAxes = (own: Vec3, { axes }: SolidBox): Vec3 =>
  add(add(scale(axes[0], own[0]), scale(axes[1], own[1])), scale(axes[2], own[2]));

function surfacePoint(p: Vec3, box: SolidBox): Vec3 {
  const { distance, gradient } = signedDistance(p, box);
  return addScaled(p, gradient, -distance);
}
