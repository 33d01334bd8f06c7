/**
 * A sleeve: the surface at a fixed radius round a path, its end straights prolonged without limit, cylinders joined to sectors of
 * tori. And what of it the lines of one bundle may meet: the pieces that they do not all pass clear of.
 *
 * Neighbouring pieces share the plane square to the path between them; each owns its side and ROUNDING beyond, so that no
 * crossing is lost in the joint.
 */
import type { Bundle } from './fan.ts';
import { cylinderMet, type AlongMet, type CylinderMet } from './leave-cylinder.ts';
import { torusMet, type TorusMet } from './leave-torus.ts';
import type { ArcPiece, LinePiece, Path } from './path.ts';
import { ROUNDING } from './tolerance.ts';
import { distance, dot, interpolate, length, rejectFrom, subtract, type Vec3 } from './vector.ts';

export interface Sleeve {
  readonly path: Path;
  readonly radius: number;
  /** A stretch that lies farther from the origin of the lines than this, mm, is at another place of the sleeve and cuts nothing. */
  readonly reach: number;
}

/** A sleeve as the lines of radius `rho` of one bundle meet it. What only some of them need is laid out when one asks. */
export interface MetSleeve {
  readonly sleeve: Sleeve;
  readonly bundle: Bundle;
  readonly rho: number;
  readonly pieces: readonly MetPiece[];
}

/** An arc, or the straight from `from` along `axis` between `low` and `high`. */
export interface MetPiece {
  readonly arc: ArcPiece | null;
  readonly from: Vec3;
  readonly axis: Vec3;
  readonly low: number;
  readonly high: number;
  /** No part of it lies nearer the origin than this, mm along the lines. */
  readonly soonest: number;
  /** Null before one of the lines needed it. */
  laid: CylinderMet | AlongMet | TorusMet | null;
}

/** What of each sleeve the lines at distance `rho` (mm) round the axis may meet. */
export const metBy = (sleeves: readonly Sleeve[], bundle: Bundle, rho: number): MetSleeve[] =>
  sleeves.map((sleeve) => ({ sleeve, bundle, rho, pieces: piecesMet(sleeve, bundle, rho) }));

/** A piece as the lines of its sleeve meet it. */
export function laidOut(piece: MetPiece, { sleeve, bundle, rho }: MetSleeve): CylinderMet | AlongMet | TorusMet {
  const { arc, from, axis, low, high } = piece;
  piece.laid ??=
    arc === null
      ? cylinderMet(from, axis, low, high, sleeve.radius, bundle, rho)
      : torusMet(arc, sleeve.radius, bundle, rho);
  return piece.laid;
}

/** The pieces that any of the lines may cross. Arcs last: where every line has left nearer by, no quartic need be solved. */
function piecesMet({ path, radius }: Sleeve, bundle: Bundle, rho: number): MetPiece[] {
  const first = path.pieces[0]!;
  const last = path.pieces[path.pieces.length - 1]!;
  const met: MetPiece[] = [];
  const straight = (from: Vec3, axis: Vec3, low: number, high: number, soonest: number) =>
    void met.push({ arc: null, from, axis, low, high, soonest, laid: null });
  // A path that begins or ends with an arc (its end straight is zero, or negative) is prolonged from the arc's tangent.
  if (first.kind === 'arc') straight(first.from, first.startTangent, -Infinity, 0, -Infinity);
  if (last.kind === 'arc') straight(last.to, last.endTangent, 0, Infinity, -Infinity);
  for (const piece of path.pieces) {
    if (piece.kind === 'arc') continue;
    const from = piece === first ? -Infinity : 0;
    const to = piece === last ? Infinity : piece.length;
    const soonest = from < 0 || to === Infinity ? -Infinity : soonestOn(piece, radius, bundle, rho);
    if (soonest !== null) straight(piece.from, piece.startTangent, from, to, soonest);
  }
  for (const piece of path.pieces) {
    const soonest = piece.kind === 'arc' ? soonestOn(piece, radius, bundle, rho) : null;
    if (piece.kind !== 'arc' || soonest === null) continue;
    met.push({ arc: piece, from: piece.from, axis: piece.startTangent, low: 0, high: 0, soonest, laid: null });
  }
  return met;
}

/**
 * How far from the origin the lines can meet a piece at the soonest, mm; null if all pass clear of it. A piece of less than
 * half a turn lies in the ball on its chord.
 */
function soonestOn(
  { from, to }: LinePiece | ArcPiece,
  radius: number,
  { origin, direction }: Bundle,
  rho: number,
): number | null {
  const middle = subtract(interpolate(from, to, 0.5), origin);
  const ball = distance(from, to) / 2 + radius + ROUNDING;
  if (length(rejectFrom(middle, direction)) > ball + rho) return null;
  return Math.abs(dot(middle, direction)) - ball;
}
