/**
 * How far a tube is made. From cut on it is held as the frame had it then; once it is notched its ends are, too, so that what is kept of it is
 * taken afresh. Set back to drawn, it follows the frame again.
 */
import { beginRun, takeFitted, tickStep, untickStep } from '../edit/bent.ts';
import { sameData } from '../job/equal.ts';
import type { BentTube } from '../job/kinds/bent.ts';
import type { TubeRef } from '../job/reference.ts';
import type { HeldCutter, HeldEnd, HeldTube, MadeStage, MadeTube } from '../job/kinds/made.ts';
import type { Job } from '../job/types.ts';
import { isNotched } from '../solve/standing.ts';
import type { Frame, SolvedTube, TubeEnd } from '../solve/types.ts';

/** How far the tube is made; null while it is no more than drawn. */
export const stageOf = (job: Pick<Job, 'made'>, tube: TubeRef): MadeStage | null => madeOf(job, tube)?.stage ?? null;

const madeOf = ({ made }: Pick<Job, 'made'>, tube: TubeRef): MadeTube | undefined =>
  made.find((each) => each.tube === tube);

/** The job, which the frame is derived from, with the tube made so far; null: drawn, and nothing is held. The same job where it is so, and where there is no such tube. */
export function setStage(job: Job, frame: Frame, tube: TubeRef, stage: MadeStage | null): Job {
  const before = madeOf(job, tube);
  const solved = frame.byId.get(tube);
  if (solved === undefined || (before?.stage ?? null) === stage) return job;
  if (stage === null) return { ...job, made: job.made.filter((each) => each !== before) };
  // One that stands as it was bent has had free ends up to now.
  const isHeld = before !== undefined && (solved.held !== null || !isNotched({ ...before, stage }));
  const now: MadeTube = { tube, stage, held: isHeld ? before.held : heldNow(frame, solved) };
  return {
    ...job,
    made: before === undefined ? [...job.made, now] : job.made.map((each) => (each === before ? now : each)),
  };
}

/** The same, held as the drawing wants it today: of one that is cut, and of which its blank allows it. */
export function holdAnew(job: Job, frame: Frame, tube: TubeRef): Job {
  const before = madeOf(job, tube);
  const wanted = frame.byId.get(tube)?.asDrawn;
  if (before === undefined || wanted == null) return job;
  const held = heldNow(frame, wanted);
  if (sameData(held, before.held)) return job;
  return { ...job, made: job.made.map((each) => (each === before ? { ...each, held } : each)) };
}

/**
 * A step of the tube's bend run ticked off, as tickStep: one that is cut is held from then on, and once it is checked it is bent. What is further on stays
 * so.
 */
export function tickRun(job: Job, frame: Frame, tube: TubeRef, step: string): Job {
  const ticked = tickStep(job, tube, step);
  const stage = stageOf(job, tube);
  if (step === 'cut' && stage === null) return setStage(ticked, frame, tube, 'cut');
  return step === 'check' && stage === 'cut' ? setStage(ticked, frame, tube, 'bent') : ticked;
}

/** The same taken back: one that is not cut after all is drawn again. */
export function untickRun(job: Job, frame: Frame, tube: TubeRef, step: string): Job {
  const unticked = untickStep(job, tube, step);
  const stage = stageOf(job, tube);
  if (step === 'cut' && stage === 'cut') return setStage(unticked, frame, tube, null);
  return step === 'check' && stage === 'bent' ? setStage(unticked, frame, tube, 'cut') : unticked;
}

/** A tube that is bent, with its bends as takeFitted. It gets a run where it has none, which begins as `run`; cut, marked and checked it is in any case. */
export function takeBent(
  job: Job,
  frame: Frame,
  run: Pick<BentTube, 'tube' | 'order' | 'bends' | 'checks'> & { readonly drawn: NonNullable<BentTube['drawn']> },
): Job {
  const { tube, order, bends, checks, drawn } = run;
  const begun = takeFitted(beginRun(job, tube, order, drawn), tube, bends, checks);
  return ['cut', 'mark', 'check'].reduce((made, step) => tickRun(made, frame, tube, step), begun);
}

function heldNow(frame: Frame, { corners, bends, section, ends }: SolvedTube): HeldTube {
  const end = (which: 0 | 1): HeldEnd => heldEnd(frame, ends[which]);
  return {
    corners,
    radii: bends.map(({ radius }) => radius),
    outerDiameter: section.outerDiameter,
    wall: section.wall,
    ends: [end(0), end(1)],
  };
}

function heldEnd({ bars }: Frame, { fit, allowance, cuts, cutter, plateNormal }: TubeEnd): HeldEnd {
  const cutters = cuts.map(({ against }): HeldCutter => {
    const bar = bars.get(against)!;
    return {
      against,
      mirrored: bar.member.mirror,
      corners: bar.corners,
      radii: bar.bends.map(({ radius }) => radius),
      outerDiameter: bar.section.outerDiameter,
    };
  });
  return { fit, allowance, cutters, ...(plateNormal && { normal: plateNormal, rise: cutter.rise }) };
}
