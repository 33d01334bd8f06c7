import type { Degrees } from '../../geometry/angle.ts';
import type { DieId, SectionId, TubeRef } from '../reference.ts';

/** One bend as it was made: how far the machine was pulled, and the angle measured after release. */
export interface Pull {
  readonly die: DieId;
  readonly section: SectionId;
  /** Heat or batch of the tube, where it is known. */
  readonly batch?: string;
  readonly pulled: Degrees;
  readonly net: Degrees;
  /** Date, as 2026-03-02; '' when not noted. */
  readonly on: string;
  /** The bend that it made, 1 = first from end A, when it came from a bend run. */
  readonly tube?: TubeRef;
  readonly bend?: number;
}
