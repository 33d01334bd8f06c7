/**
 * An undo history as it is kept beside the text of its job: plain data, with the version of the job format that it was written in,
 * checked before it is trusted. Every state that its steps lead to is read as a file would be: brought up to the present version,
 * what is left out filled in. The steps are then made anew between the states that came out, so that undo and redo lead to these.
 * Steps from the first that does not fit, or leads to what is no job, are let go; nearer ones still work.
 *
 * A state made from one that was read costs only what the step changed. Of another version the whole of each state has to be brought
 * up, so only the nearest steps are. What no shape can check, that references lead somewhere, is found when a step is taken.
 */
import { readDiff } from '../job/diff-shape.ts';
import { applyDiff, diffJobs, fitsJob, invertDiff, isEmptyDiff, type JobDiff } from '../job/diff.ts';
import { outOfBlocks } from '../job/in-blocks.ts';
import { COLLECTIONS } from '../job/kinds.ts';
import { PRESENT_VERSION } from '../job/migrations.ts';
import { parseJob, shapeAgain, type Passed } from '../job/parse.ts';
import { isPlain, readPlain } from '../job/plain.ts';
import { serialiseJob } from '../job/serialise.ts';
import type { Job } from '../job/types.ts';
import { newHistory, type History, type Step } from './history.ts';

export interface KeptHistory {
  /** Of the job format, as in the job's text beside it. The first histories that were kept have none, and are of version 1. */
  readonly version: number;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Why steps that were kept were let go. */
export type Loss = 'damaged' | 'other version';

export interface Resumed {
  readonly history: History;
  /** null when every step can be used. */
  readonly loss: Loss | null;
}

/** Steps each way that are carried over from another version: the whole job is read for each. */
export const MOST_CARRIED = 100;

/** What to keep of a history: at most so many steps each way. */
export const keptHistory = ({ past, future }: History, most: number): KeptHistory => ({
  version: PRESENT_VERSION,
  past: past.slice(-most),
  future: future.slice(0, most),
});

/** The history of `job`, which was read from `text`, from what was kept beside that, as far as it can be used. */
export function resumeHistory(text: string, job: Job, kept: unknown): Resumed {
  const history = newHistory(job);
  if (kept === null) return { history, loss: null }; // there was none to keep
  if (!isObject(kept)) return { history, loss: 'damaged' };
  const { version = 1, past, future } = kept;
  const file = readPlain(text).value;
  if (!isObject(file) || version !== file['version']) return { history, loss: 'other version' };
  const lists = { ...NO_RECORDS, ...outOfBlocks(file) };
  if (!hasRecords(lists)) return { history, loss: 'other version' };
  const from: Passed = { file: lists, job };
  const isPresent = version === PRESENT_VERSION;
  const back = through(from, listOf(past)?.toReversed(), isPresent, true);
  const forth = through(from, listOf(future), isPresent, false);
  return {
    history: { job, past: back.steps.toReversed(), future: forth.steps },
    loss: back.loss ?? forth.loss,
  };
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

function readStep(value: unknown): Step | null {
  if (!isObject(value) || typeof value['label'] !== 'string' || !isPlain(value['diff'])) return null;
  const diff = readDiff(value['diff']);
  const by = value['by'];
  return diff && { label: value['label'], diff, ...(typeof by === 'string' && { by }) };
}

const listOf = (value: unknown): readonly unknown[] | undefined => (Array.isArray(value) ? value : undefined);

const NO_RECORDS = Object.fromEntries(COLLECTIONS.map((collection) => [collection, []]));

/** Whether steps can be held against it: a file of an earlier version may have been laid out otherwise. */
const hasRecords = (file: Readonly<Record<string, unknown>>): boolean =>
  COLLECTIONS.every((collection) => {
    const records = file[collection] ?? [];
    return Array.isArray(records) && records.every((record) => isObject(record) && typeof record['id'] === 'string');
  });

/** The steps, nearest first, up to the first that cannot be used; backwards they are taken back. */
function through(
  from: Passed,
  nearestFirst: readonly unknown[] | undefined,
  isPresent: boolean,
  isBack: boolean,
): { readonly steps: readonly Step[]; readonly loss: Loss | null } {
  if (nearestFirst === undefined) return { steps: [], loss: 'damaged' };
  const steps: Step[] = [];
  let at = from;
  for (const [nth, found] of nearestFirst.entries()) {
    if (!isPresent && nth === MOST_CARRIED) return { steps, loss: 'other version' };
    const step = readStep(found);
    const next = step && stateAfter(at, isBack ? invertDiff(step.diff) : step.diff, isPresent);
    if (next === null) return { steps, loss: 'damaged' };
    const made = isBack ? diffJobs(next.job, at.job) : diffJobs(at.job, next.job);
    if (!isEmptyDiff(made)) steps.push({ ...step!, diff: made });
    at = next;
  }
  return { steps, loss: null };
}

function stateAfter(at: Passed, diff: JobDiff, isPresent: boolean): Passed | null {
  const before = at.file as Job;
  if (!fitsJob(before, diff)) return null;
  const file = applyDiff(before, diff);
  if (isPresent) {
    const job = shapeAgain(file, at);
    return job && { file, job };
  }
  const parsed = parseJob(serialiseJob(file));
  return parsed.ok ? { file, job: parsed.job } : null;
}
