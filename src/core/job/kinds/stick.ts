/** Sticks that a job is cut from: so many of one section and length, at what one of them costs. */
import * as v from 'valibot';
import { batchKey } from '../batch.ts';
import { NOT_WHOLE } from '../fault.ts';
import { GREATEST_COST, MOST_STICK_SORTS, MOST_STICKS } from '../limits.ts';
import type { SectionId } from '../reference.ts';
import { id, number, size } from './fields.ts';
import type { Kind } from './kind.ts';

export interface Stick {
  readonly id: string;
  readonly section: SectionId;
  readonly length: number;
  /** Absent: as many as are wanted, to be bought. */
  readonly count?: number;
  /** Of one, in the shop's own money. Absent: its length, so that the least length is the least cost. */
  readonly cost?: number;
  /** Heat or batch, where it is known. */
  readonly batch?: string;
  /** Taken over from the shop's own rack, which it comes off once it is sawn. */
  readonly rack?: true;
}

/** Heat or batch of a stick or a part, as typed; null: of none, also where its name is nothing. */
export const batchOf = ({ batch }: { readonly batch?: string }): string | null =>
  batchKey(batch) === null ? null : batch!;

/** How many there are of something: 0 and up. */
export const howMany = v.pipe(number(0, MOST_STICKS, 'below zero', `beyond ${MOST_STICKS}`), v.integer(NOT_WHOLE));

/** What one of something costs. */
export const cost = number(0, GREATEST_COST, 'below zero', `beyond ${GREATEST_COST}`);

export const stickKind: Kind<Stick> = {
  word: 'stick',
  letter: 'k',
  inWords: 'a stick',
  within: ['stock', 'sticks'],
  shape: v.looseObject({
    id,
    section: v.string(),
    length: size,
    count: v.exactOptional(howMany),
    cost: v.exactOptional(cost),
    batch: v.exactOptional(v.string()),
    rack: v.exactOptional(v.literal(true)),
  }),
  keys: ['id section length count batch cost rack'],
  most: MOST_STICK_SORTS,
  beyondShape: ({ section }, at) => [{ place: `${at}.section`, list: 'sections', to: section }],
};
