/** What becomes of a plan when one of its sticks is sawn: the other sticks stand as they did, and nobody plans anew what the saw is set to. */
import { ROUNDING } from '../geometry/tolerance.ts';
import { inSawOrder } from './saw-order.ts';
import type { Planned, SectionPlan } from './of-job.ts';
import type { ToCut } from './to-cut.ts';
import { isProven, type CutPlan, type CutStick, type Part, type StickSort } from './types.ts';
import { wantingFor } from './wanting.ts';

/**
 * The plan of the section as it is after a stick of `before` was sawn: the same without that stick; null where anything else changed too. It is no further from the least than it was. With the sawn stick put back a
 * cheaper plan of the rest would be a cheaper one of all; and what goes on the left-over of that stick, which costs nothing or more, would have gone on the stick.
 */
export function restOf(before: SectionPlan, section: ToCut): Planned | null {
  const { plan, sawing } = before;
  if (section.section !== before.section) return null;
  if (section.sawing.kerf !== sawing.kerf || section.sawing.squareOff !== sawing.squareOff) return null;
  const there = byKey(section.parts);
  const gone = [...byKey(before.parts)].flatMap(([key, parts]) =>
    Array.from({ length: parts.length - (there.get(key)?.length ?? 0) }, () => key),
  );
  if (section.parts.length + gone.length !== before.parts.length) return null;
  const wasCut = gone.toSorted().join();
  const sawn = plan.sticks.find(
    (stick) => stick.parts.map(keyOf).toSorted().join() === wasCut && areLeft(before.sticks, section.sticks, stick),
  );
  if (sawn === undefined) return null;
  // Spares are counted anew: each is the next of its record that is left.
  const asNow = (parts: readonly Part[]): readonly Part[] => parts.map((part) => there.get(keyOf(part))!.shift()!);
  const costs = new Map(before.sticks.map(({ id, cost }) => [id, cost]));
  const sticks = plan.sticks
    .filter((stick) => stick !== sawn)
    .map((stick) => ({ ...stick, parts: asNow(stick.parts) }));
  const cost = sticks.reduce((sum, { stick }) => sum + costs.get(stick)!, 0);
  const rest: CutPlan = {
    sticks,
    cost,
    leastCost: isProven(plan) ? cost : Math.min(cost, Math.max(0, plan.leastCost - costs.get(sawn.stick)!)),
    ...unplacedAsNow(plan, asNow),
  };
  const ordered = inSawOrder(rest, section.hoops);
  return { plan: ordered, wanting: wantingFor(section, ordered) };
}

function unplacedAsNow(plan: CutPlan, asNow: (parts: readonly Part[]) => readonly Part[]) {
  const unplaced = asNow(plan.unplaced);
  const unfound = new Set(plan.unfound);
  return { unplaced, unfound: unplaced.filter((_, at) => unfound.has(plan.unplaced[at]!)) };
}

/** A tube is itself; spares of one record are alike. */
const keyOf = ({ id, spare, length, batch }: Part): string =>
  JSON.stringify([spare === null ? id : spare, length, batch]);

function byKey(parts: readonly Part[]): Map<string, Part[]> {
  const alike = new Map<string, Part[]>();
  for (const part of parts) {
    const key = keyOf(part);
    const those = alike.get(key);
    if (those === undefined) alike.set(key, [part]);
    else those.push(part);
  }
  return alike;
}

/** Whether the sticks are the same but for one less of the sawn one's sort, and its left-over. */
function areLeft(before: readonly StickSort[], now: readonly StickSort[], { stick, left }: CutStick): boolean {
  const sawn = before.find(({ id }) => id === stick)!;
  const known = new Map(now.map((sort) => [sort.id, sort]));
  const added = now.filter(({ id }) => !before.some((sort) => sort.id === id));
  const isSame = (sort: StickSort): boolean => {
    const count = sort === sawn ? sort.count - 1 : sort.count;
    const same = known.get(sort.id);
    if (same === undefined) return count === 0;
    return same.count === count && same.length === sort.length && same.cost === sort.cost && same.batch === sort.batch;
  };
  return (
    before.every(isSame) &&
    added.length <= 1 &&
    added.every((sort) => sort.count === 1 && sort.length <= left + ROUNDING && sort.batch === sawn.batch)
  );
}
