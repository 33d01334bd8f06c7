/**
 * What a file holds under "survey". Its lists are lists of the job as others are, so that edits, diffs and references treat them alike; what else
 * stands there stays together, as later programs' keys do.
 */
import * as v from 'valibot';
import { holdKind } from './hold.ts';
import type { Part } from './kind.ts';
import { measurementKind } from './measurement.ts';
import { MOST_SAMPLES, samplePart, type Sample } from './sample.ts';

/** What of the survey is no list. */
export interface SurveyBlock {
  /** The car does not stand square to the lines that stations, offsets, heights and slopes were read from: how it stands is worked out, and what is held says where the car's own axes are. */
  readonly askew?: boolean;
  readonly samples?: readonly Sample[];
}

export const surveyPart: Part<SurveyBlock> = {
  shape: v.looseObject({
    askew: v.exactOptional(v.boolean()),
    samples: v.exactOptional(v.pipe(v.array(samplePart.shape), v.maxLength(MOST_SAMPLES, `more than ${MOST_SAMPLES}`))),
    hold: v.optional(v.array(holdKind.shape), []),
    measurements: v.optional(v.array(measurementKind.shape), []),
  }),
  keys: ['askew hold measurements samples', ...samplePart.keys],
};
