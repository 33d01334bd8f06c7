import type { Degrees } from '../../geometry/angle.ts';
import type { Obstacle } from './obstacle.ts';

/**
 * The machine, and the room round it. Bender axes, mm: the origin on the floor, plumb under the place where every bend
 * starts; x along the feed, y to the left of it, z up. The bend plane is level.
 */
export interface Bender {
  /** To which side of the feed the tube is bent, seen from above. */
  readonly turns: 'left' | 'right';
  /**
   * On which side of its mark a bend lies, seen from the end that is measured from. 'beyond': that end goes through the
   * machine first, and the clamp holds it. 'before': it stays behind, and the clamp holds the tube beyond the bend.
   */
  readonly bendLies: 'beyond' | 'before';
  /** Of the tube's centreline over the floor. */
  readonly planeHeight: number;
  readonly rotationBy: 'level' | 'wheel';
  /** What each can be read to, and the scale that the machine's own angle is read from. */
  readonly levelStep: Degrees;
  readonly wheelStep: Degrees;
  readonly pullStep: Degrees;
  /** What stands round the machine, the floor not counted. */
  readonly room: readonly Obstacle[];
}
