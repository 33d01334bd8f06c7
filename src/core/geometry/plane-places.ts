/**
 * Where a path has a coordinate: where it crosses, touches or lies in a plane square to one of the axes. In closed form: a line's
 * coordinate is linear, an arc's a cosine about its own extremes (docs/maths/places.md).
 *
 * The path is taken in stretches on each of which the coordinate only rises or only falls. A stretch that keeps within rounding
 * of the plane lies in it; else it meets it once at most. What neighbouring stretches find where they join is one place.
 */
import type { Radians } from './angle.ts';
import { placeOnPiece, type ArcPiece, type Path, type PathPlace, type Piece } from './path.ts';
import { ROUNDING } from './tolerance.ts';

/**
 * Every place, in the order in which the path comes to them. A part of the path that lies in the plane is one place, its first; a
 * touch is one. Their coordinate is `value` to the last digit. Places closer together than rounding can tell (a dip below the plane of less than
 * ROUNDING) are one.
 *
 * @param axis 0, 1, 2: x, y, z
 * @param value mm
 */
export function placesInPlane(path: Path, axis: 0 | 1 | 2, value: number): readonly PathPlace[] {
  const found: Found[] = [];
  let open: { readonly met: Found; readonly atItsEnd: boolean } | null = null;
  for (const piece of path.pieces) {
    for (const stretch of stretchesOf(piece, axis)) {
      const [from, to] = [stretch.atFrom - value, stretch.atTo - value];
      const met = meets(piece, stretch, from, to, axis, value);
      const joined = open !== null && open.atItsEnd && Math.abs(from) <= ROUNDING;
      if (met !== null && !joined) found.push(met);
      // The stretch before came up to rounding and no farther, and this one goes through; or it came in tangent, and this one lies there.
      else if (met !== null && RANK[met.how] > RANK[open!.met.how]) found[found.length - 1] = met;
      open = met === null ? null : { met: found.at(-1)!, atItsEnd: Math.abs(to) <= ROUNDING };
    }
  }
  return found.map(({ piece, along }) => onPlane(placeOnPiece(piece, along), axis, value));
}

/** A part of a path on which a coordinate only rises or only falls, from end A's node; mm. */
export interface Slope {
  readonly from: number;
  readonly to: number;
  /** The coordinate at its ends. */
  readonly atFrom: number;
  readonly atTo: number;
}

/**
 * The longest such part with the place in it: on it the path comes to no coordinate twice. Null where the coordinate does not change there.
 *
 * @param axis 0, 1, 2: x, y, z
 * @param at mm along the path from its start; beyond its ends it is the first or the last part
 */
export function slopeAt(path: Path, axis: 0 | 1 | 2, at: number): Slope | null {
  const all = path.pieces.flatMap((piece) =>
    stretchesOf(piece, axis).map((one) => ({ ...one, from: piece.at + one.from, to: piece.at + one.to })),
  );
  const way = ({ atFrom, atTo }: Slope): number => (Math.abs(atTo - atFrom) <= ROUNDING ? 0 : Math.sign(atTo - atFrom));
  const here = all.findIndex(({ to }) => at <= to);
  let [first, last] = here === -1 ? [all.length - 1, all.length - 1] : [here, here];
  const sense = way(all[first]!);
  if (sense === 0) return null;
  while (first > 0 && way(all[first - 1]!) === sense) first -= 1;
  while (last < all.length - 1 && way(all[last + 1]!) === sense) last += 1;
  const [start, end] = [all[first]!, all[last]!];
  return { from: start.from, to: end.to, atFrom: start.atFrom, atTo: end.atTo };
}

/** A part of a piece, in mm from the piece's start, on which the coordinate does not turn; and the coordinate at its ends. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly atFrom: number;
  readonly atTo: number;
}

interface Found {
  readonly piece: Piece;
  readonly along: number;
  readonly how: 'missed' | 'crossed' | 'lies';
}

/** Of what two stretches find where they join: one that misses the plane by rounding says least of where it is, one that lies in it most. */
const RANK: Readonly<Record<Found['how'], number>> = { missed: 0, crossed: 1, lies: 2 };

/** Where the stretch meets the plane, `from` and `to` from it at its ends; null where it does not. */
function meets(piece: Piece, stretch: Stretch, from: number, to: number, axis: 0 | 1 | 2, value: number): Found | null {
  const [startsIn, endsIn] = [Math.abs(from) <= ROUNDING, Math.abs(to) <= ROUNDING];
  if (startsIn && endsIn) return { piece, along: stretch.from, how: 'lies' };
  if (from * to <= 0) return { piece, along: crossingOn(piece, stretch, axis, value), how: 'crossed' };
  if (startsIn) return { piece, along: stretch.from, how: 'missed' };
  return endsIn ? { piece, along: stretch.to, how: 'missed' } : null;
}

function crossingOn(piece: Piece, { from, to, atFrom, atTo }: Stretch, axis: 0 | 1 | 2, value: number): number {
  const share = (value - atFrom) / (atTo - atFrom);
  if (piece.kind === 'line') return from + share * (to - from);
  const { size, turn } = wave(piece, axis);
  const away = Math.acos(Math.min(1, Math.max(-1, (value - piece.centre[axis]) / size)));
  // The cosine falls for half a turn after its top and rises for half a turn before it.
  const angle = atTo < atFrom ? turn + away : turn - away;
  const middle = (from + to) / 2 / piece.radius;
  const turns = Math.round((middle - angle) / (2 * Math.PI));
  return Math.min(to, Math.max(from, (angle + turns * 2 * Math.PI) * piece.radius));
}

function stretchesOf(piece: Piece, axis: 0 | 1 | 2): readonly Stretch[] {
  const turns = piece.kind === 'line' ? [] : turnsOf(piece, axis);
  const ends = [0, ...turns, piece.length];
  const coordinates = ends.map((along, i) =>
    i === 0 ? piece.from[axis] : i === ends.length - 1 ? piece.to[axis] : placeOnPiece(piece, along).point[axis],
  );
  return ends.slice(1).map((to, i) => ({ from: ends[i]!, to, atFrom: coordinates[i]!, atTo: coordinates[i + 1]! }));
}

/** Where within an arc its coordinate turns, mm from its start. */
function turnsOf(arc: ArcPiece, axis: 0 | 1 | 2): readonly number[] {
  const { size, turn } = wave(arc, axis);
  if (size <= ROUNDING) return [];
  return [turn - Math.PI, turn, turn + Math.PI]
    .filter((angle) => angle > 0 && angle < arc.angle)
    .map((angle) => angle * arc.radius);
}

/** The coordinate of an arc is that of its centre plus size cos(angle - turn), the angle counted from its start; turn in (-pi, pi]. */
function wave(arc: ArcPiece, axis: 0 | 1 | 2): { readonly size: number; readonly turn: Radians } {
  const cosine = arc.from[axis] - arc.centre[axis];
  const sine = arc.startTangent[axis] * arc.radius;
  return { size: Math.hypot(cosine, sine), turn: Math.atan2(sine, cosine) };
}

/** The plane's own coordinate exactly, not through angles and back. */
function onPlane(place: PathPlace, axis: 0 | 1 | 2, value: number): PathPlace {
  const [x, y, z] = place.point;
  return { ...place, point: [axis === 0 ? value : x, axis === 1 ? value : y, axis === 2 ? value : z] };
}
