/**
 * A bend run: a tube made at the bender step by step. Cut, mark; for each bend clamp, pull, read; then check.
 *
 * A step is done when it is ticked off or when what it asks for was typed; clamp and pull are also done once the bend has a
 * reading. A reading that is not within what the shop holds stays open until the bend is pulled on, or kept as it is. All is worked
 * out afresh from the tube as it is drawn now: where it is no longer what was drawn when the run began, `changed` says so.
 */
import { toDegrees, toRadians, wrapHalfTurn, type Degrees, type Radians } from '../geometry/angle.ts';
import { distance } from '../geometry/vector.ts';
import { FIRST_BENDER } from '../job/defaults.ts';
import type { BentBend, BentTube, DrawnTube } from '../job/types.ts';
import type { SolvedTube } from '../solve/types.ts';
import { firstPull, type PullLaw } from '../springback/pull-law.ts';
import { asBent, type AsBent } from './as-bent.ts';
import type { CheckDimension } from './check-dimensions.ts';
import { judge, type Verdict } from './judge.ts';
import { bendMarks } from './marks.ts';
import { onStep, rotationReading, type RotationReading } from './rotation-reading.ts';
import {
  isOrderOf,
  tapeSheet,
  TOLD_ANGLE,
  TOLD_LENGTH,
  type TapeSetting,
  type TapeSheet,
  type TapeStep,
} from './tape.ts';

interface StepBase {
  /** As BentTube.done names it. */
  readonly key: string;
  readonly done: boolean;
}

export type RunStep = StepBase &
  (
    | { readonly kind: 'cut'; readonly blank: number; readonly grip: readonly [number, number] }
    | { readonly kind: 'mark'; readonly sheet: TapeSheet }
    | {
        readonly kind: 'clamp';
        readonly bend: number;
        readonly step: TapeStep;
        /** Null on the first bend made, which may lie any way. */
        readonly rotation: RotationReading | null;
        /** The tube is turned end for end before. */
        readonly flip: boolean;
      }
    | {
        readonly kind: 'pull';
        readonly bend: number;
        readonly target: Radians;
        /** Null where nothing is known of this steel and no pulls are logged. */
        readonly machineAngle: Radians | null;
        readonly from: PullLaw['from'] | null;
        /** Half-width of its 95 % interval; null with fewer than three pulls. */
        readonly within: Radians | null;
        /** On the machine's scale: the division nearest the machine angle. */
        readonly pullTo: Degrees | null;
        /** Less than that, on the same scale: to be pulled to, let go and read first, since more might be too far. */
        readonly firstTo: Degrees | null;
      }
    | {
        readonly kind: 'read';
        readonly bend: number;
        readonly target: Radians;
        readonly reading: BentBend | null;
        readonly verdict: Verdict | null;
      }
    | { readonly kind: 'check'; readonly checks: readonly RunCheck[] }
  );

export interface RunCheck {
  /** Of the tube as it was bent. */
  readonly predicted: CheckDimension;
  /** Of the tube as it is drawn, mm. */
  readonly drawn: number;
  readonly measured: number | null;
}

/** What is drawn otherwise than when the run began: lengths mm, angles degrees. */
export type DrawnChange =
  | { readonly what: 'bends'; readonly was: number; readonly now: number }
  /** `index`: leg 1 runs from end A to the first corner; an angle or rotation is that of bend 1, 2 ... */
  | {
      readonly what: 'leg' | 'angle' | 'rotation';
      readonly index: number;
      readonly was: number;
      readonly now: number;
    };

export interface BendRun {
  /** Empty where the order no longer holds every bend once, and from the middle of a tube that is no symmetric hoop. */
  readonly steps: readonly RunStep[];
  /** Index of the first step that is not done; as many as there are steps when all are. */
  readonly current: number;
  readonly changed: readonly DrawnChange[];
  /**
   * Bends that now start elsewhere than when the run began, mm from end A's node: by a changed drawing, or by pulls that open
   * the radius of a die that goes by them. Marks drawn before are no longer where the steps say.
   */
  readonly marksMoved: readonly { readonly bend: number; readonly was: number; readonly now: number }[];
  readonly asBent: AsBent;
}

/** The setting's own order does not count: the run has one. */
export function bendRun(tube: SolvedTube, run: BentTube, setting: TapeSetting): BendRun {
  const changed = changesSince(run, tube);
  const bent = asBent(tube, run);
  const sheet = tapeSheet(tube, { ...setting, order: run.order });
  const steps = sheet === null ? [] : stepsOf(tube, run, sheet, bent);
  const open = steps.findIndex(({ done }) => !done);
  return { steps, current: open < 0 ? steps.length : open, changed, marksMoved: marksMoved(run, tube), asBent: bent };
}

/** What is kept of the tube when its run begins. */
export const drawnTube = ({ corners, bends }: SolvedTube): DrawnTube => ({
  legs: corners.slice(1).map((corner, i) => distance(corner, corners[i]!)),
  angles: bends.map(({ angle }) => toDegrees(angle)),
  rotations: bends.map(({ rotation }) => toDegrees(rotation)),
  starts: bends.map(({ start }) => start),
});

function stepsOf(tube: SolvedTube, run: BentTube, sheet: TapeSheet, bent: AsBent): readonly RunStep[] {
  const bender = tube.die?.bender ?? FIRST_BENDER;
  const ticked = new Set(run.done);
  const pulls = bendMarks(tube);
  const ofBends = sheet.steps.flatMap((step, i): readonly RunStep[] => {
    const { bend, angle: target } = step;
    const reading = run.bends.find((each) => each.bend === bend) ?? null;
    const verdict = reading === null ? null : judge(tube, run.order, reading, bender.pullStep);
    const { machineAngle, machineAngleFrom, machineAngleWithin } = pulls[bend - 1]!;
    const first = tube.pullLaw === null ? null : firstPull(tube.pullLaw, target);
    const onScale = (angle: Radians | null) => (angle === null ? null : onStep(toDegrees(angle), bender.pullStep));
    const [pullTo, firstTo] = [onScale(machineAngle), onScale(first)];
    const [clamp, pull] = [`clamp ${bend}`, `pull ${bend}`];
    return [
      {
        kind: 'clamp',
        key: clamp,
        done: ticked.has(clamp) || reading !== null,
        bend,
        step,
        rotation: rotationReading(sheet.steps, i, bender),
        flip: i > 0 && sheet.steps[i - 1]!.front !== step.front,
      },
      {
        kind: 'pull',
        key: pull,
        done: ticked.has(pull) || reading !== null,
        bend,
        target,
        machineAngle,
        from: machineAngleFrom,
        within: machineAngleWithin,
        pullTo,
        firstTo: firstTo === pullTo ? null : firstTo,
      },
      {
        kind: 'read',
        key: `read ${bend}`,
        done: verdict !== null && (verdict.kind === 'within' || reading?.kept === true),
        bend,
        target,
        reading,
        verdict,
      },
    ];
  });
  const planned = asBent(tube, { order: run.order, bends: [] }).checks;
  const checks = bent.checks.map((predicted): RunCheck => ({
    predicted,
    drawn: planned.find(({ id }) => id === predicted.id)?.value ?? predicted.value,
    measured: run.checks.find(({ check }) => check === predicted.id)?.measured ?? null,
  }));
  return [
    { kind: 'cut', key: 'cut', done: ticked.has('cut'), blank: sheet.blank, grip: sheet.grip },
    { kind: 'mark', key: 'mark', done: ticked.has('mark'), sheet },
    ...ofBends,
    { kind: 'check', key: 'check', done: ticked.has('check'), checks },
  ];
}

/** By more than a person is told of. */
const marksMoved = ({ drawn }: BentTube, { bends }: SolvedTube): BendRun['marksMoved'] =>
  bends.flatMap(({ start }, i) => {
    const was = drawn?.starts?.[i] ?? start;
    return Math.abs(start - was) > TOLD_LENGTH ? [{ bend: i + 1, was, now: start }] : [];
  });

/** What the tape does not show is no change. */
function changesSince({ drawn, order }: BentTube, tube: SolvedTube): readonly DrawnChange[] {
  const now = drawnTube(tube);
  const was = drawn?.angles.length ?? order.length;
  if (!isOrderOf(order, now.angles.length) || was !== now.angles.length)
    return [{ what: 'bends', was, now: now.angles.length }];
  if (drawn === undefined) return [];
  const differing = (what: 'leg' | 'angle' | 'rotation', before: readonly number[], after: readonly number[]) =>
    after.flatMap((value, i): readonly DrawnChange[] => {
      const old = before[i] ?? value;
      const changed =
        what === 'leg'
          ? Math.abs(value - old) > TOLD_LENGTH
          : Math.abs(wrapHalfTurn(toRadians(value - old))) > TOLD_ANGLE;
      return changed ? [{ what, index: i + 1, was: old, now: value }] : [];
    });
  return [
    ...differing('leg', drawn.legs, now.legs),
    ...differing('angle', drawn.angles, now.angles),
    ...differing('rotation', drawn.rotations, now.rotations),
  ];
}
