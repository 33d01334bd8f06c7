/** What can be done with all rows that are marked: what stands in it, and to delete them. One undo step each. */
import type { ReactNode } from 'react';
import type { Edited } from '../../core/edit/records.ts';
import type { Job } from '../../core/job/types.ts';
import { Command } from '../kit/Command.tsx';
import type { Marks } from './marks.ts';

export default function Marked(props: {
  marks: Marks;
  /** "points": more than one of them; of one the s goes. */
  noun: string;
  remove?: (job: Job, ids: readonly string[]) => Edited;
  /** In place of the button that deletes them, where there is more to ask. */
  removal?: ReactNode;
  children?: ReactNode;
}): ReactNode {
  const { marks, noun, remove } = props;
  const ids = [...marks.marked];
  const these = ids.length === 1 ? `1 marked ${noun.slice(0, -1)}` : `${ids.length} marked ${noun}`;
  return (
    <section className="card" aria-label={`The ${these}`}>
      {props.children}
      <div className="row">
        <button type="button" className="press press-small" onClick={marks.clear}>
          Mark none
        </button>
        {props.removal}
        {remove && (
          <Command quiet destroys="marked" step={`Delete ${these}`} run={(job) => remove(job, ids)}>
            Delete the {these}
          </Command>
        )}
      </div>
    </section>
  );
}
