/**
 * Edits of a bend run: the tube as it is made, step by step. A tube has one run at most; an edit of one that is not
 * there gives the same job back. What is read goes to the log of pulls in the same edit, and stays there when the run goes.
 */
import type { TubeRef } from '../job/reference.ts';
import { memberOfTube } from '../job/member-of-tube.ts';
import { readByHand } from '../job/read-by-hand.ts';
import { mapKeeping } from '../job/map-keeping.ts';
import type { Degrees } from '../geometry/angle.ts';
import type { BendStep, BentBend, BentTube, DrawnTube } from '../job/kinds/bent.ts';
import type { Pull } from '../job/kinds/pull.ts';
import type { Job } from '../job/types.ts';
import { patched } from './records.ts';

export const findRun = (job: Job, tube: TubeRef): BentTube | undefined => job.bent.find((run) => run.tube === tube);

/** A run with nothing done yet; `order` holds every bend once. The same job where the tube has a run. */
export function beginRun(job: Job, tube: TubeRef, order: readonly BendStep[], drawn: DrawnTube): Job {
  if (findRun(job, tube) !== undefined) return job;
  return { ...job, bent: [...job.bent, { tube, order, done: [], bends: [], checks: [], drawn }] };
}

/** Takes the run away, with all that was measured on the tube; its pulls stay in the log. */
export const removeRun = (job: Job, tube: TubeRef): Job =>
  findRun(job, tube) === undefined ? job : { ...job, bent: job.bent.filter((run) => run.tube !== tube) };

/** Ticks a step off, by its key: 'cut', 'mark', 'clamp 2', 'pull 2' ..., 'check'. */
export const tickStep = (job: Job, tube: TubeRef, step: string): Job =>
  changeRun(job, tube, (run) => (run.done.includes(step) ? run : { ...run, done: [...run.done, step] }));

export const untickStep = (job: Job, tube: TubeRef, step: string): Job =>
  changeRun(job, tube, (run) =>
    run.done.includes(step) ? { ...run, done: run.done.filter((each) => each !== step) } : run,
  );

/**
 * What a bend came out as: how far the machine was pulled in all, and the angle after release, degrees; `on` as Pull.on.
 * It is logged as a pull of the member's die, section and batch. A second reading of a bend of this run takes the first
 * one's place in both, and is not yet kept; what else was measured there stays. A bend opens when it is let go: a net angle above the
 * pull was misread: it stays with the bend until it is read again, and is no pull for the log; so is what the caller calls misread.
 * `start` as BentBend.start; a bend that is pulled on stays where it was begun.
 */
export function logReading(
  job: Job,
  tube: TubeRef,
  bend: number,
  reading: {
    readonly pulled: Degrees;
    readonly net: Degrees;
    readonly on: string;
    readonly start?: number;
    readonly misread?: boolean;
  },
): Job {
  const { pulled, net, on, start, misread = net > pulled } = reading;
  const member = memberOfTube(job.members, tube);
  const held = findRun(job, tube)?.bends.find((each) => each.bend === bend);
  const before = held && readByHand(held);
  if (findRun(job, tube) === undefined || member?.die === undefined) return job;
  const { die, section, batch } = member;
  const pull: Pull = { die, section, ...(batch !== undefined && { batch }), pulled, net, on, tube, bend };
  // Pulls of the same bend in an earlier run are of another tube: they stay.
  const at = before == null ? -1 : job.pulls.findLastIndex((each) => isOf(each, tube, before));
  const made = misread ? [] : [pull];
  const logged = { ...job, pulls: at < 0 ? [...job.pulls, ...made] : job.pulls.toSpliced(at, 1, ...made) };
  return changeRun(logged, tube, (run) => {
    const { kept: _, ...rest }: Omit<BentBend, 'pulled' | 'net'> = before ?? {
      bend,
      ...(start !== undefined && { start }),
    };
    const now: BentBend = { ...rest, pulled, net };
    return {
      ...run,
      bends: held === undefined ? [...run.bends, now] : run.bends.map((each) => (each === held ? now : each)),
    };
  });
}

const isOf = (pull: Pull, tube: TubeRef, made: BentBend): boolean =>
  pull.tube === tube && pull.bend === made.bend && pull.pulled === made.pulled && pull.net === made.net;

/**
 * Every bend as it was reckoned from what a tape reads on the tube, and what it read. Those that were made keep their places; nothing goes to the log
 * of pulls.
 */
export const takeFitted = (job: Job, tube: TubeRef, fitted: BentTube['bends'], checks: BentTube['checks']): Job =>
  changeRun(job, tube, (run) => {
    const made = run.bends.flatMap(({ bend }) => fitted.filter((each) => each.bend === bend));
    return { ...run, bends: [...made, ...fitted.filter((each) => !made.includes(each))], checks };
  });

/** Leaves a bend as it is, though it is not what was asked for; or takes that back. */
export const keepBend = (job: Job, tube: TubeRef, bend: number, kept = true): Job =>
  changeBend(job, tube, bend, (made) => withField(made, 'kept', kept ? true : null));

/** As BentBend.rotation, measured; null: not measured. */
export const setBentRotation = (job: Job, tube: TubeRef, bend: number, rotation: Degrees | null): Job =>
  changeBend(job, tube, bend, (made) => withField(made, 'rotation', rotation));

/** As BentBend.straight, measured, mm; null: not measured. */
export const setBentStraight = (job: Job, tube: TubeRef, bend: number, straight: number | null): Job =>
  changeBend(job, tube, bend, (made) => withField(made, 'straight', straight));

/** As BentBend.across, measured, mm, whichever is given first; null: not measured. */
export const setBentAcross = (job: Job, tube: TubeRef, bend: number, across: BentBend['across'] | null): Job =>
  changeBend(job, tube, bend, (made) => {
    if (across == null) return withField(made, 'across', null);
    const [least, greatest] = [Math.min(...across), Math.max(...across)];
    return made.across?.[0] === least && made.across[1] === greatest
      ? made
      : withField(made, 'across', [least, greatest]);
  });

/** Has the tube take the drawn one's place in the frame as it came out, or stand as it is drawn. */
export const setStands = (job: Job, tube: TubeRef, stands: boolean): Job =>
  changeRun(job, tube, (run) => {
    if ((run.stands ?? false) === stands) return run;
    const { stands: _, ...rest } = run;
    return stands ? { ...rest, stands } : rest;
  });

/** What the tape read for a check dimension, mm; null: not measured. */
export const setCheck = (job: Job, tube: TubeRef, check: string, measured: number | null): Job =>
  changeRun(job, tube, (run) => {
    const before = run.checks.find((each) => each.check === check);
    if ((before?.measured ?? null) === measured) return run;
    if (measured === null) return { ...run, checks: run.checks.filter((each) => each !== before) };
    if (before === undefined) return { ...run, checks: [...run.checks, { check, measured }] };
    return { ...run, checks: run.checks.map((each) => (each === before ? { ...each, measured } : each)) };
  });

/** The job with the run of the tube that `change` makes; the same job where it makes the same, and where there is none. */
export function changeRun(job: Job, tube: TubeRef, change: (run: BentTube) => BentTube): Job {
  const bent = mapKeeping(job.bent, (run) => (run.tube === tube ? change(run) : run));
  return bent === job.bent ? job : { ...job, bent };
}

const changeBend = (job: Job, tube: TubeRef, bend: number, change: (made: BentBend) => BentBend): Job =>
  changeRun(job, tube, (run) => {
    const bends = mapKeeping(run.bends, (made) => (made.bend === bend ? change(made) : made));
    return bends === run.bends ? run : { ...run, bends };
  });

/** The bend with the field, or with null without it; the same bend when it is so already. */
function withField<K extends 'kept' | 'rotation' | 'straight' | 'across'>(
  made: BentBend,
  key: K,
  value: BentBend[K] | null,
) {
  if (value !== null) return patched<BentBend>(made, { [key]: value });
  if (!(key in made)) return made;
  const { [key]: _, ...rest } = made;
  return rest as BentBend;
}
