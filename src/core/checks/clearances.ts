/** How far every tube's surface is from every envelope. */
import { gapToBox } from '../gaps/box-gap.ts';
import { outsideOf, sameOutside } from '../gaps/outside.ts';
import type { SolidBox } from '../geometry/solid-box.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Envelope } from '../job/kinds/envelope.ts';
import type { EnvelopeId, TubeRef } from '../job/reference.ts';
import { envelopeBox, sameBox } from '../solve/envelope-box.ts';
import type { Frame, SolvedTube } from '../solve/types.ts';

/** Distance from an envelope to one tube's outside. */
export interface Clearance {
  readonly envelope: EnvelopeId;
  readonly tube: TubeRef;
  /** Negative when the tube is inside the box. */
  readonly distance: number;
  /** What the envelope asks for. */
  readonly gap: number;
  readonly ok: boolean;
  /** Nearest place on the tube's outside, and on the box: the ends of the dimension drawn between them. */
  readonly at: Vec3;
  readonly onEnvelope: Vec3;
}

/**
 * Every envelope x every tube, in the job's order. Distance from the box to the outside of the tube as coped, mm; negative when one is
 * inside the other, by the deepest place. A record whose envelope, box and tube are unchanged since `previous` is handed on.
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
    const box = envelopeBox(job.points, envelope);
    // A driver's box moves with its points, of which the envelope says no more than the names.
    const isAsItWas = envelopeBefore.has(envelope) && sameBox(envelopeBox(previous!.job.points, envelope), box);
    const ofEnvelope = isAsItWas ? before.get(envelope.id) : undefined;
    return tubes.map((tube) => {
      const known = ofEnvelope?.get(tube.id);
      const tubeBefore = previous?.byId.get(tube.id);
      return known !== undefined && tubeBefore !== undefined && sameOutside(tubeBefore, tube)
        ? known
        : measure(envelope, box, tube);
    });
  });
}

function measure(envelope: Envelope, box: SolidBox, tube: SolvedTube): Clearance {
  const { distance, onTube, onBox } = gapToBox(outsideOf(tube), box);
  return {
    envelope: envelope.id,
    tube: tube.id,
    distance,
    gap: envelope.gap,
    ok: distance >= envelope.gap - ROUNDING,
    at: onTube,
    onEnvelope: onBox,
  };
}
