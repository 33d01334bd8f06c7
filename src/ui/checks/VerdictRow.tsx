/** One article with what came of it, as an inspector's sheet has it: a box with its sign, the article, the shop's words, value beside limit. */
import { memo, type ReactNode } from 'react';
import { updateMember } from '../../core/edit/members.ts';
import type { Derived } from '../../core/derive.ts';
import type { RuleMark } from '../../core/job/kinds/rule-check.ts';
import type { Member } from '../../core/job/kinds/member.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Verdict, VerdictWord } from '../../core/rules/types.ts';
import type { LengthUnit } from '../../core/units/length.ts';
import {
  alsoAskedBy,
  articleInWords,
  bookInWords,
  MAY_BE_MEANT,
  SORT_WORDS,
  sortOf,
} from '../../core/words/rule-book.ts';
import { figureInWords } from '../../core/words/rule-figures.ts';
import { MARK_WORDS, verdictInWords } from '../../core/words/rules.ts';
import { editor } from '../../store/page.ts';
import type { PointedOut } from '../../store/types.ts';
import { jobEdit } from '../fields/jobEdit.ts';
import { RoleField } from '../fields/RoleField.tsx';
import { PaddingList } from './PaddingList.tsx';
import { RuleMends } from './RuleMends.tsx';
import { AnswerKeys } from './AnswerKeys.tsx';

export const keyOfVerdict = ({ sheet, index }: Pick<Verdict, 'sheet' | 'index'>): string => `${index} ${sheet}`;

export const pointedOutBy = (verdict: Verdict, unit: LengthUnit): PointedOut => {
  const { at, to, value, concerns } = verdict;
  return {
    key: keyOfVerdict(verdict),
    tubes: concerns,
    line: at === null || to === null ? null : [at, to],
    text: value === null ? '' : figureInWords(value, verdict, unit),
    isAmiss: verdict.verdict === 'not-met',
  };
};

interface Props {
  readonly verdict: Verdict;
  /** Of other sheets, that ask no more. */
  readonly more: readonly Verdict[];
  readonly derived: Derived;
  /** What is pointed out. */
  readonly pointed: string | undefined;
  /** Somebody begins to do something in it, or has gone on from it. */
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

export function VerdictRow({ verdict, more, derived, pointed, onTake, onLeave }: Props): ReactNode {
  return (
    <li
      onPointerDown={onTake}
      onFocus={onTake}
      onBlur={({ relatedTarget, currentTarget }) => {
        if (!currentTarget.contains(relatedTarget)) onLeave();
      }}
    >
      <Line
        verdict={verdict}
        {...said(verdict, derived)}
        chosen={pointed === keyOfVerdict(verdict)}
        unit={derived.job.lengthUnit}
      />
      <div className="verdict-below">
        <Roles verdict={verdict} derived={derived} />
        {verdict.verdict === 'not-met' && pointed === keyOfVerdict(verdict) && (
          <RuleMends verdict={verdict} derived={derived} />
        )}
        {verdict.because.id === 'to-pad' && <PaddingList stretches={verdict.because.stretches} derived={derived} />}
        <AnswerKeys verdict={verdict} />
        {more.length > 0 && (
          <details className="verdict-more">
            <summary>{alsoAskedBy(more.map((each) => sheetOf(each, derived)))}</summary>
            <ul className="findings">
              {more.map((each) => (
                <li key={keyOfVerdict(each)}>
                  <Line
                    verdict={each}
                    {...said(each, derived)}
                    chosen={pointed === keyOfVerdict(each)}
                    unit={derived.job.lengthUnit}
                  />
                </li>
              ))}
            </ul>
          </details>
        )}
      </div>
    </li>
  );
}

/** What of it is words: those of one line are the same text as long as nothing about it changes. */
const said = (verdict: Verdict, derived: Derived) => {
  const { check } = verdict;
  const sheet = sheetOf(verdict, derived);
  return {
    book: bookInWords(sheet, derived.job.rules),
    asked: articleInWords(check, sheet, derived.job.lengthUnit),
    came: verdictInWords(verdict, derived),
  };
};

const sheetOf = ({ sheet }: Verdict, { job }: Derived) => job.rules.find((each) => each.sheet === sheet)!;

const SIGNS: Readonly<Record<VerdictWord, string>> = { 'not-met': '×', 'not-checked': '?', met: '✓' };

interface LineProps {
  readonly verdict: Verdict;
  readonly book: string;
  readonly asked: string;
  readonly came: string;
  readonly chosen: boolean;
  readonly unit: LengthUnit;
}

/** An edit leaves most verdicts as they were: those are not drawn again. */
const Line = memo(function Line({ verdict, book, asked, came, chosen, unit }: LineProps): ReactNode {
  const { check, verdict: word } = verdict;
  const inner = (
    <>
      <span className="verdict-box" aria-hidden="true">
        {SIGNS[word]}
      </span>
      <span className="verdict-said">
        <span className="finding-head">
          {check.article.trim() !== '' && <span className="verdict-article">{shownName(check.article)}</span>}
          {book !== '' && <span className="small">{book}</span>}
          <Mark mark={check.mark} />
        </span>
        <span className="verdict-asked">{asked}</span>
        <span className="verdict-came">
          <span className="verdict-word">{SORT_WORDS[sortOf(verdict)]}:</span> {came}
        </span>
      </span>
    </>
  );
  const classes = `verdict-line verdict-line-${word}${chosen ? ' chosen' : ''}`;
  if (!hasPlace(verdict)) return <div className={classes}>{inner}</div>;
  return (
    <button type="button" className={classes} aria-current={chosen || undefined} onClick={() => goTo(verdict, unit)}>
      {inner}
    </button>
  );
});

/** What the shop typed itself needs no word; what is from memory has to be seen. */
const Mark = ({ mark }: { mark: RuleMark }): ReactNode =>
  mark === 'own' ? null : <span className={mark === 'memory' ? 'verdict-memory' : 'small'}>{MARK_WORDS[mark]}</span>;

const hasPlace = ({ at, concerns, envelope }: Verdict): boolean =>
  at !== null || concerns.length > 0 || envelope !== null;

function goTo(verdict: Verdict, unit: LengthUnit): void {
  const { at, concerns, envelope } = verdict;
  const [tube] = concerns;
  const selection =
    tube === undefined
      ? envelope === null
        ? null
        : ({ kind: 'envelope', id: envelope } as const)
      : ({ kind: 'tube', id: tube } as const);
  const to = editor.getState();
  if (at === null) to.select(selection);
  else to.goTo(at, selection ?? undefined);
  to.pointOut(pointedOutBy(verdict, unit));
}

/** More bars without a role are named in the line, and have theirs once these do. */
const MOST_ROLES_ASKED = 6;

/** Where nothing can be said because a bar has no role, or one that its place belies: what it is. */
function Roles({ verdict, derived }: Pick<Props, 'verdict' | 'derived'>): ReactNode {
  const members = withoutRole(verdict, derived).slice(0, MOST_ROLES_ASKED);
  if (members.length === 0) return null;
  return (
    <>
      {verdict.check.kind === 'present' && verdict.because.id === 'measured' && <p>{MAY_BE_MEANT}</p>}
      <div className="fields fields-two verdict-roles">
        {members.map(({ id, name, role }) => (
          <RoleField
            key={id}
            label={`Role of ${shownName(name)}`}
            role={role}
            commit={jobEdit<string>(`Role of ${name}`, (job, value) => updateMember(job, id, { role: value })).commit}
          />
        ))}
      </div>
    </>
  );
}

function withoutRole({ because, concerns, check, verdict, bound }: Verdict, derived: Derived): readonly Member[] {
  if (because.id === 'unnamed' || because.id === 'misnamed') {
    const members = concerns.flatMap((id) => derived.byId.get(id)?.member ?? []);
    return members.filter((member, i) => members.indexOf(member) === i);
  }
  // Whoever counts bars counts those that are named.
  const isShort = check.kind === 'present' && check.roles.length > 0 && verdict === 'not-met' && bound === 'least';
  return isShort ? derived.job.members.filter(({ role }) => role.trim() === '') : [];
}
