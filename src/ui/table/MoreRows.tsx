/** How many rows of a long list lie below its box: a scroll bar is not seen on every machine. */
import { useEffect, useState, type ReactNode, type RefObject } from 'react';

/** Nothing where the list is not longer than its box. At its end it says so, and keeps its place. */
export function MoreRows({ body, count }: { body: RefObject<HTMLElement | null>; count: number }): ReactNode {
  const [below, setBelow] = useState<number | null>(null);
  useEffect(() => {
    const box = body.current?.closest<HTMLElement>('.table-scroll');
    if (!box) return;
    const look = (): void => {
      // The box that is taken away is seen to shrink before this effect is taken back.
      if (body.current === null) return;
      const { scrollHeight, clientHeight, scrollTop } = box;
      const row = body.current.offsetHeight / Math.max(count, 1);
      const isLonger = scrollHeight > clientHeight + 1;
      setBelow(isLonger ? Math.max(0, Math.round((scrollHeight - clientHeight - scrollTop) / row)) : null);
    };
    const sizes = new ResizeObserver(look);
    sizes.observe(box);
    box.addEventListener('scroll', look, { passive: true });
    return () => {
      sizes.disconnect();
      box.removeEventListener('scroll', look);
    };
  }, [body, count]);
  if (below === null) return null;
  return (
    <p className="more-rows small" aria-hidden="true">
      {below === 0 ? `the end of ${count} rows` : `↓ ${below} more ${below === 1 ? 'row' : 'rows'} below: scroll`}
    </p>
  );
}
