/**
 * Whether the cage can be welded under the roof: the air above each joint there, the one figure that decides, what the boxes of its feet
 * give; and what is in the way then, which takes longer. Worked out when somebody looks, not at every edit; docs/maths/fitting.md.
 */
import { FIRST_ROOF_REACH, FIRST_TORCH_ROOM } from '../job/kinds/fitting.ts';
import { remembered } from '../remembered.ts';
import type { Frame } from '../solve/types.ts';
import { besideJoint, roofOver, type Beside } from './air.ts';
import { inTheWay, type InTheWay } from './in-the-way.ts';
import { jointsUnderRoof, type Joint } from './joints.ts';
import { lowerBy, type Lowered } from './lower.ts';
import { measuredPlaces } from './measured.ts';
import { boxesGive, standingEnds, type StandingEnd } from './standing.ts';

/** A joint under the roof. */
export interface JointAir {
  readonly joint: Joint;
  /** What lies over it; null where nothing that was measured does. */
  readonly roof: Beside | null;
  /** What the torch lacks above it, mm; 0 where it has its room; null where nothing is known. */
  readonly short: number | null;
}

export interface Lowering {
  /** That the torch wants, mm. */
  readonly room: number;
  /** Shortest first, then those of which nothing is known, in build order. */
  readonly joints: readonly JointAir[];
  readonly lowered: Lowered;
  /** What all boxes of the feet give, mm; null without boxes. */
  readonly boxes: number | null;
  readonly ends: readonly StandingEnd[];
}

/** Of a frame; worked out once a frame. */
export const lowering = remembered((frame: Frame): Lowering => {
  const { torchRoom: room = FIRST_TORCH_ROOM, roofReach = FIRST_ROOF_REACH } = frame.job;
  const places = measuredPlaces(frame);
  const joints = jointsUnderRoof(frame).map((joint) => ({ joint, beside: besideJoint(joint, places, roofReach) }));
  const lowered = lowerBy(joints, room);
  const ends = standingEnds(frame);
  const airs = joints.map(({ joint, beside }): JointAir => {
    const roof = roofOver(joint, beside);
    return { joint, roof, short: roof && Math.max(0, room - roof.air) };
  });
  const height = ({ roof }: JointAir): number => roof?.air ?? Infinity;
  return {
    room,
    joints: airs.toSorted((a, b) => (height(a) === height(b) ? 0 : height(a) - height(b))),
    lowered,
    boxes: boxesGive(ends),
    ends,
  };
});

/** What the cage runs into when it stands so low; worked out once a frame. */
export const metOnTheWay = remembered((frame: Frame): readonly InTheWay[] =>
  inTheWay(frame, measuredPlaces(frame), lowering(frame).lowered.by),
);
