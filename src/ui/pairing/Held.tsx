/** What all have made together cannot be drawn: why, what is shown in its place, and what can be done. */
import type { ReactNode } from 'react';
import type { Fault } from '../../core/job/fault.ts';
import { undoLabel } from '../../core/session/history.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { FaultList } from '../kit/FaultList.tsx';

export function Held({ faults }: { readonly faults: readonly Fault[] }): ReactNode {
  const label = useDocument((state) => undoLabel(state.committed.history));
  return (
    <div className="pairing-held">
      <p>What you see is the job as it last could be drawn. Nothing that anyone did is lost.</p>
      <FaultList faults={faults} />
      <p>Take back your own last step, or ask at the other device for theirs.</p>
      {label !== null && (
        <p>
          <button type="button" className="press" onClick={() => jobDocument.getState().undo()}>
            Take back: {label}
          </button>
        </p>
      )}
    </div>
  );
}
