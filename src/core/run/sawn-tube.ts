/**
 * A tube as a body: its centreline from sawn end to sawn end, and its thickness. As it comes off the bender, before any cope is
 * cut: each end is square, where the blank was sawn.
 */
import { linePiece, placeOnPiece, type ArcPiece, type Piece } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import { addScaled, dot, length, normalize, rejectFrom, subtract, type Vec3 } from '../geometry/vector.ts';
import { beyondNode } from '../solve/amount.ts';
import type { SolvedTube } from '../solve/types.ts';

export interface SawnTube {
  /** From the blank's end A to its end B, mm. */
  readonly pieces: readonly Piece[];
  readonly outerDiameter: number;
}

/** The tube as it is drawn. */
export const sawnTube = (tube: SolvedTube): SawnTube => ({
  pieces: sawn(tube.path.pieces, tube.ends.map(beyondNode)),
  outerDiameter: tube.section.outerDiameter,
});

/** The pieces from node to node, with so much more, or less, of the straight at each end. A straight that is used up goes. */
export function sawn(pieces: readonly Piece[], [atA = 0, atB = 0]: readonly number[]): readonly Piece[] {
  const first = pieces[0]!;
  const endA = addScaled(first.from, first.startTangent, -atA);
  const fromA = startingAt(pieces, endA, atA);
  const last = fromA.at(-1)!;
  const endB = addScaled(last.to, last.endTangent, atB);
  if (last.kind === 'line') {
    if (last.length + atB > ROUNDING || fromA.length === 1)
      return [...fromA.slice(0, -1), linePiece(last.from, endB, last.at)];
    return fromA.slice(0, -1);
  }
  return atB > ROUNDING ? [...fromA, linePiece(last.to, endB, last.at + last.length)] : fromA;
}

function startingAt(pieces: readonly Piece[], endA: Vec3, atA: number): readonly Piece[] {
  const [first, ...rest] = pieces as readonly [Piece, ...Piece[]];
  if (first.kind === 'line') {
    return first.length + atA > ROUNDING || rest.length === 0 ? [linePiece(endA, first.to, -atA), ...rest] : rest;
  }
  return atA > ROUNDING ? [linePiece(endA, first.from, -atA), ...pieces] : pieces;
}

/**
 * How far a tube of this radius reaches in a direction (unit vector), mm from the origin: the greatest of p.w over all its
 * points. Its cross-section at a place reaches r sqrt(1 - (t.w)^2) further than the centreline, t the tangent there. On a line
 * both ends are asked; on an arc of radius R > r that sum falls on both sides of the place where the centreline itself
 * reaches furthest, so that place and the two ends are (docs/maths/check-dimensions.md).
 *
 * With `soft`, mm, no kink is left where one piece takes over from another: soft ln(sum of e^(reach/soft)), up to soft ln(pieces) more than the greatest.
 */
export function reachOf(pieces: readonly Piece[], radius: number, direction: Vec3, soft = 0): number {
  const reaches = pieces.map((piece) => reachOfPiece(piece, radius, direction));
  const greatest = Math.max(...reaches);
  if (soft === 0) return greatest;
  return greatest + soft * Math.log(reaches.reduce((sum, each) => sum + Math.exp((each - greatest) / soft), 0));
}

function reachOfPiece(piece: Piece, radius: number, w: Vec3): number {
  const atPlace = (place: Vec3, tangent: Vec3): number => {
    const along = dot(tangent, w);
    return dot(place, w) + radius * Math.sqrt(Math.max(0, 1 - along * along));
  };
  const ends = Math.max(atPlace(piece.from, piece.startTangent), atPlace(piece.to, piece.endTangent));
  if (piece.kind === 'line') return ends;
  const x = dot(subtract(piece.from, piece.centre), w) / piece.radius;
  const y = dot(piece.startTangent, w);
  const furthest = Math.atan2(y, x);
  const turned = furthest < 0 ? furthest + 2 * Math.PI : furthest;
  if (turned >= piece.angle) return ends;
  return Math.max(ends, dot(piece.centre, w) + piece.radius * Math.hypot(x, y) + radius);
}

/**
 * Where a tube of this radius reaches farthest in a direction (unit vector): the place on its surface, on its centreline with radius 0, whose
 * p.w is reachOf. Of an end that is sawn square to the direction, the middle of the cut.
 */
export function farthestOf(pieces: readonly Piece[], radius: number, w: Vec3): Vec3 {
  const places = pieces.flatMap((piece) => farthestPlaces(piece, radius, w));
  return places.reduce((best, place) => (dot(place, w) > dot(best, w) ? place : best));
}

/** mm. Of what is left of a direction square to the tube: less than this and it has none. */
const NO_SIDE = 1e-9;

function farthestPlaces(piece: Piece, radius: number, w: Vec3): readonly Vec3[] {
  const onSurface = (place: Vec3, tangent: Vec3): Vec3 => {
    const aside = rejectFrom(w, tangent);
    return length(aside) < NO_SIDE ? place : addScaled(place, normalize(aside), radius);
  };
  const ends = [onSurface(piece.from, piece.startTangent), onSurface(piece.to, piece.endTangent)];
  const on = piece.kind === 'line' ? null : topOf(piece, w);
  return on === null ? ends : [...ends, addScaled(on, w, radius)];
}

/** Where an arc's centreline itself reaches farthest, if that is on it and not at an end. */
function topOf(piece: ArcPiece, w: Vec3): Vec3 | null {
  const x = dot(subtract(piece.from, piece.centre), w) / piece.radius;
  const y = dot(piece.startTangent, w);
  const furthest = Math.atan2(y, x);
  const turned = furthest < 0 ? furthest + 2 * Math.PI : furthest;
  return turned < piece.angle ? placeOnPiece(piece, turned * piece.radius).point : null;
}
