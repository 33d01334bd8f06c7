/** What stands in the room round a bender. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import { MOST_BOXES } from '../limits.ts';
import { arrowFaults } from './faults.ts';
import { rotation, size, vector } from './fields.ts';
import type { Part } from './kind.ts';

/** What stands round the machine, in bender axes. A plane stands for a wall, a bench's top or a ceiling without end: its normal points into the room. */
export type Obstacle = { readonly name: string } & (
  | {
      readonly kind: 'box';
      readonly centre: Vec3;
      readonly size: Vec3;
      readonly rotation: readonly [Degrees, Degrees, Degrees];
    }
  | { readonly kind: 'plane'; readonly point: Vec3; readonly normal: Vec3 }
);

export const obstaclePart: Part<Obstacle> = {
  shape: v.variant('kind', [
    v.looseObject({
      name: v.string(),
      kind: v.literal('box'),
      centre: vector,
      size: v.strictTuple([size, size, size]),
      rotation,
    }),
    v.looseObject({ name: v.string(), kind: v.literal('plane'), point: vector, normal: vector }),
  ]),
  keys: ['name kind centre size rotation', 'name kind point normal'],
  most: MOST_BOXES,
  beyondShape: (obstacle, at) => (obstacle.kind === 'plane' ? arrowFaults(obstacle.normal, `${at}.normal`) : []),
};
