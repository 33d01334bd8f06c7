/**
 * What hides what: the tubes of a view as solid round rods, arcs in steps of at most 6 degrees (0.2 mm of sagitta at a
 * radius of 150 mm, a hundredth of a millimetre on paper), and the test whether a place is seen past them.
 *
 * A place is hidden when the ray from it to the eye runs through a rod. Rods are sought through a grid of cells square to the ray.
 */
import { placeOnPiece, type PathPlace } from '../core/geometry/path.ts';
import { ANGLE_ROUNDING, ROUNDING } from '../core/geometry/tolerance.ts';
import { dot, scale, subtract, type Vec3 } from '../core/geometry/vector.ts';
import type { SolvedTube } from '../core/solve/types.ts';
import { project, type Projected, type View } from './projection.ts';

const ARC_STEP = (6 * Math.PI) / 180;
const CELL = 80;
/** mm: a ray must run this far through a rod to be stopped; what only grazes, or begins on its surface, goes on. */
const GRAZE = 0.3;

interface Rod {
  readonly tube: number;
  /** Place in its tube's row of rods. */
  readonly index: number;
  readonly from: Vec3;
  readonly axis: Vec3;
  readonly length: number;
  readonly radius: number;
}

/** Ends of the centreline's pieces, and places between along arcs; one more than the tube has rods. */
export const jointsOf = ({ path }: SolvedTube): readonly PathPlace[] =>
  path.pieces.flatMap((piece, i) => {
    const steps = piece.kind === 'arc' ? Math.max(1, Math.ceil(piece.angle / ARC_STEP)) : 1;
    const first = i === 0 ? 0 : 1;
    return Array.from({ length: steps + 1 - first }, (_, k) =>
      placeOnPiece(piece, (piece.length * (k + first)) / steps),
    );
  });

/** Whether a place on the surface of rod `index` of tube `tube` is seen; its own and the neighbouring rods do not count. */
export type Seen = (place: Vec3, tube: number, index: number) => boolean;

export function seenPast(tubes: readonly SolvedTube[], view: View): Seen {
  const cells = new Map<string, Rod[]>();
  tubes.forEach((tube, number) => {
    const joints = jointsOf(tube);
    const radius = tube.section.outerDiameter / 2;
    joints.slice(1).forEach(({ point }, index) => {
      const from = joints[index]!.point;
      const along = subtract(point, from);
      const length = Math.sqrt(dot(along, along));
      if (length < ROUNDING) return;
      const rod = { tube: number, index, from, axis: scale(along, 1 / length), length, radius };
      for (const cell of cellsOf(project(view, from), project(view, point), radius)) {
        const held = cells.get(cell);
        if (held === undefined) cells.set(cell, [rod]);
        else held.push(rod);
      }
    });
  });
  return (place, tube, index) => {
    const { x, y } = project(view, place);
    const rods = cells.get(`${Math.floor(x / CELL)},${Math.floor(y / CELL)}`) ?? [];
    return !rods.some(
      (rod) => !(rod.tube === tube && Math.abs(rod.index - index) <= 1) && stops(rod, place, view.toEye),
    );
  };
}

function* cellsOf(from: Projected, to: Projected, radius: number): Generator<string> {
  const cell = (value: number): number => Math.floor(value / CELL);
  for (let x = cell(Math.min(from.x, to.x) - radius); x <= cell(Math.max(from.x, to.x) + radius); x++)
    for (let y = cell(Math.min(from.y, to.y) - radius); y <= cell(Math.max(from.y, to.y) + radius); y++)
      if (isNear(from, to, (x + 0.5) * CELL, (y + 0.5) * CELL, radius + CELL * Math.SQRT1_2)) yield `${x},${y}`;
}

function isNear(from: Projected, to: Projected, x: number, y: number, reach: number): boolean {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / square));
  return Math.hypot(from.x + t * dx - x, from.y + t * dy - y) <= reach;
}

/** Whether the ray from `place` runs through the rod for more than a graze: quadratic in the ray's length, cut off at the rod's ends. */
function stops({ from, axis, length, radius }: Rod, place: Vec3, ray: Vec3): boolean {
  // In single numbers: asked a hundred thousand times for one drawing.
  const [x, y, z] = [place[0] - from[0], place[1] - from[1], place[2] - from[2]];
  const alongRay = ray[0] * axis[0] + ray[1] * axis[1] + ray[2] * axis[2];
  const alongStart = x * axis[0] + y * axis[1] + z * axis[2];
  const a = 1 - alongRay * alongRay;
  const b = x * ray[0] + y * ray[1] + z * ray[2] - alongStart * alongRay;
  const c = x * x + y * y + z * z - alongStart * alongStart - radius * radius;
  let [enters, leaves] = [-Infinity, Infinity];
  if (a < ANGLE_ROUNDING) {
    if (c >= 0) return false;
  } else {
    const discriminant = b * b - a * c;
    if (discriminant <= 0) return false;
    const root = Math.sqrt(discriminant);
    [enters, leaves] = [(-b - root) / a, (-b + root) / a];
  }
  if (Math.abs(alongRay) < ANGLE_ROUNDING) {
    if (alongStart < 0 || alongStart > length) return false;
  } else {
    const [one, other] = [-alongStart / alongRay, (length - alongStart) / alongRay];
    enters = Math.max(enters, Math.min(one, other));
    leaves = Math.min(leaves, Math.max(one, other));
  }
  return leaves - Math.max(enters, GRAZE) > GRAZE;
}
