/** A job's tubes and spares, cut from its sticks: a plan for each section. */
import { remembered } from '../remembered.ts';
import type { Frame } from '../solve/types.ts';
import { begunPlanned } from './begun-plan.ts';
import { planCuts } from './plan-cuts.ts';
import type { Solver } from './program.ts';
import { proveCuts } from './prove.ts';
import { inSawOrder } from './saw-order.ts';
import { toCut, type ToCut } from './to-cut.ts';
import { isProven, type CutPlan } from './types.ts';
import { wantingFor, type Wanting } from './wanting.ts';

export interface Planned {
  readonly plan: CutPlan;
  /** What to get for what it does not place. */
  readonly wanting: readonly Wanting[];
}

export interface SectionPlan extends ToCut, Planned {}

/** Of one section, by the program's own search; the rest of one that is being sawn, as long as that holds. */
export const planSection = remembered((section: ToCut): Planned => {
  const begun = begunPlanned(section);
  if (begun !== null) return begun;
  const plan = inSawOrder(planCuts(section.parts, section.sticks, section.sawing), section.hoops);
  return { plan, wanting: wantingFor(section, plan) };
});

/** How to come by a solver: it is asked for only where a plan is not proven without. */
export type GetSolver = () => Promise<Solver>;

/** The same, and where that is not proven, what the solver finds beyond it. */
export async function proveSection(section: ToCut, solver: GetSolver): Promise<Planned> {
  const planned = planSection(section);
  // What is being sawn is on paper: it is not made another one any more.
  if (isProven(planned.plan) || planned.plan.sticks.some(({ number }) => number !== undefined)) return planned;
  const plan = proveCuts(section, planned.plan, await solver());
  return { ...planned, plan: inSawOrder(plan, section.hoops) };
}

/** The plans of all sections, in the order of the job; without a solver as the own search has them. */
export const plansOf = (
  frame: Pick<Frame, 'job' | 'tubes'>,
  solver: GetSolver | null = null,
): Promise<readonly SectionPlan[]> =>
  Promise.all(
    toCut(frame).map(async (section) => ({
      ...section,
      ...(solver === null ? planSection(section) : await proveSection(section, solver)),
    })),
  );
