/**
 * What a job must pass before it is shown. A job that is committed goes through the whole door for files, so that
 * what is kept can always be read back; a draft of a gesture, dozens a second, is only checked for what its
 * derivation relies on.
 */
import { derive } from '../core/derive.ts';
import type { Derivation, Derived } from '../core/derive.ts';
import { parseJob, passesAgain } from '../core/job/parse.ts';
import { serialiseJob } from '../core/job/serialise.ts';
import type { Fault, Job } from '../core/job/types.ts';
import { jobFaults } from '../core/job/validate.ts';

/**
 * `previous` is derived from a job that was admitted: then only what is new in this one goes through the door, and the whole of
 * it only where that is turned away, for the places of its faults.
 */
export function admit(job: Job, previous?: Derived): Derivation {
  if (previous !== undefined && passesAgain(job, previous.job)) return derive(job, previous);
  const parsed = parseJob(serialiseJob(job));
  return parsed.ok ? derive(job, previous) : parsed;
}

export function admitDraft(job: Job, previous: Derived): Derivation {
  const faults = jobFaults(job);
  return faults.length === 0 ? derive(job, previous) : { ok: false, faults };
}

export type Admitted =
  | { readonly ok: true; readonly job: Job; readonly derived: Derived }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** A job file's text, from a person or from what was kept. */
export function admitText(text: string): Admitted {
  const parsed = parseJob(text);
  if (!parsed.ok) return parsed;
  const derivation = derive(parsed.job);
  return derivation.ok ? { ok: true, job: parsed.job, derived: derivation.value } : derivation;
}
