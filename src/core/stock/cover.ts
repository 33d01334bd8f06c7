/**
 * A cutting plan put together of lays that are all known: the part that goes on fewest of them is laid next, and each of those is tried (Knuth, Dancing links, 2000). Where next to nothing may be
 * wasted this ends long before a search from the longest part on. One that goes wrong early is begun anew in another order, each time with more patience.
 */
import { roundingOf } from './all-lays.ts';
import { takeFrom, type Effort, type Lay, type PricedLay, type Problem } from './lays.ts';
import type { Worths } from './prices.ts';
import type { Searched } from './search.ts';
import { shakenRow } from './shaken.ts';

/** Places that are looked at in the first order; in each other so many times more. */
const FIRST_LOOKS = 500;
const PATIENCE = 1.2;

/** Looks for a plan of those lays that costs no more than the bound and the budget, as long as the effort lasts. `all`: every lay of which no more than the budget is spent and on which no further part goes. */
export function coverWithin(
  problem: Problem,
  worths: Worths,
  budget: number,
  all: readonly PricedLay[],
  effort: Effort,
): Searched {
  let looks = 0;
  for (let turn = 0; effort.left > 0; turn++) {
    const row = shakenRow(turn);
    const inOrder = turn === 0 ? all : shuffled(all, row);
    const searched = coverOnce(problem, worths, budget, inOrder, FIRST_LOOKS * PATIENCE ** turn, effort);
    looks += searched.looks;
    if (searched.ended !== 'tired') return { ...searched, looks };
  }
  return { ended: 'tired', lays: [], looks };
}

function shuffled<T>(all: readonly T[], row: () => number): readonly T[] {
  const at = new Map(all.map((each) => [each, row()]));
  return all.toSorted((one, other) => at.get(one)! - at.get(other)!);
}

function coverOnce(
  problem: Problem,
  worths: Worths,
  budget: number,
  all: readonly PricedLay[],
  most: number,
  effort: Effort,
): Searched {
  const { lots, sorts } = problem;
  const left = { lots: lots.map(({ count }) => count), sticks: sorts.map(({ count }) => count) };
  const chosen: Lay[] = [];
  const members = new Map(all.map((lay) => [lay, lay.of.flatMap((count, lot) => (count > 0 ? [lot] : []))]));
  const failed = new Map<string, number>();
  const rounding = roundingOf(problem, worths);
  let looks = 0;

  const unused = (): number =>
    worths.saved.reduce((sum, each, sort) => (each > 0 ? sum + each * left.sticks[sort]! : sum), 0);

  const stays = (lay: PricedLay): boolean =>
    left.sticks[lay.sort]! > 0 && members.get(lay)!.every((lot) => lay.of[lot]! <= left.lots[lot]!);

  /** Whether what is left can be laid; null where it is not known. */
  const finish = (lays: readonly PricedLay[], within: number): boolean | null => {
    if (left.lots.every((count) => count === 0)) return within >= unused() - rounding;
    if (looks++ >= most || effort.left <= 0) return null;
    const here = `${left.lots.join()}|${left.sticks.join()}`;
    if ((failed.get(here) ?? -Infinity) >= within) return false;
    const on = lots.map(() => 0);
    for (const lay of lays) for (const lot of members.get(lay)!) on[lot]!++;
    let next = -1;
    for (const [lot, count] of left.lots.entries())
      if (count > 0 && (next === -1 || on[lot]! / count < on[next]! / left.lots[next]!)) next = lot;
    let rest = lays;
    for (const lay of lays) {
      if (lay.of[next] === 0) continue;
      takeFrom(left, lay, 1);
      chosen.push(lay);
      effort.left -= rest.length + lots.length;
      const ended = finish(
        rest.filter((each) => stays(each) && each.spent <= within - lay.spent + rounding),
        within - lay.spent,
      );
      if (ended !== false) return ended;
      chosen.pop();
      takeFrom(left, lay, -1);
      // All plans with it were tried.
      rest = rest.filter((each) => each !== lay);
    }
    failed.set(here, within);
    return false;
  };

  const ended = finish(all.filter(stays), budget);
  if (ended === true) return { ended: 'found', lays: chosen, looks };
  return { ended: ended === null ? 'tired' : 'none', lays: [], looks };
}
