/** How far every tube's surface is from every envelope. */
import { boxFrame, nearestToBox } from '../geometry/solid-box.ts';
import { toRadians } from '../geometry/angle.ts';
import { extendedPath } from '../geometry/path.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Envelope } from '../job/kinds/envelope.ts';
import type { EnvelopeId, TubeRef } from '../job/reference.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';
import type { Clearance } from './types.ts';

/**
 * Every envelope x every tube, in the job's order. Distance from the box to the tube's surface, mm: from the box to the
 * real centreline between its nodes, less the tube's radius; negative when the tube is inside. An end that is cut on a slant
 * reaches past its node to its longest point, and counts to there all round: never more than the true distance. A record whose
 * envelope and tube are unchanged since `previous` is handed on.
 */
export function measureClearances(
  { job, tubes }: Frame,
  previous?: Frame & { readonly clearances: readonly Clearance[] },
): readonly Clearance[] {
  const before = new Map<EnvelopeId, Map<TubeRef, Clearance>>();
  for (const each of previous?.clearances ?? []) {
    const ofEnvelope = before.get(each.envelope);
    if (ofEnvelope === undefined) before.set(each.envelope, new Map([[each.tube, each]]));
    else ofEnvelope.set(each.tube, each);
  }
  const envelopeBefore = new Set(previous?.job.envelopes);
  return job.envelopes.flatMap((envelope) => {
    const ofEnvelope = envelopeBefore.has(envelope) ? before.get(envelope.id) : undefined;
    return tubes.map((tube) => {
      const known = ofEnvelope?.get(tube.id);
      const tubeBefore = previous?.byId.get(tube.id);
      const same = known !== undefined && tubeBefore !== undefined && sameOutside(tubeBefore, tube);
      return same ? known : measure(envelope, tube);
    });
  });
}

const sameOutside = (a: SolvedTube, b: SolvedTube): boolean =>
  a.path === b.path && a.section === b.section && a.ends.every((end, i) => end.tip === b.ends[i]!.tip);

function measure(envelope: Envelope, tube: SolvedTube): Clearance {
  const [rx, ry, rz] = envelope.rotation;
  const box = boxFrame(envelope.centre, envelope.size, [toRadians(rx), toRadians(ry), toRadians(rz)]);
  const [a, b] = tube.ends;
  const nearest = nearestToBox(extendedPath(tube.path, -(a.tip ?? 0), -(b.tip ?? 0)), box);
  const distance = nearest.distance - tube.section.outerDiameter / 2;
  return {
    envelope: envelope.id,
    tube: tube.id,
    distance,
    gap: envelope.gap,
    ok: distance >= envelope.gap - ROUNDING,
    at: nearest.point,
    onEnvelope: nearest.onBox,
  };
}
