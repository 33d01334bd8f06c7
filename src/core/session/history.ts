/**
 * Undo and redo without limit: the job, and the committed diffs that led to it. A step is a diff with the words that
 * the undo button shows. Pure: every function gives the next history, or the same one where nothing is to be done.
 */
import { applyDiff, diffJobs, invertDiff, isEmptyDiff, type JobDiff } from '../job/diff.ts';
import { shownName } from '../job/shown.ts';
import type { Job } from '../job/types.ts';
import { applyWhatFits } from './rebased.ts';

export interface Step {
  /** What was done, in the words of the one who did it: "Move shoulder". */
  readonly label: string;
  readonly diff: JobDiff;
  /** The device that it came from; absent: this one. Undo and redo pass it over. */
  readonly by?: string;
}

export interface History {
  readonly job: Job;
  /** Oldest first. */
  readonly past: readonly Step[];
  /** The next to redo first. */
  readonly future: readonly Step[];
}

/** A job in which nothing was done yet. */
export const newHistory = (job: Job): History => ({ job, past: [], future: [] });

/** `next` becomes the job, as one step. Nothing changed: the same history, and what could be redone stays. */
export function commitEdit(history: History, label: string, next: Job): History {
  const diff = diffJobs(history.job, next);
  if (isEmptyDiff(diff)) return history;
  return { job: next, past: [...history.past, { label: shownName(label), diff }], future: [] };
}

/**
 * `next` becomes the job with no step for it: what differs is a fact of the shop that no undo unmakes, such as what was printed. It may differ from the job in what is no
 * collection. All steps, done and undone, lead past it: what they would have changed of the same fact is left out of them, and a step that was about that alone goes.
 */
export function noteFact(history: History, next: Job): History {
  const facts = new Set(diffJobs(history.job, next).head.map(({ key }) => key));
  if (facts.size === 0) return history;
  const [past, future] = [history.past, history.future].map((steps) => withoutFacts(steps, facts));
  return { job: next, past: past!, future: future! };
}

function withoutFacts(steps: readonly Step[], facts: ReadonlySet<string>): readonly Step[] {
  let follows = true;
  return steps.flatMap((step) => {
    const head = step.diff.head.filter(({ key }) => !facts.has(key));
    const diff = head.length === step.diff.head.length ? step.diff : { ...step.diff, head };
    // A step is made to follow one other (store/storage/chunks.ts): after one that is gone it is another.
    const same = follows && diff === step.diff;
    follows = !isEmptyDiff(diff);
    if (!follows) return [];
    return [same ? step : { ...step, diff }];
  });
}

/**
 * `next` becomes the job, as a step that was done on another device. What was undone here can still be redone: as far as it fits what there
 * is now.
 */
export function commitOther(
  history: History,
  { label, by }: Pick<Step, 'label'> & { readonly by: string },
  next: Job,
): History {
  const diff = diffJobs(history.job, next);
  if (isEmptyDiff(diff)) return history;
  const past = [...history.past, { label: shownName(label), diff, by: shownName(by) }];
  return { job: next, past, future: following(next, history.future) };
}

/** The steps made anew, each from the job that those before it lead to; those of which nothing is left go. */
function following(job: Job, steps: readonly Step[]): readonly Step[] {
  let at = job;
  return steps.flatMap((step) => {
    const next = applyWhatFits(at, step.diff);
    const diff = diffJobs(at, next);
    at = next;
    return isEmptyDiff(diff) ? [] : [{ ...step, diff }];
  });
}

/**
 * The last step of this device taken back, as far as nobody has written over it since: where nothing of it is left the step goes, and the job stays. The
 * same history where there is none.
 */
export function undo(history: History): History {
  const { job, past, future } = history;
  const nth = past.findLastIndex(isOwn);
  if (nth < 0) return history;
  const step = past[nth]!;
  if (nth === past.length - 1) {
    return { job: applyDiff(job, invertDiff(step.diff)), past: past.slice(0, -1), future: [step, ...future] };
  }
  return undoneBefore(history, nth);
}

/** The step taken back from before those that others have done since: these are made anew, from where it never was. */
function undoneBefore({ job, past, future }: History, nth: number): History {
  const back = invertDiff(past[nth]!.diff);
  let were = job;
  let are = applyWhatFits(job, back);
  const own = diffJobs(are, job);
  const without = are;
  const others: Step[] = [];
  for (const step of past.slice(nth + 1).toReversed()) {
    const before = applyDiff(were, invertDiff(step.diff));
    const withoutBefore = applyWhatFits(before, back);
    const diff = diffJobs(withoutBefore, are);
    if (!isEmptyDiff(diff)) others.unshift({ ...step, diff });
    [were, are] = [before, withoutBefore];
  }
  const left = { job: without, past: [...past.slice(0, nth), ...others] };
  if (isEmptyDiff(own)) return { ...left, job, future };
  // What could be redone follows another step now (store/storage/chunks.ts).
  return { ...left, future: [{ ...past[nth]!, diff: own }, ...future.map((step) => ({ ...step }))] };
}

/** The next step done again; the same history where there is none. */
export function redo(history: History): History {
  const { job, past, future } = history;
  const [step, ...rest] = future;
  if (!step) return history;
  return { job: applyDiff(job, step.diff), past: [...past, step], future: rest };
}

/** What undo would take back, and redo do again; null where there is nothing. */
export const undoLabel = ({ past }: History): string | null => past.findLast(isOwn)?.label ?? null;
export const redoLabel = ({ future }: History): string | null => future[0]?.label ?? null;

/** How many steps undo could take back. */
export const ownSteps = ({ past }: History): number => past.reduce((count, step) => count + Number(isOwn(step)), 0);

const isOwn = ({ by }: Step): boolean => by === undefined;
