/** The shortest gap of each envelope, as the dimension that the bay draws. */
import { addScaled, distance, interpolate, normalize, subtract, type Vec3 } from '../../core/geometry/vector.ts';
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

export function shortestGaps({ clearances, byId }: Derived): readonly Gap[] {
  const shortest = new Map<EnvelopeId, Derived['clearances'][number]>();
  for (const clearance of clearances) {
    const known = shortest.get(clearance.envelope);
    if (known === undefined || clearance.distance < known.distance) shortest.set(clearance.envelope, clearance);
  }
  return [...shortest.values()].map((clearance) => {
    const { at, onEnvelope } = clearance;
    const radius = (byId.get(clearance.tube)?.section.outerDiameter ?? 0) / 2;
    // A box that reaches past the wall has no gap to draw outside it: the line then runs to the centreline.
    const reach = Math.min(radius, distance(at, onEnvelope));
    const onTube = clearance.distance > 0 ? addScaled(at, normalize(subtract(onEnvelope, at)), reach) : at;
    return {
      envelope: clearance.envelope,
      distance: clearance.distance,
      ok: clearance.ok,
      onTube,
      onEnvelope,
      middle: interpolate(onTube, onEnvelope, 0.5),
    };
  });
}
