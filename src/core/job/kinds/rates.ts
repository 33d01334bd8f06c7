/**
 * What a shop reckons with when it quotes: what an hour costs, how many minutes each thing takes, what is bought. The shop record and a job have it alike.
 * Nothing is filled in: what nobody has said is absent, and counts for nothing until it is.
 */
import * as v from 'valibot';
import { GREATEST_COST, GREATEST_MINUTES, GREATEST_SHARE, LONGEST_CURRENCY } from '../limits.ts';
import { number } from './fields.ts';
import type { Part } from './kind.ts';

/** Each in minutes; of which things how many there are, core/quote says. */
export const MINUTES = [
  'straightCut',
  'cope',
  'mitreCut',
  'footCut',
  'bending',
  'tubeFitting',
  'jointFitting',
  'bendFitting',
  'weldMetre',
  'footMaking',
  'gussetMaking',
] as const;
export type Timed = (typeof MINUTES)[number];

/** Each in the shop's own money: a kilogram of the flat steel of feet, one of gussets, a bolt with what goes with it, a metre of padding, a hole saw. */
export const PRICES = ['footKilogram', 'gussetKilogram', 'boltEach', 'paddingMetre', 'sawEach'] as const;
export type Priced = (typeof PRICES)[number];

export interface Rates {
  /** What the money is called, as it is to be printed: a word or a sign. */
  readonly currency?: string;
  /** Money for an hour of work. */
  readonly hourly?: number;
  readonly minutes?: { readonly [K in Timed]?: number };
  readonly prices?: { readonly [K in Priced]?: number };
  /** Percent of what material and work come to. */
  readonly overhead?: number;
  /** Percent of that and overhead together, put on top. */
  readonly margin?: number;
  /** On the whole price; absent: none is reckoned. */
  readonly tax?: Tax;
}

/** As it is called on the customer's page, and how many percent. */
export interface Tax {
  readonly name: string;
  readonly percent: number;
}

const minutes = number(0, GREATEST_MINUTES, 'below zero', `beyond ${GREATEST_MINUTES} minutes`);
/** In the shop's own money. */
export const money = number(0, GREATEST_COST, 'below zero', `beyond ${GREATEST_COST}`);
const share = number(0, GREATEST_SHARE, 'below zero', `beyond ${GREATEST_SHARE} percent`);

const optional = <K extends string, S extends v.GenericSchema>(keys: readonly K[], shape: S) =>
  v.looseObject(
    Object.fromEntries(keys.map((key) => [key, v.exactOptional(shape)])) as {
      [P in K]: ReturnType<typeof v.exactOptional<S>>;
    },
  );

export const ratesPart: Part<Rates> = {
  shape: v.looseObject({
    currency: v.exactOptional(
      v.pipe(v.string(), v.maxLength(LONGEST_CURRENCY, `longer than ${LONGEST_CURRENCY} characters`)),
    ),
    hourly: v.exactOptional(money),
    minutes: v.exactOptional(optional(MINUTES, minutes)),
    prices: v.exactOptional(optional(PRICES, money)),
    overhead: v.exactOptional(share),
    margin: v.exactOptional(share),
    tax: v.exactOptional(v.looseObject({ name: v.string(), percent: share })),
  }),
  keys: ['currency hourly minutes prices overhead margin tax', 'name percent', MINUTES.join(' '), PRICES.join(' ')],
};
