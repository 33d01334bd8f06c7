import * as v from 'valibot';
import type { TubeRef } from '../reference.ts';
import { bendingOrder, type BendStep } from './bent.ts';
import { bendsTwice, tubeTwice } from './faults.ts';
import type { Kind } from './kind.ts';
import { hookedEnd, type Marking } from './marking.ts';

/** How one tube is fed where it is not as the others are. Once its bend run is begun, the order of that comes first. */
export interface TubeFeed {
  readonly tube: TubeRef;
  /** Absent: as Job.marking says. */
  readonly from?: Marking['from'];
  /** Every bend once, in the order of bending; absent: the order in which the marks come. */
  readonly order?: readonly BendStep[];
}

export const feedKind: Kind<TubeFeed> = {
  inWords: 'how it is fed',
  shape: v.looseObject({
    tube: v.string(),
    from: v.exactOptional(hookedEnd),
    order: v.exactOptional(bendingOrder),
  }),
  keys: ['from tube order', 'bend front'],
  /** Its tube is fed in one way, and no bend stands twice in its order. Whether that holds every bend is for solve/feed.ts. */
  beyondShape: ({ tube, order }, at, index, feeds) => [
    { place: `${at}.tube`, list: 'members', to: tube, made: true },
    ...tubeTwice(feeds, index, 'feeds'),
    ...bendsTwice(order ?? [], `${at}.order`),
  ],
};
