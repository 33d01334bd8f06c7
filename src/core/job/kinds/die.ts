/** A bending die. */
import type { Degrees } from '../../geometry/angle.ts';
import type { DieId } from '../reference.ts';
import type { Bender } from './bender.ts';

export interface Die {
  readonly id: DieId;
  readonly name: string;
  readonly outerDiameter: number;
  readonly centrelineRadius: number;
  /** Clamp mark = start of bend minus this; mm along the tube. */
  readonly clampOffset: number;
  /** Shortest straight between two bends that the bender can hold; mm. */
  readonly leastStraight: number;
  /** Shortest straight beyond the last bend that the clamp can hold; mm. */
  readonly leastGrip: number;
  readonly greatestAngle: Degrees;
  /** 'from-pulls': each bend is laid out with the radius that the log of pulls says it opens to. */
  readonly radius: 'nominal' | 'from-pulls';
  /** The machine the die is used in, and the room round it; absent until somebody has set it up. */
  readonly bender?: Bender;
}
