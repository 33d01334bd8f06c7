/** A node on a measured point, or off it by an offset: it follows the point. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { offset } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import type { PointRef } from '../reference.ts';

export interface PointPlace {
  readonly kind: 'point';
  readonly point: PointRef;
  readonly offset: Vec3;
}

export const pointPlace = {
  shape: v.looseObject({ kind: v.literal('point'), point: v.string(), offset }),
  keys: ['kind point offset'],
  beyondShape: ({ point }, at) => [{ place: `${at}.point`, list: 'points', to: point, carried: true }],
} satisfies Part<PointPlace>;
