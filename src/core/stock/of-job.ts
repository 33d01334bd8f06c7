/** A job's tubes and spares, cut from its sticks: a plan for each section. */
import type { Frame } from '../solve/types.ts';
import { planCuts } from './plan-cuts.ts';
import { inSawOrder } from './saw-order.ts';
import { toCut, type ToCut } from './to-cut.ts';
import type { CutPlan } from './types.ts';
import { wantingFor, type Wanting } from './wanting.ts';

export interface Planned {
  readonly plan: CutPlan;
  /** What to get for what it does not place. */
  readonly wanting: readonly Wanting[];
}

export interface SectionPlan extends ToCut, Planned {}

/** The plans of all sections, in the order of the job. */
export const plansOf = async (frame: Pick<Frame, 'job' | 'tubes'>): Promise<readonly SectionPlan[]> =>
  toCut(frame).map((each) => ({ ...each, ...planSection(each) }));

/** Of one section. */
export function planSection(section: ToCut): Planned {
  const plan = inSawOrder(planCuts(section.parts, section.sticks, section.sawing), section.hoops);
  return { plan, wanting: wantingFor(section, plan) };
}
