/** The shortest gap of each envelope, as the dimension that the bay draws. */
import { interpolate, type Vec3 } from '../../core/geometry/vector.ts';
import type { Derived } from '../../core/derive.ts';
import type { EnvelopeId } from '../../core/job/reference.ts';

export interface Gap {
  readonly envelope: EnvelopeId;
  /** mm from the box to the tube's surface, negative inside. */
  readonly distance: number;
  readonly ok: boolean;
  readonly onTube: Vec3;
  readonly onEnvelope: Vec3;
  readonly middle: Vec3;
}

export function shortestGaps({ clearances }: Pick<Derived, 'clearances'>): readonly Gap[] {
  const shortest = new Map<EnvelopeId, Derived['clearances'][number]>();
  for (const clearance of clearances) {
    const known = shortest.get(clearance.envelope);
    if (known === undefined || clearance.distance < known.distance) shortest.set(clearance.envelope, clearance);
  }
  return [...shortest.values()].map(({ envelope, distance, ok, at, onEnvelope }) => ({
    envelope,
    distance,
    ok,
    onTube: at,
    onEnvelope,
    middle: interpolate(at, onEnvelope, 0.5),
  }));
}
