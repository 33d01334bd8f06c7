/** A line of the quote: what it is, how it came, what it comes to; and beside it what it really took. */
import type { ReactNode } from 'react';
import { setTook } from '../../core/edit/quote.ts';
import type { Took } from '../../core/job/kinds/quote.ts';
import { GREATEST_COST, GREATEST_HOURS } from '../../core/job/limits.ts';
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
      {noting && <TookFields line={line} name={name} />}
    </li>
  );
}

const HOURS = orNothing(numberKind(0, GREATEST_HOURS, 1));
const MONEY = orNothing(numberKind(0, GREATEST_COST, 1));

/** What is noted takes the place of all that was noted of the line, under today's date. */
function TookFields({ line: { id, took }, name }: { line: QuoteLine; name: string }): ReactNode {
  const remark = took.entries.map((entry) => entry.remark ?? '').find((words) => words !== '') ?? '';
  const note = (fields: { hours?: number | null; paid?: number | null; remark?: string }) => {
    const next = { hours: took.hours, paid: took.paid, remark, ...fields };
    const entry: Omit<Took, 'line'> = {
      ...(next.hours !== null && { hours: next.hours }),
      ...(next.paid !== null && { paid: next.paid }),
      ...(next.remark !== '' && { remark: next.remark }),
    };
    const isEmpty = Object.keys(entry).length === 0;
    return jobDocument
      .getState()
      .edit(`What ${name} took`, (job) => setTook(job, id, isEmpty ? null : { ...entry, on: dayOf(new Date()) }));
  };
  return (
    <div className="quote-took" role="group" aria-label={`What ${name} took`}>
      <EntryField label="Hours" kind={HOURS} value={took.hours} numeric commit={(hours) => note({ hours })} />
      <EntryField label="Paid" kind={MONEY} value={took.paid} numeric commit={(paid) => note({ paid })} />
      <TextField label="Remark" mayBeEmpty value={remark} commit={(words) => note({ remark: words })} />
    </div>
  );
}
