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
