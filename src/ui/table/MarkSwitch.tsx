/** Turns the boxes of a list on, by which rows are marked with a finger, and says how many are. */
import type { ReactNode } from 'react';
import type { Marks } from './marks.ts';

export function MarkSwitch({ marks, noun }: { marks: Marks; noun: string }): ReactNode {
  const count = marks.marked.size;
  return (
    <div className="switch mark-switch">
      <button
        type="button"
        className="press press-small"
        aria-pressed={marks.on}
        aria-keyshortcuts="Space"
        onClick={() => marks.turn(!marks.on)}
      >
        Mark several
      </button>
      <span className="small" role="status">
        {marks.on && (count === 0 ? `No ${noun} is marked: press its box, or Space in its row.` : `${count} marked`)}
      </span>
    </div>
  );
}
