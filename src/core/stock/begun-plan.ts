/**
 * The rest of a plan of which some sticks are sawn. It stands in the job, so that the paper at the saw, the screen and the files go on saying the same, whatever another search would come to. It
 * holds as long as it is of just what is left to cut and the sticks for it are there; then it is also as good as it was: were there a cheaper one for the rest, with the left-over of the stick that
 * is sawn or without, the whole plan could have been cheaper by as much, since a left-over costs its part of a price that was paid whole, and what lies on it could have lain on the stick itself.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import type { BegunStick } from '../job/kinds/begun.ts';
import { remembered } from '../remembered.ts';
import { leastSticksFor } from './least-sticks.ts';
import { problemOf, sortsOf } from './problem.ts';
import type { CutPlan, CutStick, Part, Sawing, StickSort } from './types.ts';

/** What it is to be a plan of. */
export interface Left {
  readonly parts: readonly Part[];
  readonly sticks: readonly StickSort[];
  readonly sawing: Sawing;
}

/** The plan; null where none was begun, or it is of something else by now. */
export function begunPlan({ parts, sticks, sawing }: Left, begun: readonly BegunStick[]): CutPlan | null {
  if (begun.length === 0) return null;
  const waiting = [...parts];
  const cut = begun.map(({ stick, number, cuts }): CutStick | null => {
    const sort = sticks.find(({ id }) => id === stick);
    if (sort === undefined) return null;
    const on = cuts.map(({ tube, spare }) => {
      const at = waiting.findIndex((part) =>
        tube === undefined ? part.spare === spare : part.id === tube && part.spare === null,
      );
      return at === -1 ? null : waiting.splice(at, 1)[0]!;
    });
    if (!on.every((part) => part !== null && (part.batch === null || part.batch === sort.batch))) return null;
    const those = on as readonly Part[];
    const room = sort.length - sawing.squareOff;
    const used = those.reduce((sum, { length }) => sum + length + sawing.kerf, 0);
    if (those.length === 0 || used - sawing.kerf > room + ROUNDING) return null;
    return { stick, number, parts: those, left: Math.max(0, room - used) };
  });
  if (waiting.length > 0 || !cut.every((stick) => stick !== null)) return null;
  const taken = (sort: StickSort): number => cut.filter(({ stick }) => stick === sort.id).length;
  if (!sticks.every((sort) => taken(sort) <= sort.count)) return null;
  const cost = sticks.reduce((sum, sort) => sum + taken(sort) * sort.cost, 0);
  return {
    sticks: cut,
    cost,
    leastCost: begun.every(({ proven }) => proven) ? cost : boundOf({ parts, sticks, sawing }, cost),
    unplaced: [],
    unfound: [],
  };
}

/** What is planned for a section that is being sawn; null where it is not. A look at each of its parts: kept as long as what it is made of. */
export const begunPlanned = remembered(
  (
    section: Left & { readonly begun: readonly BegunStick[] },
  ): { readonly plan: CutPlan; readonly wanting: readonly never[] } | null => {
    const plan = begunPlan(section, section.begun);
    return plan === null ? null : { plan, wanting: [] };
  },
);

/** By whole sticks; where that is not known, nothing. */
function boundOf({ parts, sticks, sawing }: Left, cost: number): number {
  return Math.min(cost, leastSticksFor(problemOf(parts, sortsOf(sticks, sawing), sawing)) ?? 0);
}
