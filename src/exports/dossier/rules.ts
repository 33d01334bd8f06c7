/** What came of every article of the job's rule sheets, with body, edition, how sure its figure is and why. */
import { judge } from '../../core/rules/judge.ts';
import { shownName } from '../../core/job/shown.ts';
import type { VerdictWord } from '../../core/rules/types.ts';
import { NO_RULE_SHEET } from '../../core/words/dossier.ts';
import { askedInWords, MARK_WORDS, RULES_CHANGE, VERDICT_WORDS, verdictInWords } from '../../core/words/rules.ts';
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

const WORDS: readonly VerdictWord[] = ['not-met', 'not-checked', 'met'];

export function rulesPart(context: Context): readonly Part[] {
  const { derived, unit } = context;
  const verdicts = judge(derived);
  const [first, ...rest] = derived.job.rules.map(({ sheet, body, edition, on }): Part => {
    const own = verdicts.filter((each) => each.sheet === sheet);
    const rows = own.map((verdict) => {
      const { check } = verdict;
      return [
        shownName(check.article),
        check.kind === 'ask' || check.text !== '' ? check.text : askedInWords(check, unit),
        VERDICT_WORDS[verdict.verdict],
        verdictInWords(verdict, derived),
        MARK_WORDS[check.mark],
      ];
    });
    const counts = WORDS.map(
      (word) => `${own.filter(({ verdict }) => verdict === word).length} ${VERDICT_WORDS[word]}`,
    );
    const when = on === '' ? '' : `, as gone through on ${shownName(on)}`;
    const title = [body, edition].filter((each) => each !== '').join(', ') || sheet;
    return {
      ...table(context, COLUMNS, rows),
      opening: under(context, `${shownName(title)}${when}`, `Its articles: ${counts.join(', ')}.`),
    };
  });
  const none = first ?? said(context, NO_RULE_SHEET);
  return [opened(context, 'Rule books', first === undefined ? [] : [RULES_CHANGE], none), ...rest];
}
