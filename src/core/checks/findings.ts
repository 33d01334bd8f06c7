/**
 * What is wrong with the frame, where, and what would mend it. A finding never stops the derivation.
 *
 * Sources: "common practice" is a fact of the trade without a published source; the rest name body, edition and article.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { distance, type Vec3 } from '../geometry/vector.ts';
import type { LengthUnit } from '../job/types.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import { aroundOf, noting, type Around, type Asked } from './around.ts';
import { bendTrouble, holdTrouble, manyBends, openingTrouble, pullTrouble, stickTrouble } from './bend-findings.ts';
import { endTrouble } from './end-findings.ts';
import { lengthWriter, PRACTICE, type Show } from './show.ts';
import type { Clearance, Finding, Severity } from './types.ts';

const RANK: Record<Severity, number> = { error: 0, warning: 1, note: 2 };

/** Errors first, then warnings, then notes. */
export const bySeverity = (a: Finding, b: Finding): number => RANK[a.severity] - RANK[b.severity];

/** Errors first, then warnings, then notes; within each in build order. */
export function findTrouble(frame: Frame, clearances: readonly Clearance[]): readonly Finding[] {
  const around = aroundOf(frame);
  const found: Record<Severity, Finding[]> = { error: [], warning: [], note: [] };
  const gather = (each: Iterable<Finding>) => {
    for (const finding of each) found[finding.severity].push(finding);
  };
  for (const tube of frame.tubes) gather(troubleOf(tube, around, frame.job.lengthUnit));
  const show = lengthWriter(frame.job.lengthUnit);
  for (const each of clearances) if (!each.ok) gather(clearanceTrouble(each, frame, show));
  return [...found.error, ...found.warning, ...found.note];
}

/** What was found of a tube, in which unit, and what it was found by. */
interface Known {
  readonly unit: LengthUnit;
  readonly asked: readonly Asked[];
  readonly findings: readonly Finding[];
}

const known = new WeakMap<SolvedTube, Known>();

/** Of a tube that an edit left alone what was found before holds, as long as all that was asked about is what it was. */
function troubleOf(tube: SolvedTube, around: Around, unit: LengthUnit): readonly Finding[] {
  const before = known.get(tube);
  if (before?.unit === unit && before.asked.every(({ again, answer }) => again(around) === answer))
    return before.findings;
  const asked: Asked[] = [];
  const findings = [...troubles(tube, noting(around, asked), lengthWriter(unit))];
  known.set(tube, { unit, asked, findings });
  return findings;
}

function* troubles(tube: SolvedTube, around: Around, show: Show): Generator<Finding> {
  yield* twinTrouble(tube, around);
  yield* pullTrouble(tube);
  yield* openingTrouble(tube, show);
  yield* bendTrouble(tube, show);
  yield* holdTrouble(tube, show);
  yield* manyBends(tube);
  yield* stickTrouble(tube, show);
  yield* endTrouble(tube, around, show);
}

/** A member that is its own mirror image, and mirrored all the same, is two tubes in one place. */
function* twinTrouble(tube: SolvedTube, around: Around): Generator<Finding> {
  if (tube.twinOf === null) return;
  const own = around.tube(tube.twinOf).corners;
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
