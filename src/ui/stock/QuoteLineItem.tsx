/** A line of the quote: what it is, how it came, what it comes to; and beside it what it really took. */
import type { ReactNode } from 'react';
import { addTook, changeTook } from '../../core/edit/quote.ts';
import type { Took } from '../../core/job/kinds/quote.ts';
import { GREATEST_COST, GREATEST_HOURS } from '../../core/job/limits.ts';
import { shownName } from '../../core/job/shown.ts';
import type { Job } from '../../core/job/types.ts';
import type { QuoteLine } from '../../core/quote/reckon.ts';
import { howInWords, lineInWords, moneyInWords, tookInWords, unpricedInWords } from '../../core/words/quote.ts';
import { dayOf } from '../../exports/shared/day.ts';
import { jobDocument } from '../../store/page.ts';
import { EntryField } from '../fields/EntryField.tsx';
import { TextField } from '../fields/Fields.tsx';
import { numberKind, orNothing } from '../fields/kinds.ts';

export function QuoteLineItem({ line, job, noting }: { line: QuoteLine; job: Job; noting: boolean }): ReactNode {
  const { name, counts } = lineInWords(line.of, job);
  const rates = job.quote?.rates;
  return (
    <li className="quote-line">
      <span className="quote-name">{name}</span>
      <span className={line.amount === null ? 'quote-none' : 'figure'}>
        {line.amount === null ? unpricedInWords(line) : moneyInWords(line.amount, rates)}
      </span>
      <span className="quote-how">
        {howInWords(line, rates)}
        <span className="small under">{counts}</span>
        {!noting &&
          line.took.entries.map((entry, i) => (
            <span key={`${entry.on} ${i}`} className="small under">
              {tookInWords(entry, [line], job)}
            </span>
          ))}
      </span>
      {noting && <TookRows line={line} name={name} />}
    </li>
  );
}

const HOURS = orNothing(numberKind(0, GREATEST_HOURS, 1));
const MONEY = orNothing(numberKind(0, GREATEST_COST, 1));

/** A row for each entry of the line, and an empty one for another. */
const TookRows = ({ line: { id, took }, name }: { line: QuoteLine; name: string }): ReactNode =>
  // By their place: the row that one more was typed into stays that row, and keeps the hand.
  [...took.entries, null].map((entry, i) => (
    <TookFields key={i} line={id} entry={entry} name={i === 0 ? name : `${name}, entry ${i + 1},`} />
  ));

/** An entry keeps the day on which it was noted; one that has nothing left is gone. */
function TookFields({ line, entry, name }: { line: string; entry: Took | null; name: string }): ReactNode {
  const { hours = null, paid = null, remark = '', on } = entry ?? {};
  const note = (fields: { hours?: number | null; paid?: number | null; remark?: string }) => {
    const next = { hours, paid, remark, ...fields };
    const said = {
      ...(next.hours !== null && { hours: next.hours }),
      ...(next.paid !== null && { paid: next.paid }),
      ...(next.remark !== '' && { remark: next.remark }),
    };
    const isEmpty = Object.keys(said).length === 0;
    return jobDocument.getState().edit(`What ${name} took`, (job) => {
      if (entry === null) return isEmpty ? job : addTook(job, { line, ...said, on: dayOf(new Date()) });
      return changeTook(job, entry, isEmpty ? null : { line, ...said, ...(on !== undefined && { on }) });
    });
  };
  return (
    <div className="quote-took" role="group" aria-label={`What ${name} took`}>
      <EntryField label="Hours" kind={HOURS} value={hours} numeric commit={(next) => note({ hours: next })} />
      <EntryField label="Paid" kind={MONEY} value={paid} numeric commit={(next) => note({ paid: next })} />
      <TextField
        label={on === undefined || on === '' ? 'Remark' : `Remark of ${shownName(on)}`}
        mayBeEmpty
        value={remark}
        commit={(next) => note({ remark: next })}
      />
    </div>
  );
}
