/** What came of every article of the job's rule sheets, with body, edition, how sure its figure is and why. */
import { judge } from '../../core/rules/judge.ts';
import type { Verdict } from '../../core/rules/types.ts';
import { shownName } from '../../core/job/shown.ts';
import { NO_RULE_SHEET } from '../../core/words/dossier.ts';
import {
  ALONG_FROM_A,
  articleInFull,
  sheetInWords,
  SORT_WORDS,
  sortOf,
  tallyInWords,
  unansweredInWords,
} from '../../core/words/rule-book.ts';
import { inspectorsWord, MARK_WORDS, RULES_CHANGE, verdictInWords } from '../../core/words/rules.ts';
import { numbered } from '../../core/words/ends.ts';
import { lengthInWords } from '../shared/wrap-words.ts';
import type { Context } from '../sheets/context.ts';
import type { Part } from '../sheets/page.ts';
import { opened, said, under } from '../sheets/parts.ts';
import { table, type Column } from '../sheets/table.ts';

const COLUMNS: readonly Column[] = [
  { name: 'Article', share: 0.1, bold: true },
  { name: 'What it asks', share: 0.31 },
  { name: 'Verdict', share: 0.13, bold: true },
  { name: 'What was found', share: 0.31 },
  { name: 'Its figure', share: 0.15 },
];

export function rulesPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const verdicts = judge(derived);
  const { rules } = derived.job;
  const [first, ...rest] = rules.flatMap((sheet): readonly Part[] => {
    const own = verdicts.filter((each) => each.sheet === sheet.sheet);
    const rows = own.map((verdict) => {
      const { check } = verdict;
      return [
        shownName(check.article),
        articleInFull(check, unit),
        SORT_WORDS[sortOf(verdict)],
        // Of a question for a person the answer is what was found.
        [verdictInWords(verdict, derived), ...wordBeside(verdict)].join(' '),
        MARK_WORDS[check.mark],
      ];
    });
    const when = sheet.on === '' ? '' : `, as gone through on ${shownName(sheet.on)}`;
    const left = unansweredInWords(sheet);
    const counts = [`Its articles: ${tallyInWords(own)}.`, ...(left === null ? [] : [left])];
    return [
      { ...table(context, COLUMNS, rows), opening: under(context, `${sheetInWords(sheet)}${when}`, ...counts) },
      ...own.flatMap((verdict) => paddingOf(context, verdict)),
    ];
  });
  const none = first ?? said(context, NO_RULE_SHEET);
  const inAll = rules.length > 1 ? [`In all ${verdicts.length} articles: ${tallyInWords(verdicts)}.`] : [];
  return [opened(context, 'Rule books', first === undefined ? [] : [RULES_CHANGE, ...inAll], none), ...rest];
}

const PADDING: readonly Column[] = [
  { name: 'Tube', share: 0.4, bold: true },
  { name: ALONG_FROM_A, share: 0.2, figures: true },
  { name: 'Length', share: 0.2, figures: true },
];

/** To cut and to buy, tube by tube, where an article finds some to pad. */
function paddingOf(context: Context, { because, check }: Verdict): readonly Part[] {
  if (because.id !== 'to-pad') return [];
  const { derived, unit } = context;
  const rows = because.stretches.map(({ tube, from, to }) => [
    numbered(derived.byId.get(tube)!),
    lengthInWords(from, unit),
    lengthInWords(to - from, unit),
  ]);
  const title = `Where to pad, by ${check.article === '' ? 'this sheet' : shownName(check.article)}`;
  return [{ ...table(context, PADDING, rows), opening: under(context, title) }];
}

const wordBeside = ({ check: { kind, answer } }: Verdict): readonly string[] =>
  kind === 'ask' || answer === undefined ? [] : [inspectorsWord(answer)];
