/** A bending die. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { LEAST_ANGLE } from '../limits.ts';
import type { DieId } from '../reference.ts';
import { benderPart, type Bender } from './bender.ts';
import { across, angle, coordinate, length, named, size } from './fields.ts';
import type { Kind } from './kind.ts';

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

/** The fields of the die itself, without the machine. */
export const dieEntries = {
  ...named,
  outerDiameter: across,
  centrelineRadius: size,
  clampOffset: v.optional(coordinate, 0),
  leastStraight: v.optional(length, 0),
  leastGrip: v.optional(length, 0),
  greatestAngle: v.optional(angle(LEAST_ANGLE, 180), 180),
  radius: v.optional(v.picklist(['nominal', 'from-pulls']), 'nominal'),
};

export const dieKind: Kind<Die> = {
  word: 'die',
  letter: 'd',
  shape: v.looseObject({ ...dieEntries, bender: v.exactOptional(benderPart.shape) }),
  keys: [
    'id name outerDiameter centrelineRadius clampOffset leastStraight leastGrip greatestAngle radius bender',
    ...benderPart.keys,
  ],
};
