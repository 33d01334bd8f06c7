/**
 * Bent tubes rehearsed on their bender while the page is idle, one at a time: the search for an order takes longer than a
 * frame may. What was found for a tube is kept as long as the tube is the same record, so an edit costs only the tubes
 * that it touches. Nothing is searched while something is dragged.
 */
import type { Derived } from '../core/derive.ts';
import type { TubeRef } from '../core/job/reference.ts';
import { isBendable, type BendableTube } from '../core/rehearse/pose.ts';
import { rehearse } from '../core/rehearse/rehearse.ts';
import type { Rehearsal } from '../core/rehearse/types.ts';
import { feedOf } from '../core/solve/feed.ts';
import { swingFindings } from '../core/checks/swing-findings.ts';
import { withFindings } from '../core/stages/slow.ts';

export interface Rehearsals {
  /** Of the tubes of `derived`, as far as they are known. */
  known(derived: Derived): ReadonlyMap<TubeRef, Rehearsal>;
  /** `derived` with what its known rehearsals find; itself where that is nothing. */
  addedTo(derived: Derived): Derived;
  /** Rehearses the tubes of `derived` that are not known yet, `first` before the others; drops what it was at. */
  want(derived: Derived, first: TubeRef | null): void;
  /** Drops what is still to do. */
  rest(): void;
}

/** `whenIdle` runs a task once, when nothing else is to be done, and answers how to drop it; `learnt` is called after each tube. */
export function createRehearsals(whenIdle: (task: () => void) => () => void, learnt: () => void): Rehearsals {
  const found = new WeakMap<BendableTube, Rehearsal>();
  /** The same answer as long as no more is known: whoever shows it may compare by identity. */
  const answered = new WeakMap<Derived, { readonly size: number; readonly answer: Derived }>();
  let drop: () => void = () => {};

  const known = (derived: Derived): ReadonlyMap<TubeRef, Rehearsal> =>
    new Map(
      derived.tubes.flatMap((tube) => {
        const rehearsal = isBendable(tube) ? found.get(tube) : undefined;
        return rehearsal === undefined ? [] : [[tube.id, rehearsal] as const];
      }),
    );

  function rest(): void {
    drop();
    drop = () => {};
  }

  function want(derived: Derived, first: TubeRef | null): void {
    rest();
    const unknown = derived.tubes.filter(isBendable).filter((tube) => !found.has(tube));
    const next = unknown.find((tube) => tube.id === first) ?? unknown[0];
    if (next === undefined) return;
    drop = whenIdle(() => {
      drop = () => {};
      found.set(next, rehearse(next));
      learnt();
    });
  }

  function addedTo(derived: Derived): Derived {
    const rehearsals = known(derived);
    const before = answered.get(derived);
    if (before?.size === rehearsals.size) return before.answer;
    const more = derived.tubes.filter(isBendable).flatMap((tube) => {
      const rehearsal = rehearsals.get(tube.id);
      return rehearsal === undefined ? [] : swingFindings(tube, rehearsal, feedOf(derived.job, tube).order);
    });
    const answer = withFindings(derived, more);
    answered.set(derived, { size: rehearsals.size, answer });
    return answer;
  }

  return { known, addedTo, want, rest };
}
