/**
 * What is wrong with the frame, where, and what would mend it. A finding never stops the derivation.
 *
 * Sources: "common practice" is a fact of the trade without a published source; the rest name body, edition and article.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { bendTrouble, holdTrouble, manyBends, openingTrouble, stickTrouble } from './bend-findings.ts';
import { endTrouble } from './end-findings.ts';
import { lengthWriter, PRACTICE, type Show } from './show.ts';
import type { Clearance, Finding, Severity } from './types.ts';

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Errors first, then warnings, then notes. */
export const bySeverity = (a: Finding, b: Finding): number => RANK[a.severity] - RANK[b.severity];

/** Errors first, then warnings, then notes; within each in build order. */
export function findTrouble(frame: Frame, clearances: readonly Clearance[]): readonly Finding[] {
  const show = lengthWriter(frame.job.lengthUnit);
  const found: Finding[] = [];
  const gather = (each: Iterable<Finding>) => {
    for (const finding of each) found.push(finding);
  };
  for (const tube of frame.tubes) {
    gather(twinTrouble(tube, frame));
    gather(openingTrouble(tube, show));
    gather(bendTrouble(tube, show));
    gather(holdTrouble(tube, show));
    gather(manyBends(tube));
    gather(stickTrouble(tube, show));
    gather(endTrouble(tube, frame, show));
  }
  for (const each of clearances) if (!each.ok) gather(clearanceTrouble(each, frame, show));
  return found.toSorted(bySeverity);
}

/** A member that is its own mirror image, and mirrored all the same, is two tubes in one place. */
function* twinTrouble(tube: SolvedTube, frame: Frame): Generator<Finding> {
  if (tube.twinOf === null) return;
  const own = frame.byId.get(tube.twinOf)!.corners;
  const sameAs = (corners: readonly Vec3[]) => corners.every((corner, i) => distance(corner, own[i]!) <= ROUNDING);
  if (!sameAs(tube.corners) && !sameAs(tube.corners.toReversed())) return;
  yield {
    id: 'member/twin-in-same-place',
    severity: 'error',
    tube: tube.id,
    at: tube.corners[0]!,
    message: `${tube.member.name} is its own mirror image, so its twin lies in the same place and would be cut twice. Turn its mirror off.`,
    source: PRACTICE,
  };
}

function* clearanceTrouble(clearance: Clearance, frame: Frame, show: Show): Generator<Finding> {
  const tube = frame.byId.get(clearance.tube)!;
  const envelope = frame.job.envelopes.find((each) => each.id === clearance.envelope)!;
  const how = clearance.distance < 0 ? `goes ${show(-clearance.distance)} into` : `is ${show(clearance.distance)} from`;
  yield {
    id: 'clearance/too-close',
    severity: 'error',
    tube: tube.id,
    envelope: envelope.id,
    at: clearance.at,
    message: `${tube.name} ${how} ${envelope.name}; ${show(clearance.gap)} is asked for. Move the tube ${show(clearance.gap - clearance.distance)} away, or the seat.`,
    source: `gap set for ${envelope.name} in this job`,
  };
}
