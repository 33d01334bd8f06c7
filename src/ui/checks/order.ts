/** The order in which a person should read what was found: what fails first, and the shortest gap first. */
import type { Clearance } from '../../core/checks/clearances.ts';
import type { Finding, Severity } from '../../core/checks/types.ts';
import type { TubeGap } from '../../core/gaps/measure-gaps.ts';
import type { EnvelopeId } from '../../core/job/reference.ts';

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** Errors, then warnings, then notes; within each in the order of the checks. */
export const bySeverity = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => RANK[a.severity] - RANK[b.severity]);

/** One envelope's clearances, the shortest distance first. */
export const nearestFirst = (clearances: readonly Clearance[], envelope: EnvelopeId): Clearance[] =>
  clearances.filter((clearance) => clearance.envelope === envelope).toSorted((a, b) => a.distance - b.distance);

/** Gaps between tubes, the deepest overlap first. */
export const leastFirst = (gaps: readonly TubeGap[]): TubeGap[] => gaps.toSorted((a, b) => a.distance - b.distance);
