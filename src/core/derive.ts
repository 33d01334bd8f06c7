/**
 * The one derivation: job -> everything that screens, sheets and files show. Pure; the previous result is only a store
 * of records that may be handed on unchanged, so derive(job, previous) and derive(job) are equal in value.
 *
 * A job that cannot be derived (a loop of references, a path that doubles back, a node beyond its tube's end) gives
 * faults that name the place in the file; a frame that cannot be made gives findings beside a complete result. Names in
 * what is derived, its job among it, are as they are shown (job/shown.ts).
 */
import { measureClearances } from './checks/clearances.ts';
import { findTrouble } from './checks/findings.ts';
import type { Clearance, Finding } from './checks/types.ts';
import { withShownNames } from './job/shown.ts';
import type { Fault } from './job/fault.ts';
import type { Job } from './job/types.ts';
import { deriveFrame } from './solve/derive-frame.ts';
import type { Frame } from './solve/types.ts';

export interface Derived extends Frame {
  readonly clearances: readonly Clearance[];
  /** Errors first, then warnings, then notes; within each in build order. */
  readonly findings: readonly Finding[];
}

export type Derivation =
  | { readonly ok: true; readonly value: Derived }
  | { readonly ok: false; readonly faults: readonly Fault[] };

export function derive(job: Job, previous?: Derived): Derivation {
  const frame = deriveFrame(withShownNames(job), previous);
  if (!frame.ok) return frame;
  const clearances = measureClearances(frame.value, previous);
  return { ok: true, value: { ...frame.value, clearances, findings: findTrouble(frame.value, clearances) } };
}
