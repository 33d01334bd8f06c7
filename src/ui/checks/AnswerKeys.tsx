/** What a person said of an article, be it the inspector or whoever asked him: met or not, by whom, with what note, and when. */
import type { ReactNode } from 'react';
import { setAnswer } from '../../core/edit/rules.ts';
import type { RuleAnswer } from '../../core/job/kinds/rule-check.ts';
import type { Verdict } from '../../core/rules/types.ts';
import { inspectorsWord, VERDICT_WORDS } from '../../core/words/rules.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { jobDocument } from '../../store/page.ts';
import { DayField, TextField } from '../fields/Fields.tsx';
import { keep, readKept } from '../kit/kept.ts';
import { Picks } from '../kit/Picks.tsx';

const ANSWERED = 'Answer to an article';
/** Who answered last on this machine: the next answer is his, until somebody types another name. */
const BY = 'answers.by';

const lastBy = (): string => {
  const by = readKept(BY);
  return typeof by === 'string' ? by.slice(0, 200) : '';
};

const CHOICES = [
  { value: 'met', label: VERDICT_WORDS.met },
  { value: 'not-met', label: VERDICT_WORDS['not-met'] },
  { value: 'none', label: 'no answer' },
] as const;

export function AnswerKeys({ verdict }: { verdict: Verdict }): ReactNode {
  const { check } = verdict;
  const { answer } = check;
  if (check.kind === 'ask') return <Answer verdict={verdict} legend="Is it so?" />;
  return (
    <details className="verdict-more">
      <summary>{answer === undefined ? 'The inspector’s word' : inspectorsWord(answer)}</summary>
      <Answer verdict={verdict} legend="What the inspector says of it" />
    </details>
  );
}

function Answer({ verdict, legend }: { verdict: Verdict; legend: string }): ReactNode {
  const { sheet, index, check } = verdict;
  const { answer } = check;
  const set = (fields: Partial<RuleAnswer>) =>
    jobDocument.getState().edit(ANSWERED, (job) => setAnswer(job, sheet, index, { ...answer!, ...fields }));
  const says = (value: (typeof CHOICES)[number]['value']): void => {
    jobDocument
      .getState()
      .edit(ANSWERED, (job) =>
        setAnswer(
          job,
          sheet,
          index,
          value === 'none' ? undefined : { by: lastBy(), note: '', on: dayOf(new Date()), ...answer, says: value },
        ),
      );
  };
  return (
    <div className="verdict-answer">
      <Picks legend={legend} value={answer?.says ?? 'none'} choices={CHOICES} onPick={says} />
      {answer !== undefined && (
        <div className="fields verdict-answer-fields">
          <TextField
            label="By"
            value={answer.by}
            mayBeEmpty
            commit={(by) => {
              keep(BY, by);
              return set({ by });
            }}
          />
          <DayField label="Day" value={answer.on} commit={(on) => set({ on })} />
          <TextField label="Note" value={answer.note} mayBeEmpty commit={(note) => set({ note })} />
        </div>
      )}
    </div>
  );
}
