/**
 * Where to put the harness bar: the whole bar up or down until the belts, or its top over the shoulders, come to what the article advises, else to the middle
 * of its limits; or by the least that meets it. Of several shoulders the middle between the highest figure and the lowest is brought there; by the least move
 * the one that is past its limit farthest comes just within. Each step is measured in the changed frame: a bar on
 * a hoop that leans or bends goes along and across the car as it goes up.
 */
import { derive, type Derived } from '../derive.ts';
import type { RuleCheck } from '../job/kinds/rule-check.ts';
import type { Job } from '../job/types.ts';
import { harness } from '../rules/kinds/harness.ts';
import { questionsTo } from '../rules/questions.ts';
import type { Verdict } from '../rules/types.ts';
import { barFreedom } from '../shape/move-bar.ts';
import { withMend, type LiftWhy, type Mend } from './mends.ts';

/** mm: what a move is rounded to, the first step, the farthest. */
const [FINE, FIRST_STEP, FARTHEST_LIFT] = [0.1, 10, 600];
/** The figure grows nearly evenly with the height: a few chords find where it is what is wanted. */
const MOST_CHORDS = 8;

type HarnessCheck = Extract<RuleCheck, { readonly kind: 'harness' }>;

/** Two, or one where they are the same, or none where the bar does not go up and down, or does not come there within reach. */
export function lifts({ check, concerns, bound, limit }: Verdict, job: Job, derived: Derived): readonly Mend[] {
  const bar = derived.byId.get(concerns[0] ?? '')?.bar;
  if (check.kind !== 'harness' || bar === undefined) return [];
  if (!barFreedom(derived, bar)?.open.includes(2)) return [];
  const quantity = check.of === 'height' ? 'length' : 'angle';
  const { to, why } = aimOf(check);
  const lift = (by: number, goal: number, because: LiftWhy): Mend => ({
    kind: 'lift-bar',
    bar,
    by,
    to: goal,
    quantity,
    why: because,
  });
  const figures = (by: number) => figuresWith(lift(by, to, why), check, job, derived);
  const middle = (by: number): number => {
    const all = figures(by);
    return (Math.min(...all) + Math.max(...all)) / 2;
  };
  const aimed = why === 'least' ? null : onFine(liftTo(to, middle));
  const least =
    limit === null
      ? null
      : beyondFine(liftTo(limit, (by) => (bound === 'least' ? Math.min : Math.max)(...figures(by))));
  return [
    ...(aimed === null ? [] : [lift(aimed, to, why)]),
    ...(least === null || limit === null || least === aimed ? [] : [lift(least, limit, 'least')]),
  ];
}

/** What is advised; the middle; with one limit alone level where that is within, else that itself. */
function aimOf({ of, aim, least, most }: HarnessCheck): { readonly to: number; readonly why: LiftWhy } {
  if (aim !== undefined) return { to: aim, why: 'advised' };
  if (least !== undefined && most !== undefined) return { to: (least + most) / 2, why: 'middle' };
  const limit = least ?? most!;
  const isLevelWithin = of === 'strap-angle' && (least === undefined ? limit > 0 : limit < 0);
  return isLevelWithin ? { to: 0, why: 'level' } : { to: limit, why: 'least' };
}

const onFine = (by: number | null): number | null => (by === null ? null : Math.round(by / FINE) * FINE);

/** Away from where the bar is: what is shown is what was tried. */
const beyondFine = (by: number | null): number | null =>
  by === null ? null : Math.sign(by) * Math.ceil((Math.abs(by) + FINE / 2) / FINE) * FINE;

/** By chords of the figure over the lift; null where it does not come there. */
function liftTo(to: number, figureWith: (by: number) => number): number | null {
  let [by, off] = [0, figureWith(0) - to];
  let [next, nextOff] = [FIRST_STEP, figureWith(FIRST_STEP) - to];
  for (let chord = 0; chord < MOST_CHORDS; chord++) {
    const step = (-nextOff * (next - by)) / (nextOff - off);
    if (!Number.isFinite(step) || Math.abs(next + step) > FARTHEST_LIFT) return null;
    [by, off] = [next, nextOff];
    next += step;
    if (Math.abs(step) < FINE / 2) return next;
    nextOff = figureWith(next) - to;
  }
  return null;
}

/** Of all shoulders; NaN where one has none. */
function figuresWith(mend: Mend, check: HarnessCheck, job: Job, derived: Derived): readonly number[] {
  const edited = withMend(job, mend, derived);
  const after = Array.isArray(edited) ? null : derive(edited as Job, derived);
  if (after === null || !after.ok) return [NaN];
  return harness(check, questionsTo(after.value, [])).map((each) => ('value' in each ? each.value : NaN));
}
