/** The guided page: what rule books ask, a line each, in their order. Enter leads from field to field; what is left empty is not checked. */
import { memo, useRef, type ReactNode } from 'react';
import type { RuleCheck, RuleMark } from '../../core/job/kinds/rule-check.ts';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import {
  answerState,
  articlesOf,
  withAnswer,
  withAsked,
  withNotAsked,
  withWords,
  type AnswerState,
} from '../../core/rules/filling.ts';
import { hasOldWords } from '../../core/rules/as-it-came.ts';
import { QUESTION_GROUPS, QUESTIONS, type Question } from '../../core/rules/questionnaire.ts';
import { OWN_WORDS, STANDS_ELSEWHERE } from '../../core/words/rule-book.ts';
import { FigureField } from '../fields/FigureField.tsx';
import { TextField } from '../fields/Fields.tsx';
import { useOnward } from '../kit/useOnward.ts';
import { OldWords } from './OldWords.tsx';
import type { ChangeSheet } from './SheetEditor.tsx';

interface Filling {
  readonly mark: RuleMark;
  readonly change: ChangeSheet;
  /** To the articles of the sheet. */
  readonly toArticles: () => void;
}

export function Questions({ sheet, mark, change, toArticles }: Filling & { sheet: RuleSheet }): ReactNode {
  const onward = useOnward();
  // The same object, so that a question that stays as it is is not drawn again.
  const filling = useRef<Filling>({ mark, change, toArticles });
  filling.current = { mark, change, toArticles };
  return (
    <div className="questions" {...onward}>
      <p className="small">
        Leave empty what you do not know: it stays not checked. The number of the article and your own words may follow
        later.
      </p>
      {QUESTION_GROUPS.map((group) => (
        <section key={group} aria-labelledby={`questions ${group}`}>
          <h3 id={`questions ${group}`}>{group}</h3>
          <ol className="question-list">
            {QUESTIONS.map((question, i) => {
              if (question.group !== group) return null;
              const articles = articlesOf(sheet, question);
              return (
                <Row
                  key={question.id}
                  number={i + 1}
                  question={question}
                  state={answerState(sheet, question)}
                  first={articles[0] ?? null}
                  second={articles[1] ?? null}
                  filling={filling}
                />
              );
            })}
          </ol>
        </section>
      ))}
    </div>
  );
}

const STATE_SIGNS: Readonly<Record<AnswerState, string>> = {
  answered: '✓',
  'not-asked': '–',
  open: '…',
  elsewhere: '↗',
  unanswered: '',
};

interface RowProps {
  readonly number: number;
  readonly question: Question;
  readonly state: AnswerState;
  readonly first: RuleCheck | null;
  readonly second: RuleCheck | null;
  readonly filling: { readonly current: Filling };
}

const Row = memo(function Row({ number, question, state, first, second, filling }: RowProps): ReactNode {
  const { asks, parts } = question;
  const articles = [first, second];
  const words = articles.find((each) => each !== null) ?? undefined;
  const set = (how: (sheet: RuleSheet, mark: RuleMark) => RuleSheet) =>
    filling.current.change((sheet) => how(sheet, filling.current.mark));
  const isPersons = parts[0]!.check.kind === 'ask';
  return (
    <li className={`question question-${state}`}>
      <p className="question-asks">
        <span className="question-number figure">{number}</span>
        <span>{asks}</span>
        <span className="question-sign" aria-hidden="true">
          {STATE_SIGNS[state]}
        </span>
      </p>
      {state === 'elsewhere' && (
        <p className="small">
          {STANDS_ELSEWHERE}{' '}
          <button type="button" className="link" data-aside onClick={() => filling.current.toArticles()}>
            To the articles
          </button>
        </p>
      )}
      {state !== 'not-asked' && (
        <div className="question-fields" role="group" aria-label={asks}>
          {parts.map((part, i) => {
            const check = articles[i] ?? null;
            if (part.figures.length === 0) {
              return (
                <label key={part.words} className="question-tick">
                  <input
                    type="checkbox"
                    checked={check !== null}
                    onChange={({ target: { checked } }) =>
                      set((sheet, mark) => withAsked(sheet, { question, part: i, isAsked: checked, mark }))
                    }
                  />
                  {part.words}
                </label>
              );
            }
            return part.figures.map(({ name, words: label }) => (
              <div key={`${i} ${name}`} className={name === 'sizes' ? 'question-wide' : undefined}>
                <FigureField
                  label={label}
                  check={part.check}
                  name={name}
                  value={check?.[name] ?? null}
                  commit={(value) => set((sheet, mark) => withAnswer(sheet, { question, part: i, name, value, mark }))}
                />
              </div>
            ));
          })}
          <div className="question-words">
            <TextField
              label="Article"
              value={words?.article ?? ''}
              mayBeEmpty
              commit={(article) => set((sheet, mark) => withWords(sheet, { question, words: { article }, mark }))}
            />
            <TextField
              label={OWN_WORDS}
              value={words?.text ?? (isPersons ? parts[0]!.check.text : '')}
              mayBeEmpty
              commit={(text) => set((sheet, mark) => withWords(sheet, { question, words: { text }, mark }))}
            />
            {words !== undefined && hasOldWords(words) && (
              <OldWords clear={() => set((sheet, mark) => withWords(sheet, { question, words: { text: '' }, mark }))} />
            )}
          </div>
        </div>
      )}
      <label className="question-tick question-not">
        <input
          type="checkbox"
          data-aside
          checked={state === 'not-asked'}
          onChange={({ target: { checked } }) => set((sheet) => withNotAsked(sheet, question, checked))}
        />
        the book does not ask this
      </label>
    </li>
  );
});
