/**
 * What any text at all must come to: faults with their places, or a job that is written and read again the same, derives to
 * finite numbers, the same whatever was derived before, and fills the fabrication file as its schema says.
 */
import { isDeepStrictEqual } from 'node:util';
import * as v from 'valibot';
import { derive, type Derived } from '../../../src/core/derive.ts';
import { sameData } from '../../../src/core/job/equal.ts';
import { faultLine, type Fault } from '../../../src/core/job/fault.ts';
import { parseJob } from '../../../src/core/job/parse.ts';
import { serialiseJob } from '../../../src/core/job/serialise.ts';
import type { Job } from '../../../src/core/job/types.ts';
import { bendSlips, endSpreads } from '../../../src/core/marks/slips.ts';
import { bendRun } from '../../../src/core/run/run.ts';
import { tapeList, type TapeSetting } from '../../../src/core/marks/tape.ts';
import { wrapOf } from '../../../src/core/cope/wrap.ts';
import { withSlowFindings } from '../../../src/core/stages/work.ts';
import { fabrication, fabricationJson } from '../../../src/exports/tables/fabrication.ts';
import { fabricationSchema } from '../../exports/fabricationSchema.ts';

export type Fate = 'refused' | 'no frame' | 'derived';

/** What came of it; else what is wrong. `before` is derived from another job; with `slow` also what takes longer is worked out. */
export function judge(
  text: string,
  before: Derived,
  slow: boolean,
): { readonly fate: Fate } | { readonly wrong: string } {
  try {
    return { fate: fateOf(text, before, slow) };
  } catch (error) {
    return { wrong: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

function must(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what);
}

function fateOf(text: string, before: Derived, slow: boolean): Fate {
  const parsed = parseJob(text);
  if (!parsed.ok) {
    mustBeSaid(parsed.faults, null);
    return 'refused';
  }
  const { job } = parsed;
  mustComeBack(job);
  const fresh = derive(job);
  const reused = derive(withRecordsOf(before.job, job), before);
  must(isDeepStrictEqual(bare(reused), bare(fresh)), 'derived otherwise from what was derived before');
  if (!fresh.ok) {
    mustBeSaid(fresh.faults, job);
    return 'no frame';
  }
  mustBeFinite(fresh.value, job);
  mustBeMarked(fresh.value);
  if (!slow) return 'derived';
  // What is handed on is only lent: the job of before, derived from this one, is as it was.
  const back = derive(before.job, fresh.value);
  must(
    back.ok && isDeepStrictEqual(bare(back), bare({ ok: true, value: before })),
    'another job derived otherwise after it',
  );
  must(
    isDeepStrictEqual(JSON.parse(fabricationJson(fresh.value)), asJson(fabrication(fresh.value))),
    'fabrication file reads otherwise',
  );
  mustBeFinite(withSlowFindings(fresh.value).findings, job);
  for (const tube of fresh.value.tubes)
    for (const which of [0, 1] as const) mustBeFinite([tube.ends[which].inner, wrapOf(tube, which, PAPER)], null);
  return 'derived';
}

/** The job with the records of the other that hold the same: as an edit leaves alone what it does not touch. */
function withRecordsOf(other: Job, job: Job): Job {
  const lists = Object.entries(job).map(([key, list]) => {
    const theirs: unknown = other[key as keyof Job];
    if (!Array.isArray(list) || !Array.isArray(theirs)) return [key, list];
    return [key, list.map((record: unknown) => theirs.find((each) => sameData(each, record)) ?? record)];
  });
  return Object.fromEntries(lists) as Job;
}

const asJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** Faults without a place are of the whole text. */
const OF_THE_TEXT = /^(?:line \d+, column \d+: |the file is empty$|not a job: |and \d+ more$)/u;

function mustBeSaid(faults: readonly Fault[], job: Job | null): void {
  must(faults.length > 0, 'refused without a fault');
  for (const fault of faults) {
    const line = faultLine(fault);
    must(/^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]{1,1000}$/u.test(line), `a fault that is no line: ${JSON.stringify(line)}`);
    must(!/undefined|NaN|\[object/u.test(line.replace(/"[^"]*"/gu, '')), `a fault that says nothing: ${line}`);
    must(fault.place !== '' || (job === null && OF_THE_TEXT.test(fault.message)), `a fault without a place: ${line}`);
    if (job !== null) must(leads(job, fault.place), `a place that is not in the file: ${line}`);
  }
}

/** Whether a place from the derivation is there; what stands at its end may be missing. */
function leads(job: Job, place: string): boolean {
  const keys = place.match(/\w+/gu) ?? [];
  let value: unknown = job;
  for (const key of keys) {
    if (typeof value !== 'object' || value === null) return false;
    value = (value as Readonly<Record<string, unknown>>)[key];
  }
  return true;
}

function mustComeBack(job: Job): void {
  const written = serialiseJob(job);
  const again = parseJob(written);
  must(again.ok, 'cannot be read as it is written');
  must(sameData(again.job, job), 'reads otherwise than it was written');
  must(serialiseJob(again.job) === written, 'is written otherwise when it was read again');
}

/** Without the bore's trim, which is worked out when it is first looked at: the surface's says as much. */
function bare(derivation: ReturnType<typeof derive>): unknown {
  if (!derivation.ok) return derivation;
  const { tubes, byId, ...rest } = derivation.value;
  must(byId.size === tubes.length, 'two tubes of one id');
  return { ...rest, tubes: tubes.map((tube) => ({ ...tube, ends: tube.ends.map((end) => outside(end)) })) };
}

function outside(end: Derived['tubes'][number]['ends'][number]): object {
  const { inner: _, ...rest } = Object.getOwnPropertyDescriptors(end);
  return Object.fromEntries(Object.entries(rest).map(([key, { value }]) => [key, value]));
}

const NO_NUMBER = /NaN|Infinity|undefined/u;

/** Every number in it; where a trim is not reached it is NaN, and never infinite. `job`: its own words may hold anything. */
function mustBeFinite(value: unknown, job: Job | null): void {
  const trouble = lost(value, job !== null && !NO_NUMBER.test(JSON.stringify(job)));
  must(trouble === null, trouble ?? '');
  if (typeof value !== 'object' || value === null || !('tubes' in value)) return;
  const result = v.safeParse(fabricationSchema, fabrication(value as Derived));
  must(
    result.success,
    `fabrication file: ${result.issues?.map((issue) => `${v.getDotPath(issue)} ${issue.message}`).join('; ')}`,
  );
}

/** Where in the value a number is lost, and what stands there; in words too if `words`. Null where none is. */
function lost(value: unknown, words: boolean): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : ` is ${value}`;
  if (typeof value === 'string') return words && NO_NUMBER.test(value) ? ` says ${value}` : null;
  if (value instanceof Float64Array)
    return value.includes(Infinity) || value.includes(-Infinity) ? ' is infinite' : null;
  if (typeof value !== 'object' || value === null) return null;
  const isMap = value instanceof Map;
  for (const key of isMap ? value.keys() : Object.keys(value)) {
    // Tubes by their ids are the tubes; the job and its records are as they were read; the bore is worked out when it is looked at.
    if (!isMap && PASSED_OVER.has(key)) continue;
    const trouble = lost(isMap ? value.get(key) : (value as Readonly<Record<string, unknown>>)[key], words);
    if (trouble !== null) return `${String(key)}${trouble.startsWith(' ') ? '' : '.'}${trouble}`;
  }
  return null;
}

const PASSED_OVER: ReadonlySet<string> = new Set(['byId', 'job', 'member', 'section', 'die', 'pulls', 'inner']);

const PAPER = { surface: 'square-wall', thickness: 0.1, step: 5 } as const;

const SETTINGS: readonly TapeSetting[] = [
  { from: 'A', mark: 'start', step: 1 },
  { from: 'B', mark: 'tangents', step: 25.4 / 16 },
  { from: 'middle', mark: 'clamp', step: 0.5 },
];

const TOLERANCES = { angle: 0.01, rotation: 0.01, mark: 1 };

/** What a person at the bender reads: marks, a run under way, what slips do. */
function mustBeMarked(derived: Derived): void {
  for (const tube of derived.tubes) {
    for (const setting of SETTINGS) mustBeFinite(tapeList(tube, setting), null);
    mustBeFinite([bendSlips(tube, 2), endSpreads(tube, TOLERANCES)], null);
  }
  for (const run of derived.job.bent) {
    const tube = derived.byId.get(run.tube)!;
    for (const setting of SETTINGS) mustBeFinite(bendRun(tube, run, setting), null);
  }
}
