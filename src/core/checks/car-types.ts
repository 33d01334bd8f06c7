/** Findings of tubes beside what was measured of the car, or was not; types.ts has the others. */
import type { Trim } from '../gaps/trim-places.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { PointId } from '../job/reference.ts';
import type { OfTube } from './types.ts';

/** A tube is nearer to a measured point or a body line than is wanted there. */
export interface NearTrim extends OfTube {
  readonly id: 'gap/near-trim';
  readonly trim: Trim;
  /** From it to the tube's outside; negative: so deep in the tube. */
  readonly distance: number;
  readonly wanted: number;
  /** How far to move `tube`, mm along each axis, for that much room. */
  readonly move: Vec3;
}

/** A tube goes by a point that nobody has measured. */
export interface OnGuess extends OfTube {
  readonly id: 'point/guessed';
  readonly point: PointId;
  /** How many go by it. */
  readonly tubes: number;
}
