/**
 * The place of a path nearest an endless straight line. Seen along the line a straight stays straight and the line is a point: the
 * foot of the perpendicular. An arc becomes part of an ellipse; where its distance turns, a polynomial of degree four in the
 * tangent of half the angle is nought (docs/maths/places.md).
 */
import { rootsBetween } from '../numerics/roots-between.ts';
import { placeOnPiece, type ArcPiece, type NearestPlace, type Path, type Piece } from './path.ts';
import { ANGLE_ROUNDING, ROUNDING } from './tolerance.ts';
import { dot, length, rejectFrom, scale, subtract, type Vec3 } from './vector.ts';

/** mm along the path: a bend of 150 mm is nearer than ROUNDING to its tangent for half of this. */
const ONE_PLACE = 0.01;
/** By how much the distance may change a mm of the way, and yet stand still. */
const STANDS_STILL = 1e-9;

/**
 * The place and how far it is from the line; of equally near ones, to ROUNDING, the first. A straight piece that runs along the line
 * (ANGLE_ROUNDING) is equally near all over.
 *
 * @param direction unit
 */
export function nearestToLine(path: Path, through: Vec3, direction: Vec3): NearestPlace {
  const places = path.pieces.flatMap((piece) => turnsOn(piece, through, direction));
  const least = Math.min(...places.map(({ distance }) => distance));
  const last = places.length - 1;
  // Where pieces join, or the path ends, the distance may be small without being least.
  const isLeast = ({ stands, falls }: Turn, i: number) => stands || (i === 0 && !falls) || (i === last && falls);
  const equal = places.filter((turn, i) => turn.distance <= least + ROUNDING && isLeast(turn, i));
  const first = equal[0] ?? places.find((turn) => turn.distance === least)!;
  // Where a bend comes tangent to the line its distance hardly changes, and turns where rounding has it: there the nearest counts.
  const { piece, along, distance } = equal
    .filter((turn) => placeOf(turn) - placeOf(first) <= ONE_PLACE)
    .reduce((nearest, turn) => (turn.distance < nearest.distance ? turn : nearest), first);
  return { ...placeOnPiece(piece, along), distance };
}

const placeOf = ({ piece, along }: Turn): number => piece.at + along;

/** Whether every place of the path is equally near to any line of this unit direction: the path is one straight along it. */
export const runsAlong = ({ pieces }: Path, direction: Vec3): boolean =>
  pieces.every((piece) => piece.kind === 'line' && length(rejectFrom(piece.startTangent, direction)) <= ANGLE_ROUNDING);

interface Turn {
  readonly piece: Piece;
  readonly along: number;
  readonly distance: number;
  /** It does not change there, or falls on along the path. */
  readonly stands: boolean;
  readonly falls: boolean;
}

/** The piece's start and end, and between them where its distance from the line turns. */
function turnsOn(piece: Piece, through: Vec3, direction: Vec3): readonly Turn[] {
  const inner = piece.kind === 'line' ? footOn(piece, through, direction) : turnsOfArc(piece, through, direction);
  const turns = inner.filter((along) => along > 0 && along < piece.length);
  const parallel = piece.kind === 'line' && runsAlong({ pieces: [piece], length: piece.length }, direction);
  return [0, ...turns, piece.length].map((along, i) => {
    const { point, tangent } = placeOnPiece(piece, along);
    const away = rejectFrom(subtract(point, through), direction);
    const change = dot(away, tangent);
    const isTurn = i > 0 && i <= turns.length;
    return {
      piece,
      along,
      distance: length(away),
      stands: isTurn || Math.abs(change) <= STANDS_STILL || (parallel && i === 0),
      falls: change < 0,
    };
  });
}

function footOn({ from, startTangent }: Piece, through: Vec3, direction: Vec3): readonly number[] {
  const across = rejectFrom(startTangent, direction);
  const away = rejectFrom(subtract(from, through), direction);
  return [-dot(away, across) / dot(across, across)];
}

/** Counted from the arc's middle, so that half of the angle stays below a quarter turn and its tangent between -1 and 1. */
function turnsOfArc(arc: ArcPiece, through: Vec3, direction: Vec3): readonly number[] {
  const middle = placeOnPiece(arc, arc.length / 2);
  const across = (v: Vec3) => rejectFrom(v, direction);
  const away = across(subtract(arc.centre, through));
  const spoke = across(subtract(middle.point, arc.centre));
  const tangent = across(scale(middle.tangent, arc.radius));
  // Half of the square of |away + cos spoke + sin tangent| changes by q cos - p sin + r sin cos + s (cos^2 - sin^2).
  const [p, q] = [dot(away, spoke), dot(away, tangent)];
  const [r, s] = [dot(tangent, tangent) - dot(spoke, spoke), dot(spoke, tangent)];
  const reach = Math.tan(arc.angle / 4);
  return rootsBetween([q + s, 2 * (r - p), -6 * s, -2 * (p + r), s - q], -reach, reach).map(
    (t) => (2 * Math.atan(t) + arc.angle / 2) * arc.radius,
  );
}
