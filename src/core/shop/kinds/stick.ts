/** Sticks on the rack: so many of one section, of one length. */
import * as v from 'valibot';
import { size } from '../../job/kinds/fields.ts';
import { cost, howMany } from '../../job/kinds/stick.ts';
import type { Kind } from '../../job/kinds/kind.ts';
import type { SectionId } from '../../job/reference.ts';

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
    count: howMany,
    batch: v.exactOptional(v.string()),
    cost: v.exactOptional(cost),
  }),
  keys: ['section length count batch cost'],
  beyondShape: ({ section }, at) => [{ place: `${at}.section`, list: 'sections', to: section }],
};
