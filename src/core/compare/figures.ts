/** What one version of a job comes to, in the figures that two of them are held against each other by. */
import { counted } from '../checks/counted.ts';
import type { Finding } from '../checks/types.ts';
import type { Derived } from '../derive.ts';
import type { Rates } from '../job/kinds/rates.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { amountsOf } from '../quote/amounts.ts';
import { reckonQuote } from '../quote/reckon.ts';
import { sticksAlike, type PlanOf } from '../quote/sticks.ts';
import { judge } from '../rules/judge.ts';
import { feedOf } from '../solve/feed.ts';
import { centreOfMass } from './centre-of-mass.ts';

export interface Figures {
  readonly tubes: number;
  readonly bends: number;
  /** Welded joints, those on feet and plates among them. */
  readonly joints: number;
  /** kg of coped tube. */
  readonly mass: number;
  /** Car axes, mm; null without a tube. */
  readonly centre: Vec3 | null;
  /** mm to cut, all tubes. */
  readonly toCut: number;
  /** Whole ones, those that were sawn among them, each once with what is left of it; how many are still to be bought, and parts without one. Null: the job lists no sticks, or nothing of it is planned. */
  readonly sticks: { readonly count: number; readonly bought: number; readonly without: number } | null;
  /** As the quote has it, in this version's own money, with so many lines that have no rate yet; null without rates. */
  readonly price: ({ readonly whole: number; readonly unpriced: number } & Pick<Rates, 'currency'>) | null;
  /** The shortest gap to a driver or box, and between two tubes that are not joined, mm; null where there is none. */
  readonly toEnvelope: number | null;
  readonly betweenTubes: number | null;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  /** Articles of the rule sheets; null without one. */
  readonly notMet: number | null;
}

/** `plans` of all sections, and `findings` with those of the slow stages. */
export function figuresOf(derived: Derived, plans: readonly PlanOf[], findings: readonly Finding[]): Figures {
  const { job, tubes } = derived;
  const { bends, welds } = amountsOf(derived);
  const count = counted(findings, job.seen, derived);
  const { currency } = job.quote?.rates ?? {};
  const quote = job.quote?.rates === undefined ? null : reckonQuote(derived, plans);
  return {
    tubes: tubes.length,
    bends,
    joints: welds.tubes.joints + welds.feet.joints,
    mass: tubes.reduce((sum, { mass }) => sum + mass, 0),
    centre: centreOfMass(derived),
    toCut: tubes.reduce((sum, tube) => sum + feedOf(job, tube).cutLength, 0),
    sticks: job.stickSorts.length === 0 ? null : sticksOf(derived, plans),
    price: quote && {
      whole: quote.whole.price,
      unpriced: quote.unpriced.length,
      ...(currency !== undefined && { currency }),
    },
    toEnvelope: least(derived.clearances.map(({ distance }) => distance)),
    betweenTubes: least(derived.gaps.map(({ distance }) => distance)),
    errors: count('error').things,
    warnings: count('warning').things,
    notes: count('note').things,
    notMet: job.rules.length === 0 ? null : judge(derived).filter(({ verdict }) => verdict === 'not-met').length,
  };
}

function sticksOf(derived: Derived, plans: readonly PlanOf[]): NonNullable<Figures['sticks']> {
  const alike = sticksAlike(derived, plans);
  return {
    count: alike.reduce((all, { bought, rack, sawn }) => all + bought + rack + sawn, 0),
    bought: alike.reduce((all, { bought }) => all + bought, 0),
    without: plans.reduce((all, { plan }) => all + plan.unplaced.length, 0),
  };
}

const least = (distances: readonly number[]): number | null => (distances.length === 0 ? null : Math.min(...distances));
