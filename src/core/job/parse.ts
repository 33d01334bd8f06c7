/**
 * The one door for job files: text -> job, or all that is wrong with it, each fault naming its place. Nothing throws,
 * whatever the text. Syntax first; then format and version; then the shape, with what may be left out filled in; then
 * what the shape cannot tell.
 */
import * as v from 'valibot';
import { capped, fault, placeOf, quoted } from './fault.ts';
import { migrate, PRESENT_VERSION } from './migrations.ts';
import { readPlain, type Plain, type PlainObject } from './plain.ts';
import { jobSchema, withNames } from './schema.ts';
import { serialiseJob } from './serialise.ts';
import type { Fault, Job } from './types.ts';
import { jobFaults } from './validate.ts';

export type ParsedJob =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** The job in a file's text. Faults in the order in which they are found, at most one a place, at most 50 and a count. */
export function parseJob(text: string): ParsedJob {
  const { job, faults } = shapeOf(text);
  const all = job === null ? faults : [...faults, ...jobFaults(job)];
  if (job !== null && all.length === 0) return { ok: true, job };
  return { ok: false, faults: capped(onePerPlace(all)) };
}

/**
 * Whether the job's own text would be read back, for a job made from one that would: only records that are new are written
 * and read, those that are the very same objects as in `passed` were looked at before. What a list keeps to as a whole is for
 * jobFaults, which sees all of it.
 */
export function passesAgain(job: Job, passed: Job): boolean {
  const fresh = Object.entries(job).map(
    ([key, value]) => [key, withoutKnown(value, passed[key as keyof Job])] as const,
  );
  const { job: shaped, faults } = shapeOf(serialiseJob(Object.fromEntries(fresh) as unknown as Job));
  return shaped !== null && faults.length === 0 && jobFaults(job).length === 0;
}

function withoutKnown(value: unknown, passed: unknown): unknown {
  if (!Array.isArray(value) || !Array.isArray(passed)) return value;
  if (value === passed) return [];
  const known = new Set<unknown>(passed);
  return value.filter((record) => !known.has(record));
}

/** All but what the shape cannot tell; `job` is null where the text has not the shape of one. */
function shapeOf(text: string): { readonly job: Job | null; readonly faults: readonly Fault[] } {
  const { value, faults } = readPlain(text.startsWith('\uFEFF') ? text.slice(1) : text);
  if (value === null && faults.length > 0) return { job: null, faults };
  if (!isPlainObject(value)) return { job: null, faults: [fault('', 'not a job: the file holds no object')] };
  const stranger = headFaults(value);
  if (stranger.length > 0) return { job: null, faults: stranger };

  const shaped = v.safeParse(jobSchema, migrate(value, value['version'] as number), { abortPipeEarly: true });
  const job = shaped.typed ? withNames(shaped.output) : null;
  return { job, faults: [...faults, ...(shaped.issues ?? []).map(shapeFault)] };
}

const isPlainObject = (value: Plain): value is PlainObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether it is a job file at all, and of a version that this program reads. */
function headFaults({ format, version }: PlainObject): Fault[] {
  if (format === undefined) return [fault('format', 'missing: a job file begins with "format": "cagewright/job"')];
  if (format === 'cagewright/fabrication') {
    return [fault('format', 'a fabrication file, which is made from a job: open the job file that it was made from')];
  }
  if (format !== 'cagewright/job') {
    return [fault('format', `not "cagewright/job"${typeof format === 'string' ? ` but ${quoted(format)}` : ''}`)];
  }
  if (version === undefined) return [fault('version', 'missing')];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return [fault('version', 'not a whole number from 1 up')];
  }
  if (!isLater(version)) return [];
  return [
    fault('version', `${version} was made by a later version of the program, which reads up to ${PRESENT_VERSION}`),
  ];
}

const isLater = (version: number): boolean => Number.isInteger(version) && version > PRESENT_VERSION;

/** Whether the text is a job of a later version of the program: nothing is wrong with it, but this program cannot read it. */
export function isOfLaterProgram(text: string): boolean {
  const { value } = readPlain(text);
  return isPlainObject(value) && value['format'] === 'cagewright/job' && isLater(Number(value['version']));
}

type Issue = v.InferIssue<typeof jobSchema>;

const TYPE_WORDS: Readonly<Record<string, string>> = {
  number: 'not a number',
  string: 'not text',
  boolean: 'not true or false',
  Array: 'not a list',
  Object: 'not an object',
};

function shapeFault(issue: Issue): Fault {
  const place = placeOf((issue.path ?? []).map(({ key }) => key as string | number));
  const worded = issue.message !== '' && !issue.message.startsWith('Invalid ');
  return fault(place, worded ? issue.message : shapeMessage(issue));
}

function shapeMessage({ input, expected, type }: Issue): string {
  if (type === 'strict_tuple' && expected === 'never') return 'one too many';
  if (input === undefined) return 'missing';
  return (
    TYPE_WORDS[expected ?? ''] ?? `not ${(expected ?? '').replace(/[()]| \| never/gu, '').replaceAll(' | ', ' or ')}`
  );
}

function onePerPlace(faults: readonly Fault[]): readonly Fault[] {
  const seen = new Set<string>();
  return faults.filter(({ place }) => !seen.has(place) && seen.add(place));
}
