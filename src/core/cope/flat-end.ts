/**
 * A tube's end unrolled flat about its reference: the lines along which outer surface and bore are cut, in unbroken pieces from -180 to
 * 180 degrees, so that both edges are the same line of the tube. The outer one is the line that a wrap of the outer surface is cut along
 * (wrap.ts), whose seam may stand elsewhere. Places and trims as in cut-pieces.ts.
 *
 * A generator that nothing reaches has no trim: a line ends there, and is never joined across.
 */
import { remembered } from '../remembered.ts';
import type { TubeEnd } from '../solve/types.ts';
import { piecesOf, type Piece } from './cut-pieces.ts';

export interface FlatEnd {
  /** Empty where nothing reaches the end. Tip, throat and equal tips are among its places, to the last digit. */
  readonly outer: readonly Piece[];
  /** Where the cutter cuts the bore, only as far as there is wall left to bore. */
  readonly bore: readonly Piece[];
}

/** Both lines of an end; kept as long as the end. Phi in radians, -pi..pi; s in mm from the node along the end's direction. */
export const flatEnd = remembered((end: TubeEnd): FlatEnd => {
  const { cutter, tip, lows, high } = end;
  const { outerDiameter, wall } = cutter.section;
  const cutLine = (rho: number) => ({ cutter, radii: [rho], sawnAt: tip ?? -Infinity });
  const extremes = high === null ? [] : [...lows, high];
  return {
    outer: piecesOf(cutLine(outerDiameter / 2), end.outer, -Math.PI, extremes).pieces,
    bore: piecesOf(cutLine(outerDiameter / 2 - wall), end.inner, -Math.PI, []).pieces,
  };
});
