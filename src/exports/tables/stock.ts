/** The cutting plan as the fabrication file holds it: all sections together. */
import type { SectionPlan } from '../../core/stock/of-job.ts';
import type { Part } from '../../core/stock/types.ts';

export interface FabricationStock {
  readonly plan: readonly FabricationStick[];
  readonly cost: number;
  readonly leastCost: number;
  readonly unplaced: readonly string[];
}

/** One stick: what is cut from it, in its order, and what is left behind the last kerf, mm. */
export interface FabricationStick {
  readonly stick: string;
  readonly cuts: readonly FabricationPart[];
  readonly left: number;
}

export type FabricationPart =
  | { readonly tube: string; readonly length: number }
  /** The place of the spare's record in the job. */
  | { readonly spare: number; readonly length: number };

/** Of a job that has sticks. */
export function fabricationStock(sections: readonly SectionPlan[]): FabricationStock {
  const plans = sections.map(({ plan }) => plan);
  const sum = (figures: readonly number[]): number => figures.reduce((all, each) => all + each, 0);
  return {
    plan: plans.flatMap(({ sticks }) =>
      sticks.map(({ stick, parts, left }) => ({ stick, cuts: parts.map(cutOf), left })),
    ),
    cost: sum(plans.map(({ cost }) => cost)),
    leastCost: sum(plans.map(({ leastCost }) => leastCost)),
    unplaced: plans.flatMap(({ unplaced }) => unplaced.map(({ id }) => id)),
  };
}

const cutOf = ({ id, spare, length }: Part): FabricationPart =>
  spare === null ? { tube: id, length } : { spare, length };
