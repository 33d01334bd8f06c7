/**
 * Where on a tube's end a cut's deep-bite side stands, so that it can be marked on the tube: from a line that runs along it to a
 * mark, round the surface. Nothing is turned: the mark is put on the tube, and goes to where the saw bites deepest.
 *
 * The line is the end's reference: along the inside of the nearest bend, or the one scribed along a straight tube. One looks at the
 * cut end, towards the tube, which is along the end's direction: right-hand about it is clockwise so seen.
 */
import { signedAngle, toDegrees, type Radians } from '../geometry/angle.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { dot, length, normalize, rejectFrom, scale } from '../geometry/vector.ts';
import type { Cut, SolvedTube } from '../solve/types.ts';

/** Degrees off square that are shown as 0.0: as good as square. */
export const SQUARE = 0.05;

export interface EndMark {
  /** From the line, clockwise positive as one looks at the cut end, towards the tube; (-pi, pi]. */
  readonly turn: Radians;
  /** The same round the surface, mm, no sign: degrees x OD x pi / 360. */
  readonly round: number;
  /** A square cut bites as deep opposite the mark. */
  readonly both: boolean;
}

/** Where the acute, deep-bite side of a cut of this tube stands. */
export const deepSide = (tube: SolvedTube, { clocking, offSquare }: Cut): EndMark =>
  markAt(tube, clocking, Math.abs(toDegrees(offSquare)) < SQUARE);

/** Where an end that is cut by its plate's plane is longest; null where it is cut square. */
export function longSide(tube: SolvedTube, which: 0 | 1): EndMark | null {
  const { plateNormal, direction, reference } = tube.ends[which];
  if (plateNormal === null) return null;
  // The wall ends where it meets the plane: s = -r (e . n) / (u . n), least where e is along the part of n square to u.
  const into = scale(plateNormal, dot(plateNormal, direction) < 0 ? -1 : 1);
  const leans = rejectFrom(into, direction);
  if (length(leans) < ANGLE_ROUNDING) return null;
  return markAt(tube, signedAngle(reference, normalize(leans), direction), false);
}

const markAt = ({ section }: SolvedTube, turn: Radians, both: boolean): EndMark => ({
  turn,
  round: (Math.abs(turn) * section.outerDiameter) / 2,
  both,
});
