/** In which order sticks are sawn. */
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

/** Sticks are numbered through all sections: the number of the first one of the section at that place. */
export const firstNumber = (plans: readonly { readonly plan: CutPlan }[], at: number): number =>
  1 + plans.slice(0, at).reduce((sum, { plan }) => sum + plan.sticks.length, 0);
