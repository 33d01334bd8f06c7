/** What the page says of a job's rule sheets as a whole: what they are for, how the verdicts stand, and against what they were held. */
import { shownName } from '../job/shown.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import type { Verdict, VerdictWord } from '../rules/types.ts';

/** Where a job has none. */
export const WHAT_SHEETS_ARE_FOR =
  'A rule sheet is your rule book, article by article, in your own words and figures: the cage is held against it while you draw. What is not within a figure, and what nobody has looked at, is listed here before steel is bent.';

/** "Valley Hill Climb, 2026". */
export function sheetInWords({ body, edition, sheet }: Pick<RuleSheet, 'body' | 'edition' | 'sheet'>): string {
  const parts = [body, edition].map((part) => shownName(part.trim())).filter((part) => part !== '');
  return parts.length === 0 ? `sheet ${shownName(sheet)}` : parts.join(', ');
}

/** "Held against these sheets: Valley Hill Climb, 2026; Club rules, 2025." */
export const sheetsInWords = (sheets: readonly RuleSheet[]): string =>
  `Held against ${sheets.length === 1 ? 'this sheet' : 'these sheets'}: ${sheets.map(sheetInWords).join('; ')}.`;

/** How many verdicts there are of each sort. */
export const countOf = (verdicts: readonly Verdict[], word: VerdictWord): number =>
  verdicts.filter(({ verdict }) => verdict === word).length;

/** Under an article: how many of other sheets ask no more. */
export const moreInWords = (count: number): string =>
  count === 1 ? 'One more sheet asks this, and no more' : `${count} more articles ask this, and no more`;

/** Nothing that could be held against the frame stands in the sheets. */
export const NO_ARTICLES = 'No article has been entered yet: fill the sheet in, or type its articles.';

/** Where an article goes by the car's mass. */
export const MASS_ASKED = 'Some articles go by the car’s mass, as the book weighs it.';
