/** What the worker for slow stages does with what it is asked, and what tests call in its place. */
import { derive, type Derived } from '../core/derive.ts';
import { applyDiff, diffJobs } from '../core/job/diff.ts';
import { faultLine } from '../core/job/fault.ts';
import type { Job } from '../core/job/types.ts';
import type { LoadingWork, SlowStage, SlowWork } from '../core/stages/slow-stage.ts';
import { attempt, attemptLoading, type Came } from './doing.ts';

export interface Ask {
  /** null: the one of before. */
  readonly job: Job | null;
  readonly stage: string;
  readonly id: string;
}

export type Said = Came<unknown>;

/**
 * Answers one question after another; what was derived for the first of a job is there for the others. Of the next job only what an edit
 * touched is derived, as in the page: in the copy that is sent no record is the one of before, so what changed is put into the last one.
 */
export function createStageWork(stages: readonly SlowWork<object, unknown>[]): (ask: Ask) => Said;
export function createStageWork(
  stages: readonly SlowWork<object, unknown>[],
  loading: readonly LoadingWork<object, unknown>[],
): (ask: Ask) => Said | Promise<Said>;
export function createStageWork(
  stages: readonly SlowWork<object, unknown>[],
  loading: readonly LoadingWork<object, unknown>[] = [],
): (ask: Ask) => Said | Promise<Said> {
  let last: { readonly job: Job; readonly derived: Derived } | null = null;
  return ({ job, stage: name, id }) => {
    const itemOf = (stage: SlowStage<object, unknown>): object => {
      if (job !== null) {
        const next = last === null ? job : applyDiff(last.job, diffJobs(last.job, job));
        last = { job: next, derived: derivedFrom(next, last?.derived) };
      }
      return stage.items(last!.derived).find((item) => stage.idOf(item) === id)!;
    };
    const later = loading.find((each) => each.name === name);
    if (later !== undefined) return attemptLoading(async () => later.run(itemOf(later)));
    const stage = stages.find((each) => each.name === name)!;
    return attempt(() => stage.run(itemOf(stage)));
  };
}

function derivedFrom(job: Job, previous?: Derived): Derived {
  const derivation = derive(job, previous);
  if (!derivation.ok) throw new Error(derivation.faults.map(faultLine).join('; '));
  return derivation.value;
}
