/**
 * The line that is scribed along a bent tube, on top of it as it lies in the machine for its first bend: whether it is wanted at all,
 * and where it stands at the tube's ends from the inside line, which the marks of the ends are counted from.
 *
 * It is a line of the material, and so is the inside of every bend: on the tube while it was straight all of them run along it, turned
 * from one another by the rotations between the bends, and no order of bending changes that. Seen from behind, towards the end in
 * front, the inside of the first bend is on the side that the machine bends to, and the top a quarter turn clockwise of the left.
 */
import { wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { rotationBetween } from '../solve/bend-order.ts';
import type { SolvedTube } from '../solve/types.ts';
import { rotationReading } from './rotation-reading.ts';

/** Whether this order turns the tube anywhere, so that the line says something. */
export const isScribed = (tube: SolvedTube, order: readonly BendStep[]): boolean =>
  order.some((_, i) => (rotationReading(tube, order, i)?.turn ?? 0) > 0);

/**
 * From the inside line of an end to the scribed line, clockwise positive as one looks at the cut end, towards the tube; (-pi, pi]. Null
 * on a tube without bends.
 */
export function scribedLineAt(tube: SolvedTube, order: readonly BendStep[], which: 0 | 1): Radians | null {
  const [first] = order;
  if (first === undefined || tube.bends.length === 0) return null;
  // Both right-hand about the direction from end A to end B.
  const side = (tube.die?.bender ?? FIRST_BENDER).turns === 'left' ? 1 : -1;
  const fromFirst = (side * (first.front === 'B' ? Math.PI : -Math.PI)) / 2;
  const nearest = which === 0 ? 1 : tube.bends.length;
  const turn = fromFirst + rotationBetween(tube.bends, nearest, first.bend);
  return wrapHalfTurn(which === 0 ? turn : -turn);
}
