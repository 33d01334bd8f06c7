/** The order in which a person should read what was found: what fails first, and the shortest gap first. */
import type { Clearance } from '../../core/checks/clearances.ts';
import type { TubeGap } from '../../core/gaps/measure-gaps.ts';
import type { EnvelopeId } from '../../core/job/reference.ts';

/** One envelope's clearances, the shortest distance first. */
export const nearestFirst = (clearances: readonly Clearance[], envelope: EnvelopeId): Clearance[] =>
  clearances.filter((clearance) => clearance.envelope === envelope).toSorted((a, b) => a.distance - b.distance);

/** Gaps between tubes, the deepest overlap first. */
export const leastFirst = (gaps: readonly TubeGap[]): TubeGap[] => gaps.toSorted((a, b) => a.distance - b.distance);
