/**
 * One cut of a branch's end by a run tube: what the notcher is set to.
 *
 * u is the branch's direction, into the branch. v is the run tube's axis (at a bend its tangent at the point nearest the
 * node), in the sense with u.v >= 0. The acute side is the part of v square to u. Where v is square to u either sense
 * would do: the run tube's own sense, A to B, is taken (for a twin's cut see squareAxis).
 * Saw depth (trade practice): branch diameter / sin + run diameter / tan of the included angle, on a blank that runs past the cut.
 */
import { angleBetween, signedAngle } from '../geometry/angle.ts';
import { nearestOnPath } from '../geometry/path.ts';
import { ANGLE_ROUNDING } from '../geometry/tolerance.ts';
import { cross, dot, mirrored, normalize, rejectFrom, scale, subtract, type Vec3 } from '../geometry/vector.ts';
import type { Neighbour } from './meetings.ts';
import type { Cut } from './types.ts';

/** A cut before the end's reference is known. */
export interface CutGeometry {
  readonly cut: Omit<Cut, 'clocking' | 'reaches'>;
  /** Unit vector square to the branch; null where the run tube is parallel to it and there is no acute side. */
  readonly acuteSide: Vec3 | null;
  readonly square: boolean;
}

/** `position` is the branch's node, `direction` points into the branch, diameters in mm; `twin`: the branch is a member's twin. */
export function cutBy(
  runTube: Neighbour,
  position: Vec3,
  direction: Vec3,
  branchDiameter: number,
  twin: boolean,
): CutGeometry {
  const landing = nearestOnPath(runTube.path, position, true);
  const along = dot(direction, landing.tangent);
  const square = Math.abs(along) <= ANGLE_ROUNDING;
  const axis = square ? squareAxis(runTube, landing.tangent, position, twin) : scale(landing.tangent, Math.sign(along));
  const includedAngle = Math.min(angleBetween(direction, axis), Math.PI / 2);
  const parallel = includedAngle <= ANGLE_ROUNDING;
  const acuteSide = parallel ? null : normalize(rejectFrom(axis, direction));
  const diameter = runTube.section.outerDiameter;
  return {
    acuteSide,
    square,
    cut: {
      against: runTube.id,
      includedAngle,
      offSquare: Math.PI / 2 - includedAngle,
      axisOffset:
        acuteSide === null ? landing.distance : dot(subtract(position, landing.point), cross(direction, acuteSide)),
      sawDiameter: diameter,
      sawDepth: parallel ? null : branchDiameter / Math.sin(includedAngle) + diameter / Math.tan(includedAngle),
      onBend: landing.onArc,
      landing: landing.point,
      landingAt: landing.at,
    },
  };
}

/**
 * A square cut has two acute sides, and the run tube's direction of travel picks one. For a twin the choice is the mirror image
 * of its member's, also against a run tube that spans the car and so travels the other way on the twin's side.
 */
function squareAxis(runTube: Neighbour, tangent: Vec3, position: Vec3, twin: boolean): Vec3 {
  if (!twin || runTube.mirrored) return tangent;
  const members = mirrored(nearestOnPath(runTube.path, mirrored(position), true).tangent);
  return scale(tangent, dot(members, tangent) < 0 ? -1 : 1);
}

/**
 * The cut measured from the end's reference: clocking to the acute side, right-hand about the direction, (-pi, pi]. A square
 * cut has two acute sides, and the one with the clocking in [0, pi) is given; the axis offset is measured from that one.
 */
export function clockedCut(
  { cut, acuteSide, square }: CutGeometry,
  reference: Vec3,
  direction: Vec3,
  reaches: boolean,
): Cut {
  const { axisOffset } = cut;
  if (acuteSide === null) return { ...cut, clocking: 0, reaches };
  const clocking = signedAngle(reference, acuteSide, direction);
  if (!square) return { ...cut, clocking, reaches };
  if (clocking > -ANGLE_ROUNDING && clocking < Math.PI - ANGLE_ROUNDING)
    return { ...cut, clocking: Math.max(clocking, 0), reaches };
  const turned = Math.max(clocking < 0 ? clocking + Math.PI : clocking - Math.PI, 0);
  return { ...cut, clocking: turned, axisOffset: -axisOffset, reaches };
}
