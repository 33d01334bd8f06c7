/** One order of bending, laid out for the player: where the tube is at every moment, and what is drawn beside it. */
import { toRadians, type Radians } from '../../core/geometry/angle.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import { type BendableTube } from '../../core/rehearse/bendable.ts';
import { poseAt } from '../../core/rehearse/pose.ts';
import type { Pose, RehearsedStep } from '../../core/rehearse/types.ts';
import { rotationReading, type RotationReading } from '../../core/run/rotation-reading.ts';
import { wayBetween, type Way } from './motion.ts';

/** A step with what leads to it. */
export interface Stage {
  readonly step: RehearsedStep;
  readonly poseAt: (angle: Radians) => Pose;
  /** From the last bend to this one; null before the first. */
  readonly way: Way | null;
  /** The other end is in front than at the step before. */
  readonly turned: boolean;
  /** How the tube is turned before it; null on the first. */
  readonly turn: RotationReading | null;
  /** The middle of the end in front while the machine turns, from where it begins to where it is let go. */
  readonly swept: readonly Vec3[];
}

const SWEEP_STEP = toRadians(3);

export function layStages(tube: BendableTube, steps: readonly RehearsedStep[]): readonly Stage[] {
  const made = new Set<number>();
  let before: { readonly step: RehearsedStep; readonly pose: Pose } | null = null;
  return steps.map((step, i): Stage => {
    const madeBefore: ReadonlySet<number> = new Set(made);
    const pose = (angle: Radians): Pose => poseAt(tube, madeBefore, step, angle);
    const ready = pose(0);
    const turned = before !== null && before.step.front !== step.front;
    const way = before === null ? null : wayBetween(before.pose, ready, turned, tube.die.bender.planeHeight);
    before = { step, pose: pose(step.net) };
    made.add(step.bend);
    return {
      step,
      poseAt: pose,
      way,
      turned,
      turn: rotationReading(tube, steps, i),
      swept: sweptBy(pose, step.pulled),
    };
  });
}

function sweptBy(pose: (angle: Radians) => Pose, pulled: Radians): readonly Vec3[] {
  const count = Math.max(1, Math.ceil(pulled / SWEEP_STEP));
  return Array.from({ length: count + 1 }, (_, i) => pose((pulled * i) / count).front.pieces.at(-1)!.to);
}
