/** Why what was asked for was not done, beside where it was asked; nothing where it was. */
import type { ReactNode } from 'react';

export const Refused = ({ why }: { why: string }): ReactNode =>
  why !== '' && (
    <p className="entry-note entry-note-refused" role="alert">
      <span aria-hidden="true">▲ </span>
      {why}
    </p>
  );
