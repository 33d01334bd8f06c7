/**
 * The one door for job files: text -> job, or all that is wrong with it, each fault naming its place. Nothing throws,
 * whatever the text. Syntax first; then format and version; then the shape, with what may be left out filled in; then
 * what the shape cannot tell.
 */
import * as v from 'valibot';
import { capped, fault, placeOf, quoted, type Fault } from './fault.ts';
import { migrate, PRESENT_VERSION } from './migrations.ts';
import { readPlain, type Plain, type PlainObject } from './plain.ts';
import { jobSchema, withNames } from './schema.ts';
import { serialiseJob } from './serialise.ts';
import type { Job } from './types.ts';
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

/** As readAgain, but for what the shape cannot tell. */
export function shapeAgain(file: PlainFile, passed: Passed): Job | null {
  const before = new Map<string, unknown>(Object.entries(passed.file));
  const readBefore = new Map<string, unknown>(Object.entries(passed.job));
  const isKnown = ([key, value]: readonly [string, unknown]): boolean => isData(value) && value === before.get(key);
  const [known, changed] = [Object.entries(file).filter(isKnown), Object.entries(file).filter((one) => !isKnown(one))];
  const fresh = changed.map(([key, value]) => [key, withoutKnown(value, before.get(key))] as const);
  const { job, faults } = shapeOf(serialiseJob(Object.fromEntries(fresh) as unknown as Job));
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

type Issue = v.BaseIssue<unknown>;

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
