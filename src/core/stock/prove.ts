/**
 * A plan that the own search did not prove, bettered or proven by linear programs. The worths of parts that bound the cost of all plans best are those of the program that need not be whole, with lays added to
 * it until none is worth more than its stick (Gilmore and Gomory, 1961). Then only lays that spend no more than lies between that bound and the known plan can be in a cheaper one: where these
 * are few enough to have all of them, the program in whole numbers over them finds it, or shows that there is none.
 */
import { ROUNDING } from '../geometry/tolerance.ts';
import { allLays } from './all-lays.ts';
import { goesOn, isTooDeep, type Effort, type Lay, type Problem } from './lays.ts';
import type { Worths } from './prices.ts';
import { costOf, costStep, isLeast, leastBeside, planOf, problemOf, roundedUp, sortsOf, stepOn } from './problem.ts';
import { laysFrom, partialProgram, pricesFrom, wholeProgram, type Solver } from './program.ts';
import type { ToCut } from './to-cut.ts';
import { isProven, type CutPlan } from './types.ts';
import { worthiest } from './worthiest.ts';

/** Programs that are solved to find the worths, and parts that may be held to sticks for them. */
const MOST_PROGRAMS = 150;
const MOST_HELD = 20_000_000;

/** Of parts of more lengths a program takes minutes, and comes to nothing. */
const MOST_LOTS = 120;

/** Lays that a program in whole numbers may have, parts that may be held to sticks to find them, and places that it may look at. */
const MOST_LAYS = 4_000;
const MOST_LISTED = 5_000_000;
const MOST_LOOKS = 200;

/** Worths are lowered by so much, so that no rounding puts the bound above a plan. */
const SAFETY = 1e-9;

/** The same parts placed at no more cost, with a bound that is no lower: the plan itself where nothing better is known. Added up by the same rules as every plan; what the solver answers is never believed but for "none". */
export function proveCuts({ parts, sticks, sawing }: ToCut, plan: CutPlan, solver: Solver): CutPlan {
  if (isProven(plan)) return plan;
  const placed = new Set(plan.sticks.flatMap((stick) => stick.parts));
  const those = parts.filter((part) => placed.has(part));
  // No plan has more sticks than parts.
  const sorts = sortsOf(sticks, sawing).map((sort) =>
    sort.count === Infinity ? sort : { ...sort, count: Math.min(sort.count, those.length) },
  );
  const problem = problemOf(those, sorts, sawing);
  if (problem.lots.length > MOST_LOTS || isTooDeep(problem)) return plan;
  const step = costStep(sorts);
  const known = laysOf(plan, problem, sawing.kerf);
  const { worths, lays: generated } = generate(problem, known, solver);
  let least = Math.max(plan.leastCost, worths === null ? 0 : roundedUp(worths.bound, step));
  let best = known;
  const answer = (): CutPlan => {
    const found = best === known ? plan : { ...plan, ...planOf(best, problem, those, sawing) };
    return { ...found, leastCost: leastBeside(found.cost, least, step) };
  };
  /** Whether there is surely nothing better among the lays. */
  const better = (lays: readonly Lay[]): boolean => {
    // Of parts that go on none of them there is no plan, nor a program.
    if (problem.lots.some((_, lot) => lays.every(({ of }) => of[lot] === 0))) return true;
    const solved = solver.solve(wholeProgram(problem, lays, least), MOST_LOOKS);
    const found = laysFrom(solved, problem, lays);
    if (placesAll(found, problem) && costOf(found, sorts) < costOf(best, sorts) - step.size / 2) best = found;
    return solved.ended !== 'tired';
  };
  if (worths === null) return answer();
  for (let rise = 0; !isLeast(costOf(best, sorts), least, step); rise = 2 * rise + 1) {
    const next = costOf(best, sorts) - step.size;
    const target = Math.min(least + rise * step.size, next);
    const all = allLays(problem, worths, target - worths.bound, MOST_LAYS, { left: MOST_LISTED });
    if (all === null) {
      better(generated);
      break;
    }
    if (!better(all.filter((lay) => isFull(problem, lay)))) break;
    // Every plan of that cost is made of these lays, or parts of them.
    least = target < next ? Math.min(stepOn(target, step), costOf(best, sorts)) : costOf(best, sorts);
  }
  return answer();
}

/** The worths that bound the cost best, null where they were not found; and the lays that came up. */
function generate(
  problem: Problem,
  known: readonly Lay[],
  solver: Solver,
): { readonly worths: Worths | null; readonly lays: readonly Lay[] } {
  const { sorts } = problem;
  const keyOf = ({ sort, of }: Lay): string => `${sort}|${of.join()}`;
  const lays = new Map(known.map((lay) => [keyOf(lay), lay]));
  const effort: Effort = { left: MOST_HELD };
  for (let nth = 0; nth < MOST_PROGRAMS; nth++) {
    const all = [...lays.values()];
    const solved = solver.solve(partialProgram(problem, all), 0);
    if (solved.ended !== 'solved') break;
    const { worth, saved } = pricesFrom(solved, problem);
    const most: number[] = [];
    for (const [sort, { cost }] of sorts.entries()) {
      const found = worthiest(problem, worth, sort, cost + saved[sort]!, effort);
      if (found === null) return { worths: null, lays: all };
      most.push(found.most);
      for (const lay of found.lays) lays.set(keyOf(lay), lay);
    }
    if (lays.size === all.length) return { worths: boundBy(problem, worth, most), lays: all };
  }
  return { worths: null, lays: [...lays.values()] };
}

/** `most`: no lay of each sort is worth more. Lowered until none is worth more than a stick of which there are as many as are wanted; what is above the others is saved by each of them at the most. */
function boundBy({ lots, sorts }: Problem, worth: readonly number[], most: readonly number[]): Worths {
  const endless = sorts.flatMap(({ cost, count }, sort) =>
    count === Infinity && most[sort]! > cost ? [cost / most[sort]!] : [],
  );
  const share = Math.min(1, ...endless) * (1 - SAFETY);
  const saved = sorts.map(({ cost, count }, sort) =>
    count === Infinity ? 0 : Math.max(0, share * most[sort]! - cost),
  );
  const lowered = worth.map((each) => share * each);
  const ofParts = lots.reduce((sum, { count }, lot) => sum + count * lowered[lot]!, 0);
  const ofSticks = sorts.reduce((sum, { count }, sort) => (saved[sort] === 0 ? sum : sum + count * saved[sort]!), 0);
  return { worth: lowered, saved, bound: ofParts - ofSticks };
}

/** No further part goes on it. */
function isFull(problem: Problem, { sort, of }: Lay): boolean {
  const { lots, room } = problem;
  const slack = room[sort]! - of.reduce((sum, count, lot) => sum + count * lots[lot]!.length, 0) + ROUNDING;
  return !lots.some(({ length, count }, lot) => of[lot]! < count && length <= slack && goesOn(problem, lot, sort));
}

/** Each part once, from sticks that there are. */
const placesAll = (lays: readonly Lay[], { lots, sorts }: Problem): boolean =>
  lots.every(({ count }, lot) => lays.reduce((sum, { of }) => sum + of[lot]!, 0) === count) &&
  sorts.every(({ count }, at) => lays.filter(({ sort }) => sort === at).length <= count);

function laysOf({ sticks }: CutPlan, { lots, sorts }: Problem, kerf: number): readonly Lay[] {
  return sticks.map(({ stick, parts }): Lay => ({
    sort: sorts.findIndex(({ id }) => id === stick),
    of: lots.map(
      (lot) => parts.filter(({ length, batch }) => length + kerf === lot.length && batch === lot.batch).length,
    ),
  }));
}
