/** Before a run: in which order the bends are made, and how the marks are taken. */
import { STRIP, TUBE_WHIPS, WHO_DECIDES } from '../../core/words/cautions.ts';
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { beforeMaking } from '../../core/checks/before-making.ts';
import { grouped } from '../../core/checks/grouped.ts';
import { beginRun } from '../../core/edit/bent.ts';
import type { BendStep, BentTube } from '../../core/job/kinds/bent.ts';
import { answerRadius, OPENS } from '../../core/mend/answer-radius.ts';
import { drawnTube } from '../../core/run/drawn.ts';
import { radiusAnswers } from '../../core/run/radius-answers.ts';
import { blankToCut } from '../../core/solve/amount.ts';
import { sameOrder } from '../../core/solve/bend-order.ts';
import type { Feed } from '../../core/solve/feed.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { editor, jobDocument, useDocument, useResults } from '../../store/page.ts';
import { Length } from '../fields/Readings.tsx';
import { FindingsList } from '../kit/FindingsList.tsx';
import { Picks } from '../kit/Picks.tsx';
import { KeepOrder } from '../bending/KeptOrder.tsx';
import { TapePicks } from '../bending/TapePicks.tsx';
import { useFeed } from '../bending/useFeed.ts';
import { orderInWords } from '../../core/words/rehearsal.ts';
import { capital } from '../../core/words/lists.ts';
import { ANSWER_FIRST, NOT_ANSWERED } from '../../core/words/radius.ts';
import { bendsInWords } from '../../core/words/run.ts';
import { RadiusQuestion, useAnswered } from './RadiusQuestion.tsx';
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
  const answers = useMemo(() => radiusAnswers(tube, notBegun(tube, order), feed), [tube, order, feed]);
  const answered = useAnswered(tube);
  const isAsked = answers !== null && answered === null;
  return (
    <main className="run-step">
      <h3 ref={heading} tabIndex={-1} className="run-title">
        {bendsInWords(tube.bends.length)} to make
      </h3>
      <Found tube={tube} isAsked={answers !== null} />
      {answers !== null && (
        <RadiusQuestion tube={tube} answers={answers} answered={answered}>
          {NOT_ANSWERED}
        </RadiusQuestion>
      )}
      {choices.length > 1 && (
        <Picks<Choice['value']> legend="Order of bending" value={value} choices={choices} onPick={pick} />
      )}
      <p className="run-order">{capital(orderInWords(order))}</p>
      <p>
        Die: <strong>{tube.die!.name}</strong> · tube: <strong>{tube.section.name}</strong>
      </p>
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
        disabled={isAsked}
        onClick={() => begin(tube, order, answers !== null)}
      >
        Begin
      </button>
      {isAsked && <p className="small">{ANSWER_FIRST}</p>}
      <p className="caution">{`${WHO_DECIDES} ${STRIP} ${TUBE_WHIPS}`}</p>
    </main>
  );
}

/** What is to be known of the tube before steel is cut, with what mends it. `isAsked`: the radius is asked for below. */
function Found({ tube, isAsked }: { tube: SolvedTube; isAsked: boolean }): ReactNode {
  const derived = useDocument((state) => state.derived);
  const findings = useResults((state) => state.findings);
  const found = beforeMaking(findings, derived.job, tube).filter(({ id }) => !(isAsked && id === OPENS));
  if (found.length === 0) return null;
  return (
    <section className="run-before" aria-label="Found on this tube">
      <h4>To know before it is cut: {found.length}</h4>
      <FindingsList groups={grouped(found, derived)} onGo={() => editor.getState().setStation('checks')} />
    </section>
  );
}

const notBegun = ({ id }: SolvedTube, order: readonly BendStep[]): BentTube => ({
  tube: id,
  order,
  done: [],
  bends: [],
  checks: [],
});

/** What is kept of the die's own radius is said of the order that is begun. */
function begin(tube: SolvedTube, order: readonly BendStep[], isAsked: boolean): void {
  const { derived, edit } = jobDocument.getState();
  edit(`Begin to bend ${tube.name}`, (job) => {
    const begun = beginRun(job, tube.id, order, drawnTube(tube));
    return isAsked ? answerRadius(begun, tube.id, tube.die!.id, tube.die!.radius, derived) : begun;
  });
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
