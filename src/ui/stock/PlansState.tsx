/** Over what goes by the cutting plans: whether one is still being worked out, or never will be. */
import type { ReactNode } from 'react';
import { STICKS_COMING } from '../../core/words/quote.ts';
import type { PlansSoFar } from './plans.ts';

export function PlansState({ isWaiting, failed }: PlansSoFar): ReactNode {
  return (
    <>
      <p role="status">{isWaiting && STICKS_COMING}</p>
      {failed !== null && (
        <p className="word-error" role="alert">
          × {failed} Its sticks are not counted here.
        </p>
      )}
    </>
  );
}
