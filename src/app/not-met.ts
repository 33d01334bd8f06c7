/** How many articles of the rule sheets are not met, for the bar of the stations: the figure of the Checks, known without going there. */
import { useEffect, useState } from 'react';
import type { Derived } from '../core/derive.ts';
import { useDocument } from '../store/page.ts';
import { whenIdle } from '../store/whenIdle.ts';

/**
 * Of the job as it was edited last, worked out once the page has nothing else to do; until then the figure of the edit before stands, so that it does not
 * flicker. What judges is fetched with the first sheet.
 */
export function useNotMet(): number {
  const derived = useDocument((state) => state.committed.derived);
  const [count, setCount] = useState(0);
  const hasSheet = derived.job.rules.length > 0;
  useEffect(() => {
    if (!hasSheet) return;
    let isCurrent = true;
    const drop = whenIdle(() => {
      void countIn(derived).then((found) => isCurrent && setCount(found));
    });
    return () => {
      isCurrent = false;
      drop();
    };
  }, [derived, hasSheet]);
  return hasSheet ? count : 0;
}

async function countIn(derived: Derived): Promise<number> {
  const { judge } = await import('../core/rules/judge.ts');
  return judge(derived).filter(({ verdict }) => verdict === 'not-met').length;
}

/** "1 error, 2 articles not met", as it is spoken; '' where there is neither. */
export function amissInWords(errors: number, notMet: number): string {
  const found = errors === 0 ? [] : [`${errors} ${errors === 1 ? 'error' : 'errors'}`];
  const asked = notMet === 0 ? [] : [`${notMet} ${notMet === 1 ? 'article' : 'articles'} not met`];
  return [...found, ...asked].join(', ');
}
