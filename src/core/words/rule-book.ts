/** What the page says of a job's rule sheets as a whole: what they are for, how the verdicts stand, and against what they were held. */
import { shownName } from '../job/shown.ts';
import type { RULE_KINDS, RuleCheck, RuleKind } from '../job/kinds/rule-check.ts';
import type { RuleSheet } from '../job/kinds/rule-sheet.ts';
import { hasOldWords } from '../rules/as-it-came.ts';
import type { FigureName } from '../rules/figures.ts';
import { isGuided, progressOf } from '../rules/filling.ts';
import type { Verdict, VerdictWord } from '../rules/types.ts';
import type { LengthUnit } from '../units/length.ts';
import { askedInWords, VERDICT_WORDS } from './rules.ts';

/** Where a job has none. */
export const WHAT_SHEETS_ARE_FOR =
  'A rule sheet is your rule book in your own words and figures: the cage is held against it while you draw. What is not within it, and what nobody has looked at, is listed here before steel is bent.';

/** "Valley Hill Climb, 2026". */
export function sheetInWords({ body, edition, sheet }: Pick<RuleSheet, 'body' | 'edition' | 'sheet'>): string {
  const parts = [body, edition].map((part) => shownName(part.trim())).filter((part) => part !== '');
  return parts.length === 0 ? `unnamed ${shownName(sheet)}` : parts.join(', ');
}

/** An article as a row is headed: the shop's words; what is asked where there are none, and after them where two articles of the sheet share them. */
export function articleInWords(check: RuleCheck, { checks }: RuleSheet, unit: LengthUnit): string {
  const words = ownWords(check);
  const isShared = check.kind !== 'ask' && checks.some((other) => other !== check && other.text === check.text);
  if (words === '') return askedInWords(check, unit);
  return isShared ? articleInFull(check, unit) : words;
}

/** On paper, where nothing unfolds: the shop's words, and after them what is measured, of whom, and within what. */
export function articleInFull(check: RuleCheck, unit: LengthUnit): string {
  const words = ownWords(check);
  if (check.kind === 'ask' && words !== '') return words;
  return [words === '' || /[.:;?!]$/u.test(words) ? words : `${words}.`, askedInWords(check, unit)].join(' ').trim();
}

/** Words that were written for another figure are left out. */
const ownWords = (check: RuleCheck): string => (hasOldWords(check) ? '' : shownName(check.text.trim()));

/** Beside words that came with the sheet, of an article whose figure was put right. */
export const WORDS_AS_THEY_CAME = 'These words came with the sheet, for another figure: they are shown nowhere else.';

/** Beside an article: whose it is, and the edition where several sheets are of one book; '' where there is but one sheet. */
export function bookInWords(sheet: RuleSheet, sheets: readonly RuleSheet[]): string {
  if (sheets.length === 1) return '';
  const body = shownName(sheet.body.trim());
  return body === '' || sheets.filter((each) => each.body === sheet.body).length > 1 ? sheetInWords(sheet) : body;
}

/** "Held against these sheets: Valley Hill Climb, 2026; Club rules, 2025." */
export const sheetsInWords = (sheets: readonly RuleSheet[]): string =>
  `Held against ${sheets.length === 1 ? 'this sheet' : 'these sheets'}: ${sheets.map(sheetInWords).join('; ')}.`;

/** "26 of 35 questions of Valley Hill Climb, 2026 are not answered: nothing is checked there." of a sheet that the guided page was used on; null where none is left. */
export function unansweredInWords(sheet: RuleSheet): string | null {
  const { answered, of } = progressOf(sheet);
  const left = of - answered;
  if (!isGuided(sheet) || left === 0) return null;
  return `${left} of ${of} questions of ${sheetInWords(sheet)} ${left === 1 ? 'is' : 'are'} not answered: nothing is checked there.`;
}

/** As the page sorts verdicts: an article for cars of another mass asks nothing of this one. */
export type Sort = VerdictWord | 'other-cars';

/** Where a verdict stands on the page. */
export const sortOf = ({ verdict, because }: Verdict): Sort => (because.id === 'other-mass' ? 'other-cars' : verdict);

/** What stands over each sort, and beside its number. */
export const SORT_WORDS: Readonly<Record<Sort, string>> = {
  ...VERDICT_WORDS,
  'other-cars': 'for cars of another mass',
};

/** In the order of the page. */
export const SORTS: readonly Sort[] = ['not-met', 'not-checked', 'met', 'other-cars'];

/** How many verdicts there are of each sort, in the order of the page; articles for other cars only where there are some. */
export const tallyOf = (verdicts: readonly Verdict[]): readonly { readonly sort: Sort; readonly count: number }[] =>
  SORTS.map((sort) => ({ sort, count: verdicts.filter((verdict) => sortOf(verdict) === sort).length })).filter(
    ({ sort, count }) => sort !== 'other-cars' || count > 0,
  );

/** "1 not met, 6 not checked, 20 met, 1 for cars of another mass". */
export const tallyInWords = (verdicts: readonly Verdict[]): string =>
  tallyOf(verdicts)
    .map(({ sort, count }) => `${count} ${SORT_WORDS[sort]}`)
    .join(', ');

/** "24 lines". */
export const linesCounted = (count: number): string => `${count} ${count === 1 ? 'line' : 'lines'}`;

/** Why fewer lines stand below than articles were counted; null where each has its own. */
export const linesInWords = (lines: number, articles: number): string | null =>
  lines === articles
    ? null
    : `${articles} articles on ${linesCounted(lines)}: one that asks no more of the same bars than another stands under it.`;

/** Over bars of which one may be what is counted and not there. */
export const MAY_BE_MEANT = 'These bars have no role. One of them may be it:';

/** Under an article: the other sheets that ask it and no more. */
export const alsoAskedBy = (sheets: readonly RuleSheet[]): string =>
  `Also asked by: ${[...new Set(sheets)].map(sheetInWords).join('; ')}`;

/** Nothing that could be held against the frame stands in the sheets. */
export const NO_ARTICLES = 'No article has been entered yet: fill the sheet in, or type its articles.';

/** Where an article goes by the car's mass. */
export const MASS_ASKED = 'Some articles go by the car’s mass, as the book weighs it.';

/** Of what is typed beside an article's number. */
export const OWN_WORDS = 'In your own words';

/** What of its kind an article measures, for whoever chooses one; where a kind has but one, its name says it. */
export const OF_WORDS: { readonly [K in RuleKind]: Readonly<Record<keyof (typeof RULE_KINDS)[K], string>> } = {
  section: { size: '' },
  'one-piece': { pieces: '' },
  'bend-radius': { diameters: 'radius in diameters', radius: 'radius as a length', roundness: 'how round' },
  'bend-count': { count: 'how many', sum: 'degrees together', each: 'degrees each' },
  straight: { bends: 'no bend', 'free-length': 'joint to joint' },
  tilt: { axis: 'end to end', plane: 'plane of its bends', joint: 'angle at a joint' },
  reach: {
    foot: 'near a foot',
    joint: 'near another’s end',
    corner: 'near a corner',
    'below-top': 'below a top',
    opening: 'in the door',
  },
  present: { bars: 'bars', 'each-side': 'bars each side', feet: 'feet', gussets: 'gussets' },
  plate: { area: 'area', thickness: 'thickness', bolts: 'bolts', hole: 'bolt holes' },
  support: { lean: '' },
  harness: { 'strap-angle': 'angle of straps', height: 'height' },
  'inside-width': { feet: 'at the feet', least: 'where narrowest' },
  'head-room': {
    box: 'round the helmet',
    'line-front': 'line to the front',
    'line-stay': 'line to the stay',
    behind: 'behind the helmet',
    circle: 'ball round the head',
    padding: 'what is padded',
  },
  'gap-window': { surfaces: 'surfaces', axes: 'centrelines' },
  ask: { answer: '' },
};

/** Of the figures of an article. */
export const FIGURE_LABELS: Readonly<Record<FigureName, string>> = {
  sizes: 'tube',
  outerDiameter: 'across, at least',
  wall: 'wall, at least',
  area: 'steel across it, at least',
  secondMoment: 'second moment, at least',
  allowance: 'wall may be less by',
  least: 'at least',
  most: 'at most',
  aim: 'about, as advised',
  within: 'along the bar, within',
  diameter: 'ball across',
  massFrom: 'cars over',
  massUpTo: 'cars up to',
};

/** Over the places to pad: developed, with end A's node at nothing. */
export const ALONG_FROM_A = 'From end A’s node';

/** Under a question that an article of another form is about. */
export const STANDS_ELSEWHERE = 'An article about this stands under Articles.';

/** "12 of 36 answered". */
export const progressInWords = ({ answered, of }: { readonly answered: number; readonly of: number }): string =>
  `${answered} of ${of} answered`;
