/**
 * Which pieces of a run tube's axis a straight stretch of another tube's axis comes near: by closed form for straights, by steps of what is left
 * over for arcs that are not seen to be clear by the ball on their chord.
 */
import { foot, setFoot } from '../geometry/foot.ts';
import type { ArcPiece, Path } from '../geometry/path.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { dot, type Vec3 } from '../geometry/vector.ts';

/** A straight stretch of an axis: the places `origin` + s `direction`, s from `from` to `to`, mm. */
export interface Stretch {
  readonly origin: Vec3;
  readonly direction: Vec3;
  readonly from: number;
  readonly to: number;
}

/** A piece of a run tube's axis: an arc, or the straight from `from` along `axis` between `low` and `high`, which are endless at the axis's ends. */
export interface AxisPiece {
  readonly arc: ArcPiece | null;
  readonly from: Vec3;
  readonly axis: Vec3;
  readonly low: number;
  readonly high: number;
}

const known = new WeakMap<Path, readonly AxisPiece[]>();

/** The pieces of an axis in their order, its two ends prolonged without limit. Kept as long as the path. */
export function axisPieces(path: Path): readonly AxisPiece[] {
  const before = known.get(path);
  if (before !== undefined) return before;
  const { pieces } = path;
  const [first, last] = [pieces[0]!, pieces[pieces.length - 1]!];
  const straight = (from: Vec3, axis: Vec3, low: number, high: number): AxisPiece => ({
    arc: null,
    from,
    axis,
    low,
    high,
  });
  const all: AxisPiece[] = [];
  if (first.kind === 'arc') all.push(straight(first.from, first.startTangent, -Infinity, 0));
  for (const piece of pieces) {
    if (piece.kind === 'arc') all.push({ arc: piece, from: piece.from, axis: piece.startTangent, low: 0, high: 0 });
    else {
      const [low, high] = [piece === first ? -Infinity : 0, piece === last ? Infinity : piece.length];
      all.push(straight(piece.from, piece.startTangent, low, high));
    }
  }
  if (last.kind === 'arc') all.push(straight(last.to, last.endTangent, 0, Infinity));
  known.set(path, all);
  return all;
}

/** Steps along an arc's neighbourhood, before it counts as near. */
const MOST_STEPS = 60;

/** The pieces that the stretch comes nearer to than `room`, mm; one that cannot be told apart from that counts as near. */
export const piecesNear = (pieces: readonly AxisPiece[], stretch: Stretch, room: number): AxisPiece[] =>
  pieces.filter((piece) =>
    piece.arc === null ? isStraightNear(piece, stretch, room) : isArcNear(piece.arc, stretch, room),
  );

/** How far a place is from a piece, mm. */
export function awayFrom({ arc, from, axis, low, high }: AxisPiece, p: Vec3): number {
  if (arc !== null) {
    setFoot(arc, p);
    return foot.apart;
  }
  const [x, y, z] = [p[0] - from[0], p[1] - from[1], p[2] - from[2]];
  const along = held(x * axis[0] + y * axis[1] + z * axis[2], low, high);
  return Math.hypot(x - along * axis[0], y - along * axis[1], z - along * axis[2]);
}

const held = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);

/** The least distance of two straight stretches: that of the endless lines, held to one and then to the other. */
function isStraightNear(
  { from: q, axis: v, low, high }: AxisPiece,
  { origin: p, direction: u, from, to }: Stretch,
  room: number,
): boolean {
  const [x, y, z] = [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  const cosine = dot(u, v);
  const onOwn = x * u[0] + y * u[1] + z * u[2];
  const onOther = x * v[0] + y * v[1] + z * v[2];
  const sine2 = 1 - cosine * cosine;
  let s = sine2 > ANGLE_ROUNDING ? held((cosine * onOther - onOwn) / sine2, from, to) : from;
  const t = held(onOther + s * cosine, low, high);
  s = held(t * cosine - onOwn, from, to);
  const again = held(onOther + s * cosine, low, high);
  return squared(x + s * u[0] - again * v[0], y + s * u[1] - again * v[1], z + s * u[2] - again * v[2]) < room * room;
}

function isArcNear(arc: ArcPiece, { origin: p, direction: u, from, to }: Stretch, room: number): boolean {
  const { from: a, to: b } = arc;
  const [x, y, z] = [(a[0] + b[0]) / 2 - p[0], (a[1] + b[1]) / 2 - p[1], (a[2] + b[2]) / 2 - p[2]];
  const half = Math.sqrt(squared(b[0] - a[0], b[1] - a[1], b[2] - a[2])) / 2 + room;
  const middle = x * u[0] + y * u[1] + z * u[2];
  const within = half * half - squared(x - middle * u[0], y - middle * u[1], z - middle * u[2]);
  if (within <= 0) return false;
  const chord = Math.sqrt(within);
  const last = Math.min(to, middle + chord);
  let steps = 0;
  for (let s = Math.max(from, middle - chord); s < last;) {
    setFoot(arc, [p[0] + s * u[0], p[1] + s * u[1], p[2] + s * u[2]]);
    const gap = foot.apart - room;
    if (gap <= 0 || steps++ > MOST_STEPS) return true;
    s += gap;
  }
  return false;
}

const squared = (x: number, y: number, z: number): number => x * x + y * y + z * z;
