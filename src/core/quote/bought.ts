/** What is bought by the kilogram, metre or piece: once for order list and quote, so that both have the same figures. */
import { remembered } from '../remembered.ts';
import type { Judged } from '../rules/questions.ts';
import { rounded } from '../units/money.ts';
import { amountsOf } from './amounts.ts';
import { paddingOf, type Padding } from './padding.ts';
import { sawsFor } from './saws.ts';
import { heavyMeasure, longMeasure, perBase, rateBy, type Measure } from './units.ts';

/** How much, rounded, at what each, and what that comes to; null without a price. */
export interface Bought {
  readonly quantity: number;
  readonly measure: Measure;
  readonly each: number | null;
  readonly cost: number | null;
}

/** Null: there is none to buy. */
export interface AllBought {
  readonly bolts: Bought | null;
  /** Hole saws that the shop has not, one of each width. */
  readonly saws: Bought | null;
  readonly padding: (Bought & { readonly of: Padding }) | null;
  readonly footSteel: Bought | null;
  readonly gussetSteel: Bought | null;
}

/** Kept as long as the frame. */
export const allBought: (frame: Judged) => AllBought = remembered((frame): AllBought => {
  const { job } = frame;
  const prices = job.quote?.rates?.prices ?? {};
  const [heavy, long] = [heavyMeasure(job.lengthUnit), longMeasure(job.lengthUnit)];
  const { bolts, feet, gussets } = amountsOf(frame);
  const padding = paddingOf(frame);
  const padded = boughtBy((padding?.length ?? 0) / 1000, long, prices.paddingMetre);
  return {
    bolts: boughtBy(
      bolts.reduce((sum, { count }) => sum + count, 0),
      'each',
      prices.boltEach,
    ),
    saws: boughtBy(sawsFor(frame).filter(({ isThere }) => !isThere).length, 'each', prices.sawEach),
    padding: padding && padded && { ...padded, of: padding },
    footSteel: boughtBy(massOf(feet), heavy, prices.footKilogram),
    gussetSteel: boughtBy(massOf(gussets), heavy, prices.gussetKilogram),
  };
});

const massOf = (made: readonly { readonly count: number; readonly mass: number }[]): number =>
  made.reduce((sum, { count, mass }) => sum + count * mass, 0);

/** Of so many metres, kilograms or pieces, at the rate as it is kept. */
function boughtBy(amount: number, measure: Measure, rate: number | undefined): Bought | null {
  if (amount === 0) return null;
  const quantity = rounded(amount * perBase(measure));
  const each = rate === undefined ? null : rateBy(rate, measure);
  return { quantity, measure, each, cost: each === null ? null : rounded(quantity * each) };
}
