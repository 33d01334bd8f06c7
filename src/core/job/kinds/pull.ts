/** The log of pulls. */
import * as v from 'valibot';
import type { Degrees } from '../../geometry/angle.ts';
import { MOST_PULLS } from '../limits.ts';
import type { DieId, SectionId, TubeRef } from '../reference.ts';
import { bendAngle, bendNumber } from './fields.ts';
import type { Kind } from './kind.ts';

/** One bend as it was made: how far the machine was pulled, and the angle measured after release. */
export interface Pull {
  readonly die: DieId;
  readonly section: SectionId;
  /** Heat or batch of the tube, where it is known. */
  readonly batch?: string;
  readonly pulled: Degrees;
  readonly net: Degrees;
  /** Date, as 2026-03-02; '' when not noted. */
  readonly on: string;
  /** The bend that it made, 1 = first from end A, when it came from a bend run. */
  readonly tube?: TubeRef;
  readonly bend?: number;
}

/** The tube is no reference: a pull stays in the log when its tube goes. */
export const pullKind: Kind<Pull> = {
  inWords: 'a logged pull',
  shape: v.looseObject({
    die: v.string(),
    section: v.string(),
    batch: v.exactOptional(v.string()),
    pulled: bendAngle,
    net: bendAngle,
    on: v.optional(v.string(), ''),
    tube: v.exactOptional(v.string()),
    bend: v.exactOptional(bendNumber),
  }),
  keys: ['bend section die batch pulled net on tube'],
  most: MOST_PULLS,
  beyondShape: ({ die, section }, at) => [
    { place: `${at}.die`, list: 'dies', to: die },
    { place: `${at}.section`, list: 'sections', to: section },
  ],
};
