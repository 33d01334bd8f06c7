/** In place of a rehearsal that is not there yet: that an order is looked for, and how far that is; or why none could be. */
import type { ReactNode } from 'react';
import type { TubeRef } from '../../core/job/reference.ts';
import { rehearsals } from '../../core/stages/rehearsals.ts';
import { useDocument, useResults } from '../../store/page.ts';
import { notRehearsedInWords } from './not-rehearsed.ts';

export function NotRehearsed({ id }: { readonly id: TubeRef }): ReactNode {
  const done = useResults(({ rehearsals: made, unrehearsed }) => made.size + unrehearsed.size);
  const of = useDocument(({ derived }) => rehearsals.items(derived).length);
  const why = useResults((state) => state.unrehearsed.get(id));
  if (why !== undefined) {
    return (
      <p className="small" role="alert">
        {notRehearsedInWords(why)}
      </p>
    );
  }
  return (
    <p className="small" role="status">
      Looking for an order of bending in which nothing is touched
      <span aria-hidden="true">
        {' '}
        ({done} of {of} done)
      </span>
    </p>
  );
}
