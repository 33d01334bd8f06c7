/** The cutting plans that there are so far, and whether one is still being worked out. */
import { useMemo } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { toCut } from '../../core/stock/to-cut.ts';
import { useResults } from '../../store/page.ts';

export function usePlans(derived: Derived): { readonly plans: readonly PlanOf[]; readonly isWaiting: boolean } {
  const known = useResults((state) => state.plans);
  return useMemo(() => {
    const sections = toCut(derived).map(({ section }) => section);
    const plans = sections.flatMap((section): readonly PlanOf[] => {
      const planned = known.get(section);
      return planned === undefined ? [] : [{ ...planned, section }];
    });
    return { plans, isWaiting: plans.length < sections.length };
  }, [derived, known]);
}
