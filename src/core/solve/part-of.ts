/**
 * The part of a centreline between two places of it. Where a place lies inside a bend, the part has its share of the arc as a bend of
 * its own, which begins or ends with a straight of 0. Formulas as in centreline.ts.
 */
import { arcPiece, linePiece, placeAt, placeOnPiece, type ArcPiece, type Piece } from '../geometry/path.ts';
import { ROUNDING, STRAIGHT_THROUGH } from '../geometry/tolerance.ts';
import { addScaled, distance, type Vec3 } from '../geometry/vector.ts';
import type { Centreline } from './centreline.ts';
import type { Bend } from './types.ts';

/**
 * From `from` to `to`, mm of developed length; its own lengths count from `from`. Its straights and arcs add up to `to - from`, and its route is
 * the whole one's.
 */
export function partOf(whole: Centreline, from: number, to: number): Centreline {
  const arcs = whole.path.pieces.filter((piece) => piece.kind === 'arc');
  const shares = whole.bends.flatMap((bend, i) => shareOf(bend, arcs[i]!, from, to));
  const [start, finish] = [placeAt(whole.path, from).point, placeAt(whole.path, to).point];

  const pieces: Piece[] = [];
  const straights: number[] = [];
  let here: Vec3 = start;
  let at = from;
  for (const { bend, arc } of shares) {
    straights.push(bend.start - at);
    if (bend.start - at > ROUNDING) pieces.push(linePiece(here, arc.from, at - from));
    pieces.push({ ...arc, at: bend.start - from });
    here = arc.to;
    at = bend.end;
  }
  straights.push(to - at);
  if (to - at > ROUNDING || pieces.length === 0) pieces.push(linePiece(here, finish, at - from));

  const corners = [start, ...shares.map(({ bend }) => bend.corner), finish];
  return {
    route: whole.route,
    corners,
    path: { pieces, length: to - from },
    bends: shares.map(({ bend }, i) => ({
      ...bend,
      start: bend.start - from,
      end: bend.end - from,
      // Planes of neighbours are the same as in the whole; the first has none before it.
      rotation: i === 0 ? 0 : bend.rotation,
    })),
    straights,
    developedLength: to - from,
    sharpCornerLength: corners.slice(1).reduce((sum, corner, i) => sum + distance(corner, corners[i]!), 0),
  };
}

/** What of the bend lies between the two places: nothing, all of it, or part of its arc; places as along the whole. */
function shareOf(bend: Bend, arc: ArcPiece, from: number, to: number): readonly { bend: Bend; arc: ArcPiece }[] {
  const [start, end] = [Math.max(bend.start, from), Math.min(bend.end, to)];
  if (start <= bend.start + ROUNDING && end >= bend.end - ROUNDING) return [{ bend, arc }];
  const angle = (end - start) / bend.radius;
  if (angle <= STRAIGHT_THROUGH) return [];
  const { point, tangent } = placeOnPiece(arc, start - bend.start);
  const setBack = bend.radius * Math.tan(angle / 2);
  const share = arcPiece(point, tangent, bend.normal, bend.radius, angle, start);
  return [
    {
      bend: { ...bend, corner: addScaled(point, tangent, setBack), angle, setBack, arc: share.length, start, end },
      arc: share,
    },
  ];
}
