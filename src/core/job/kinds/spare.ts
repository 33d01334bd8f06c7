/** Lengths that are cut beside the tubes: a test piece of a batch, a spare. */
import * as v from 'valibot';
import { fault } from '../fault.ts';
import { MOST_SPARES, MOST_STICK_SORTS } from '../limits.ts';
import type { SectionId } from '../reference.ts';
import { size } from './fields.ts';
import type { Kind } from './kind.ts';
import { howMany } from './stick.ts';

export interface Spare {
  readonly section: SectionId;
  readonly length: number;
  readonly count: number;
  /** Heat or batch that it has to be of, such as a piece to test that batch with; absent: any. */
  readonly batch?: string;
}

export const spareKind: Kind<Spare> = {
  inWords: 'a spare length',
  within: ['stock', 'spares'],
  shape: v.looseObject({
    section: v.string(),
    length: size,
    count: v.optional(howMany, 1),
    batch: v.exactOptional(v.string()),
  }),
  keys: ['section length count batch'],
  most: MOST_STICK_SORTS,
  beyondShape: ({ section, count }, at, index, records) => {
    const before = records.slice(0, index).reduce((sum, spare) => sum + spare.count, 0);
    const isOver = before <= MOST_SPARES && before + count > MOST_SPARES;
    return [
      { place: `${at}.section`, list: 'sections', to: section },
      ...(isOver ? [fault(`${at}.count`, `more than ${MOST_SPARES} spares, with those before it`)] : []),
    ];
  },
};
