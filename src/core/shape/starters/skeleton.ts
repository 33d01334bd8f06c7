/** What a layout's hoops and legs leave for the bars between them: the uprights of the sides, and where the roof's bars land. */
import type { MemberId, NodeId } from '../../job/reference.ts';
import type { Job } from '../../job/types.ts';
import type { Plan, Upright } from './plan.ts';

export interface Skeleton {
  /** At the B-pillar, on the left. */
  readonly rear: Upright;
  /** At the windscreen's pillar, on the left; a roll bar has none. */
  readonly front: Upright | null;
  /** Where a stay begins, and the diagonal on the driver's side. */
  readonly stayTop: NodeId;
  readonly diagonalTop: NodeId;
  /** On the left, and the tube across the car at the rear. */
  readonly roof: { readonly rear: NodeId; readonly front: NodeId; readonly across: MemberId } | null;
}

/** Where there are two uprights on a side, with bars between them. */
export type Sides = Skeleton & { readonly front: Upright };

/** The job with the layout's hoops, legs and what joins them. */
export type Layout = (job: Job, plan: Plan) => { readonly job: Job; readonly skeleton: Skeleton };
