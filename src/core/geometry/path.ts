/**
 * A tube's centreline: straight and circular pieces, each beginning where the one before ends, tangent to it.
 *
 * A place on it is given by the developed length from its start. Where bends overlap, a straight between them is
 * negative: it stays in the sum of lengths but has no piece here.
 */
import type { Radians } from './angle.ts';
import { distanceTo, foot, setFoot } from './foot.ts';
import { ROUNDING } from './tolerance.ts';
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  mirrored,
  normalize,
  rotateAbout,
  scale,
  subtract,
  type Vec3,
} from './vector.ts';

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

/** Its mirror image in y = 0: of an arc, travel is right-hand about the normal there too. */
export const mirroredPath = ({ pieces, length }: Path): Path => ({
  length,
  pieces: pieces.map((piece) => {
    const base = {
      ...piece,
      from: mirrored(piece.from),
      to: mirrored(piece.to),
      startTangent: mirrored(piece.startTangent),
      endTangent: mirrored(piece.endTangent),
    };
    return base.kind === 'line'
      ? base
      : { ...base, centre: mirrored(base.centre), normal: scale(mirrored(base.normal), -1) };
  }),
});

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
  const { centre, from, startTangent: t, radius } = piece;
  const [c, s] = [Math.cos(along / radius), Math.sin(along / radius)];
  const [x, y, z] = [from[0] - centre[0], from[1] - centre[1], from[2] - centre[2]];
  const [onto, back] = [s * radius, -s / radius];
  return {
    point: [centre[0] + c * x + onto * t[0], centre[1] + c * y + onto * t[1], centre[2] + c * z + onto * t[2]],
    tangent: [c * t[0] + back * x, c * t[1] + back * y, c * t[2] + back * z],
    at,
    onArc: along > ROUNDING && along < piece.length - ROUNDING,
  };
}

/**
 * The place on the path nearest to p. With `prolonged`, the path's two ends run on straight without limit. Closed form
 * on each piece; of equal places the first counts.
 */
export function nearestOnPath({ pieces, length }: Path, p: Vec3, prolonged = false): NearestPlace {
  let nearest = nearestOnPiece(pieces[0]!, p);
  for (let i = 1; i < pieces.length; i++) {
    setFoot(pieces[i]!, p);
    if (foot.apart < nearest.distance - ROUNDING) nearest = footOn(pieces[i]!);
  }
  return prolonged ? nearestOfEnds(pieces, length, p, nearest) : nearest;
}

/** How far p is from the nearest place of the path, mm; `prolonged` as above. The place itself is not worked out. */
export function distanceToPath(path: Path, p: Vec3, prolonged = false): number {
  const { pieces } = path;
  const least = distanceTo(pieces, p);
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
  const [u, v, w] = [x - beyond * tangent[0], y - beyond * tangent[1], z - beyond * tangent[2]];
  return Math.sqrt(u * u + v * v + w * w);
}

/** The place on one piece nearest to p. */
export function nearestOnPiece(piece: Piece, p: Vec3): NearestPlace {
  setFoot(piece, p);
  return footOn(piece);
}

/** What `foot` says of a piece, kept. */
function footOn(piece: Piece): NearestPlace {
  const { apart, at, x, y, z, tx, ty, tz } = foot;
  const along = at - piece.at;
  return {
    point: [x, y, z],
    tangent: [tx, ty, tz],
    at,
    onArc: piece.kind === 'arc' && along > ROUNDING && along < piece.length - ROUNDING,
    distance: apart,
  };
}

/** The nearer of `nearest` and the prolonged ends. */
function nearestOfEnds(pieces: readonly Piece[], length: number, p: Vec3, nearest: NearestPlace): NearestPlace {
  const first = pieces[0]!;
  const last = pieces[pieces.length - 1]!;
  const ends = [
    { from: first.from, tangent: first.startTangent, at: 0, side: -1 },
    { from: last.to, tangent: last.endTangent, at: length, side: 1 },
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
