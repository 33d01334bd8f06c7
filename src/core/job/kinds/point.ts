/** A measured point of the car. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import type { PointId } from '../reference.ts';
import { named, vector } from './fields.ts';
import type { Kind } from './kind.ts';
import { leastGap } from './least-gap.ts';

export interface Point {
  readonly id: PointId;
  readonly name: string;
  readonly position: Vec3;
  /** Put in by the program for a start: nobody has measured it, or said that it is right. */
  readonly guessed?: true;
  /** mm from it to the outside of any tube that does not stand on it, at least. */
  readonly leastGap?: number;
}

export const pointKind: Kind<Point> = {
  word: 'point',
  letter: 'p',
  shape: v.looseObject({ ...named, position: vector, guessed: v.exactOptional(v.literal(true)), leastGap }),
  keys: ['id name position guessed leastGap'],
  hasImage: () => true,
};
