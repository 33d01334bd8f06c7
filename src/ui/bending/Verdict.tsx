/** What the search for an order says of a tube: a sign, a line, and why. */
import type { ReactNode } from 'react';
import type { Rehearsal } from '../../core/rehearse/types.ts';
import { verdictOf } from '../../view/rehearsal/words.ts';

const SIGN = { free: '✓', order: '⇄', none: '×' } as const;

export function Verdict({ rehearsal }: { readonly rehearsal: Rehearsal }): ReactNode {
  const { tone, head, why } = verdictOf(rehearsal);
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
