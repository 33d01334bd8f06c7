/**
 * The one derivation: job -> everything that screens, sheets and files show, by the fast stages in their order. Pure; the previous
 * result is only a store of records that may be handed on unchanged, so derive(job, previous) and derive(job) are equal in value.
 *
 * A job that cannot be derived (a loop of references, a path that doubles back, a node beyond its tube's end) gives
 * faults that name the place in the file; a frame that cannot be made gives findings beside a complete result. Names in
 * what is derived, its job among it, are as they are shown (job/shown.ts).
 */
import type { Outcome } from './job/fault.ts';
import type { Job } from './job/types.ts';
import type { Frame } from './solve/types.ts';
import { FAST, type Made } from './stages/fast.ts';

export interface Derived extends Frame, Pick<Made, 'survey' | 'clearances' | 'gaps' | 'trimGaps' | 'findings'> {}

export type Derivation = Outcome<Derived>;

export function derive(job: Job, previous?: Derived): Derivation {
  // Whole once the last stage is done; that each comes after what it needs is for the list to see to, and is tested.
  const made = { job } as Made;
  for (const { name, run } of FAST) {
    const outcome = run(made, previous);
    if (!outcome.ok) return outcome;
    Object.assign(made, { [name]: outcome.value });
  }
  const { frame, survey, clearances, gaps, trimGaps, findings } = made;
  return { ok: true, value: { ...frame, survey, clearances, gaps, trimGaps, findings } };
}
