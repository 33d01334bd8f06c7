/** What is said of revisions: on screen, sheets and wraps alike. */
import { TELLS } from '../checks/changed-tubes.ts';
import type { LengthUnit } from '../units/length.ts';
import { comparedLength } from './lengths.ts';

/** "revision 7K2F". */
export const revisionInWords = (code: string): string => `revision ${code}`;

/** Paper that is out of date, printed `on` that day: the tube's revision now, null where there is no such tube any more, and how much longer it is cut, mm. */
export function wasteInWords(
  { revision: was, on }: { readonly revision: string; readonly on: string },
  now: string | null,
  longer: number,
  unit: LengthUnit,
): string {
  if (now === null) return `printed ${on}: there is no such tube any more`;
  const by = comparedLength(Math.abs(longer), unit);
  const cut =
    Math.abs(longer) <= TELLS ? 'cut as long as before' : `cut ${by} ${longer > 0 ? 'longer' : 'shorter'} now`;
  return `${revisionInWords(was)} of ${on} is waste, ${cut}: print ${revisionInWords(now)}`;
}
