/**
 * What a straight stretch of the car takes up while the cage is lowered past it, as far as a tube can meet it: straight stretches again, of
 * which one meets the tube where the stretch does on its way, and the deepest of them as deep. mm.
 *
 * Raised by D, a stretch from p to q sweeps an upright strip. Where it rests at last it may lie in the tube; else it has passed the tube
 * wholly wherever it met it, and then it went deepest where it comes nearest to the centreline seen from above: the depth is the radius less
 * that distance. Seen from above a straight stretch is nearest to a centreline at an end of one of both, where they cross, or where an arc
 * runs along with it: on an arc c + R (e cos a + f sin a), with n level and square to the stretch, where n . (c - p) + R (n . e cos a + n . f
 * sin a) is 0 or turns. Upright stretches, D long, from these places of the stretch are what is asked, beside the stretch at rest.
 */
import { stretchBetween, type Stretch } from '../gaps/stretch-gap.ts';
import { placeOnPiece, type ArcPiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, dot, interpolate, subtract, Z_AXIS, type Vec3 } from '../geometry/vector.ts';

/** The stretch at rest, `by` higher, and upright ones; of a place, or a stretch that is upright itself, one in all. */
export function sweptBy({ from, to }: Stretch, by: number, pieces: readonly Piece[]): readonly Stretch[] {
  const up = (p: Vec3): Vec3 => addScaled(p, Z_AXIS, by);
  const [x, y] = [to[0] - from[0], to[1] - from[1]];
  const level = Math.hypot(x, y);
  if (level <= ROUNDING) {
    const [low, high] = from[2] < to[2] ? [from, to] : [to, from];
    return [stretchBetween(low, up(high))];
  }
  const across: Vec3 = [-y / level, x / level, 0];
  const shares = [0, 1];
  for (const piece of pieces) {
    for (const p of nearFromAbove(piece, from, across)) {
      const share = ((p[0] - from[0]) * x + (p[1] - from[1]) * y) / (level * level);
      if (share > 0 && share < 1) shares.push(share);
    }
  }
  return [
    stretchBetween(up(from), up(to)),
    ...shares.map((share) => {
      const at = interpolate(from, to, share);
      return stretchBetween(at, up(at));
    }),
  ];
}

/** Ends of the piece, and where its distance to the upright plane through `p` square to `across` is 0 or turns. */
function nearFromAbove(piece: Piece, p: Vec3, across: Vec3): readonly Vec3[] {
  const off = dot(subtract(piece.from, p), across);
  const ends = [piece.from, piece.to];
  if (piece.kind === 'arc') return [...ends, ...turnsOf(piece, p, across).map((a) => placeOnPiece(piece, a).point)];
  const slope = dot(piece.startTangent, across);
  const along = -off / slope;
  return along > 0 && along < piece.length ? [...ends, placeOnPiece(piece, along).point] : ends;
}

/** mm from the arc's start. */
function turnsOf(arc: ArcPiece, p: Vec3, across: Vec3): readonly number[] {
  const cosine = dot(subtract(arc.from, arc.centre), across);
  const sine = dot(arc.startTangent, across) * arc.radius;
  const [size, turn] = [Math.hypot(cosine, sine), Math.atan2(sine, cosine)];
  if (size <= ROUNDING) return [];
  const share = dot(subtract(p, arc.centre), across) / size;
  const away = Math.abs(share) <= 1 ? [Math.acos(share), -Math.acos(share)] : [];
  return [0, Math.PI, ...away]
    .flatMap((angle) => [turn + angle, turn + angle - 2 * Math.PI, turn + angle + 2 * Math.PI])
    .filter((angle) => angle > 0 && angle < arc.angle)
    .map((angle) => angle * arc.radius);
}
