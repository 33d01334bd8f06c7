/** What is charged beside what the frame says, and the shop's own words on the customer's page. */
import type { ReactNode } from 'react';
import { addExtra, removeExtra, setExtra, setQuoteText } from '../../core/edit/quote.ts';
import { GREATEST_COST } from '../../core/job/limits.ts';
import { jobDocument, useDocument } from '../../store/page.ts';
import { NumberField, TextField } from '../fields/Fields.tsx';
import { jobEdit } from '../fields/jobEdit.ts';

export function Extras(): ReactNode {
  const extras = useDocument((state) => state.job.quote?.extras);
  const edit = jobDocument.getState().edit;
  return (
    <>
      {extras?.map(({ what, amount }, i) => (
        <div key={i} className="quote-extra" role="group" aria-label={what === '' ? `Charge ${i + 1}` : what}>
          <TextField
            label="For"
            mayBeEmpty
            value={what}
            {...jobEdit<string>('What is charged beside', (job, words) => setExtra(job, i, { what: words }))}
          />
          <NumberField
            label="Price"
            least={0}
            greatest={GREATEST_COST}
            step={1}
            value={amount}
            {...jobEdit<number>('Price of what is charged beside', (job, price) => setExtra(job, i, { amount: price }))}
          />
          <button
            type="button"
            className="press press-quiet"
            onClick={() => edit('Charge removed', (job) => removeExtra(job, i))}
          >
            Remove<span className="spoken-only"> {what}</span>
          </button>
        </div>
      ))}
      <button
        type="button"
        className="press"
        onClick={() => edit('Charge added', (job) => addExtra(job, { what: '', amount: 0 }))}
      >
        Add a charge
      </button>
    </>
  );
}

const TEXTS = [
  ['heading', 'Over it: who it is from'],
  ['customer', 'Whom it is for'],
  ['number', 'Number of the quote'],
  ['validUntil', 'Valid until'],
  ['terms', 'Under it: what holds for it'],
] as const;

export function Texts(): ReactNode {
  const quote = useDocument((state) => state.job.quote);
  return (
    <div className="fields">
      {TEXTS.map(([which, label]) => (
        <TextField
          key={which}
          label={label}
          mayBeEmpty
          value={quote?.[which] ?? ''}
          {...jobEdit<string>(label, (job, words) => setQuoteText(job, which, words))}
        />
      ))}
    </div>
  );
}
