/**
 * The one derivation: job -> everything that screens, sheets and files show. Pure; the previous result is only a store
 * of records that may be handed on unchanged, so derive(job, previous) and derive(job) are equal in value.
 *
 * A job that cannot be derived (a loop of references, a path that doubles back, a node beyond its tube's end) gives
 * faults that name the place in the file; a frame that cannot be made gives findings beside a complete result.
 */
import type { Clearance, Finding } from './checks/types.ts';
import type { Fault } from './job/types.ts';
import type { Frame } from './solve/types.ts';

export interface Derived extends Frame {
  readonly clearances: readonly Clearance[];
  readonly findings: readonly Finding[];
}

export type Derivation = { readonly ok: true; readonly value: Derived } | { readonly ok: false; readonly faults: readonly Fault[] };
