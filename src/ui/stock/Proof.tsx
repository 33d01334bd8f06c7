/** Beside a plan that is not proven: a cheaper one is looked for while it stands there, and can be stopped. */
import { useEffect, useState, type ReactNode } from 'react';
import type { SectionId } from '../../core/job/reference.ts';
import { results, useResults } from '../../store/page.ts';

export function Proof({ section, name }: { section: SectionId; name: string }): ReactNode {
  const proof = useResults((state) => state.proofs.get(section));
  const [stopped, stop] = useState(false);
  const isOpen = proof === 'open';
  useEffect(() => (isOpen && !stopped ? results.lookAtProof(section) : undefined), [isOpen, stopped, section]);
  if (proof === undefined || proof === 'done') return null;
  if (proof !== 'open')
    return (
      <p className="word-error" role="alert">
        × Whether there is a cheaper plan could not be looked into: {proof.why}
      </p>
    );
  return (
    <p role="status">
      {stopped
        ? 'Stopped: this is the best plan so far. Files look on by themselves. '
        : `Looking for a cheaper plan for ${name}… `}
      <button type="button" className="press press-quiet" onClick={() => stop(!stopped)}>
        {stopped ? 'Look on' : 'Stop'}
      </button>
    </p>
  );
}
