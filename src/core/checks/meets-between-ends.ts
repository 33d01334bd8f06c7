/**
 * How deep a bent tube lies inside a run tube between the straights that its ends stand on. There nothing is cut away, so where the wall
 * is deepest the two axes are nearest: the shortest way from one to the other is square to the tube, and leads through that place.
 */
import type { Sleeve } from '../geometry/met-sleeve.ts';
import { linePiece, nearestOnPiece, placeOnPiece, type Path, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, distance, dot, interpolate, scale, subtract } from '../geometry/vector.ts';
import type { SolvedTube } from '../solve/types.ts';
import { DEEP, leastOf, type Deep } from './deep.ts';
import { axisPieces } from './near-pieces.ts';

/** mm. Between places of the run tube's axis this near to each other no second nearest one hides. */
const FINE = 0.5;

/** The deepest place, and how deep; null where all of it is clear. */
export function deepestBetweenEnds(tube: SolvedTube, { path, radius }: Sleeve): Deep | null {
  const own = tube.section.outerDiameter / 2;
  const { pieces } = tube.path;
  const [from, to] = [
    Math.max(0, tube.straights[0]!, tube.ends[0].throat ?? 0),
    tube.developedLength - Math.max(0, tube.straights.at(-1)!, tube.ends[1].throat ?? 0),
  ];
  let deepest: Deep | null = null;
  pieces.forEach((piece, i) => {
    if (piece.kind === 'line' && (i === 0 || i === pieces.length - 1)) return;
    for (const other of piecesAbout(path, piece, own + radius)) {
      const near = nearestPlaces(piece, from, to, other, own + radius);
      if (near === null) continue;
      const away = distance(near.own, near.other);
      const depth = Math.min(radius, own + radius - away);
      if (depth <= (deepest?.depth ?? DEEP)) continue;
      const towards = away > ROUNDING ? scale(subtract(near.other, near.own), Math.min(own, away) / away) : [0, 0, 0];
      deepest = { depth, at: addScaled(near.own, towards as typeof near.own, 1) };
    }
  });
  return deepest;
}

/** The pieces of a run tube's axis that come near the piece; of a straight, as much as may matter. */
function piecesAbout(path: Path, piece: Piece, room: number): Piece[] {
  // Less than half a turn lies in the ball on its chord.
  const middle = interpolate(piece.from, piece.to, 0.5);
  const reach = distance(piece.from, piece.to) / 2 + room;
  return axisPieces(path).flatMap(({ arc, from, axis, low, high }): Piece[] => {
    if (arc !== null) {
      const apart = distance(interpolate(arc.from, arc.to, 0.5), middle);
      return apart < reach + distance(arc.from, arc.to) / 2 ? [arc] : [];
    }
    const foot = dot(subtract(middle, from), axis);
    const aside = distance(addScaled(from, axis, foot), middle);
    const [first, last] = [Math.max(low, foot - reach), Math.min(high, foot + reach)];
    if (aside >= reach || last - first < ROUNDING) return [];
    return [linePiece(addScaled(from, axis, first), addScaled(from, axis, last), 0)];
  });
}

/**
 * The places nearest each other of `other` and of the part of `piece` between two developed lengths of its tube, where the way from one
 * to the other is square to the piece and shorter than `room`; null where there are none.
 */
function nearestPlaces(piece: Piece, from: number, to: number, other: Piece, room: number) {
  const footOf = (t: number) => nearestOnPiece(piece, placeOnPiece(other, t).point);
  const isSquare = (t: number): boolean => {
    const foot = footOf(t);
    const off = subtract(placeOnPiece(other, t).point, foot.point);
    return foot.at >= from - ROUNDING && foot.at <= to + ROUNDING && Math.abs(dot(off, foot.tangent)) < ROUNDING * room;
  };
  let best = NaN;
  let least = room;
  const open: [number, number][] = [[0, other.length]];
  while (open.length > 0) {
    const [a, b] = open.pop()!;
    const t = (a + b) / 2;
    const away = footOf(t).distance;
    // It changes by no more than one goes along the other.
    if (away - (b - a) / 2 > least) continue;
    if (b - a > FINE) open.push([a, t], [t, b]);
    else if (away < least && isSquare(t)) [best, least] = [t, away];
  }
  if (Number.isNaN(best)) return null;
  const t = leastOf(
    (at) => (isSquare(at) ? footOf(at).distance : Infinity),
    Math.max(0, best - FINE),
    Math.min(other.length, best + FINE),
  );
  return { own: footOf(t).point, other: placeOnPiece(other, t).point };
}
