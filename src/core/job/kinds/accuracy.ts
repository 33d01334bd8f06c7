/**
 * How far what is measured and made comes out off what was asked for: one standard deviation each, every one on its own. What the forecast
 * of fit is reckoned with.
 */
import * as v from 'valibot';
import { number } from './fields.ts';
import type { Part } from './kind.ts';
import { FIRST_SCATTER, scatterFields, type Scatter } from './scatter.ts';

export interface Accuracy extends Scatter {
  /** mm, of each coordinate of each measured point. */
  readonly point: number;
  /** mm along the tube, of each end as it is cut. */
  readonly cut: number;
}

/** Before anybody has said: 2 mm of each coordinate with tape, string and plumb line, 1 mm of a cut (common practice). */
export const FIRST_ACCURACY: Accuracy = { point: 2, cut: 1, ...FIRST_SCATTER };

/** mm. The most that a point or a cut may be off by and still be reckoned to first order. */
export const GREATEST_DEVIATION = 50;

const deviation = number(0, GREATEST_DEVIATION, 'below zero', `beyond ${GREATEST_DEVIATION} mm`);

export const accuracyPart: Part<Accuracy> = {
  shape: v.looseObject({
    point: v.optional(deviation, FIRST_ACCURACY.point),
    cut: v.optional(deviation, FIRST_ACCURACY.cut),
    ...scatterFields,
  }),
  keys: ['point cut angle rotation mark'],
};
