/** In which order sticks are sawn. */
import type { SectionId } from '../job/reference.ts';
import type { Job } from '../job/types.ts';
import type { CutPlan, CutStick, Part } from './types.ts';

/**
 * Hoops first, those of `hoops` by their ids: while no other stick is sawn, one that is spoilt can still be had from the rack. Then the sticks with the longest parts; on a stick in
 * the same way. As many sticks, and what is on them, stay as they are.
 */
export function inSawOrder(plan: CutPlan, hoops: readonly string[]): CutPlan {
  const isHoop = ({ id, spare }: Part): boolean => spare === null && hoops.includes(id);
  const before = (one: Part, other: Part): number =>
    Number(isHoop(other)) - Number(isHoop(one)) || other.length - one.length;
  const sticks = plan.sticks.map((stick): CutStick => ({ ...stick, parts: stick.parts.toSorted(before) }));
  return { ...plan, sticks: sticks.toSorted((one, other) => before(one.parts[0]!, other.parts[0]!)) };
}

/**
 * The numbers of the sticks of each plan, by which they stand in the cut list: through all sections, those that are sawn counted in their section, so that a list that was printed stays right. One
 * of a plan that is being sawn keeps its own.
 */
export function stickNumbers(
  plans: readonly { readonly section: SectionId; readonly plan: CutPlan }[],
  { sections, sawn }: Pick<Job, 'sections' | 'sawn'>,
): readonly (readonly number[])[] {
  const countSawn = (section: SectionId): number => sawn.filter((each) => each.section === section).length;
  const before = (section: SectionId): number => {
    const earlier = sections.slice(
      0,
      sections.findIndex(({ id }) => id === section),
    );
    const planned = plans.filter((each) => earlier.some(({ id }) => id === each.section));
    return (
      earlier.reduce((sum, { id }) => sum + countSawn(id), 0) +
      planned.reduce((sum, { plan }) => sum + plan.sticks.length, 0)
    );
  };
  return plans.map(({ section, plan }) => {
    const first = 1 + before(section) + countSawn(section);
    return plan.sticks.map(({ number }, i) => number ?? first + i);
  });
}
