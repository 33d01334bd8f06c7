/** How far the shop's bends come out off what was asked for: one standard deviation each, of every bend on its own. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { number } from './fields.ts';
import type { Part } from './kind.ts';

export interface Scatter {
  readonly angle: Degrees;
  readonly rotation: Degrees;
  /** mm along the tube. */
  readonly mark: number;
}

/** The most that a shop may be off by, in degrees or mm, and still be reckoned to first order. */
export const GREATEST_SCATTER = 10;

/** Before anybody has measured it: half a degree, half a degree, 1 mm (common practice). */
export const FIRST_SCATTER: Scatter = { angle: 0.5, rotation: 0.5, mark: 1 };

const deviation = number(0, GREATEST_SCATTER, 'below zero', `beyond ${GREATEST_SCATTER}`);

export const scatterFields = {
  angle: v.optional(deviation, FIRST_SCATTER.angle),
  rotation: v.optional(deviation, FIRST_SCATTER.rotation),
  mark: v.optional(deviation, FIRST_SCATTER.mark),
};

export const scatterPart: Part<Scatter> = {
  shape: v.looseObject(scatterFields),
  keys: ['angle rotation mark'],
};
