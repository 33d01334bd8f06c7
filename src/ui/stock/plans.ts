/** The cutting plans that there are so far, whether one is still being worked out, and why some will never be there. */
import { useMemo } from 'react';
import type { Derived } from '../../core/derive.ts';
import type { PlanOf } from '../../core/quote/sticks.ts';
import { toCut } from '../../core/stock/to-cut.ts';
import { unplannedInWords } from '../../core/words/stock.ts';
import { useResults } from '../../store/page.ts';

export interface PlansSoFar {
  readonly plans: readonly PlanOf[];
  readonly isWaiting: boolean;
  /** Null: none has failed. */
  readonly failed: string | null;
}

export function usePlans(derived: Derived): PlansSoFar {
  const known = useResults((state) => state.plans);
  const whys = useResults((state) => state.unplanned);
  return useMemo(() => {
    const sections = toCut(derived).map(({ section }) => section);
    const plans = sections.flatMap((section): readonly PlanOf[] => {
      const planned = known.get(section);
      return planned === undefined ? [] : [{ ...planned, section }];
    });
    const missing = sections.filter((section) => !known.has(section));
    const why = missing.map((section) => whys.get(section)).find((each) => each !== undefined);
    return {
      plans,
      isWaiting: missing.some((section) => !whys.has(section)),
      failed: why === undefined ? null : unplannedInWords(why),
    };
  }, [derived, known, whys]);
}
