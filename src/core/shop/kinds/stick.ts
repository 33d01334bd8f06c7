/** Sticks on the rack: so many of one section, of one length. */
import * as v from 'valibot';
import { NOT_WHOLE } from '../../job/fault.ts';
import { number, size } from '../../job/kinds/fields.ts';
import type { Kind } from '../../job/kinds/kind.ts';
import type { SectionId } from '../../job/reference.ts';

/** Of one sort on the rack, and of what one of them costs, in whatever money the shop reckons in. */
export const MOST_STICKS = 10_000;
export const GREATEST_COST = 1_000_000;

export interface Stick {
  readonly section: SectionId;
  readonly length: number;
  readonly count: number;
  /** Heat or batch, where it is known. */
  readonly batch?: string;
  /** What one of them costs, in the shop's own money; absent when not said. */
  readonly cost?: number;
}

export const stickKind: Kind<Stick> = {
  inWords: 'sticks on the rack',
  shape: v.looseObject({
    section: v.string(),
    length: size,
    count: v.pipe(number(0, MOST_STICKS, 'below zero', `beyond ${MOST_STICKS}`), v.integer(NOT_WHOLE)),
    batch: v.exactOptional(v.string()),
    cost: v.exactOptional(number(0, GREATEST_COST, 'below zero', `beyond ${GREATEST_COST}`)),
  }),
  keys: ['section length count batch cost'],
  beyondShape: ({ section }, at) => [{ place: `${at}.section`, list: 'sections', to: section }],
};
