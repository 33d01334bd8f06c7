/**
 * What an end is coped to, as it looks from the end: of each run tube's axis the pieces that come nearest to some place of the end. A search asks
 * some thousand times how far a place is from them, and a hoop has nine.
 */
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { distanceTo } from '../geometry/foot.ts';
import { linePiece, type Path, type Piece } from '../geometry/path.ts';
import { addScaled, distance, type Vec3 } from '../geometry/vector.ts';
import type { OutsideEnd } from './outside.ts';

export interface Hollow {
  readonly sleeve: Sleeve;
  /** Of its axis, whose ends run on straight as far as the end reaches; places along these count from anywhere. */
  readonly pieces: readonly Piece[];
  /** The least radius of a bend among them, mm; Infinity where all are straight. */
  readonly ring: number;
}

/** One for each run tube that the end is coped to; worked out once an end. */
export const hollowsOf = (end: OutsideEnd): readonly Hollow[] =>
  (end.edge.hollows ??= end.end.cutter.sleeves.map((sleeve) => hollowOf(end, sleeve)));

function hollowOf({ origin, tip, throat, radius }: OutsideEnd, sleeve: Sleeve): Hollow {
  // What of the tube is no farther along it than its radius past the throat.
  const reach = Math.max(Math.abs(tip), Math.abs(throat)) + 2 * radius;
  const pieces = prolonged(sleeve.path, origin, reach).map((piece) => ({ piece, away: distanceTo([piece], origin) }));
  const least = Math.min(...pieces.map(({ away }) => away));
  // Nearest to a place so far from the origin is none that is farther by twice that.
  const near = pieces.filter(({ away }) => away <= least + 2 * reach).map(({ piece }) => piece);
  const rings = near.flatMap((piece) => (piece.kind === 'arc' ? [piece.radius] : []));
  return { sleeve, pieces: near, ring: Math.min(Infinity, ...rings) };
}

/** Both ends run on so far that the feet of all places within `reach` mm of the origin lie on them. */
function prolonged({ pieces, length }: Path, origin: Vec3, reach: number): readonly Piece[] {
  const { from, startTangent } = pieces[0]!;
  const { to, endTangent } = pieces[pieces.length - 1]!;
  const before = addScaled(from, startTangent, -(reach + distance(from, origin)));
  const after = addScaled(to, endTangent, reach + distance(to, origin));
  return [linePiece(before, from, 0), ...pieces, linePiece(to, after, length)];
}
