/** What the search for an order says of a tube: a sign, a line, and why. */
import type { ReactNode } from 'react';
import type { Rehearsal } from '../../core/rehearse/types.ts';
import { searchInWords } from '../../core/words/rehearsal.ts';

/** On the key that leaves the bender. */
export const BACK_TO_FRAME = 'Back to the frame';

const SIGN = { free: '✓', order: '⇄', none: '×' } as const;

export function Verdict({ rehearsal }: { readonly rehearsal: Rehearsal }): ReactNode {
  const { tone, head, why } = searchInWords(rehearsal);
  return (
    <p className={`verdict verdict-${tone}`}>
      <span className="verdict-sign" aria-hidden="true">
        {SIGN[tone]}
      </span>
      <strong>{head}</strong>
      <span className="verdict-why">{why}</span>
    </p>
  );
}
