/** The job's rule sheets: filled in further, copied, kept, saved, taken out; and where another one comes from. */
import { useState, type ReactNode } from 'react';
import { addSheet, freeSheetId, removeSheet } from '../../core/edit/rules.ts';
import { blankSheet } from '../../core/job/blank-sheet.ts';
import type { Fault } from '../../core/job/fault.ts';
import type { RuleSheet } from '../../core/job/kinds/rule-sheet.ts';
import { parseRules, serialiseRules } from '../../core/job/rule-file.ts';
import { progressOf } from '../../core/rules/filling.ts';
import { SHIPPED } from '../../core/rules/shipped/sheets.ts';
import { keepSheet } from '../../core/shop/keep-sheet.ts';
import { progressInWords, sheetInWords } from '../../core/words/rule-book.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { fileNameFor } from '../../exports/shared/file-name.ts';
import { jobDocument, shopRecord, useDocument, useShop } from '../../store/page.ts';
import { Command } from '../kit/Command.tsx';
import { downloadText } from '../kit/download.ts';
import { FaultList } from '../kit/FaultList.tsx';
import { pickFrom, readFile } from '../kit/pick-file.ts';
import { Refused } from '../kit/Refused.tsx';
import { Section } from '../kit/Section.tsx';
import type { OpenSheet } from './SheetEditor.tsx';

export type ShowSheet = (open: OpenSheet) => void;

const ADD = 'Add a rule sheet';

/** Puts it into the job, and opens it. */
function add(sheet: RuleSheet, page: OpenSheet['page'], show?: ShowSheet): readonly Fault[] {
  const { edit, job } = jobDocument.getState();
  const id = freeSheetId(job.rules, sheet.sheet);
  const faults = edit(ADD, (before) => addSheet(before, blankSheet({ ...sheet, sheet: id })));
  if (faults.length === 0) show?.({ sheet: id, page });
  return faults;
}

const fresh = (): RuleSheet => ({ sheet: 'sheet', body: '', edition: '', on: dayOf(new Date()), checks: [] });

/** Nothing is there yet: a sheet of one's own, or one that is there. */
export function FirstSheet({ show }: { show: ShowSheet }): ReactNode {
  const [taking, take] = useState(false);
  return (
    <>
      <div className="row">
        <button type="button" className="press press-live" onClick={() => add(fresh(), 'questions', show)}>
          Fill in a sheet
        </button>
        <button type="button" className="press" aria-expanded={taking} onClick={() => take(!taking)}>
          Take a ready one
        </button>
      </div>
      {taking && <Sources />}
    </>
  );
}

/** `isBack`: from one of them. */
export function Sheets({ show, isBack }: { show: ShowSheet; isBack: boolean }): ReactNode {
  const rules = useDocument((state) => state.job.rules);
  return (
    <Section title="Rule sheets" count={rules.length} open={isBack} onlyOpen>
      <ul className="findings">
        {rules.map((sheet) => (
          <Sheet key={sheet.sheet} sheet={sheet} show={show} />
        ))}
      </ul>
      <h4>{ADD}</h4>
      <Sources>
        <button type="button" className="press" onClick={() => add(fresh(), 'questions', show)}>
          A new one
        </button>
      </Sources>
    </Section>
  );
}

function Sheet({ sheet, show }: { sheet: RuleSheet; show: ShowSheet }): ReactNode {
  const [said, say] = useState('');
  const [refused, refuse] = useState('');
  const name = sheetInWords(sheet);
  const count = sheet.checks.length;
  return (
    <li className="sheet-card">
      <p>
        <strong>{name}</strong>
      </p>
      <p className="small">
        {count} {count === 1 ? 'article' : 'articles'} · {progressInWords(progressOf(sheet))}
        {sheet.on !== '' && (
          <>
            {' · gone through '}
            <span className="figure">{sheet.on}</span>
          </>
        )}
      </p>
      <div className="row">
        <button
          type="button"
          className="press"
          aria-label={`Fill in ${name}`}
          onClick={() => show({ sheet: sheet.sheet, page: 'questions' })}
        >
          Fill in
        </button>
        <button
          type="button"
          className="press"
          aria-label={`Articles of ${name}`}
          onClick={() => show({ sheet: sheet.sheet, page: 'articles' })}
        >
          Articles
        </button>
        <button
          type="button"
          className="press press-quiet"
          aria-label={`Save ${name} as file`}
          onClick={() =>
            downloadText(fileNameFor(name, 'rules.json'), 'application/json', serialiseRules([blankSheet(sheet)]))
          }
        >
          Save as file
        </button>
        <button
          type="button"
          className="press press-quiet"
          aria-label={`Keep ${name} in the shop`}
          onClick={() => {
            const faults = shopRecord.getState().replace((shop) => keepSheet(shop, sheet));
            refuse(faults.map(({ message }) => message).join('; '));
            if (faults.length === 0) say('Kept in the shop record, for other jobs.');
          }}
        >
          Keep in the shop
        </button>
        <button
          type="button"
          className="press press-quiet"
          aria-label={`Copy ${name}`}
          onClick={() => add({ ...sheet, edition: `${sheet.edition} copy`.trim() }, 'articles', show)}
        >
          Copy
        </button>
        <Command
          quiet
          destroys={sheet.sheet}
          step={`Delete ${name}`}
          label={`Delete ${name}`}
          run={(job) => removeSheet(job, sheet.sheet)}
        >
          Delete
        </Command>
      </div>
      {said !== '' && (
        <p className="small" role="status">
          {said}
        </p>
      )}
      <Refused why={refused} />
    </li>
  );
}

/** Sheets that are there already: from a file, of the shop, with the program. */
function Sources({ children }: { children?: ReactNode }): ReactNode {
  const [refused, refuse] = useState<{ readonly fileName: string; readonly faults: readonly Fault[] } | null>(null);
  const ofShop = useShop((state) => state.shop.rules);
  return (
    <div className="sheet-sources">
      <div className="row">
        {children}
        <button type="button" className="press" onClick={() => pickFrom((file) => void open(file, refuse))}>
          From a file
        </button>
      </div>
      {refused !== null && (
        <section className="notice-warning" role="alert">
          <p>
            <strong>{refused.fileName} was not taken.</strong>
          </p>
          <FaultList faults={refused.faults} />
        </section>
      )}
      {ofShop.length > 0 && (
        <>
          <p className="small">From the shop record</p>
          <Offered sheets={ofShop} />
        </>
      )}
      <p className="small">
        With the program: what we know of these books, in our own words. Each figure says how sure it is; copy, correct,
        and date it.
      </p>
      <Offered sheets={SHIPPED} />
    </div>
  );
}

function Offered({ sheets }: { sheets: readonly RuleSheet[] }): ReactNode {
  const [why, refuse] = useState('');
  return (
    <>
      <ul className="sheet-offered">
        {sheets.map((sheet) => (
          <li key={sheet.sheet}>
            <button
              type="button"
              className="press press-quiet"
              onClick={() =>
                refuse(
                  add(sheet, 'articles')
                    .map(({ message }) => message)
                    .join('; '),
                )
              }
            >
              {sheetInWords(sheet)} <span className="section-count">{sheet.checks.length}</span>
            </button>
          </li>
        ))}
      </ul>
      <Refused why={why} />
    </>
  );
}

async function open(
  file: File,
  refuse: (refused: { readonly fileName: string; readonly faults: readonly Fault[] } | null) => void,
): Promise<void> {
  const read = await readFile(file);
  const parsed =
    'why' in read ? { ok: false as const, faults: [{ place: '', message: read.why }] } : parseRules(read.text);
  const faults = parsed.ok
    ? jobDocument.getState().edit(ADD, (job) => parsed.sheets.reduce(addSheet, job))
    : parsed.faults;
  refuse(faults.length === 0 ? null : { fileName: file.name, faults });
}
