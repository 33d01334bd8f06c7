/** How sure a measured coordinate is, below it: one standard deviation, that it is held, or that nothing fixes it. */
import type { ReactNode } from 'react';
import type { LengthUnit } from '../../core/units/length.ts';
import { sureInWords } from '../../core/words/residuals.ts';

/** mm; 0 of what is held, null where nothing fixes it. */
export const Sure = ({ mm, unit }: { mm: number | null; unit: LengthUnit }): ReactNode => (
  <span className="sure">{mm === null ? 'not fixed' : mm === 0 ? 'held' : sureInWords(mm, unit)}</span>
);
