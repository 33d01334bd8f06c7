/** How many rows of a long list lie below its box: a scroll bar is not seen on every machine. */
import { useEffect, useState, type ReactNode, type RefObject } from 'react';

/** How many of these rows, which stand one under the other, have their middle below that height of the page; log n, since it is asked as one scrolls. */
function rowsBelow(rows: readonly Element[], bottom: number): number {
  let [above, below] = [0, rows.length];
  while (above < below) {
    const middle = Math.floor((above + below) / 2);
    const box = rows[middle]!.getBoundingClientRect();
    if (box.top + box.height / 2 < bottom) above = middle + 1;
    else below = middle;
  }
  return rows.length - above;
}

/** `list`: the box that scrolls, with the tables in it. Nothing where they are not longer than the box. At its end it says so, and keeps its place. */
export function MoreRows({ list, count }: { list: RefObject<HTMLElement | null>; count: number }): ReactNode {
  const [below, setBelow] = useState<number | null>(null);
  useEffect(() => {
    const box = list.current;
    if (box === null) return;
    const look = (): void => {
      // The box that is taken away is seen to shrink before this effect is taken back.
      if (list.current === null) return;
      const isLonger = box.scrollHeight > box.clientHeight + 1;
      setBelow(
        isLonger ? rowsBelow([...box.querySelectorAll('tbody > tr')], box.getBoundingClientRect().bottom) : null,
      );
    };
    const sizes = new ResizeObserver(look);
    sizes.observe(box);
    box.addEventListener('scroll', look, { passive: true });
    return () => {
      sizes.disconnect();
      box.removeEventListener('scroll', look);
    };
  }, [list, count]);
  if (below === null) return null;
  return (
    <p className="more-rows small" aria-hidden="true">
      {below === 0 ? `the end of ${count} rows` : `↓ ${below} more ${below === 1 ? 'row' : 'rows'} below: scroll`}
    </p>
  );
}
