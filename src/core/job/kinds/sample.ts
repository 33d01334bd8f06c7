/** A piece of bent scrap that was held into the corner of roof and pillar, and what a rule read between it and the car. core/survey/sample-bend.ts. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { across, bendAngle, coordinate, length, size } from './fields.ts';
import type { Part } from './kind.ts';

export interface Sample {
  readonly name: string;
  /** mm: of its bend, and of the bend that will be made. */
  readonly radius: number;
  readonly outerDiameter: number;
  readonly angle: Degrees;
  /** mm wanted between the tube and roof and pillar. */
  readonly air: number;
  /** mm from the outside of the bend's middle to the rail. Absent: nobody read it. */
  readonly rail?: number;
  readonly gaps: readonly SampleGap[];
}

export interface SampleGap {
  readonly leg: 'roof' | 'pillar';
  /** mm along the leg from the end of the bend; mm square to it from the tube's outside. */
  readonly along: number;
  /** Absent: not read yet. */
  readonly gap?: number;
}

/** Of one piece; of pieces in a job. */
export const MOST_GAPS = 12;
export const MOST_SAMPLES = 20;

export const samplePart: Part<Sample> = {
  shape: v.looseObject({
    name: v.string(),
    radius: size,
    outerDiameter: across,
    angle: bendAngle,
    air: v.optional(length, 0),
    rail: v.exactOptional(coordinate),
    gaps: v.optional(
      v.pipe(
        v.array(v.looseObject({ leg: v.picklist(['roof', 'pillar']), along: length, gap: v.exactOptional(length) })),
        v.maxLength(MOST_GAPS, `more than ${MOST_GAPS}`),
      ),
      [],
    ),
  }),
  keys: ['name outerDiameter angle radius air rail gaps', 'leg along gap'],
};
