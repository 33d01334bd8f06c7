/** A node at coordinates of its own. */
import * as v from 'valibot';
import type { Vec3 } from '../../geometry/vector.ts';
import { vector } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';

export interface FixedPlace {
  readonly kind: 'fixed';
  readonly position: Vec3;
}

export const fixedPlace = {
  shape: v.looseObject({ kind: v.literal('fixed'), position: vector }),
  keys: ['kind position'],
} satisfies Part<FixedPlace>;
