import type { Axis, Vec3 } from '../../geometry/vector.ts';
import type { NodeRef } from '../reference.ts';

export interface RayPlace {
  readonly kind: 'ray';
  readonly from: NodeRef;
  readonly direction: Vec3;
  readonly until: { readonly axis: Axis; readonly value: number };
}
