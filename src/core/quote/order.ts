/** What is to be got for a job: sticks by section and length, plates, boxes, gussets, bolts, padding and hole saws. Facts; core/words/quote.ts says them. mm, mm2, kg. */
import type { SectionId } from '../job/reference.ts';
import { NO_TOOLS } from '../job/kinds/tools.ts';
import { ROUNDING } from '../geometry/tolerance.ts';
import type { Judged } from '../rules/questions.ts';
import type { Frame } from '../solve/types.ts';
import type { Wanting } from '../stock/wanting.ts';
import { amountsOf, footSheet, type FeetToMake, type GussetsToMake } from './amounts.ts';
import { paddingOf, type Padding } from './padding.ts';
import { heavyMeasure, longMeasure, perBase, rateBy, type Measure } from './units.ts';
import { rounded, summed } from '../units/money.ts';
import { lengthsToCut, sticksTaken, sticksWanted, type PlanOf, type SticksTaken } from './sticks.ts';

/** Of something that is sold by the measure: how much, rounded, at what each, and what that comes to; null without a price. */
export interface Bought {
  readonly quantity: number;
  readonly measure: Measure;
  readonly each: number | null;
  readonly cost: number | null;
}

export interface SawToGet {
  /** mm across, as the tube that is cut into. */
  readonly diameter: number;
  /** Cuts that want one. */
  readonly cuts: number;
  readonly isThere: boolean;
}

export interface OrderList {
  /** Only those to be bought. */
  readonly sticks: readonly SticksTaken[];
  /** From the rack. */
  readonly fromRack: readonly SticksTaken[];
  readonly wanted: readonly (Wanting & { readonly section: SectionId })[];
  readonly unplanned: ReturnType<typeof lengthsToCut>;
  readonly feet: readonly (FeetToMake & { readonly bought: Bought })[];
  readonly footSheet: ReturnType<typeof footSheet>;
  readonly gussets: readonly (GussetsToMake & { readonly bought: Bought })[];
  readonly bolts: readonly { readonly hole: number; readonly bought: Bought }[];
  readonly padding: (Padding & { readonly bought: Bought }) | null;
  readonly saws: readonly SawToGet[];
  /** Of what has a price. */
  readonly cost: number;
  /** How many of its lines have none; saws are not counted. */
  readonly unpriced: number;
}

/** Of some measure of it in mm, kg or pieces, at the rate as it is kept. */
export function boughtBy(amount: number, measure: Measure, rate: number | undefined): Bought {
  const long = measure === 'm' || measure === 'ft';
  const quantity = rounded((long ? amount / 1000 : amount) * perBase(measure));
  const each = rate === undefined ? null : rateBy(rate, measure);
  return { quantity, measure, each, cost: each === null ? null : rounded(quantity * each) };
}

/** By the plans that there are. */
export function orderList(frame: Judged, plans: readonly PlanOf[]): OrderList {
  const { job } = frame;
  const prices = job.quote?.rates?.prices ?? {};
  const [heavy, long] = [heavyMeasure(job.lengthUnit), longMeasure(job.lengthUnit)];
  const amounts = amountsOf(frame);
  const taken = sticksTaken(frame, plans);
  const sticks = taken.filter(({ from }) => from === 'bought');
  const wanted = sticksWanted(plans);
  const unplanned = lengthsToCut(frame);
  const padding = paddingOf(frame);
  const feet = amounts.feet.map((each) => ({
    ...each,
    bought: boughtBy(each.count * each.mass, heavy, prices.footKilogram),
  }));
  const gussets = amounts.gussets.map((each) => ({
    ...each,
    bought: boughtBy(each.count * each.mass, heavy, prices.gussetKilogram),
  }));
  const bolts = amounts.bolts.map(({ hole, count }) => ({ hole, bought: boughtBy(count, 'each', prices.boltEach) }));
  const padded = padding && { ...padding, bought: boughtBy(padding.length, long, prices.paddingMetre) };
  const costs = [
    ...sticks.map(({ cost }) => cost),
    ...[...feet, ...gussets, ...bolts, ...(padded ? [padded] : [])].map(({ bought }) => bought.cost),
    ...[...wanted, ...unplanned].map(() => null),
  ];
  const priced = costs.filter((cost) => cost !== null);
  return {
    sticks,
    fromRack: taken.filter(({ from }) => from !== 'bought'),
    wanted,
    unplanned,
    feet,
    footSheet: footSheet(amounts.feet),
    gussets,
    bolts,
    padding: padded,
    saws: sawsFor(frame),
    cost: summed(priced),
    unpriced: costs.length - priced.length,
  };
}

/** A hole saw as wide as each tube that others are coped to, the narrowest first. */
function sawsFor({ job, tubes }: Frame): readonly SawToGet[] {
  const { saws } = job.tools ?? NO_TOOLS;
  const cuts = tubes.flatMap(({ ends }) => ends.flatMap((end) => end.cuts.filter(({ reaches }) => reaches)));
  const widths: number[] = [];
  for (const { sawDiameter } of cuts)
    if (!widths.some((width) => Math.abs(width - sawDiameter) <= ROUNDING)) widths.push(sawDiameter);
  return widths
    .toSorted((one, other) => one - other)
    .map((diameter) => ({
      diameter,
      cuts: cuts.filter(({ sawDiameter }) => Math.abs(sawDiameter - diameter) <= ROUNDING).length,
      isThere: saws.some((saw) => Math.abs(saw.diameter - diameter) <= ROUNDING),
    }));
}
