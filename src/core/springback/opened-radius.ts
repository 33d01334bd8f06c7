/**
 * The radius that a bend comes out with. The die lays down radius x pulled of arc, which ends as net; so what is pulled past the net
 * angle makes the bend that much wider. Angles in one unit, radii in mm.
 */
import type { Radians } from '../geometry/angle.ts';
import { bornePull } from './pull-advice.ts';
import { isBelievablePull, type PullLaw } from './pull-law.ts';

/** Centreline radius, mm, of a bend that was pulled so far and came out as `net`; the die's own where the two cannot be true. */
export const openedRadius = (dieRadius: number, pulled: number, net: number): number =>
  isBelievablePull(pulled, net) ? (dieRadius * pulled) / net : dieRadius;

/**
 * Centreline radius, mm, that a bend of this net angle is laid out with by the pulls: pulled is what a person is given to pull to,
 * before it is put on the machine's scale. So a log that cannot bear an angle opens the radius no further than is sure.
 */
export const effectiveRadius = (law: PullLaw, dieRadius: number, net: Radians): number =>
  openedRadius(dieRadius, bornePull(law, net), net);
