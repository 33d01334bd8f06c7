/** What is asked of a cut end beside its curve: how far a plate's cut is off square, and the lengths that shops cut by. */
import { angleBetween, type Radians } from '../geometry/angle.ts';
import type { SolvedTube, TubeEnd } from '../solve/types.ts';

/** Angle between a plate-cut end and a square one, 0..pi/2: what the saw is set over by. */
export function plateOffSquare(end: TubeEnd): Radians {
  if (end.plateNormal === null) return 0;
  const angle = angleBetween(end.plateNormal, end.direction);
  return Math.min(angle, Math.PI - angle);
}

/** The three lengths that shops cut by, mm: from tip to tip, from throat to throat, and along the axis from node to node. */
export function cutLengths(tube: SolvedTube): { tips: number; throats: number; axis: number } {
  const [endA, endB] = tube.ends;
  const axis = tube.developedLength;
  return {
    axis,
    tips: axis - (endA.tip ?? 0) - (endB.tip ?? 0),
    throats: axis - (endA.throat ?? 0) - (endB.throat ?? 0),
  };
}
