/**
 * The trim of an end between the whole degrees of its profile. Equal tubes meet in a corner of the curve, which may lie
 * between two degrees: a straight line from the one to the other would cut it off by some tenths of a millimetre.
 *
 * The same generators are taken, turned together by part of a degree, so every number is as exact as the profile's own.
 */
import type { Radians } from '../geometry/angle.ts';
import { trimBySleeves } from '../geometry/sleeve.ts';
import { rotateAbout } from '../geometry/vector.ts';
import { jointReach, planeTrim } from './ends.ts';
import type { Frame, SolvedTube } from './types.ts';

/**
 * The trim at phi = turn, 1 degree + turn, ... 359 degrees + turn, on the surface of radius `rho` about the tube's axis:
 * mm from the node along the end's direction, NaN where nothing reaches. With turn 0 and the outer radius it is the
 * profile itself.
 */
export function trimBetween(frame: Frame, tube: SolvedTube, which: 0 | 1, turn: Radians, rho: number): Float64Array {
  const end = tube.ends[which];
  const bundle = {
    origin: end.position,
    direction: end.direction,
    reference: rotateAbout(end.reference, end.direction, turn),
  };
  if (end.plateNormal !== null) return planeTrim(bundle, end.plateNormal, rho);
  if (end.cuts.length === 0) return new Float64Array(end.outer.length);
  const sleeves = end.cuts.map((cut) => {
    const run = frame.byId.get(cut.against)!;
    return {
      path: run.path,
      radius: run.section.outerDiameter / 2,
      reach: jointReach({ cut }, run, end.position, tube.section.outerDiameter / 2),
    };
  });
  return trimBySleeves(sleeves, bundle, rho).trim;
}
