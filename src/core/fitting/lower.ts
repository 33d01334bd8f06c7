/**
 * How far the whole cage has to stand lower for a torch to have its room above every joint under the roof. mm.
 *
 * Lowered by D, a place that lies `air` over a joint's top lies air + D over it. It is in the torch's way where that is less than the room,
 * unless it still lies lower than the joint's axis, which is `deep` under the top: D from -deep - air up to room - air will not do. The
 * answer is the least D, from 0 on, that lies in none of these stretches: closed form, and none of what only comes over a joint when the
 * cage is lowered is forgotten. Where nothing of the kind does it is the greatest of room - air, or 0.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Beside } from './air.ts';
import type { Joint } from './joints.ts';

export interface Lowered {
  readonly by: number;
  /** The joint that decides it, and what lies over it then; null where nothing has to be lowered. */
  readonly decides: { readonly joint: Joint; readonly roof: Beside } | null;
}

/** `beside`: of each joint all that lies within its reach. */
export function lowerBy(
  joints: readonly { readonly joint: Joint; readonly beside: readonly Beside[] }[],
  room: number,
): Lowered {
  const stretches = joints.flatMap(({ joint, beside }) =>
    beside.map((roof) => ({ joint, roof, from: joint.axis - roof.at[2], to: room - roof.air })),
  );
  let lowered: Lowered = { by: 0, decides: null };
  for (const { joint, roof, from, to } of stretches.toSorted((a, b) => a.from - b.from)) {
    if (from > lowered.by + ROUNDING) break;
    if (to > lowered.by + ROUNDING) lowered = { by: to, decides: { joint, roof } };
  }
  return lowered;
}
