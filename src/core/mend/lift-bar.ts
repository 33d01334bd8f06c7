/**
 * Where to put the harness bar: the whole bar up or down until the belts, or its top over the shoulders, come to what the article advises, else to the middle
 * of its limits. Of several shoulders the middle between the highest figure and the lowest is brought there. Each step is measured in the changed frame: a bar on
 * a hoop that leans or bends goes along and across the car as it goes up.
 */
import { derive, type Derived } from '../derive.ts';
import type { RuleCheck } from '../job/kinds/rule-check.ts';
import type { Job } from '../job/types.ts';
import { harness } from '../rules/kinds/harness.ts';
import { questionsTo } from '../rules/questions.ts';
import type { Verdict } from '../rules/types.ts';
import { barFreedom } from '../shape/move-bar.ts';
import { withMend, type Mend } from './mends.ts';

/** mm: what a move is rounded to, the first step, the farthest. */
const [FINE, FIRST_STEP, FARTHEST_LIFT] = [0.1, 10, 600];
/** The figure grows nearly evenly with the height: a few chords find where it is what is wanted. */
const MOST_CHORDS = 8;

type HarnessCheck = Extract<RuleCheck, { readonly kind: 'harness' }>;

/** One, or none where the bar does not go up and down, or does not come there within reach. */
export function lifts({ check, concerns }: Verdict, job: Job, derived: Derived): readonly Mend[] {
  const bar = derived.byId.get(concerns[0] ?? '')?.bar;
  if (check.kind !== 'harness' || bar === undefined) return [];
  if (!barFreedom(derived, bar)?.open.includes(2)) return [];
  const to = aimOf(check);
  const quantity = check.of === 'height' ? 'length' : 'angle';
  const lifted = (by: number): Mend => ({ kind: 'lift-bar', bar, by, to, quantity });
  const by = liftTo(to, (way) => middleWith(lifted(way), check, job, derived));
  return by === null ? [] : [lifted(by)];
}

/** What is advised; the middle; with one limit alone that itself, or level where that is within. */
function aimOf({ of, aim, least, most }: HarnessCheck): number {
  if (aim !== undefined) return aim;
  if (least !== undefined && most !== undefined) return (least + most) / 2;
  if (of === 'height') return least ?? most!;
  return least === undefined ? Math.min(0, most!) : Math.max(0, least);
}

/** By chords of the figure over the lift; null where it does not come there. */
function liftTo(to: number, figureWith: (by: number) => number): number | null {
  let [by, off] = [0, figureWith(0) - to];
  let [next, nextOff] = [FIRST_STEP, figureWith(FIRST_STEP) - to];
  for (let chord = 0; chord < MOST_CHORDS; chord++) {
    const step = (-nextOff * (next - by)) / (nextOff - off);
    if (!Number.isFinite(step) || Math.abs(next + step) > FARTHEST_LIFT) return null;
    [by, off] = [next, nextOff];
    next += step;
    if (Math.abs(step) < FINE / 2) return Math.round(next / FINE) * FINE;
    nextOff = figureWith(next) - to;
  }
  return null;
}

/** Between the highest and the lowest of all shoulders; NaN where one has none. */
function middleWith(mend: Mend, check: HarnessCheck, job: Job, derived: Derived): number {
  const edited = withMend(job, mend, derived);
  const after = Array.isArray(edited) ? null : derive(edited as Job, derived);
  if (after === null || !after.ok) return NaN;
  const figures = harness(check, questionsTo(after.value, [])).map((each) => ('value' in each ? each.value : NaN));
  return (Math.min(...figures) + Math.max(...figures)) / 2;
}
