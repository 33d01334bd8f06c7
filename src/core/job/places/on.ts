import type { Vec3 } from '../../geometry/vector.ts';
import type { TubeRef } from '../reference.ts';

/** A place on another member's real centreline, arcs included: from an end, or from a bend (1 = first from end A). */
export type OnMember = {
  readonly kind: 'on';
  readonly member: TubeRef;
  readonly distance: number;
  /** Moves the node off the axis, car axes, mm. */
  readonly offset: Vec3;
} & (
  | { readonly from: 'start' | 'end'; readonly bend?: never; readonly where?: never }
  | { readonly bend: number; readonly where: 'start' | 'middle' | 'end'; readonly from?: never }
);
