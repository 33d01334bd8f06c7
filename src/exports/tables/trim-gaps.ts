/** Gaps to what was measured of the car, as the fabrication file holds them. */
import { measureTrim } from '../../core/gaps/measure-trim.ts';
import { trimPlaces } from '../../core/gaps/trim-places.ts';
import type { Derived } from '../../core/derive.ts';
import type { Vec3 } from '../../core/geometry/vector.ts';
import type { BodyLineId, PointRef, TubeRef } from '../../core/job/reference.ts';

/** A tube near a measured point, or its mirror image, or a body line. */
export interface FabricationTrimGap {
  readonly point?: PointRef;
  readonly bodyLine?: BodyLineId;
  readonly tube: TubeRef;
  /** Negative inside. */
  readonly distance: number;
  /** Null where nobody asks for any. */
  readonly wanted: number | null;
  readonly at: Vec3;
  readonly onTrim: Vec3;
}

/** Of every measured place, be a gap asked for there or not. */
export const fabricationTrimGaps = (derived: Derived): readonly FabricationTrimGap[] =>
  measureTrim(derived, trimPlaces(derived), derived).flatMap(({ trim: { kind, id }, wanted, gaps }) =>
    gaps.map(({ tube, distance, at, onTrim }) => ({ [kind]: id, tube, distance, wanted, at, onTrim })),
  );
