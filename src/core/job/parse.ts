/**
 * The one door for job files: text -> job, or all that is wrong with it, each fault naming its place. Nothing throws,
 * whatever the text. Syntax first; then format and version; then the shape, with what may be left out filled in; then
 * what the shape cannot check.
 */
import type * as v from 'valibot';
import { isOfLater, onePerPlace, shapeOf, type FileFormat } from './door.ts';
import { capped, type Fault } from './fault.ts';
import { migrate, PRESENT_VERSION } from './migrations.ts';
import { finishedJob, jobSchema } from './schema.ts';
import { serialiseJob } from './serialise.ts';
import type { Job } from './types.ts';
import { jobFaults } from './validate.ts';

export type ParsedJob =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The job in a file's text. Faults in the order in which they are found, at most one a place, at most 50 and a count. */
export function parseJob(text: string): ParsedJob {
  const { read: job, faults } = shapeOf(text, JOB_FILE);
  const all = job === null ? faults : [...faults, ...jobFaults(job)];
  if (job !== null && all.length === 0) return { ok: true, job };
  return { ok: false, faults: capped(onePerPlace(all)) };
}

/** A file's data, and the job that was read from it. Of a job that came through the door the two are one. */
export interface Passed {
  readonly file: PlainFile;
  readonly job: Job;
}

/** A job file as plain data of the present version; what may be left out need not be there. */
export type PlainFile = object;

/**
 * The job of a file that was made from one that has passed, through the whole door: only what is new is written and read, records
 * that are the very same objects as in `passed` were read before. null where it is turned away: parseJob says why.
 */
export function readAgain(file: PlainFile, passed: Passed): Job | null {
  const job = shapeAgain(file, passed);
  return job !== null && jobFaults(job).length === 0 ? job : null;
}

/** As readAgain, but for what the shape cannot check. */
export function shapeAgain(file: PlainFile, passed: Passed): Job | null {
  const before = new Map<string, unknown>(Object.entries(passed.file));
  const readBefore = new Map<string, unknown>(Object.entries(passed.job));
  const isKnown = ([key, value]: readonly [string, unknown]): boolean => isData(value) && value === before.get(key);
  const [known, changed] = [Object.entries(file).filter(isKnown), Object.entries(file).filter((one) => !isKnown(one))];
  const fresh = changed.map(([key, value]) => [key, withoutKnown(value, before.get(key))] as const);
  const { read: job, faults } = shapeOf(serialiseJob(Object.fromEntries(fresh) as unknown as Job), JOB_FILE);
  if (job === null || faults.length > 0) return null;
  const read = new Map<string, unknown>(Object.entries(job));
  for (const [key] of known) read.set(key, readBefore.get(key));
  for (const [key, value] of changed) {
    read.set(key, withKnown(value, read.get(key), before.get(key), readBefore.get(key)));
  }
  return Object.fromEntries(read) as unknown as Job;
}

const isData = (value: unknown): boolean => typeof value === 'object' && value !== null;

function withoutKnown(value: unknown, before: unknown): unknown {
  if (!Array.isArray(value) || !Array.isArray(before)) return value;
  const known = new Set<unknown>(before);
  return value.filter((record) => !known.has(record));
}

/** What was read of what is new, and in their places what was read before of the rest. */
function withKnown(value: unknown, read: unknown, before: unknown, readBefore: unknown): unknown {
  if (![value, read, before, readBefore].every(Array.isArray)) return read;
  const places = new Map((before as readonly unknown[]).map((record, at) => [record, at]));
  const left = (read as readonly unknown[]).values();
  return (value as readonly unknown[]).map((record) => {
    const at = places.get(record);
    return at === undefined ? left.next().value : (readBefore as readonly unknown[])[at];
  });
}

const JOB_FILE: FileFormat<Job> = {
  format: 'cagewright/job',
  word: 'job',
  strangers: {
    'cagewright/fabrication': 'a fabrication file, which is made from a job: open the job file that it was made from',
    'cagewright/shop': 'a shop record, which stands beside the jobs: open it from the menu, under Shop record',
  },
  present: PRESENT_VERSION,
  migrate,
  shape: jobSchema,
  finished: (shaped) => finishedJob(shaped as v.InferOutput<typeof jobSchema>),
};

/** Whether the text is a job of a later version of the program: nothing is wrong with it, but this program cannot read it. */
export const isOfLaterProgram = (text: string): boolean => isOfLater(text, JOB_FILE);
