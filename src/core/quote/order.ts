/** What is to be got for a job: sticks by section and length, plates, boxes, gussets, bolts, padding and hole saws. Facts; core/words/quote.ts says them. mm, mm2, kg. */
import type { SectionId } from '../job/reference.ts';
import type { Judged } from '../rules/questions.ts';
import type { Wanting } from '../stock/wanting.ts';
import { amountsOf, footSheet, type Amounts, type FeetToMake, type GussetsToMake } from './amounts.ts';
import { allBought, type AllBought } from './bought.ts';
import { sawsFor, type SawToGet } from './saws.ts';
import { summed } from '../units/money.ts';
import { lengthsToCut, sticksTaken, sticksWanted, type PlanOf, type SticksTaken } from './sticks.ts';

export interface OrderList {
  /** Only those to be bought. */
  readonly sticks: readonly SticksTaken[];
  /** From the rack. */
  readonly fromRack: readonly SticksTaken[];
  readonly wanted: readonly (Wanting & { readonly section: SectionId })[];
  readonly unplanned: ReturnType<typeof lengthsToCut>;
  readonly feet: readonly FeetToMake[];
  readonly footSheet: ReturnType<typeof footSheet>;
  readonly gussets: readonly GussetsToMake[];
  readonly bolts: Amounts['bolts'];
  readonly bought: AllBought;
  readonly saws: readonly SawToGet[];
  /** Of what has a price. */
  readonly cost: number;
  /** How many of its lines have none. */
  readonly unpriced: number;
}

/** By the plans that there are. */
export function orderList(frame: Judged, plans: readonly PlanOf[]): OrderList {
  const { feet, gussets, bolts } = amountsOf(frame);
  const taken = sticksTaken(frame, plans);
  const sticks = taken.filter(({ from }) => from === 'bought');
  const wanted = sticksWanted(plans);
  const unplanned = lengthsToCut(frame);
  const bought = allBought(frame);
  const { bolts: all, padding, saws, footSteel, gussetSteel } = bought;
  const costs = [
    ...sticks.map(({ cost }) => cost),
    ...[all, padding, saws, footSteel, gussetSteel].flatMap((each) => (each === null ? [] : [each.cost])),
    ...[...wanted, ...unplanned].map(() => null),
  ];
  const priced = costs.filter((cost) => cost !== null);
  return {
    sticks,
    fromRack: taken.filter(({ from }) => from !== 'bought'),
    wanted,
    unplanned,
    feet,
    footSheet: footSheet(feet),
    gussets,
    bolts,
    bought,
    saws: sawsFor(frame),
    cost: summed(priced),
    unpriced: costs.length - priced.length,
  };
}
