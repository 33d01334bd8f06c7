/** What one edit would mend an article that is not met: tried once the article is chosen, since each try is a frame of its own. */
import { useEffect, useState, type ReactNode } from 'react';
import { mendedVerdict, mendsOfVerdict } from '../../core/mend/mend-rule.ts';
import type { Mend } from '../../core/mend/mends.ts';
import type { Derived } from '../../core/derive.ts';
import type { Verdict } from '../../core/rules/types.ts';
import { mendInWords } from '../../core/words/mends.ts';
import { editor, jobDocument, useDocument } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { keep, OPENS_FRAME_AT } from '../kit/kept.ts';

/** Holes and sizes are typed there. */
function toFeet(): void {
  keep(OPENS_FRAME_AT, 'feet');
  editor.getState().setStation('frame');
}

export function RuleMends({ verdict, derived }: { verdict: Verdict; derived: Derived }): ReactNode {
  const isStill = useDocument((state) => state.gesture.state === 'idle');
  const [found, find] = useState<{ readonly of: Derived; readonly mends: readonly Mend[] } | null>(null);
  useEffect(() => {
    if (!isStill) return;
    // What was chosen is drawn first.
    const later = setTimeout(() => {
      const { job } = jobDocument.getState();
      find({ of: derived, mends: mendsOfVerdict(job, verdict, derived) });
    });
    return () => clearTimeout(later);
  }, [verdict, derived, isStill]);
  if (found?.of !== derived) return null;
  if (found.mends.length === 0) {
    return verdict.check.kind === 'plate' && derived.job.feet.length > 0 ? (
      <button type="button" className="press press-quiet" onClick={toFeet}>
        Feet, in Frame
      </button>
    ) : (
      <p className="small">No one edit is known that mends it.</p>
    );
  }
  return (
    <div className="row">
      {found.mends.map((mend) => {
        const words = mendInWords(mend, derived);
        return (
          <Command key={words} step={words} run={(job) => mendedVerdict(job, mend, verdict, derived)}>
            {words}
          </Command>
        );
      })}
    </div>
  );
}
