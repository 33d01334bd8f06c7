/** One order of bending, laid out for the player: where the tube is at every moment, and what is drawn beside it. */
import { signedAngle, toRadians, type Radians } from '../../core/geometry/angle.ts';
import { normalize, scale, subtract, X_AXIS, Y_AXIS, type Vec3 } from '../../core/geometry/vector.ts';
import type { ArcPiece } from '../../core/geometry/path.ts';
import { sideOf } from '../../core/rehearse/machine.ts';
import { poseAt, type BendableTube } from '../../core/rehearse/pose.ts';
import type { Pose, RehearsedStep } from '../../core/rehearse/types.ts';
import { wayBetween, type Way } from './motion.ts';

/** A step with what leads to it. */
export interface Stage {
  readonly step: RehearsedStep;
  readonly poseAt: (angle: Radians) => Pose;
  /** From the last bend to this one; null before the first. */
  readonly way: Way | null;
  /** The other end is in front than at the step before. */
  readonly turned: boolean;
  /** The bend made before that the rotation is read from; null on the first. */
  readonly from: number | null;
  /**
   * At what angle the leg of bend `from` stands off the side that the machine bends to when the tube lies ready,
   * clockwise as seen along the feed, (-pi, pi]; 0 on the first.
   */
  readonly roll: Radians;
  /** The middle of the end in front while the machine turns, from where it begins to where it is let go. */
  readonly swept: readonly Vec3[];
}

const SWEEP_STEP = toRadians(3);

export function layStages(tube: BendableTube, steps: readonly RehearsedStep[]): readonly Stage[] {
  const made = new Set<number>();
  let before: { readonly step: RehearsedStep; readonly pose: Pose } | null = null;
  return steps.map((step): Stage => {
    const madeBefore: ReadonlySet<number> = new Set(made);
    const pose = (angle: Radians): Pose => poseAt(tube, madeBefore, step, angle);
    const ready = pose(0);
    const turned = before !== null && before.step.front !== step.front;
    const way = before === null ? null : wayBetween(before.pose, ready, turned, tube.die.bender.planeHeight);
    const roll = step.rotationFrom === null ? 0 : rollSeen(tube, ready, step);
    before = { step, pose: pose(step.net) };
    made.add(step.bend);
    return { step, poseAt: pose, way, turned, from: step.rotationFrom, roll, swept: sweptBy(pose, step.pulled) };
  });
}

function sweptBy(pose: (angle: Radians) => Pose, pulled: Radians): readonly Vec3[] {
  const count = Math.max(1, Math.ceil(pulled / SWEEP_STEP));
  return Array.from({ length: count + 1 }, (_, i) => pose((pulled * i) / count).front.pieces.at(-1)!.to);
}

/** Read off the tube as it lies: towards what side the nearest bend on the reference's side leads. */
function rollSeen(tube: BendableTube, ready: Pose, { bend, front, rotationFrom }: RehearsedStep): Radians {
  const inFront = rotationFrom! < bend === (front === 'A');
  const nearest = (inFront ? ready.front : ready.rear).pieces.find((piece): piece is ArcPiece => piece.kind === 'arc');
  if (nearest === undefined) return 0;
  return signedAngle(scale(Y_AXIS, sideOf(tube.die.bender)), normalize(subtract(nearest.centre, nearest.from)), X_AXIS);
}
