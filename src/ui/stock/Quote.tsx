/** What the job comes to by the shop's own rates, line by line; the rates, what is charged beside, and the texts of the customer's page. */
import { useDeferredValue, useMemo, useState, type ReactNode } from 'react';
import { changeTook, setRates } from '../../core/edit/quote.ts';
import { reckonQuote, type Reckoned } from '../../core/quote/reckon.ts';
import type { Job } from '../../core/job/types.ts';
import {
  GROUP_NAMES,
  hoursInWords,
  moneyInWords,
  onTopInWords,
  QUOTE_IS,
  ROUNDED_IS,
  stillCheaperInWords,
  taxInWords,
  totalRows,
  tookInWords,
  withoutInWords,
} from '../../core/words/quote.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { RateFields } from '../fields/RateFields.tsx';
import { Section } from '../kit/Section.tsx';
import { usePlans } from './plans.ts';
import { PlansState } from './PlansState.tsx';
import { Extras, Texts } from './QuoteBeside.tsx';
import { QuoteLineItem } from './QuoteLineItem.tsx';
import './quote.css';

const NO_RATES = {};

export function Quote(): ReactNode {
  // A line costs a look at every end: while a node is dragged the bay comes first.
  const derived = useDeferredValue(useDocument((state) => state.derived));
  const { lengthUnit, quote } = useDocument((state) => state.job);
  const known = usePlans(derived);
  const { plans } = known;
  const [noting, setNoting] = useState(false);
  const { job } = derived;
  const reckoned = useMemo(() => reckonQuote(derived, plans), [derived, plans]);
  return (
    <>
      <p className="small">
        {QUOTE_IS} {ROUNDED_IS}
      </p>
      <PlansState {...known} />
      <Sums reckoned={reckoned} job={job} cheaper={stillCheaperInWords(plans)} />
      <label className="quote-noting">
        <input type="checkbox" checked={noting} onChange={(event) => setNoting(event.target.checked)} />
        Note what each line really took
      </label>
      <ul className="quote-lines">
        {reckoned.lines.map((line) => (
          <QuoteLineItem key={line.id} line={line} job={job} noting={noting} />
        ))}
      </ul>
      {reckoned.stray.length > 0 && (
        <ul className="quote-lines">
          {reckoned.stray.map((entry, i) => {
            const words = tookInWords(entry, reckoned.lines, job);
            return (
              <li key={`${entry.line} ${i}`} className="quote-line">
                <span className="small">{words}</span>
                <button
                  type="button"
                  className="press press-quiet"
                  onClick={() => jobDocument.getState().edit('Note taken out', (old) => changeTook(old, entry, null))}
                >
                  Take out<span className="spoken-only"> {words}</span>
                </button>
              </li>
            );
          })}
        </ul>
      )}
      <Section title="Rates of this job" onlyOpen>
        <p className="small">
          They stand in the job file: whoever gets that sees them. A new job begins with those of the shop record.
        </p>
        <RateFields
          rates={quote?.rates ?? NO_RATES}
          unit={lengthUnit}
          commit={(label, rates) => jobDocument.getState().edit(label, (old) => setRates(old, rates))}
        />
      </Section>
      <Section title="Charged beside" count={quote?.extras?.length ?? 0} onlyOpen>
        <Extras />
      </Section>
      <Section title="Words on the customer’s page" onlyOpen>
        <Texts />
      </Section>
      <p className="small">To print: in Shop, under Files, “Order and quote”.</p>
    </>
  );
}

/** Groups, then what is put on them, then what all comes to. */
function Sums(props: { reckoned: Reckoned; job: Job; cheaper: string | null }): ReactNode {
  const { reckoned, job, cheaper } = props;
  const { groups, whole, tax, toPay, hours, took } = reckoned;
  const rates = job.quote?.rates;
  const without = withoutInWords(reckoned, job);
  const totals = totalRows(whole.price, tax, toPay);
  const rows = [
    ...groups.map(({ group, amount }) => [GROUP_NAMES[group], amount] as const),
    ['Overhead', whole.overhead] as const,
    ['Margin', whole.margin] as const,
  ];
  return (
    <div>
      <table className="table table-plain quote-sums">
        <caption className="spoken-only">What the job comes to</caption>
        <tbody>
          {rows.map(([name, amount]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{moneyInWords(amount, rates)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          {totals.map(([name, amount]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{moneyInWords(amount, rates)}</td>
            </tr>
          ))}
        </tfoot>
      </table>
      {without !== null && (
        <p className="notice-warning">
          <span aria-hidden="true">▲ </span>
          {without}
        </p>
      )}
      {cheaper !== null && <p className="small">{cheaper}</p>}
      <p className="small">
        {onTopInWords(rates)} {taxInWords(rates)} Work: {hoursInWords(hours)}; noted so far {hoursInWords(took.hours)},
        and paid {moneyInWords(took.paid, rates)}.
      </p>
    </div>
  );
}
