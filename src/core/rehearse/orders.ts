/**
 * Every order in which a tube's bends can be made, with either end in front at each: how many keep free, and the one
 * to take.
 *
 * How a bend goes depends on which bends are made before it, not on their order: so sets of bends are gone through,
 * 2^n of them, instead of n! 2^n orders. A step that no free order leads to is not asked about.
 *
 * Of the free orders the one is taken that turns the tube end for end least often; then the one that keeps the end in
 * front which the bender's marks are laid out for; then the one that jumps least often to a bend that is not the next
 * on the tube, for a tube is fed one way more easily than to and fro; then the one that turns the tube least about
 * itself from bend to bend.
 */
import { wrapHalfTurn, type Radians } from '../geometry/angle.ts';
import type { Bender } from '../job/kinds/bender.ts';
import type { BendStep } from '../job/kinds/bent.ts';
import { rotationBetween } from '../solve/bend-order.ts';
import type { BendableTube } from './bendable.ts';
import type { Trouble } from './types.ts';

/** Radians. Orders that turn the tube as much as each other to within this are alike. */
const SAME_TURN = 1e-9;

/** Of a step, with the bends of a set made before it. */
export type TroubleOf = (made: number, step: BendStep) => Trouble;

/** Whether nothing stands in the way. */
export const isFree = ({ hit, cannotHold: barred }: Trouble): boolean => hit === null && barred === null;

/** The end in front where marks are measured from end A. */
const frontOf = ({ bendLies }: Bender): 'A' | 'B' => (bendLies === 'beyond' ? 'A' : 'B');

/** Sets of bends are bits: bend n is bit n - 1. */
export const bitOf = (bend: number): number => 1 << (bend - 1);

/** The bends of a set, 1 = first from end A. */
export const bendsIn = (set: number): ReadonlySet<number> => {
  const bends = new Set<number>();
  for (let bend = 1; set >> (bend - 1) > 0; bend++) if ((set & bitOf(bend)) !== 0) bends.add(bend);
  return bends;
};

/** What is left to do from a step on, for the best way to go on: lower is better, the first that differs counts. */
interface Cost {
  readonly flips: number;
  /** Steps with the other end in front than the marks are laid out for. */
  readonly unwonted: number;
  /** Steps to a bend that is not next to the last one on the tube. */
  readonly jumps: number;
  readonly turned: Radians;
  readonly next: BendStep | null;
}

const DONE: Cost = { flips: 0, unwonted: 0, jumps: 0, turned: 0, next: null };

/** The order to take, null where none is free; how many are free, of how many. `trouble` is asked once a set and step. */
export function searchOrders(
  tube: BendableTube,
  trouble: TroubleOf,
): { readonly best: readonly BendStep[] | null; readonly free: number; readonly all: number } {
  const count = tube.bends.length;
  const full = 2 ** count - 1;
  const wonted = frontOf(tube.die.bender);
  const candidates = candidatesOf(count, wonted);
  const ways = new Map<number, number>([[full, 1]]);
  const nextOf = new Map<number, readonly BendStep[]>();
  // Free orders from this set of made bends on; the steps that lead on are kept beside.
  const waysFrom = (made: number): number => {
    const known = ways.get(made);
    if (known !== undefined) return known;
    let sum = 0;
    const next: BendStep[] = [];
    for (const step of candidates) {
      if ((made & bitOf(step.bend)) !== 0) continue;
      // What comes after is asked first only where it is known: else the step itself is the cheaper question.
      if (ways.get(made | bitOf(step.bend)) === 0 || !isFree(trouble(made, step))) continue;
      const after = waysFrom(made | bitOf(step.bend));
      sum += after;
      if (after > 0) next.push(step);
    }
    ways.set(made, sum);
    nextOf.set(made, next);
    return sum;
  };
  const costs = new Map<string, Cost>();
  const costFrom = (made: number, last: BendStep | null): Cost => {
    if (made === full) return DONE;
    const key = last === null ? '' : `${made} ${last.bend}${last.front}`;
    const known = costs.get(key);
    if (known !== undefined) return known;
    let best: Cost | null = null;
    for (const step of nextOf.get(made)!) {
      const after = costFrom(made | bitOf(step.bend), step);
      const cost: Cost = {
        flips: after.flips + (last !== null && last.front !== step.front ? 1 : 0),
        unwonted: after.unwonted + (step.front === wonted ? 0 : 1),
        jumps: after.jumps + (last === null || Math.abs(last.bend - step.bend) === 1 ? 0 : 1),
        turned: after.turned + (last === null ? 0 : turnBetween(tube, last, step)),
        next: step,
      };
      if (best === null || isBetter(cost, best)) best = cost;
    }
    costs.set(key, best!);
    return best!;
  };

  const free = waysFrom(0);
  let all = 1;
  for (let i = 1; i <= count; i++) all *= 2 * i;
  if (free === 0) return { best: null, free, all };
  const best: BendStep[] = [];
  for (let made = 0; made !== full;) {
    const step = costFrom(made, best.at(-1) ?? null).next!;
    best.push(step);
    made |= bitOf(step.bend);
  }
  return { best, free, all };
}

/** In the order in which they are taken where all else is alike: made bends go out in front, and the wonted end first. */
function candidatesOf(count: number, wonted: 'A' | 'B'): readonly BendStep[] {
  const ascending = Array.from({ length: count }, (_, i) => i + 1);
  const withA = ascending.map((bend): BendStep => ({ bend, front: 'A' }));
  const withB = ascending.toReversed().map((bend): BendStep => ({ bend, front: 'B' }));
  return wonted === 'A' ? [...withA, ...withB] : [...withB, ...withA];
}

function isBetter(a: Cost, b: Cost): boolean {
  if (a.flips !== b.flips) return a.flips < b.flips;
  if (a.unwonted !== b.unwonted) return a.unwonted < b.unwonted;
  if (a.jumps !== b.jumps) return a.jumps < b.jumps;
  return a.turned < b.turned - SAME_TURN;
}

/**
 * How far the tube is turned about itself from one bend to the next that is made; the machine bends to one side,
 * whichever end is in front.
 */
const turnBetween = (tube: BendableTube, last: BendStep, next: BendStep): Radians =>
  Math.abs(wrapHalfTurn(rotationBetween(tube.bends, last.bend, next.bend) + (last.front === next.front ? 0 : Math.PI)));
