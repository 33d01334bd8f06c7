/** A stick that was sawn: what it was, what was cut from it and what is left. From its batch a tube is traced to its heat. */
import * as v from 'valibot';
import { rounded } from '../../units/money.ts';
import { MOST_ON_A_STICK, MOST_SAWN } from '../limits.ts';
import type { SectionId, TubeRef } from '../reference.ts';
import { id, length, size } from './fields.ts';
import type { Kind } from './kind.ts';
import { cost } from './stick.ts';

export interface Sawn {
  readonly id: string;
  readonly section: SectionId;
  /** mm, before it was sawn. */
  readonly length: number;
  readonly batch?: string;
  readonly cost?: number;
  /** In the order in which they were cut. A spare has no tube. */
  readonly cuts: readonly SawnPart[];
  /** mm behind the last kerf. */
  readonly left: number;
  /** The sort of sticks that it was one of: that it may be gone is no fault. */
  readonly from?: string;
  /** What the left-over was put on the rack as, where it was worth keeping: a sort of sticks. */
  readonly kept?: string;
  /** It was bought for this job and stood on no rack. */
  readonly bought?: true;
  /** It came off the shop's own rack, and goes back onto it if it was not sawn after all. */
  readonly rack?: true;
  /** 2026-03-02. */
  readonly on: string;
}

export interface SawnPart {
  readonly tube?: TubeRef;
  /** Of a spare that was to be of one. */
  readonly batch?: string;
  /** mm. */
  readonly length: number;
}

/** What is left of a stick is worth its part of the price, to the cent: no plan comes out dearer or cheaper by it. Undefined without a price. */
export const costOfLeft = ({ cost, left, length: whole }: Pick<Sawn, 'cost' | 'left' | 'length'>): number | undefined =>
  cost === undefined ? undefined : rounded((cost * left) / whole);

/** Sorts of sticks that what was sawn goes by: no other sort may have their ids, also when they are gone. */
export const sortsSawn = ({ sawn }: { readonly sawn: readonly Sawn[] }): readonly string[] =>
  sawn.flatMap(({ from, kept }) => [from, kept].filter((id) => id !== undefined));

/** Neither tubes nor what was kept are references: the stick is sawn, whatever became of them. */
export const sawnKind: Kind<Sawn> = {
  word: 'sawn stick',
  letter: 'w',
  inWords: 'a stick that was sawn',
  within: ['stock', 'sawn'],
  shape: v.looseObject({
    id,
    section: v.string(),
    length: size,
    batch: v.exactOptional(v.string()),
    cost: v.exactOptional(cost),
    cuts: v.pipe(
      v.array(v.looseObject({ tube: v.exactOptional(v.string()), batch: v.exactOptional(v.string()), length: size })),
      v.maxLength(MOST_ON_A_STICK, `more than ${MOST_ON_A_STICK} parts`),
    ),
    left: length,
    from: v.exactOptional(v.string()),
    kept: v.exactOptional(v.string()),
    bought: v.exactOptional(v.literal(true)),
    rack: v.exactOptional(v.literal(true)),
    on: v.optional(v.string(), ''),
  }),
  keys: ['id from section length batch cost rack cuts left kept bought on', 'length batch tube'],
  most: MOST_SAWN,
  beyondShape: ({ section }, at) => [{ place: `${at}.section`, list: 'sections', to: section }],
};
