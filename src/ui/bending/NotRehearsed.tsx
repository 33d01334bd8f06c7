/** In place of a rehearsal that is not there yet: that an order is looked for, and how far that is; or why none could be. */
import type { ReactNode } from 'react';
import type { TubeRef } from '../../core/job/reference.ts';
import { rehearsals } from '../../core/stages/rehearsals.ts';
import { useResults } from '../../store/page.ts';

export function NotRehearsed({ id }: { readonly id: TubeRef }): ReactNode {
  const done = useResults(({ progress }) => progress.done);
  const of = useResults(({ progress }) => progress.of);
  const failed = useResults(({ progress }) =>
    progress.failed.find((each) => each.stage === rehearsals.name && each.id === id),
  );
  if (failed !== undefined) {
    return (
      <p className="small" role="alert">
        This tube could not be rehearsed, which is a fault of the program: {failed.why}
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
