/** What stands behind the plans. Where the last stick was sawn, the hand is led here: its key is gone. */
import { useEffect, useRef, type ReactNode } from 'react';

export function EndOfPlan(props: { isNext: boolean; onArrived: () => void; children: ReactNode }): ReactNode {
  const here = useRef<HTMLDivElement | null>(null);
  const { isNext, onArrived, children } = props;
  useEffect(() => {
    if (!isNext) return;
    here.current?.focus();
    onArrived();
  }, [isNext, onArrived]);
  return (
    <div ref={here} tabIndex={-1} role="group" aria-label="What was sawn">
      {children}
    </div>
  );
}
