/** What is said of revisions: on screen, sheets and wraps alike. */

/** "revision 7K2F". */
export const revisionInWords = (code: string): string => `revision ${code}`;

/** Of paper that is out of date; the tube's own revision now, or null where there is no such tube any more. */
export const wasteInWords = (was: string, now: string | null, on: string): string =>
  now === null
    ? `printed ${on}: there is no such tube any more`
    : `${revisionInWords(was)} of ${on} is waste: print ${revisionInWords(now)}`;
