/**
 * A tube's centreline: straight and circular pieces, each beginning where the one before ends, tangent to it.
 *
 * A place on it is given by the developed length from its start. Where bends overlap, a straight between them is
 * negative: it stays in the sum of lengths but has no piece here.
 */
import type { Radians } from './angle.ts';
import { ROUNDING } from './tolerance.ts';
import { add, addScaled, cross, distance, dot, normalize, rotateAbout, subtract, type Vec3 } from './vector.ts';

interface PieceBase {
  /** Developed length from the path's start to the piece's start. */
  readonly at: number;
  readonly length: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit tangents at its start and end, in the direction of travel. */
  readonly startTangent: Vec3;
  readonly endTangent: Vec3;
}

export interface LinePiece extends PieceBase {
  readonly kind: 'line';
}

export interface ArcPiece extends PieceBase {
  readonly kind: 'arc';
  readonly centre: Vec3;
  readonly radius: number;
  /** Unit normal: travel is right-hand about it. */
  readonly normal: Vec3;
  /** (0, pi). */
  readonly angle: Radians;
}

export type Piece = LinePiece | ArcPiece;

export interface Path {
  readonly pieces: readonly Piece[];
  readonly length: number;
}

/** A place on a path. */
export interface PathPlace {
  readonly point: Vec3;
  /** Unit tangent in the direction of travel. */
  readonly tangent: Vec3;
  /** Developed length from the path's start; below 0 or beyond the length only on the prolonged ends. */
  readonly at: number;
  /** True strictly between the two tangents of an arc. */
  readonly onArc: boolean;
}

/** A place on a path, and how far it is from the point that it is nearest to. */
export type NearestPlace = PathPlace & { readonly distance: number };

/** A straight piece; `at` is the developed length from the path's start to it. */
export function linePiece(from: Vec3, to: Vec3, at: number): LinePiece {
  const tangent = normalize(subtract(to, from));
  return { kind: 'line', at, length: distance(from, to), from, to, startTangent: tangent, endTangent: tangent };
}

/** An arc that leaves `from` along the unit tangent and turns by `angle` right-hand about the unit normal. */
export function arcPiece(
  from: Vec3,
  startTangent: Vec3,
  normal: Vec3,
  radius: number,
  angle: Radians,
  at: number,
): ArcPiece {
  const centre = addScaled(from, cross(normal, startTangent), radius);
  const spoke = subtract(from, centre);
  return {
    kind: 'arc',
    at,
    length: radius * angle,
    from,
    to: add(centre, rotateAbout(spoke, normal, angle)),
    startTangent,
    endTangent: rotateAbout(startTangent, normal, angle),
    centre,
    radius,
    normal,
    angle,
  };
}

/**
 * The place at developed length `at`, clamped to the path. Where pieces overlap in length (a negative straight), the
 * first that covers `at` counts.
 */
export function placeAt(path: Path, at: number): PathPlace {
  const piece = path.pieces.find((each) => at <= each.at + each.length) ?? path.pieces[path.pieces.length - 1]!;
  return placeOnPiece(piece, Math.min(Math.max(at - piece.at, 0), piece.length));
}

/** Place at `along` mm from the piece's start; beyond a line's ends it runs on, so that end straights can be prolonged. */
export function placeOnPiece(piece: Piece, along: number): PathPlace {
  const at = piece.at + along;
  if (piece.kind === 'line') {
    return { point: addScaled(piece.from, piece.startTangent, along), tangent: piece.startTangent, at, onArc: false };
  }
  const turned = along / piece.radius;
  return {
    point: add(piece.centre, rotateAbout(subtract(piece.from, piece.centre), piece.normal, turned)),
    tangent: rotateAbout(piece.startTangent, piece.normal, turned),
    at,
    onArc: along > ROUNDING && along < piece.length - ROUNDING,
  };
}

/**
 * The place on the path nearest to p. With `prolonged`, the path's two ends run on straight without limit. Closed form
 * on each piece; of equal places the first counts.
 */
export function nearestOnPath(path: Path, p: Vec3, prolonged = false): NearestPlace {
  let best: { piece: Piece; along: number; distance: number } | null = null;
  for (const piece of path.pieces) {
    const { along, distance: apart } = nearestAlong(piece, p);
    if (best === null || apart < best.distance - ROUNDING) best = { piece, along, distance: apart };
  }
  const nearest = { ...placeOnPiece(best!.piece, best!.along), distance: best!.distance };
  return prolonged ? nearestOfEnds(path, p, nearest) : nearest;
}

/** The place on one piece nearest to p. */
export function nearestOnPiece(piece: Piece, p: Vec3): NearestPlace {
  const { along, distance: apart } = nearestAlong(piece, p);
  return { ...placeOnPiece(piece, along), distance: apart };
}

/** The nearer of `nearest` and the prolonged ends. */
function nearestOfEnds(path: Path, p: Vec3, nearest: NearestPlace): NearestPlace {
  const first = path.pieces[0]!;
  const last = path.pieces[path.pieces.length - 1]!;
  const ends = [
    { from: first.from, tangent: first.startTangent, at: 0, side: -1 },
    { from: last.to, tangent: last.endTangent, at: path.length, side: 1 },
  ];
  let best = nearest;
  for (const { from, tangent, at, side } of ends) {
    const beyond = dot(subtract(p, from), tangent);
    if (beyond * side <= 0) continue;
    const point = addScaled(from, tangent, beyond);
    const apart = distance(point, p);
    if (apart < best.distance - ROUNDING) best = { point, tangent, at: at + beyond, onArc: false, distance: apart };
  }
  return best;
}

/** Distance along the piece, from its start, to its point nearest p, and how far that is. */
function nearestAlong(piece: Piece, p: Vec3): { readonly along: number; readonly distance: number } {
  if (piece.kind === 'line') {
    const along = Math.min(Math.max(dot(subtract(p, piece.from), piece.startTangent), 0), piece.length);
    return { along, distance: distance(addScaled(piece.from, piece.startTangent, along), p) };
  }
  const fromCentre = subtract(p, piece.centre);
  const x = dot(fromCentre, subtract(piece.from, piece.centre)) / piece.radius;
  const y = dot(fromCentre, piece.startTangent);
  const turned = Math.atan2(y, x);
  if (turned >= 0 && turned <= piece.angle) {
    const offPlane = dot(fromCentre, piece.normal);
    const offRing = Math.sqrt(x * x + y * y) - piece.radius;
    return { along: turned * piece.radius, distance: Math.sqrt(offRing * offRing + offPlane * offPlane) };
  }
  const [toStart, toEnd] = [distance(p, piece.from), distance(p, piece.to)];
  return toStart <= toEnd ? { along: 0, distance: toStart } : { along: piece.length, distance: toEnd };
}
