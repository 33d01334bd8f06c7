/** A job's quote: what it is reckoned with, what stands over and under it, what else is charged, and what a line really took. */
import * as v from 'valibot';
import { MOST_EXTRAS, MOST_TOOK, GREATEST_HOURS } from '../limits.ts';
import { number, words } from './fields.ts';
import type { Part } from './kind.ts';
import { money, ratesPart, type Rates } from './rates.ts';

export interface Quote {
  readonly rates?: Rates;
  /** Over the customer's page, the shop's own words: who it is from. */
  readonly heading?: string;
  readonly customer?: string;
  /** As the shop counts its quotes. */
  readonly number?: string;
  /** Until when it holds, in the shop's own words: a day, as a rule. */
  readonly validUntil?: string;
  /** Under it. */
  readonly terms?: string;
  readonly extras?: readonly Extra[];
  readonly took?: readonly Took[];
}

/** What the frame does not say, at a price that the shop types: paint, a journey. */
export interface Extra {
  readonly what: string;
  readonly amount: number;
}

/** What a line of the quote really took: several of one line add up. */
export interface Took {
  /** As core/quote calls it. */
  readonly line: string;
  readonly hours?: number;
  readonly paid?: number;
  readonly on?: string;
  readonly remark?: string;
}

export const extraPart: Part<Extra> = {
  shape: v.looseObject({ what: words, amount: money }),
  keys: ['what amount'],
};

export const tookPart: Part<Took> = {
  shape: v.looseObject({
    line: words,
    hours: v.exactOptional(number(0, GREATEST_HOURS, 'below zero', `beyond ${GREATEST_HOURS} hours`)),
    paid: v.exactOptional(money),
    on: v.exactOptional(words),
    remark: v.exactOptional(words),
  }),
  keys: ['line hours paid on remark'],
};

const several = <S extends v.GenericSchema>(shape: S, most: number) =>
  v.exactOptional(v.pipe(v.array(shape), v.maxLength(most, `more than ${most}`)));

export const quotePart: Part<Quote> = {
  shape: v.looseObject({
    rates: v.exactOptional(ratesPart.shape),
    heading: v.exactOptional(words),
    customer: v.exactOptional(words),
    number: v.exactOptional(words),
    validUntil: v.exactOptional(words),
    terms: v.exactOptional(words),
    extras: several(extraPart.shape, MOST_EXTRAS),
    took: several(tookPart.shape, MOST_TOOK),
  }),
  keys: [
    'rates heading customer number validUntil terms extras took',
    ...ratesPart.keys,
    ...extraPart.keys,
    ...tookPart.keys,
  ],
};
