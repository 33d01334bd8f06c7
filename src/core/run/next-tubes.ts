/**
 * The tubes as the person at the saw and the bender needs them: which are still to be made, in build order, how far each is, and which is next. A straight
 * tube is done once it is cut, a bent one once it is bent and checked; what is done to it after that is no matter of the bender's.
 */
import { STAGES } from '../job/kinds/made.ts';
import type { Job } from '../job/types.ts';
import { feedOf } from '../solve/feed.ts';
import type { SolvedTube } from '../solve/types.ts';
import { toBeBent } from './laid-out.ts';
import { bendRun, isOfOtherBends, type RunStep } from './run.ts';

export interface TubeToMake {
  readonly tube: SolvedTube;
  /** Cut to length, as the tube is marked or as its run says. */
  readonly isCut: boolean;
  readonly isDone: boolean;
  /** What its run is at; null where it has none, or one that is done. */
  readonly run: Underway | null;
}

export interface Underway {
  /** Bends that were pulled and read, and were found good or left so. */
  readonly made: number;
  readonly bends: number;
  /** The first step that is not done; null where the run is of another tube than is drawn now. */
  readonly next: RunStep | null;
}

type Made = Pick<Job, 'made' | 'bent' | 'feeds' | 'marking' | 'lengthUnit'>;

const BENT = STAGES.indexOf('bent');

/** Of all tubes, which stand in build order. */
export function tubesToMake(job: Made, tubes: readonly SolvedTube[]): readonly TubeToMake[] {
  const stages = new Map(job.made.map(({ tube, stage }) => [tube, stage]));
  const runs = new Map(job.bent.map((run) => [run.tube, run]));
  return tubes.map((tube) => {
    const stage = stages.get(tube.id);
    const run = runs.get(tube.id);
    const isCut = stage !== undefined || run?.done.includes('cut') === true;
    const isBent = stage !== undefined && STAGES.indexOf(stage) >= BENT;
    if (tube.bends.length === 0 || isBent || run === undefined)
      return { tube, isCut, isDone: tube.bends.length === 0 ? isCut : isBent, run: null };
    const asRun = toBeBent(tube, run);
    const progress = bendRun(asRun, run, feedOf(job, asRun));
    const { steps, current } = progress;
    const isOther = isOfOtherBends(progress);
    const next = steps[current] ?? null;
    if (!isOther && next === null) return { tube, isCut, isDone: true, run: null };
    const made = steps.filter(({ kind, done }) => kind === 'read' && done).length;
    return { tube, isCut, isDone: false, run: { made, bends: run.order.length, next: isOther ? null : next } };
  });
}

/**
 * The one to go on with: whose run is begun, else the first that is not done, in build order. Passed over is what `isBarred` says cannot be made as it is
 * drawn, unless its run is begun. Undefined where nothing is left.
 */
export function nextToMake(
  all: readonly TubeToMake[],
  isBarred: (tube: SolvedTube) => boolean,
): TubeToMake | undefined {
  const open = all.filter(({ isDone }) => !isDone);
  return open.find(({ run }) => run !== null) ?? open.find(({ tube }) => !isBarred(tube));
}
