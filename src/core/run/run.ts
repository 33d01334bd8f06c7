/**
 * A bend run: a tube made at the bender step by step. Cut, mark; for each bend clamp, pull, read; then check.
 *
 * A step is done when it is ticked off or when what it asks for was typed; clamp and pull are also done once the bend has a
 * reading. A reading that is not within what the shop holds stays open until the bend is pulled on, or kept as it is. All is worked
 * out afresh from the tube as it is drawn now: where it is no longer what was drawn when the run began, `changed` says so. Marks
 * are those drawn when the run began while the pulls cannot tell slack from spring; the blank is the one that was cut.
 */
import type { Radians } from '../geometry/angle.ts';
import { FIRST_BENDER } from '../job/kinds/bender.ts';
import type { BentBend, BentTube } from '../job/kinds/bent.ts';
import type { Job } from '../job/types.ts';
import { isOrderOf } from '../solve/bend-order.ts';
import type { SolvedTube } from '../solve/types.ts';
import type { PullAdvice } from '../springback/pull-advice.ts';
import { onBlank, type OnBlank } from '../solve/as-built.ts';
import { asBent, type AsBent } from './as-bent.ts';
import { asMarked, holdsMarks } from './as-marked.ts';
import type { CheckDimension } from './check-dimensions.ts';
import { changesSince, type DrawnChange } from './drawn.ts';
import { toBeBent } from './laid-out.ts';
import { judge, type Verdict } from './judge.ts';
import { openedBeyondMarks, type Opened } from './opened.ts';
import { bendMarks } from '../marks/marks.ts';
import { rotationReading, type RotationReading } from './rotation-reading.ts';
import { isScribed } from './scribed-line.ts';
import { tapeList, NOTABLE_LENGTH, type TapeSetting, type TapeList, type TapeStep } from '../marks/tape.ts';

interface StepBase {
  /** As BentTube.done names it. */
  readonly key: string;
  readonly done: boolean;
}

export type RunStep = StepBase &
  (
    | { readonly kind: 'cut'; readonly blank: number; readonly grip: readonly [number, number] }
    | { readonly kind: 'mark'; readonly tape: TapeList }
    | {
        readonly kind: 'clamp';
        readonly bend: number;
        readonly step: TapeStep;
        /** Null on the first bend made, which may lie any way. */
        readonly rotation: RotationReading | null;
        /** A line is wanted along the tube, since this order turns it. */
        readonly scribe: boolean;
        /** The tube is turned end for end before. */
        readonly flip: boolean;
      }
    | {
        readonly kind: 'pull';
        readonly bend: number;
        readonly target: Radians;
        readonly advice: PullAdvice;
      }
    | {
        readonly kind: 'read';
        readonly bend: number;
        readonly target: Radians;
        /** As BentBend.start, by the mark that the clamp step shows. */
        readonly start: number;
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

export interface BendRun {
  /** Empty where the order no longer holds every bend once, and from the middle of a tube that is no symmetric hoop. */
  readonly steps: readonly RunStep[];
  /** Index of the first step that is not done; as many as there are steps when all are. */
  readonly current: number;
  readonly changed: readonly DrawnChange[];
  /**
   * Bends whose mark lies elsewhere than when the run began, by how many mm along the tube, plus towards end B: by a changed drawing,
   * or by pulls that open the radius of a die that goes by them. Marks drawn before are no longer where the steps say.
   */
  readonly marksMoved: readonly { readonly bend: number; readonly by: number }[];
  /** What the blank that was cut falls short of the tube as it is drawn now, mm; negative: too long. 0 while nothing is changed. */
  readonly blankLacks: number;
  /** By the radii that were laid down. */
  readonly asBent: AsBent;
  readonly opened: Opened | null;
  /** The tube that its bends are made for, and how that lies on the blank that was cut. */
  readonly laid: SolvedTube;
  readonly blank: OnBlank;
}

/**
 * The tube as it lies at the bender, by which lists and sheets show what its bends are made by: as its run lays it out, with the marks that were drawn;
 * the tube itself while it has no run, and where the run is of other bends.
 */
export function atBender({ bent }: Pick<Job, 'bent'>, tube: SolvedTube): SolvedTube {
  const run = bent.find((each) => each.tube === tube.id);
  if (run === undefined) return tube;
  const drawn = toBeBent(tube, run);
  return isOrderOf(run.order, drawn.bends.length) ? laidFor(drawn, run, changesSince(run, drawn)) : tube;
}

/** The marks are held to those drawn while the pulls cannot tell slack from spring. */
const laidFor = (tube: SolvedTube, run: BentTube, changed: readonly DrawnChange[]): SolvedTube =>
  changed.length === 0 && holdsMarks(tube) ? asMarked(tube, run.drawn) : tube;

/** `tube` as toBeBent. The setting's own order does not count: the run has one. */
export function bendRun(tube: SolvedTube, run: BentTube, setting: TapeSetting): BendRun {
  const changed = changesSince(run, tube);
  const marked = asMarked(tube, run.drawn);
  const isCut = run.done.includes('cut');
  const laid = laidFor(tube, run, changed);
  // A blank that was cut keeps its length: what the tube needs less of it now lies beyond the end opposite the tape's zero.
  const cut = isCut ? marked : laid;
  const atA = { A: 0, middle: 0.5, B: 1 }[setting.from] * (cut.developedLength - laid.developedLength);
  const blank = {
    starts: onBlank(laid, run.order).starts.map((start) => start + atA),
    length: cut.developedLength,
  };
  const known = { changed, laid, blank, asBent: asBent(laid, run, blank), opened: openedBeyondMarks(laid, run, blank) };
  const own = { ...setting, order: run.order };
  const tape = tapeList(laid, own);
  if (tape === null) return { ...known, steps: [], current: 0, marksMoved: [], blankLacks: 0 };
  const atFirst = tapeList(marked, own) ?? tape;
  const cutBy = isCut ? atFirst : tape;
  const steps = stepsOf(laid, run, { tape, cut: cutBy, starts: blank.starts }, known.asBent);
  const open = steps.findIndex(({ done }) => !done);
  return {
    ...known,
    steps,
    current: open < 0 ? steps.length : open,
    marksMoved: marksMoved(atFirst, tape),
    blankLacks: tape.blank - cutBy.blank,
  };
}

/** Whether the run is of other bends than the tube has now: no step of it can be shown then. */
export const isOfOtherBends = ({ steps, changed }: Pick<BendRun, 'steps' | 'changed'>): boolean =>
  steps.length === 0 || changed.some(({ what }) => what === 'bends');

interface Marks {
  readonly tape: TapeList;
  /** The one that the blank was cut by. */
  readonly cut: TapeList;
  /** As OnBlank.starts. */
  readonly starts: readonly number[];
}

function stepsOf(tube: SolvedTube, run: BentTube, { tape, cut, starts }: Marks, bent: AsBent): readonly RunStep[] {
  const bender = tube.die?.bender ?? FIRST_BENDER;
  const ticked = new Set(run.done);
  const pulls = bendMarks(tube);
  const scribe = isScribed(tube, tape.steps);
  const ofBends = tape.steps.flatMap((step, i): readonly RunStep[] => {
    const { bend, angle: target } = step;
    const reading = run.bends.find((each) => each.bend === bend) ?? null;
    const verdict = reading === null ? null : judge(tube, run.order, reading, bender.pullStep);
    const [clamp, pull] = [`clamp ${bend}`, `pull ${bend}`];
    return [
      {
        kind: 'clamp',
        key: clamp,
        done: ticked.has(clamp) || reading !== null,
        bend,
        step,
        rotation: rotationReading(tube, tape.steps, i),
        scribe,
        flip: i > 0 && tape.steps[i - 1]!.front !== step.front,
      },
      {
        kind: 'pull',
        key: pull,
        done: ticked.has(pull) || reading !== null,
        bend,
        target,
        advice: pulls[bend - 1]!.pull,
      },
      {
        kind: 'read',
        key: `read ${bend}`,
        done: verdict !== null && (verdict.kind === 'within' || reading?.kept === true || reading?.fitted === true),
        bend,
        target,
        start: starts[bend - 1]!,
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
    { kind: 'cut', key: 'cut', done: ticked.has('cut'), blank: cut.blank, grip: cut.grip },
    { kind: 'mark', key: 'mark', done: ticked.has('mark'), tape },
    ...ofBends,
    { kind: 'check', key: 'check', done: ticked.has('check'), checks },
  ];
}

/** By more than is worth saying, counted from the tape's zero: a blank that is cut has it where it was. */
const marksMoved = (atFirst: TapeList, { steps }: TapeList): BendRun['marksMoved'] =>
  steps.flatMap(({ bend, towards, marks }, i) => {
    const along = (marks[0]!.exact - atFirst.steps[i]!.marks[0]!.exact) * (towards === 'B' ? 1 : -1);
    return Math.abs(along) > NOTABLE_LENGTH ? [{ bend, by: along }] : [];
  });

/** The bends whose rotation or straight, from the bend before on the tube, can be measured once this one is made. */
export function measurableAt(bend: number, made: readonly number[]): readonly number[] {
  const has = new Set(made);
  return [bend, bend + 1].filter((each) => has.has(each) && has.has(each - 1));
}
