/** The log of pulls of one die and size of tube: the law they give, its chart, the list, and the next one to log. */
import { shownName } from '../../core/job/shown.ts';
import { useId, useMemo, useState, type ReactNode } from 'react';
import { FIRST_BENDER } from '../../core/job/kinds/bender.ts';
import type { Pull } from '../../core/job/kinds/pull.ts';
import type { SolvedTube } from '../../core/solve/types.ts';
import { elasticRecovery } from '../../core/springback/elastic.ts';
import { pullLaw } from '../../core/springback/pull-law.ts';
import { steelOf } from '../../core/springback/steels.ts';
import { useDocument } from '../../store/page.ts';
import { SelectField } from '../fields/Fields.tsx';
import { AddPull, NO_PULL, type PullDraft } from './AddPull.tsx';
import { disagreements, lawInWords } from '../../core/words/pull-log.ts';
import { pairsOf, type Pair } from './pairs.ts';
import { PullChart } from './PullChart.tsx';
import { PullTable, type LoggedPull } from './PullTable.tsx';

/** What is typed of one more pull, by die and section; held by the Shop, since its parts come and go. */
export interface PullDrafts {
  readonly drafts: Readonly<Record<string, PullDraft>>;
  readonly type: (pair: string, draft: PullDraft) => void;
}

export function usePullDrafts(): PullDrafts {
  // In another job the same ids are other dies.
  const opened = useDocument((state) => state.opened);
  const [held, hold] = useState<{ readonly opened: number; readonly drafts: PullDrafts['drafts'] }>({
    opened,
    drafts: {},
  });
  const drafts = held.opened === opened ? held.drafts : {};
  return { drafts, type: (pair, draft) => hold({ opened, drafts: { ...drafts, [pair]: draft } }) };
}

/** Of the tube's die and section; where it has none, or no tube is chosen, of those that the person picks. */
export function PullLog({ tube, typed }: { tube: SolvedTube | undefined; typed: PullDrafts }): ReactNode {
  const job = useDocument((state) => state.job);
  const [picked, pick] = useState('');
  const pairs = pairsOf(job);
  const bent = tube?.die != null ? { die: tube.die, section: tube.section } : undefined;
  const pair = bent ?? pairs.find((one) => keyOf(one) === picked) ?? pairs[0];
  return (
    <section className="pull-part" aria-label="Pull log">
      {pair === undefined ? (
        <p className="empty">Pulls are logged for a die and a size of tube: add both in Frame, under Tube & dies.</p>
      ) : (
        <>
          {bent === undefined && (
            <SelectField
              label="Die and tube"
              value={keyOf(pair)}
              choices={pairs.map((one) => ({ value: keyOf(one), label: nameOf(one) }))}
              onChoose={pick}
            />
          )}
          <LogOf key={keyOf(pair)} pair={pair} batch={bent && tube?.member.batch} typed={typed} />
        </>
      )}
    </section>
  );
}

/** Two mixed-up lists of pulls contradict each other pair by pair: the first few show what is wrong. */
const SAID = 3;

const keyOf = ({ die, section }: Pair): string => JSON.stringify([die.id, section.id]);
const nameOf = ({ die, section }: Pair): string => `${shownName(die.name)}, tube ${shownName(section.name)}`;

function LogOf({ pair, batch, typed }: { pair: Pair; batch: string | undefined; typed: PullDrafts }): ReactNode {
  const pulls = useDocument((state) => state.job.pulls);
  const title = useId();
  const { die, section } = pair;
  const law = pullLaw(pulls, die, section, batch);
  const steel = steelOf(section.material);
  const spring = steel === undefined ? null : elasticRecovery(section, die.centrelineRadius, steel);
  const logged = useMemo(() => logOf(pulls, { die, section }), [pulls, die, section]);
  const own = logged.map(({ pull }) => pull);
  const wrong = disagreements(own);
  return (
    <section className="pull-log" aria-labelledby={title}>
      <h3 id={title}>{nameOf(pair)}</h3>
      <p className="pull-law" role="status">
        {lawInWords(law, batch, (die.bender ?? FIRST_BENDER).pullStep)}
      </p>
      {logged.length > 0 && (
        <>
          <PullChart pulls={own} law={law} spring={spring} />
          <PullTable logged={logged} doubted={wrong.flatMap((one) => one.pulls).join()} caption={nameOf(pair)} />
          {wrong.slice(0, SAID).map(({ words }) => (
            <p key={words} className="notice-warning">
              <span aria-hidden="true">▲ </span>
              {words}
            </p>
          ))}
          {wrong.length > SAID && (
            <p className="notice-warning">
              <span aria-hidden="true">▲ </span>
              And {wrong.length - SAID} more like these: every pull in doubt has its sign in the list.
            </p>
          )}
        </>
      )}
      <AddPull
        pair={pair}
        batch={batch ?? ''}
        draft={typed.drafts[keyOf(pair)] ?? NO_PULL}
        type={(draft) => typed.type(keyOf(pair), draft)}
      />
    </section>
  );
}

/** The pair's pulls, each with its index in the whole log. */
const logOf = (pulls: readonly Pull[], { die, section }: Pair): readonly LoggedPull[] =>
  pulls.flatMap((pull, index) => (pull.die === die.id && pull.section === section.id ? [{ pull, index }] : []));
