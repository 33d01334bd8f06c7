/** The last cutting plan that each section had, with the frame that it was of: it is shown while another is worked out. Of the document that is open; one that is opened begins with none. */
import type { Derived } from '../../core/derive.ts';
import type { SectionId } from '../../core/job/reference.ts';
import type { Planned, SectionPlan } from '../../core/stock/of-job.ts';
import { toCut } from '../../core/stock/to-cut.ts';

export interface PlanBefore {
  readonly frame: Derived;
  readonly plan: SectionPlan;
}

/** Answers those of the sections that have no plan in `plans`, and keeps what stands there. `opened`: which document that is. */
export function createLastPlans(): (
  derived: Derived,
  opened: unknown,
  plans: ReadonlyMap<SectionId, Planned>,
) => ReadonlyMap<SectionId, PlanBefore> {
  const last = new Map<SectionId, PlanBefore>();
  let of: unknown = null;
  return (derived, opened, plans) => {
    if (opened !== of) last.clear();
    of = opened;
    const before = new Map<SectionId, PlanBefore>();
    for (const section of toCut(derived)) {
      const planned = plans.get(section.section);
      if (planned !== undefined) last.set(section.section, { frame: derived, plan: { ...section, ...planned } });
      else if (last.has(section.section)) before.set(section.section, last.get(section.section)!);
    }
    return before;
  };
}
