/** A rule sheet of the job, to be filled in: its head, the guided page, and its articles one by one. Every answer is an edit, so that one may leave at any time. */
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { changeSheet, updateSheet } from '../../core/edit/rules.ts';
import type { RuleMark } from '../../core/job/kinds/rule-check.ts';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import { progressOf } from '../../core/rules/filling.ts';
import { progressInWords, sheetInWords } from '../../core/words/rule-book.ts';
import { MARK_WORDS, RULES_CHANGE } from '../../core/words/rules.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { DayField, SelectField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';
import { Tabs } from '../kit/Tabs.tsx';
import { Articles } from './Articles.tsx';
import { Questions } from './Questions.tsx';
import './sheets.css';

export interface OpenSheet {
  readonly sheet: string;
  readonly page: 'questions' | 'articles';
}

/** What an edit of this sheet is made by. */
export type ChangeSheet = (
  change: (sheet: RuleSheet) => RuleSheet,
) => ReturnType<ReturnType<typeof jobDocument.getState>['edit']>;

export function SheetEditor(props: { open: OpenSheet; show: (open: OpenSheet | null) => void }): ReactNode {
  const { open, show } = props;
  const sheet = useDocument((state) => state.job.rules.find((each) => each.sheet === open.sheet));
  const [mark, setMark] = useState<RuleMark>('own');
  const head = useRef<HTMLElement>(null);
  useEffect(() => {
    head.current?.closest('.panel')?.scrollTo(0, 0);
    // A new one is named first.
    if (!head.current?.parentElement?.contains(document.activeElement)) head.current?.focus();
  }, []);
  // Taken out by undo, say.
  useEffect(() => {
    if (sheet === undefined) show(null);
  }, [sheet, show]);
  if (sheet === undefined) return null;
  const id = sheet.sheet;
  const step = `Rule sheet ${sheetInWords(sheet)}`;
  const change: ChangeSheet = (how) => jobDocument.getState().edit(step, (job) => changeSheet(job, id, how));
  const set = (field: 'body' | 'edition' | 'on') =>
    jobEdit<string>(step, (job, value) => updateSheet(job, id, { [field]: value })).commit;
  return (
    <div className="station sheet-editor">
      <header ref={head} tabIndex={-1} className="sheet-head">
        <button type="button" className="press press-quiet" onClick={() => show(null)}>
          <span aria-hidden="true">← </span>Back to Checks
        </button>
        <h2>{sheetInWords(sheet)}</h2>
        <p className="small">{RULES_CHANGE}</p>
      </header>
      <div className="fields fields-two">
        <TextField
          label="Whose rules"
          value={sheet.body}
          mayBeEmpty
          takesFocus={sheet.body === ''}
          commit={set('body')}
        />
        <TextField label="Edition" value={sheet.edition} mayBeEmpty commit={set('edition')} />
        <DayField label="Last gone through, day" value={sheet.on} commit={set('on')} />
        <SelectField
          label="What is typed now is"
          value={mark}
          choices={(Object.keys(MARK_WORDS) as RuleMark[]).map((value) => ({ value, label: MARK_WORDS[value] }))}
          onChoose={(value) => setMark(value as RuleMark)}
        />
      </div>
      <Tabs
        label="Parts of the sheet"
        tabs={[
          { name: 'questions', title: 'Questions' },
          { name: 'articles', title: 'Articles', count: sheet.checks.length },
        ]}
        shown={open.page}
        onShow={(page) => show({ ...open, page })}
      >
        {open.page === 'questions' ? (
          <>
            <Progress sheet={sheet} />
            <Questions
              sheet={sheet}
              mark={mark}
              change={change}
              toArticles={() => show({ ...open, page: 'articles' })}
            />
          </>
        ) : (
          <Articles sheet={sheet} mark={mark} change={change} />
        )}
      </Tabs>
      <div className="row">
        <button type="button" className="press press-live" onClick={() => show(null)}>
          Back to Checks
        </button>
      </div>
    </div>
  );
}

function Progress({ sheet }: { sheet: RuleSheet }): ReactNode {
  const progress = progressOf(sheet);
  const strip = useRef<HTMLParagraphElement>(null);
  const last = useRef<Element | null>(null);
  /** The next without an answer after the one that this led to last, or the first again. */
  function lead(): void {
    const open = [...strip.current!.parentElement!.querySelectorAll('.question-unanswered')];
    const isAfter = (question: Element): boolean =>
      last.current !== null &&
      (last.current.compareDocumentPosition(question) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
    const next = open.find(isAfter) ?? open[0] ?? null;
    last.current = next;
    next?.querySelector('input')?.focus();
  }
  return (
    <p className="sheet-progress" ref={strip}>
      <progress max={progress.of} value={progress.answered} aria-hidden="true" />
      <span role="status" className="figure">
        {progressInWords(progress)}
      </span>
      {progress.answered < progress.of && (
        <button type="button" className="press press-quiet press-small" onClick={lead}>
          Next empty one
        </button>
      )}
    </p>
  );
}
