/**
 * The door that a job passes before it is shown. What is shown, stepped back to and kept is the job that came out of it, with
 * every default filled in, never the one that was handed in: text from a person, what was kept, what an edit or a gesture made
 * and what undo leads to are all read alike.
 */
import { derive } from '../../core/derive.ts';
import type { Derived } from '../../core/derive.ts';
import { parseJob, readAgain } from '../../core/job/parse.ts';
import { serialiseJob } from '../../core/job/serialise.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { Job } from '../../core/job/types.ts';

/** A job that came through the door, and what was derived from it. */
export interface Shown {
  readonly job: Job;
  readonly derived: Derived;
}

export type Admitted = ({ readonly ok: true } & Shown) | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * A job made from the one in `previous`: then only what is new in it goes through the door, and the whole of it only where that
 * is turned away, for the places of its faults.
 */
export function admit(job: Job, previous?: Shown): Admitted {
  const read = previous === undefined ? null : readAgain(job, { file: previous.job, job: previous.job });
  if (read !== null) return withDerived(read, previous?.derived);
  return admitText(serialiseJob(job), previous?.derived);
}

/** A draft of a gesture that began with `start`, dozens a second; null where it is turned away. */
export function admitDraft(draft: Job, start: Job, previous: Derived): Shown | null {
  const read = readAgain(draft, { file: start, job: start });
  const admitted = read === null ? null : withDerived(read, previous);
  return admitted?.ok ? admitted : null;
}

/** A job file's text, from a person or from what was kept. */
export function admitText(text: string, previous?: Derived): Admitted {
  const parsed = parseJob(text);
  return parsed.ok ? withDerived(parsed.job, previous) : parsed;
}

function withDerived(job: Job, previous: Derived | undefined): Admitted {
  const derivation = derive(job, previous);
  return derivation.ok ? { ok: true, job, derived: derivation.value } : derivation;
}
