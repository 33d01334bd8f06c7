/** What of the checks a person has looked at and leaves as it is. */
import * as v from 'valibot';
import { MOST_SEEN } from '../limits.ts';
import type { TubeRef } from '../reference.ts';
import { bendNumber } from './fields.ts';
import type { Kind } from './kind.ts';

/** A finding that was looked at: it counts as seen as long as it is found with the same numbers. */
export interface Seen {
  /** What was found: joint/near-bend. */
  readonly finding: string;
  readonly tube: TubeRef;
  readonly end?: 'A' | 'B';
  readonly bend?: number;
  /** Its numbers and names at that time, as text. */
  readonly as: string;
}

/** The tube is no reference: a mark that fits no finding any more says nothing. */
export const seenKind: Kind<Seen> = {
  inWords: 'what was seen of it',
  shape: v.looseObject({
    finding: v.string(),
    tube: v.string(),
    end: v.exactOptional(v.picklist(['A', 'B'])),
    bend: v.exactOptional(bendNumber),
    as: v.string(),
  }),
  keys: ['finding bend tube end as'],
  most: MOST_SEEN,
};
