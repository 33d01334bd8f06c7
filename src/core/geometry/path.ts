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

/** How far p is from the nearest place of the path, mm; `prolonged` as above. The place itself is not worked out. */
export function distanceToPath(path: Path, p: Vec3, prolonged = false): number {
  const { pieces } = path;
  let least = Infinity;
  for (const piece of pieces) least = Math.min(least, nearestAlong(piece, p).distance);
  if (!prolonged) return least;
  const first = pieces[0]!;
  const last = pieces[pieces.length - 1]!;
  const before = distanceToRay(first.from, first.startTangent, -1, p);
  return Math.min(least, before, distanceToRay(last.to, last.endTangent, 1, p));
}

/** From the ray out of `from`, along the unit tangent or, with sense -1, against it; Infinity for what does not lie beside it. */
function distanceToRay(from: Vec3, tangent: Vec3, sense: 1 | -1, p: Vec3): number {
  const [x, y, z] = [p[0] - from[0], p[1] - from[1], p[2] - from[2]];
  const beyond = x * tangent[0] + y * tangent[1] + z * tangent[2];
  if (beyond * sense <= 0) return Infinity;
  return lengthOf(x - beyond * tangent[0], y - beyond * tangent[1], z - beyond * tangent[2]);
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
  // In single numbers: it is asked more often than anything else of a path, and vectors would be made for nothing.
  const px = p[0] - piece.from[0];
  const py = p[1] - piece.from[1];
  const pz = p[2] - piece.from[2];
  const { startTangent: t } = piece;
  if (piece.kind === 'line') {
    const along = Math.min(Math.max(px * t[0] + py * t[1] + pz * t[2], 0), piece.length);
    return { along, distance: lengthOf(px - along * t[0], py - along * t[1], pz - along * t[2]) };
  }
  const { centre, from, normal } = piece;
  const [cx, cy, cz] = [p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]];
  const spoke = cx * (from[0] - centre[0]) + cy * (from[1] - centre[1]) + cz * (from[2] - centre[2]);
  const x = spoke / piece.radius;
  const y = cx * t[0] + cy * t[1] + cz * t[2];
  const turned = Math.atan2(y, x);
  if (turned >= 0 && turned <= piece.angle) {
    const offPlane = cx * normal[0] + cy * normal[1] + cz * normal[2];
    return { along: turned * piece.radius, distance: lengthOf(lengthOf(x, y, 0) - piece.radius, offPlane, 0) };
  }
  const toStart = lengthOf(px, py, pz);
  const toEnd = lengthOf(p[0] - piece.to[0], p[1] - piece.to[1], p[2] - piece.to[2]);
  return toStart <= toEnd ? { along: 0, distance: toStart } : { along: piece.length, distance: toEnd };
}

const lengthOf = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);
