/** A measured point of the car. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import type { PointId } from '../reference.ts';
import { named, vector } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Point {
  readonly id: PointId;
  readonly name: string;
  readonly position: Vec3;
}

export const pointKind: Kind<Point> = {
  word: 'point',
  letter: 'p',
  shape: v.looseObject({ ...named, position: vector }),
  keys: ['id name position'],
  hasImage: () => true,
};
