/** Before a run: in which order the bends are made, and how the marks are taken. */
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { beginRun } from '../../core/edit/bent.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import { drawnTube } from '../../core/shop/drawn.ts';
import { tapeSheet } from '../../core/shop/tape.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { workspace } from '../../store/workspace.ts';
import { Picks } from '../shop/Picks.tsx';
import { TapePicks, useTape } from '../shop/TapeParts.tsx';
import { bendsInWords, orderInWords, sameOrder } from './run-words.ts';
import { useProposal } from './useProposal.ts';

export function RunStart({ tube }: { tube: SolvedTube }): ReactNode {
  const tape = useTape(tube);
  const [picked, pick] = useState<'plain' | 'proposed' | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);

  const plain: readonly BendStep[] = (tapeSheet(tube, tape.setting)?.steps ?? []).map(({ bend, front }) => ({
    bend,
    front,
  }));
  const proposal = useProposal(tube, plain);
  const proposed = proposal.order;
  const choice = picked ?? (proposed === null ? 'plain' : 'proposed');
  const order = choice === 'proposed' && proposed !== null ? proposed : plain;
  return (
    <main className="run-step">
      <h3 ref={heading} tabIndex={-1} className="run-title">
        {bendsInWords(tube.bends.length)} to make
      </h3>
      {proposed !== null && !sameOrder(plain, proposed) && (
        <Picks<'plain' | 'proposed'>
          legend="Order of bending"
          value={choice}
          choices={[
            { value: 'proposed', label: 'Proposed' },
            { value: 'plain', label: 'As the marks come' },
          ]}
          onPick={pick}
        />
      )}
      <p className="run-order">{orderInWords(order)}</p>
      {proposal.words !== '' && <p className={proposal.barred ? 'notice-warning' : 'small'}>{proposal.words}</p>}
      <TapePicks tube={tube} tape={tape} />
      <button
        type="button"
        className="press press-live run-key"
        onClick={() =>
          workspace
            .getState()
            .edit(`Begin to bend ${tube.name}`, (job) => beginRun(job, tube.id, order, drawnTube(tube)))
        }
      >
        Begin
      </button>
      <p className="caution">
        Rule book, inspector and licensed practice decide. Strip zinc and paint before welding. A long tube whips when
        it is bent.
      </p>
    </main>
  );
}
