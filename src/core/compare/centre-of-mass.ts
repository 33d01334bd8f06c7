/**
 * Where a cage balances: the centre of mass of all its tubes, car axes, mm. A straight counts at its middle; a bend at the centroid of its wall, which lies outside of the centreline's own: at
 * (R² + (ro² + ri²) / 4) / R from the bend's axis in the middle of a narrow piece (Pappus), times sin(h) / h for half its angle h. Ends count as cut square at their mean length: a
 * cope's lean moves the centre of its tube by less than a diameter's fraction. Feet and gussets do not count.
 */
import type { Radians } from '../geometry/angle.ts';
import { placeAt, placeOnPiece, type ArcPiece, type Piece } from '../geometry/path.ts';
import { add, addScaled, normalize, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

/** Null without a tube. */
export function centreOfMass({ tubes }: Pick<Frame, 'tubes'>): Vec3 | null {
  const whole = tubes.reduce((sum, { mass }) => sum + mass, 0);
  if (!(whole > 0)) return null;
  const moment = tubes.reduce<Vec3>((sum, tube) => addScaled(sum, centreOfTube(tube), tube.mass), [0, 0, 0]);
  return scale(moment, 1 / whole);
}

/** Of one tube, coped. */
export function centreOfTube({ path, ends, section }: SolvedTube): Vec3 {
  const [from, to] = [ends[0].meanTrim, path.length - ends[1].meanTrim];
  let sum: Vec3 = [0, 0, 0];
  let length = 0;
  for (const [i, piece] of path.pieces.entries()) {
    // An end that stands past its node runs its straight on.
    const start = i === 0 ? from : Math.max(from, piece.at);
    const end = i === path.pieces.length - 1 ? to : Math.min(to, piece.at + piece.length);
    if (end <= start) continue;
    sum = addScaled(sum, centreOfPiece(piece, [start - piece.at, end - piece.at], section), end - start);
    length += end - start;
  }
  return length > 0 ? scale(sum, 1 / length) : placeAt(path, (from + to) / 2).point;
}

function centreOfPiece(
  piece: Piece,
  [start, end]: readonly [number, number],
  { outerDiameter, wall }: SolvedTube['section'],
): Vec3 {
  const middle = placeOnPiece(piece, (start + end) / 2).point;
  if (piece.kind === 'line') return middle;
  const [outer, inner] = [outerDiameter / 2, outerDiameter / 2 - wall];
  const half: Radians = (end - start) / piece.radius / 2;
  const out = (piece.radius + (outer ** 2 + inner ** 2) / (4 * piece.radius)) * (Math.sin(half) / half);
  return onRay(piece, middle, out);
}

/** So far from the arc's axis, towards the place on it. */
const onRay = ({ centre }: ArcPiece, place: Vec3, distance: number): Vec3 =>
  add(centre, scale(normalize(subtract(place, centre)), distance));
