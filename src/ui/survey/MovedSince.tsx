/** Remembers the frame as it was when the Survey was opened, before what tells the difference is fetched: an edit may come first. */
import { lazy, Suspense, useState, type ReactNode } from 'react';
import { jobDocument } from '../../store/page.ts';

const Moved = lazy(() => import('./Moved.tsx'));

export function MovedSince(): ReactNode {
  const [before, setBefore] = useState(() => jobDocument.getState().committed.derived);
  return (
    <Suspense fallback={null}>
      <Moved before={before} onSeen={setBefore} />
    </Suspense>
  );
}
