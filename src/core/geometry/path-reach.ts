/** How far a path reaches in a direction: closed form on each piece. */
import { toRadians } from './angle.ts';
import { placeOnPiece, type Path, type PathPlace, type Piece } from './path.ts';
import { cross, dot, subtract, type Vec3 } from './vector.ts';

/** Radians: half a turn and a whole one. */
const [HALF, WHOLE] = [toRadians(180), toRadians(360)];

/** The place of the path that lies farthest along the direction (of any length but 0); of places equally far the first from its start. */
export function farthestAlong({ pieces }: Path, direction: Vec3): PathPlace {
  const candidates = pieces.flatMap((piece) =>
    [0, ...turning(piece, direction), piece.length].map((along) => placeOnPiece(piece, along)),
  );
  return candidates.reduce((best, place) => (dot(place.point, direction) > dot(best.point, direction) ? place : best));
}

/** Where an arc runs square to the direction, mm from its start: on it the spoke lies along the direction, or against it. */
function turning(piece: Piece, direction: Vec3): readonly number[] {
  if (piece.kind === 'line') return [];
  const { from, centre, normal, radius, angle } = piece;
  const spoke = subtract(from, centre);
  const first = Math.atan2(dot(cross(normal, spoke), direction), dot(spoke, direction));
  return [first, first + HALF, first - HALF, first + WHOLE]
    .filter((turn) => turn > 0 && turn < angle)
    .map((turn) => turn * radius);
}
