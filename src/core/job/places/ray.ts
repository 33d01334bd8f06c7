/** A node where a ray from another node reaches a coordinate plane. */
import * as v from 'valibot';
import type { Axis, Vec3 } from '../../geometry/vector.ts';
import { arrowFaults } from '../kinds/faults.ts';
import { coordinate, vector } from '../kinds/fields.ts';
import type { Part } from '../kinds/kind.ts';
import type { NodeRef } from '../reference.ts';

export interface RayPlace {
  readonly kind: 'ray';
  readonly from: NodeRef;
  readonly direction: Vec3;
  readonly until: { readonly axis: Axis; readonly value: number };
}

export const rayPlace = {
  shape: v.looseObject({
    kind: v.literal('ray'),
    from: v.string(),
    direction: vector,
    until: v.looseObject({ axis: v.picklist(['x', 'y', 'z']), value: coordinate }),
  }),
  keys: ['kind from direction until', 'axis value'],
  beyondShape: ({ from, direction }, at) => [
    { place: `${at}.from`, list: 'nodes', to: from, carried: true },
    ...arrowFaults(direction, `${at}.direction`),
  ],
} satisfies Part<RayPlace>;
