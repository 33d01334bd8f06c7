/** Before a run: in which order the bends are made, and how the marks are taken. */
import { STRIP, TUBE_WHIPS, WHO_DECIDES } from '../../core/words/cautions.ts';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { beginRun } from '../../core/edit/bent.ts';
import type { BendStep } from '../../core/job/kinds/bent.ts';
import { drawnTube } from '../../core/run/drawn.ts';
import { blankToCut } from '../../core/solve/amount.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import type { Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { jobDocument } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { Picks } from '../kit/Picks.tsx';
import { KeepOrder } from '../bending/KeptOrder.tsx';
import { TapePicks } from '../bending/TapePicks.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { orderInWords } from '../../core/words/rehearsal.ts';
import { capital } from '../../core/words/lists.ts';
import { bendsInWords } from '../../core/words/run.ts';
import { useProposal } from './useProposal.ts';

export function RunStart({ tube }: { tube: SolvedTube }): ReactNode {
  const feed = useFeed(tube);
  const [picked, pick] = useState<Choice['value'] | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);

  const proposal = useProposal(tube, feed.plain);
  const choices = choicesOf(feed, proposal.order);
  // What the marks and sheets go by already, unless it is known to run into something: another order moves every mark.
  const atFirst = choices.find((choice) =>
    proposal.better && feed.orderFrom !== 'tube' ? choice.value === 'proposed' : sameOrder(choice.order, feed.order),
  );
  const { value, order } = choices.find((choice) => choice.value === picked) ?? atFirst ?? choices[0]!;
  return (
    <main className="run-step">
      <h3 ref={heading} tabIndex={-1} className="run-title">
        {bendsInWords(tube.bends.length)} to make
      </h3>
      {choices.length > 1 && (
        <Picks<Choice['value']> legend="Order of bending" value={value} choices={choices} onPick={pick} />
      )}
      <p className="run-order">{capital(orderInWords(order))}</p>
      {proposal.words !== '' && <p className={proposal.barred ? 'notice-warning' : 'small'}>{proposal.words}</p>}
      <p>
        To cut in this order: <Length mm={blankToCut(tube, order).blank} withUnit />
      </p>
      {!sameOrder(order, feed.order) && (
        <>
          <p className="notice-warning">
            <span aria-hidden="true">▲ </span>
            Another order than the marks and sheets of this tube go by now: once it is kept or begun, every mark is
            taken anew. What is marked or printed already no longer holds.
          </p>
          <KeepOrder tube={tube} order={order} />
        </>
      )}
      <TapePicks tube={tube} />
      <button
        type="button"
        className="press press-live run-key"
        onClick={() =>
          jobDocument
            .getState()
            .edit(`Begin to bend ${tube.name}`, (job) => beginRun(job, tube.id, order, drawnTube(tube)))
        }
      >
        Begin
      </button>
      <p className="caution">{`${WHO_DECIDES} ${STRIP} ${TUBE_WHIPS}`}</p>
    </main>
  );
}

interface Choice {
  readonly value: 'proposed' | 'plain' | 'kept';
  readonly label: string;
  readonly order: readonly BendStep[];
}

/** The proposed order where one is known, the one in which the marks come, and the one kept for the tube: each order once. */
function choicesOf({ plain, order, orderFrom }: Feed, proposed: readonly BendStep[] | null): readonly Choice[] {
  const all: readonly Choice[] = [
    ...(proposed === null ? [] : [{ value: 'proposed', label: 'Proposed', order: proposed } as const]),
    { value: 'plain', label: 'As the marks come', order: plain },
    ...(orderFrom === 'tube' ? [{ value: 'kept', label: 'Kept for this tube', order } as const] : []),
  ];
  return all.filter(({ order: each }, i) => !all.slice(0, i).some((earlier) => sameOrder(earlier.order, each)));
}
