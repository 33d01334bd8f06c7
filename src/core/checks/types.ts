/** What the checks say of a solved frame. Lengths mm, car axes. */
import type { Vec3 } from '../geometry/vector.ts';
import type { EnvelopeId, NodeRef, TubeRef } from '../job/types.ts';

/** Distance from an envelope to one tube's surface. */
export interface Clearance {
  readonly envelope: EnvelopeId;
  readonly tube: TubeRef;
  /** Negative when the tube is inside the box. */
  readonly distance: number;
  /** What the envelope asks for. */
  readonly gap: number;
  readonly ok: boolean;
  /** Nearest point on the tube's centreline, and nearest point of the box: the ends of the dimension drawn between them. */
  readonly at: Vec3;
  readonly onEnvelope: Vec3;
}

export type Severity = 'error' | 'warning' | 'note';

export interface Finding {
  /** "bend/short-straight": group and kind, for programs. */
  readonly id: string;
  readonly severity: Severity;
  readonly tube?: TubeRef;
  /** 'A' or 'B' where it concerns one end. */
  readonly end?: 'A' | 'B';
  /** 1 = first from end A. */
  readonly bend?: number;
  readonly node?: NodeRef;
  readonly envelope?: EnvelopeId;
  /** What is wrong, where, and what would mend it, in the trade's words; lengths in the job's unit. */
  readonly message: string;
  /** "common practice", or a rule with body, edition and article. */
  readonly source: string;
  /** Where it is, for the view to go to. */
  readonly at: Vec3;
}
