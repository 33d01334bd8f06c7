/** The rule book: every article of the job's sheets held against the frame; what is not met first, what nobody has looked at next. */
import {
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
  type Dispatch,
  type ReactNode,
  type SetStateAction,
} from 'react';
import type { Derived } from '../../core/derive.ts';
import { remembered } from '../../core/remembered.ts';
import { capital } from '../../core/words/lists.ts';
import { judge } from '../../core/rules/judge.ts';
import { strictest, type Alike } from '../../core/rules/strictest.ts';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import type { Verdict } from '../../core/rules/types.ts';
import {
  linesCounted,
  linesInWords,
  MASS_ASKED,
  NO_ARTICLES,
  sheetsInWords,
  SORT_WORDS,
  SORTS,
  sortOf,
  tallyOf,
  unansweredInWords,
  WHAT_SHEETS_ARE_FOR,
  type Sort,
} from '../../core/words/rule-book.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import { RULES_CHANGE } from '../../core/words/rules.ts';
import { editor, useDocument, useEditor } from '../../store/page.ts';
import { MassField } from '../fields/MassField.tsx';
import { Section } from '../kit/Section.tsx';
import { FirstSheet, Sheets, type ShowSheet } from './Sheets.tsx';
import { keyOfVerdict, pointedOutBy, VerdictRow } from './VerdictRow.tsx';
import '../kit/findings.css';
import './rules.css';

/** Once a frame, whoever asks. */
const judged = remembered((derived: Derived) => {
  const verdicts = judge(derived);
  return { verdicts, alike: strictest(verdicts) };
});

/** `isBack`: from one of the sheets, which the focus was in. */
export function RuleBook({ show, isBack }: { show: ShowSheet; isBack: boolean }): ReactNode {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (isBack) heading.current?.focus();
  }, [isBack]);
  const derived = useDocument((state) => state.derived);
  const rules = useDocument((state) => state.job.rules);
  const { verdicts, alike } = judged(derived);
  useFollowing(verdicts, derived.job.lengthUnit);
  return (
    <section className="rule-book" aria-labelledby="rule-book">
      <h2 id="rule-book" ref={heading} tabIndex={-1}>
        Rule book
      </h2>
      {rules.length === 0 ? (
        <>
          <p className="empty">
            <strong>No rule sheet yet.</strong> {WHAT_SHEETS_ARE_FOR}
          </p>
          <FirstSheet show={show} />
        </>
      ) : (
        <>
          <Counts verdicts={verdicts} lines={alike.length} />
          <Unanswered sheets={rules} />
          <p className="small">
            {sheetsInWords(rules)} {RULES_CHANGE}
          </p>
          <Sheets show={show} isBack={isBack} />
          <Mass verdicts={verdicts} />
          <Groups alike={alike} derived={derived} />
        </>
      )}
    </section>
  );
}

function Counts({ verdicts, lines }: { verdicts: readonly Verdict[]; lines: number }): ReactNode {
  if (verdicts.length === 0) return <p>{NO_ARTICLES}</p>;
  const fewer = linesInWords(lines, verdicts.length);
  return (
    <>
      <p className="rule-counts" role="status">
        {tallyOf(verdicts).map(({ sort, count }) => (
          <span key={sort} className={`rule-count rule-count-${sort}`}>
            <span className="figure">{count}</span> {SORT_WORDS[sort]}
          </span>
        ))}
      </p>
      {fewer !== null && <p className="small">{fewer}</p>}
    </>
  );
}

/** What the sheets that are filled in here leave open. */
const Unanswered = ({ sheets }: { sheets: readonly RuleSheet[] }): ReactNode =>
  sheets.map((sheet) => {
    const words = unansweredInWords(sheet);
    return words === null ? null : <p key={sheet.sheet}>{words}</p>;
  });

/** Asked where an article goes by it, and there to be changed from then on. */
function Mass({ verdicts }: { verdicts: readonly Verdict[] }): ReactNode {
  const isAsked = verdicts.some(({ check }) => check.massFrom !== undefined || check.massUpTo !== undefined);
  const isSaid = useDocument((state) => state.job.carMass !== undefined);
  if (!isAsked) return null;
  return (
    <div className={isSaid ? 'rule-mass' : 'rule-mass rule-mass-asked'}>
      <p className="small">{MASS_ASKED}</p>
      <MassField />
    </div>
  );
}

/** A row in hand, and the group that it was taken up in: there it stays while it is answered, and what comes of it is seen. */
interface InHand {
  readonly key: string;
  readonly word: Sort;
  /** One has gone on from it: it stays while it is pointed out in the bay, where somebody may be mending it. */
  readonly isLeft: boolean;
}

function Groups({ alike, derived }: { alike: readonly Alike[]; derived: Derived }): ReactNode {
  const [inHand, take] = useState<InHand | null>(null);
  const pointed = useEditor((state) => state.pointedOut?.key);
  const held = inHand !== null && (!inHand.isLeft || inHand.key === pointed) ? inHand : null;
  const groupOf = ({ first }: Alike): Sort => (held?.key === keyOfVerdict(first) ? held.word : sortOf(first));
  const isMerged = alike.some(({ more }) => more.length > 0);
  return SORTS.map((word) => (
    <Group
      key={word}
      word={word}
      of={alike.filter((each) => groupOf(each) === word)}
      isMerged={isMerged}
      derived={derived}
      take={take}
    />
  ));
}

interface GroupProps {
  readonly word: Sort;
  readonly of: readonly Alike[];
  /** Articles stand under others: then lines are counted, and said to be. */
  readonly isMerged: boolean;
  readonly derived: Derived;
  readonly take: Dispatch<SetStateAction<InHand | null>>;
}

/** What is met folds: nobody comes for that. */
function Group({ word, of, isMerged, derived, take }: GroupProps): ReactNode {
  const pointed = useEditor((state) => state.pointedOut?.key);
  if (of.length === 0) return null;
  const list = (
    <ul className="findings">
      {of.map(({ first, more }) => {
        const key = keyOfVerdict(first);
        return (
          <VerdictRow
            key={key}
            verdict={first}
            more={more}
            derived={derived}
            pointed={pointed}
            onTake={() => take({ key, word, isLeft: false })}
            onLeave={() => take((before) => (before?.key === key ? { ...before, isLeft: true } : before))}
          />
        );
      })}
    </ul>
  );
  const title = capital(SORT_WORDS[word]);
  if (word === 'not-met') {
    return (
      <>
        <h3>{title}</h3>
        {list}
      </>
    );
  }
  return (
    <Section
      title={title}
      count={isMerged ? linesCounted(of.length) : of.length}
      open={word === 'not-checked'}
      onlyOpen
    >
      {list}
    </Section>
  );
}

/** What is pointed out in the bay is what the verdict says now, and goes with the list. */
function useFollowing(verdicts: readonly Verdict[], unit: LengthUnit): void {
  const key = useEditor((state) => state.pointedOut?.key);
  const verdict = key === undefined ? undefined : verdicts.find((each) => keyOfVerdict(each) === key);
  useLayoutEffect(() => {
    if (key !== undefined) editor.getState().pointOut(verdict === undefined ? null : pointedOutBy(verdict, unit));
  }, [key, verdict, unit]);
  useLayoutEffect(() => () => editor.getState().pointOut(null), []);
}
