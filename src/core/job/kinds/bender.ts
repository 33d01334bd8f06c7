/** The machine that a die is used in: how it bends, what it is read by, and the room round it. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { GREATEST_STEP, LEAST_STEP } from '../limits.ts';
import { angle, length } from './fields.ts';
import type { Part } from './kind.ts';
import { obstaclePart, type Obstacle } from './obstacle.ts';

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

/** A bender as it is before anybody has said more of it. */
export const FIRST_BENDER: Bender = {
  turns: 'left',
  bendLies: 'beyond',
  planeHeight: 1000,
  rotationBy: 'level',
  levelStep: 0.1,
  wheelStep: 1,
  pullStep: 0.5,
  room: [],
};

const fineness = angle(LEAST_STEP, GREATEST_STEP);

export const benderPart: Part<Bender> = {
  shape: v.looseObject({
    turns: v.optional(v.picklist(['left', 'right']), FIRST_BENDER.turns),
    bendLies: v.optional(v.picklist(['beyond', 'before']), FIRST_BENDER.bendLies),
    planeHeight: v.optional(length, FIRST_BENDER.planeHeight),
    rotationBy: v.optional(v.picklist(['level', 'wheel']), FIRST_BENDER.rotationBy),
    levelStep: v.optional(fineness, FIRST_BENDER.levelStep),
    wheelStep: v.optional(fineness, FIRST_BENDER.wheelStep),
    pullStep: v.optional(fineness, FIRST_BENDER.pullStep),
    room: v.optional(v.array(obstaclePart.shape), []),
  }),
  keys: ['turns bendLies planeHeight rotationBy levelStep wheelStep pullStep room', ...obstaclePart.keys],
};
