/** Under words of an article that name a figure which was put right since. */
import type { ReactNode } from 'react';
import { WORDS_AS_THEY_CAME } from '../../core/words/rule-book.ts';

export const OldWords = ({ clear }: { clear: () => void }): ReactNode => (
  <p className="small question-whole">
    {WORDS_AS_THEY_CAME}{' '}
    <button type="button" className="link" data-aside onClick={clear}>
      Clear them
    </button>
  </p>
);
